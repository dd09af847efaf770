//! `barm analyze`.

use super::failure::Failure;
use super::{FAULTY, page, progress};
use crate::desk::{self, Analysis, METERED_HEADS, MeteredRow, OpenPlan};
use crate::json;
use std::collections::BTreeMap;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Turn a class's readings into gas, ethanol and an honest answer to each question
///
/// READINGS is a CSV file as typed from paper or exported from a spreadsheet. Every row is either
/// taken or listed with its reason.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// The readings
    #[arg(value_name = "READINGS")]
    readings: PathBuf,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Also say what the day teaches of the yeast, its waking, the enzymes, the cooling and the cards,
    /// and which bags to look at
    #[arg(long)]
    day: bool,
    /// Also write the report as a PDF to this file
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// Paper of the report
    #[arg(long, value_enum, default_value = "letter")]
    paper: page::PaperSize,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(file) = &arguments.pdf {
        desk::must_be_free(file, "results.pdf")?;
    }
    let open = desk::open_plan(&arguments.plan)?;
    let line = progress::Line::new();
    let mut analysis = desk::analyze(&open, &arguments.readings, &line)?;
    if arguments.day {
        // The file does not say how warm the water was.
        analysis = analysis.with_day(&open.plan, &BTreeMap::new())?;
    }
    drop(line);
    if let Some(file) = &arguments.pdf {
        desk::write_new(
            file,
            &desk::results_pdf(&open.plan, &analysis, arguments.paper.into())?,
        )?;
    }
    if arguments.json {
        json::write(out, &json::analyzed(&analysis, desk::voice(&open.plan)))?;
    } else {
        page::title(out, &open.plan.title)?;
        page::known(out, &open.plan)?;
        if let Some(says) = &analysis.above_all {
            page::paragraph(out, 0, says)?;
        }
        if analysis.above_all.is_none() || !analysis.nothing_taken {
            answers(out, &open, &analysis)?;
            metered(out, &open, &analysis)?;
            day(out, &open, &analysis)?;
            left_out(out, &open, &analysis)?;
            page::beyond(out, &desk::beyond_says(&open.plan, &analysis.beyond))?;
        } else if !analysis.rejected.is_empty() {
            writeln!(out, "Each row with its reason: --json")?;
        }
        if let Some(file) = &arguments.pdf {
            writeln!(out)?;
            writeln!(out, "Report: {}", file.display())?;
            page::unprinted(out, &open.plan)?;
        }
    }
    let useless = analysis.result.minute.is_none();
    Ok(if useless { ExitCode::from(FAULTY) } else { ExitCode::SUCCESS })
}

/// Each question with its comparisons.
pub(super) fn answers(
    out: &mut impl Write,
    open: &OpenPlan,
    analysis: &Analysis,
) -> Result<(), Failure> {
    let voice = desk::voice(&open.plan);
    for (id, asks) in desk::questions(&open.plan) {
        let Some(answer) = analysis.result.questions.iter().find(|a| a.question == id) else {
            continue;
        };
        page::part(out, asks)?;
        page::chart(out, &desk::interval_chart(page::terminal(), open, answer))?;
        for says in answer.comparisons.iter().filter_map(|c| voice.without_set_aside(c)) {
            page::paragraph(out, 2, &says)?;
        }
        if let Some(says) = answer.crossed.as_ref().and_then(|c| voice.interaction(c)) {
            page::paragraph(out, 2, &says)?;
        }
    }
    Ok(())
}

/// What the breath meter says, beside the words that have to stand there.
fn metered(out: &mut impl Write, open: &OpenPlan, analysis: &Analysis) -> Result<(), Failure> {
    let Some(metered) = desk::metered(&open.plan, analysis.meter.as_ref()) else {
        return Ok(());
    };
    page::part(out, "Breath meter")?;
    page::paragraph(out, 0, &metered.note)?;
    for one in &metered.compared {
        page::paragraph(out, 2, &format!("{} {}", one.says, one.rests))?;
        if let Some(warning) = &one.warning {
            page::paragraph(out, 2, &format!("Careful: {warning}"))?;
        }
    }
    // What is to be known of a bag stands under the table, which has no room for it.
    let shown = METERED_HEADS.len() - 1;
    let cells =
        |bag: &MeteredRow| bag.cells()[..shown].iter().map(|&cell| cell.to_owned()).collect();
    let rows: Vec<Vec<String>> = metered.bags.iter().map(cells).collect();
    page::rows(out, &METERED_HEADS[..shown], &[2, 3], rows)?;
    for bag in metered.bags.iter().filter(|bag| !bag.remark.is_empty()) {
        page::paragraph(out, 2, &format!("{}: {}.", bag.bag, bag.remark))?;
    }
    for says in &metered.not_used {
        page::paragraph(out, 2, &format!("Not used: {says}."))?;
    }
    Ok(())
}

/// What the day teaches, and bags to look at.
fn day(out: &mut impl Write, open: &OpenPlan, analysis: &Analysis) -> Result<(), Failure> {
    let Some(taught) = &analysis.day else { return Ok(()) };
    let says = desk::day_says(&open.plan, taught);
    let (before, after) = desk::DAY_WORDS;
    page::part(
        out,
        &format!("What the day teaches: {before} (dots), {after} (bar and figures)"),
    )?;
    page::paragraph(out, 0, &says.rests)?;
    page::chart(out, &says.chart(page::terminal()))?;
    for note in says.notes() {
        page::paragraph(out, 2, note)?;
    }
    for (code, treatment, asks) in &says.look_at {
        page::paragraph(out, 4, &format!("Look at {code} ({treatment}). {asks}"))?;
    }
    Ok(())
}

/// Bags set aside, rows not taken, notes on how the file was read.
pub(super) fn left_out(
    out: &mut impl Write,
    open: &OpenPlan,
    analysis: &Analysis,
) -> Result<(), Failure> {
    page::part(out, "Left out, and why")?;
    let voice = desk::voice(&open.plan);
    let mut says: Vec<String> = Vec::new();
    for error in &analysis.outlook.failed {
        let why = desk::unforeseen(error);
        says.push(format!("no forecast: {why} Its gas and ethanol are not estimated."));
    }
    for (reason, lines) in desk::by_reason(&analysis.rejected) {
        says.push(format!("{lines}: {reason}"));
    }
    let bags = &analysis.result.bags;
    says.extend(bags.iter().filter_map(|bag| voice.set_aside(bag, &open.plan)));
    for (hint, codes) in desk::by_hint(&open.plan, bags) {
        says.push(format!("{codes}: {hint}"));
    }
    says.extend(analysis.notes.iter().cloned());
    let nothing = says.is_empty();
    for one in says {
        page::paragraph(out, 4, &one)?;
    }
    if nothing {
        writeln!(out, "Nothing was left out.")?;
    }
    Ok(())
}
