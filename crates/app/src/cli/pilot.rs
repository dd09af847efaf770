//! `barm pilot`.

use super::failure::Failure;
use super::{FAULTY, page, progress};
use crate::desk::pilot::{reason, recipe, tables, tools};
use crate::desk::shared::lots_say;
use crate::desk::{self, Kept, Lesson, OpenPlan, Pilot};
use crate::json;
use barm_domain::check::LOCAL_RULES;
use jiff::Timestamp;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Try this yeast, these bags and this meter before the day
///
/// Without readings, says what to do in 40 minutes. With readings, of any part of it, works out what
/// they teach and keeps it beside the plan, in PLAN.pilot.toml; every forecast goes by it from then on.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// What was read in the pilot (shape in docs/pilot.md)
    #[arg(value_name = "READINGS")]
    readings: Option<PathBuf>,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Also write the sheet to fill in, or what was learned, as a PDF to this file
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// Also write an empty file of readings to type into
    #[arg(long, value_name = "FILE", conflicts_with = "readings")]
    blank: Option<PathBuf>,
    /// Show what the readings teach, and keep nothing
    #[arg(long, requires = "readings")]
    dry_run: bool,
    /// Paper
    #[arg(long, value_enum, default_value = "letter")]
    paper: page::PaperSize,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    for (file, usual) in [(&arguments.pdf, "pilot.pdf"), (&arguments.blank, "pilot.csv")] {
        if let Some(file) = file {
            desk::must_be_free(file, usual)?;
        }
    }
    let open = desk::open_plan(&arguments.plan)?;
    match &arguments.readings {
        None => protocol(arguments, &open, out),
        Some(file) => {
            let line = progress::Line::new();
            let now = Timestamp::now();
            let lesson = desk::learn_pilot(&open, file, !arguments.dry_run, now, &line)?;
            drop(line);
            learned(arguments, &open, &lesson, out)
        }
    }
}

/// What to do.
fn protocol(
    arguments: &Arguments,
    open: &OpenPlan,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    let plan = &open.plan;
    let pilot = desk::pilot(plan)?;
    if let Some(file) = &arguments.pdf {
        desk::write_new(file, &desk::pilot_pdf(plan, &pilot, arguments.paper.into())?)?;
    }
    if let Some(file) = &arguments.blank {
        desk::write_new(file, desk::blank_readings(&pilot).as_bytes())?;
    }
    if arguments.json {
        json::write(out, &json::protocol(&pilot, &plan.known))?;
        return Ok(ExitCode::SUCCESS);
    }
    page::title(out, &format!("{}: pilot", plan.title))?;
    page::paragraph(
        out,
        0,
        "40 minutes of one adult, before the first lesson. Any part may be left out.",
    )?;
    if let Some(says) = plan.known.says() {
        page::paragraph(out, 0, &says)?;
    }
    page::part(out, "Lay out")?;
    for tool in tools(plan, &pilot) {
        page::paragraph(out, 2, &format!("· {tool}"))?;
    }
    page::part(out, "Minute by minute")?;
    let steps = pilot.steps.iter();
    let steps = steps.map(|step| vec![step.minute.to_string(), step.says.clone()]);
    page::rows(out, &["min", ""], &[0], steps.collect::<Vec<_>>())?;
    if !pilot.protocol.bags.is_empty() {
        page::part(out, "Bags with yeast")?;
        let bags = pilot.protocol.bags.iter().map(|bag| {
            let contents = recipe(plan, bag).join("; ");
            vec![bag.letter.clone(), reason(&bag.role).to_owned(), contents]
        });
        page::rows(out, &["", "tells", "what goes in"], &[], bags.collect::<Vec<_>>())?;
    }
    for table in tables(&pilot.protocol) {
        page::part(out, &table.name)?;
        page::paragraph(out, 0, &table.how)?;
        page::paragraph(out, 0, &format!("Read at: {}.", table.rows.join(", ")))?;
    }
    cautions(out, &pilot)?;
    writeln!(out)?;
    page::paragraph(
        out,
        0,
        "Type what was read into a file (--blank writes an empty one; docs/pilot.md says how), then \
         give it to this command.",
    )?;
    if arguments.pdf.is_some() {
        page::unprinted(out, plan)?;
    }
    Ok(ExitCode::SUCCESS)
}

fn cautions(out: &mut impl Write, pilot: &Pilot) -> Result<(), Failure> {
    page::part(out, &format!("Cautions. {LOCAL_RULES}"))?;
    for one in &pilot.cautions {
        let fix = barm_domain::check::without_local_rules(&one.fix);
        page::paragraph(out, 4, &format!("{} {} {fix}", one.code, one.message))?;
    }
    Ok(())
}

/// What was learned.
fn learned(
    arguments: &Arguments,
    open: &OpenPlan,
    lesson: &Lesson,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    let plan = &open.plan;
    if let Some(file) = &arguments.pdf {
        let pdf = desk::pilot_report_pdf(plan, lesson, arguments.paper.into())?;
        desk::write_new(file, &pdf)?;
    }
    let ended = if matches!(lesson.kept, Kept::Yours(_)) {
        ExitCode::from(FAULTY)
    } else {
        ExitCode::SUCCESS
    };
    if arguments.json {
        json::write(out, &json::lesson(lesson))?;
        return Ok(ended);
    }
    page::title(out, &format!("{}: what the pilot taught", plan.title))?;
    page::paragraph(out, 0, &desk::summary(lesson))?;
    if !lesson.taught.changes.is_empty() {
        page::part(out, "Before (dots) and now (bar and figures); 8 in 10 lie within")?;
        page::chart(out, &desk::changes_chart(page::terminal(), lesson))?;
    }
    if let Some(chart) = desk::treatments_chart(page::terminal(), lesson) {
        page::part(out, "Rise of the plan’s bags at the last reading")?;
        page::chart(out, &chart)?;
    }
    if !lesson.taught.unmoved.is_empty() {
        writeln!(out)?;
        let count = lesson.taught.unmoved.len();
        let says = format!(
            "{count} other numbers of the bag model could not be told from these bags and stay as they \
             were; --json and --pdf name them."
        );
        page::paragraph(out, 0, &says)?;
    }
    for says in lesson.notes.iter().cloned().chain(lesson.warnings()) {
        page::paragraph(out, 0, &says)?;
    }
    let aged = lots_say(&lesson.taught.lots);
    if !aged.is_empty() {
        page::part(out, "Lots that were measured on several days")?;
    }
    for says in aged {
        page::paragraph(out, 2, &says)?;
    }
    writeln!(out)?;
    page::paragraph(out, 0, &kept(lesson))?;
    Ok(ended)
}

fn kept(lesson: &Lesson) -> String {
    match &lesson.kept {
        Kept::Written(path) => {
            format!("Kept in {}; every forecast goes by it.", path.display())
        }
        Kept::AlreadyThere(path) => {
            format!("{} holds just this already; nothing was counted twice.", path.display())
        }
        Kept::Yours(path) => format!(
            "Not kept: {} was changed by hand and was left alone. Move it away and run this again, or go \
             on by hand.",
            path.display()
        ),
        Kept::NotAsked => "Nothing was kept.".to_owned(),
    }
}
