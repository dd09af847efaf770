//! `barm print`.

use super::failure::Failure;
use super::{page, progress};
use crate::desk::print::{self, Address, Job, PARTS, Part, Wish};
use crate::desk::{self, Catalog, LabelSheet, Wording};
use barm_domain::plan::Inquiry;
use clap::builder::{PossibleValue, PossibleValuesParser};
use jiff::Timestamp;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Print what the day needs: labels, cards, sheets, lists
///
/// Writes one file a part into a folder. Files that this command wrote there before are written
/// anew; a file of yours is never overwritten.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Parts to print, with commas between; without it, all that the plan has use for
    #[arg(long, value_name = "PART", value_delimiter = ',', value_parser = parts())]
    what: Vec<String>,
    /// Folder to write into
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
    /// Paper
    #[arg(long, value_enum, default_value = "letter")]
    paper: page::PaperSize,
    /// Language of what students and families read
    #[arg(long, default_value = "en", value_parser = languages())]
    language: String,
    /// Large print for what students hold
    #[arg(long)]
    large: bool,
    /// Sheet of labels [default: 30-up on letter, 21-up on A4]
    #[arg(long, value_name = "SHEET", value_parser = label_sheets())]
    labels: Option<String>,
    /// First free label of a sheet that is partly used, counted along the rows
    #[arg(long, value_name = "N", default_value_t = 1)]
    start_cell: u32,
    /// Address of the program on the day, for square codes and the join sheet. Give one only if
    /// it will still hold then
    #[arg(long, value_name = "URL", value_parser = Address::parse)]
    address: Option<Address>,
    /// Inquiry level, in place of the plan's
    #[arg(long, value_parser = levels())]
    level: Option<String>,
    /// Only for the period of this name
    #[arg(long, value_name = "NAME")]
    period: Option<String>,
    /// Readings of the class, for parts that show what it found
    #[arg(long, value_name = "FILE")]
    readings: Option<PathBuf>,
}

fn parts() -> PossibleValuesParser {
    let value = |part: &'static Part| {
        PossibleValue::new(part.key).help((part.says)(Wording::english()))
    };
    PARTS.iter().map(value).collect::<Vec<_>>().into()
}

fn languages() -> PossibleValuesParser {
    Catalog::all().map(|catalog| PossibleValue::new(catalog.code())).collect::<Vec<_>>().into()
}

fn label_sheets() -> PossibleValuesParser {
    let value = |sheet: &LabelSheet| PossibleValue::new(sheet.key()).help(sheet.says());
    LabelSheet::ALL.iter().map(value).collect::<Vec<_>>().into()
}

fn levels() -> PossibleValuesParser {
    Inquiry::ALL.map(|level| PossibleValue::new(level.word())).to_vec().into()
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let open = desk::open_plan(&arguments.plan)?;
    let line = progress::Line::new();
    let analysis = match &arguments.readings {
        Some(file) => Some(desk::analyze(&open, file, &line)?),
        None => None,
    };
    let wish = wish(arguments);
    let job =
        Job::new(&open.plan, &wish, analysis.as_ref(), &line).printed_at(Timestamp::now());
    let sheets = print::print(&job, &print::wanted(&job, &arguments.what))?;
    let printed = print::write_printed(&arguments.out, sheets)?;
    drop(line);
    page::title(out, &open.plan.title)?;
    page::known(out, &open.plan)?;
    let faults = desk::faults_without_forecast(&open.plan);
    if faults > 0 {
        let word = if faults == 1 { "fault" } else { "faults" };
        let says = format!(
            "This plan has {faults} {word}. Run `barm check {}` before you hand anything out.",
            arguments.plan.display()
        );
        page::paragraph(out, 0, &says)?;
    }
    let rows = printed.iter().map(|one| {
        let again = if one.renewed { "written anew" } else { "" };
        let says = (one.sheet.part.says)(Wording::english());
        vec![one.path.display().to_string(), says, again.to_owned()]
    });
    page::rows(out, &["", "", ""], &[], rows.collect::<Vec<_>>())?;
    writeln!(out)?;
    let says =
        "Print at 100 %, not fitted to the page: labels and rulers are true to size only then.";
    page::paragraph(out, 0, says)?;
    page::unprinted(out, &open.plan)?;
    Ok(ExitCode::SUCCESS)
}

fn wish(arguments: &Arguments) -> Wish {
    let level = |word: &String| Inquiry::ALL.into_iter().find(|level| level.word() == word);
    Wish {
        size: arguments.paper.into(),
        words: Catalog::of(&arguments.language),
        large: arguments.large,
        labels: arguments.labels.as_deref().and_then(LabelSheet::of),
        start_cell: arguments.start_cell,
        address: arguments.address.clone(),
        level: arguments.level.as_ref().and_then(level),
        period: arguments.period.clone(),
    }
}
