//! `barm take`.

use super::failure::Failure;
use super::page;
use crate::desk::shared::take;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Read a colleague's data package, and turn it into a plan with readings
///
/// Without --to, only what is in it is shown. With it, `barm analyze` reads what is written. A
/// package that is newer, damaged or made to do harm is refused with a reason, and nothing is
/// written.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The package: a zip, or a folder in which one was unpacked
    #[arg(value_name = "PACKAGE")]
    package: PathBuf,
    /// Folder to write plan.toml and readings.csv into; nothing there is overwritten
    #[arg(long, value_name = "DIR")]
    to: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    // A day that stands for the one that nobody told.
    let today = Timestamp::now().to_zoned_datetime(TimeZone::UTC).date();
    let (taken, files) = take(&arguments.package, arguments.to.as_deref(), today)?;
    let (opened, own) = (&taken.package.opened, &taken.investigation);
    page::title(out, &taken.package.name())?;
    let licence = opened.licence.map_or("none that is known here", |licence| licence.id());
    let mut about = vec![format!("License: {licence}.")];
    about.extend(opened.grade.map(|grade| format!("Grade {grade}.")));
    if opened.made_up {
        about.push("It says that no class made these bags.".to_owned());
    }
    page::paragraph(out, 0, &about.join(" "))?;
    page::part(out, "Treatments")?;
    let rows = taken
        .treatments()
        .into_iter()
        .map(|one| vec![one.name, one.bags.to_string(), one.beside.unwrap_or_default()]);
    page::rows(out, &["", "bags", "beside"], &[1], rows.collect::<Vec<_>>())?;
    let (periods, heights) = (own.plan.periods.len(), own.readings.len());
    let word = if periods == 1 { "period" } else { "periods" };
    page::paragraph(out, 0, &format!("{heights} heights of {periods} {word}."))?;
    if !own.left_out.is_empty() {
        page::part(out, "Left out, and why")?;
    }
    for one in &own.left_out {
        let bags = if one.bags == 1 { "bag" } else { "bags" };
        let says = format!("{} ({} {bags}) {}.", one.treatment, one.bags, one.why);
        page::paragraph(out, 4, &says)?;
    }
    if taken.thinned > 0 {
        let says = format!(
            "{} pushes of thinned gas at the breath meter are left out: readings have no column for it.",
            taken.thinned
        );
        page::paragraph(out, 0, &says)?;
    }
    writeln!(out)?;
    let [plan, readings] = files.as_slice() else {
        page::paragraph(
            out,
            0,
            "Nothing was written. Name a folder with --to to go on with it.",
        )?;
        return Ok(ExitCode::SUCCESS);
    };
    writeln!(out, "{}", plan.display())?;
    writeln!(out, "{}", readings.display())?;
    let says = "A package tells no dates, times of day, names, numbers of students, and no foods that only a \
                label told: the plan has the day of today, periods that begin at 8, three students a \
                group, and the code of each treatment before what is in it.";
    page::paragraph(out, 0, says)?;
    let next = format!("barm analyze {} {}", plan.display(), readings.display());
    writeln!(out, "Next: {next}")?;
    Ok(ExitCode::SUCCESS)
}
