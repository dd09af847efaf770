//! `barm demo`.

use super::failure::Failure;
use super::rehearse::{self, Play};
use super::{analyze, page, prep, progress};
use crate::desk::{self, Demo};
use crate::system;
use barm_domain::outlook::Entry;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Do the whole job on an invented school
///
/// Writes the invented plan and readings, a prep sheet, a forecast and a report into a folder. A
/// file there that you have changed is left as it is, and used.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Folder to write into
    #[arg(long, value_name = "DIR", default_value = "barm-demo")]
    out: PathBuf,
    /// Open the invented day in the browser's pages instead: two periods are over, and the
    /// simulated groups of the third are at work, thirty times as fast as a true clock
    #[arg(long)]
    serve: bool,
    /// Port to listen on; 0 takes a free one [default: 8420, or the next that is free]
    #[arg(long, requires = "serve")]
    port: Option<u16>,
}

/// How many times as fast as a true clock the served day runs.
const SPEED: f64 = 30.0;

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if arguments.serve {
        return served(arguments, out);
    }
    let line = progress::Line::new();
    let demo = desk::demo(&arguments.out, &line)?;
    drop(line);
    let plan = &demo.open.plan;
    page::title(out, &plan.title)?;
    if plan.invented {
        writeln!(out, "An invented school: no group and no reading here is real.")?;
    }
    predicted(out, &demo)?;
    to_buy(out, &demo)?;
    analyze::answers(out, &demo.open, &demo.analysis)?;
    files(out, &demo)?;
    Ok(ExitCode::SUCCESS)
}

fn served(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let folder = arguments.out.join("record");
    // If it cannot be made, opening it says why.
    let _ = system::private_folder(&folder);
    let stage = desk::demo_stage(&folder, SPEED)?;
    writeln!(out, "An invented school: no group and no reading here is real.")?;
    let play = Play { port: arguments.port, alone: true, stays: true };
    rehearse::play(&stage, play, out)?;
    Ok(ExitCode::SUCCESS)
}

fn predicted(out: &mut impl Write, demo: &Demo) -> Result<(), Failure> {
    let plan = &demo.open.plan;
    let entries = &demo.analysis.outlook.entries;
    let mut shown: Vec<&Entry> = Vec::new();
    for entry in entries {
        if shown.iter().all(|other| other.treatment != entry.treatment) {
            shown.push(entry);
        }
    }
    let minute = entries.first().map_or(0, Entry::last_minute);
    let head = format!("Predicted: rise by minute {minute}, with the range of 8 of 10 bags");
    page::part(out, &head)?;
    page::chart(out, &desk::forecast_chart(page::terminal(), plan, &shown))?;
    page::unforeseen(out, &demo.analysis.outlook)?;
    Ok(())
}

fn to_buy(out: &mut impl Write, demo: &Demo) -> Result<(), Failure> {
    let sheet = desk::prep_sheet(&demo.open.plan, &demo.prep, &[]);
    page::part(out, "To buy and mix")?;
    let buys: Vec<String> = sheet
        .shopping
        .iter()
        .filter(|purchase| !purchase.packs.is_empty())
        .map(|purchase| format!("{} {}", purchase.item, purchase.packs))
        .collect();
    let cost = sheet.cost.as_deref().unwrap_or("no price known");
    page::paragraph(out, 2, &format!("Buy ({cost}): {}.", buys.join("; ")))?;
    for stock in &sheet.stocks {
        let says = format!("Make {} of {}, for {}.", stock.makes, stock.name, stock.serves);
        page::paragraph(out, 2, &says)?;
    }
    if let Some(water) = sheet.water.first() {
        let says = format!(
            "{}: mix {} hot and {} cold water at {}; the jug then reads {}, the bags {}.",
            prep::which(water),
            water.hot,
            water.cold,
            water.clock,
            water.jug,
            water.bag
        );
        page::paragraph(out, 2, &says)?;
    }
    Ok(())
}

fn files(out: &mut impl Write, demo: &Demo) -> Result<(), Failure> {
    page::part(out, "Files")?;
    let rows = demo.files.iter().map(|file| {
        let note = if file.kept_yours { "yours, left as it is" } else { "" };
        vec![file.path.display().to_string(), file.what.to_owned(), note.to_owned()]
    });
    page::rows(out, &["", "", ""], &[], rows.collect::<Vec<_>>())?;
    Ok(())
}
