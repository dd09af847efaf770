//! `barm new`.

use super::failure::Failure;
use super::page;
use crate::desk;
use barm_domain::plan::Place;
use barm_domain::starter::Answers;
use jiff::civil::{Date, Time};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Write a new plan, with notes, to be edited by hand
///
/// The plan can be checked and forecast at once; what is not answered here is a default.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// File to write; it must not be there yet
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Title of the investigation
    #[arg(long, default_value = "Which food feeds yeast best?")]
    title: String,
    /// Day, such as 2027-03-09
    #[arg(long, value_parser = date)]
    date: Date,
    /// Time zone, such as America/Denver
    #[arg(long, default_value = "America/New_York")]
    zone: String,
    /// Altitude, such as "1400 m" or "4600 ft"
    #[arg(long, default_value = "100 m", value_parser = altitude)]
    altitude: f64,
    /// Start of the first period
    #[arg(long, default_value = "08:10", value_parser = clock)]
    start: Time,
    /// Length of a period, such as "45 min"
    #[arg(long, value_name = "TIME", default_value = "45 min", value_parser = minutes)]
    length: f64,
    /// Number of periods
    #[arg(long, default_value_t = 4)]
    periods: u32,
    /// Groups in a period
    #[arg(long, default_value_t = 8)]
    groups: u32,
    /// Students in a period
    #[arg(long, default_value_t = 24)]
    students: u32,
}

fn date(text: &str) -> Result<Date, String> {
    text.trim().parse().map_err(|_| match month_first(text) {
        Some(day) => format!(
            "a date is written year-month-day; if you mean {}, write {day}",
            day.strftime("%B %-d, %Y")
        ),
        None => "this is not a date that exists; write year-month-day, such as 2027-03-09"
            .to_owned(),
    })
}

/// A date as it is mostly written in the US, such as 03/09/2027 for 9 March.
fn month_first(text: &str) -> Option<Date> {
    let mut parts = text.trim().split(['/', '.', '-']);
    let month = parts.next()?.parse().ok()?;
    let day = parts.next()?.parse().ok()?;
    let year = parts.next().filter(|year| year.len() == 4)?.parse().ok()?;
    parts.next().is_none().then(|| Date::new(year, month, day).ok()).flatten()
}

fn clock(text: &str) -> Result<Time, String> {
    text.parse().map_err(|_| format!("“{text}” is not a time; write it like 08:10"))
}

fn altitude(text: &str) -> Result<f64, String> {
    barm_domain::amount::altitude_meters(text).map_err(|error| error.to_string())
}

fn minutes(text: &str) -> Result<f64, String> {
    barm_domain::amount::minutes(text).map_err(|error| error.to_string())
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    desk::must_be_free(&arguments.plan, "plan.toml")?;
    let text = desk::new_plan(&Answers {
        title: arguments.title.clone(),
        date: arguments.date,
        zone: arguments.zone.clone(),
        place: Place::Altitude(arguments.altitude),
        first_start: arguments.start,
        length_min: arguments.length,
        periods: arguments.periods,
        groups: arguments.groups,
        students: arguments.students,
    })?;
    desk::write_new(&arguments.plan, text.as_bytes())?;
    let file = arguments.plan.display();
    page::paragraph(out, 2, &format!("Wrote {file}. Edit it in any text editor; then:"))?;
    for command in ["check", "predict", "prep"] {
        writeln!(out, "  barm {command} {file}")?;
    }
    writeln!(out, "After a change of periods, groups or treatments: barm bags {file}")?;
    Ok(ExitCode::SUCCESS)
}
