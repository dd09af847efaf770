//! `barm predict`.

use super::failure::Failure;
use super::{FAULTY, page, progress};
use crate::desk::{self, DeskError};
use crate::json;
use barm_domain::outlook::{Entry, Look};
use barm_domain::pilot::Known;
use barm_domain::plan::{CONTROLS, Plan};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Forecast what every treatment will show before the bell
///
/// The band holds 8 of 10 bags. Heights are rises above the bag's own zero reading.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Answer in JSON, minute by minute (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Leave out what pilots found, and go by what is usual
    #[arg(long)]
    prior: bool,
    /// Number of possible class days that are tried
    #[arg(long, default_value_t = Look::default().draws, value_parser = draws)]
    draws: usize,
    /// Seed; the same seed gives the same forecast on every machine
    #[arg(long, default_value_t = Look::default().seed)]
    seed: u64,
    /// Also write the forecast as a PDF to this file, for the teacher only
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// Paper of the forecast
    #[arg(long, value_enum, default_value = "letter")]
    paper: page::PaperSize,
}

fn draws(text: &str) -> Result<usize, String> {
    let draws: usize = text.parse().map_err(|_| "write a whole number".to_owned())?;
    if (16..=100_000).contains(&draws) {
        Ok(draws)
    } else {
        Err("write a number from 16 to 100000".to_owned())
    }
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(file) = &arguments.pdf {
        desk::must_be_free(file, "forecast.pdf")?;
    }
    let mut open = desk::open_plan(&arguments.plan)?;
    if arguments.prior {
        open.plan.known = Known::default();
    }
    let look = Look { draws: arguments.draws, seed: arguments.seed };
    let line = progress::Line::new();
    let outlook = desk::outlook(&open.plan, look, &line).map_err(DeskError::from)?;
    drop(line);
    let ended =
        if outlook.failed.is_empty() { ExitCode::SUCCESS } else { ExitCode::from(FAULTY) };
    if let Some(file) = &arguments.pdf {
        let pdf = desk::forecast_pdf(&open.plan, &outlook, arguments.paper.into())?;
        desk::write_new(file, &pdf)?;
    }
    if arguments.json {
        let limits = desk::held_back(&open.plan);
        let (by, voice) = (open.plan.known.says(), desk::voice(&open.plan));
        json::write(out, &json::prediction(&outlook, &limits, by, voice))?;
        return Ok(ended);
    }
    page::title(out, &open.plan.title)?;
    page::known(out, &open.plan)?;
    table(out, &open.plan, &outlook.entries)?;
    page::unforeseen(out, &outlook)?;
    page::beyond(out, &desk::beyond_says(&open.plan, &desk::beyond(&outlook.entries)))?;
    holds(out, &open.plan)?;
    writeln!(out)?;
    page::paragraph(
        out,
        0,
        &format!(
            "The band holds 8 of 10 bags; fill and venting are judged on the high side (97.5 in 100). \
             For the teacher: students should write down their own prediction first.{}",
            if open.plan.known.is_nothing() { UNMET } else { "" }
        ),
    )?;
    if arguments.pdf.is_some() {
        page::unprinted(out, &open.plan)?;
    }
    Ok(ended)
}

/// What is said as long as nothing was tried.
const UNMET: &str = " The model has not met your yeast and your bags: `barm pilot` says what to try in \
                     40 minutes, or try one bag of each food in your room before the day.";

/// One part a question.
fn table(out: &mut impl Write, plan: &Plan, entries: &[Entry]) -> Result<(), Failure> {
    for (id, asks) in desk::questions(plan) {
        let own: Vec<&Entry> = entries.iter().filter(|entry| entry.question == id).collect();
        let Some(first) = own.first() else { continue };
        page::part(out, &format!("{asks}  Rise by minute {}:", first.last_minute()))?;
        page::chart(out, &desk::forecast_chart(page::terminal(), plan, &own))?;
        writeln!(out)?;
        let shows = format!("{} mm apart", plan.readable_mm);
        page::rows(
            out,
            &["", &shows, "chance", "gas", "ethanol", "fill", "vent by"],
            &[1, 2, 3, 4, 5, 6],
            own.iter().map(|entry| row(plan, entry)).collect::<Vec<_>>(),
        )?;
    }
    Ok(())
}

/// What holds each treatment back, as far as the model tells.
fn holds(out: &mut impl Write, plan: &Plan) -> Result<(), Failure> {
    let limits = desk::held_back(plan);
    if limits.is_empty() {
        return Ok(());
    }
    page::part(out, "What holds each bag back")?;
    let lines = limits.iter();
    let lines = lines.map(|limit| vec![limit.treatment.clone(), desk::held_back_along(limit)]);
    page::rows(out, &["", ""], &[], lines.collect::<Vec<_>>())?;
    Ok(())
}

fn row(plan: &Plan, entry: &Entry) -> Vec<String> {
    let shows = match (&entry.beside, entry.readable_at_min) {
        (None, _) if entry.question == CONTROLS => String::new(),
        (None, _) => "reference".into(),
        (Some(_), Some(minute)) => format!("at {minute} min"),
        (Some(_), None) if entry.lacks_reference() => "no reference".into(),
        (Some(_), None) => "may not show".into(),
    };
    let chance = entry.chance_readable.map(|chance| format!("{:.0} %", 100.0 * chance));
    let vent = match entry.vent_by_min {
        None => "24 h".into(),
        Some(minute) if minute < 120.0 => format!("{minute:.0} min"),
        Some(minute) => format!("{:.1} h", minute / 60.0),
    };
    let beside = match &entry.beside {
        Some(beside) if desk::has_own_reference(plan, entry) => format!(" (beside {beside})"),
        _ => String::new(),
    };
    vec![
        format!("{}{beside}", entry.treatment),
        shows,
        chance.unwrap_or_default(),
        format!("{:.0} mL", entry.gas_ml.last().0),
        format!("{:.2} g", entry.ethanol_g.last().0),
        format!("{:.0} %", 100.0 * entry.peak_fill),
        vent,
    ]
}
