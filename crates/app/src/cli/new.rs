//! `barm new`.

use super::failure::Failure;
use super::page;
use crate::desk::start::time_of_day;
use crate::desk::{self, DeskError};
use barm_domain::plan::{BagChoice, Place};
use barm_domain::ready::{self, Ready};
use barm_domain::starter::Answers;
use jiff::civil::{Date, Time};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Write a new plan, with notes, to be edited by hand
///
/// The plan can be checked and forecast at once; what is not answered here is a default. A ready
/// plan is a whole lesson; `barm new --ready` lists them.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// File to write; it must not be there yet
    #[arg(value_name = "PLAN", required_unless_present = "ready")]
    plan: Option<PathBuf>,
    /// Start from the ready plan of this name; without a name, list them
    #[arg(long, value_name = "NAME", num_args = 0..=1, default_missing_value = "")]
    ready: Option<String>,
    /// Title of the investigation
    #[arg(long)]
    title: Option<String>,
    /// Day, such as 2027-03-09
    #[arg(long, value_parser = date, required_unless_present = "ready")]
    date: Option<Date>,
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
    /// What is in the cupboard, for a ready plan
    #[arg(
        long,
        value_name = "FOODS",
        value_delimiter = ',',
        default_value = "white sugar, honey, white wheat flour, potato flakes, salt",
        requires = "ready"
    )]
    cupboard: Vec<String>,
    /// Bags of a ready plan: snack, sandwich, quart, gallon, or a size
    #[arg(long, default_value = "snack", value_parser = bag, requires = "ready")]
    bag: BagChoice,
    /// Water in the bags of a ready plan, as poured
    #[arg(long, value_name = "TEMPERATURE", default_value = "40 °C", value_parser = celsius, requires = "ready")]
    water: f64,
}

fn bag(text: &str) -> Result<BagChoice, String> {
    BagChoice::parse(text).map_err(|error| format!("{error}; {}", error.fix()))
}

fn celsius(text: &str) -> Result<f64, String> {
    barm_domain::amount::celsius(text).map_err(|error| error.to_string())
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
    let time = time_of_day(text);
    time.ok_or_else(|| format!("“{text}” is not a time; write it like 08:10 or 8:10 am"))
}

fn altitude(text: &str) -> Result<f64, String> {
    barm_domain::amount::altitude_meters(text).map_err(|error| error.to_string())
}

fn minutes(text: &str) -> Result<f64, String> {
    barm_domain::amount::minutes(text).map_err(|error| error.to_string())
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let ready = match arguments.ready.as_deref() {
        None => None,
        Some("") => return list(out),
        Some(name) => Some(Ready::named(name).map_err(DeskError::from)?),
    };
    let (Some(plan), Some(date)) = (&arguments.plan, arguments.date) else {
        return Err(DeskError::Unanswered.into());
    };
    desk::must_be_free(plan, "plan.toml")?;
    let title = ready.map_or("Which food feeds yeast best?", Ready::title);
    let school = Answers {
        title: arguments.title.clone().unwrap_or_else(|| title.to_owned()),
        date,
        zone: arguments.zone.clone(),
        place: Place::Altitude(arguments.altitude),
        first_start: arguments.start,
        length_min: arguments.length,
        periods: arguments.periods,
        groups: arguments.groups,
        students: arguments.students,
    };
    let text = match ready {
        None => desk::new_plan(&school)?,
        Some(ready) => desk::ready_plan(
            ready,
            &ready::Answers {
                school,
                cupboard: arguments
                    .cupboard
                    .iter()
                    .map(|food| food.trim().to_owned())
                    .collect(),
                bag: arguments.bag.clone(),
                water_celsius: arguments.water,
            },
        )?,
    };
    desk::write_new(plan, text.as_bytes())?;
    let file = plan.display();
    page::paragraph(out, 2, &format!("Wrote {file}. Edit it in any text editor; then:"))?;
    for command in ["check", "predict", "prep"] {
        writeln!(out, "  barm {command} {file}")?;
    }
    writeln!(out, "After a change of periods, groups or treatments: barm bags {file}")?;
    Ok(ExitCode::SUCCESS)
}

/// The ready plans, and how one is taken.
fn list(out: &mut impl Write) -> Result<ExitCode, Failure> {
    page::title(out, "Ready plans")?;
    for ready in Ready::ALL {
        writeln!(out)?;
        let level = ready.inquiry().word();
        let from = ready.good_from_min();
        writeln!(out, "{}  ({level}, from {from} min)", ready.name())?;
        page::paragraph(out, 4, ready.title())?;
        page::paragraph(out, 4, ready.says())?;
    }
    writeln!(out)?;
    page::paragraph(out, 2, "Six answers fit it to your school:")?;
    writeln!(
        out,
        "  barm new plan.toml --ready which-food --date 2027-03-09 --periods 4 --groups 8 \\"
    )?;
    writeln!(
        out,
        "      --cupboard \"sugar, honey, oat flour\" --bag snack --water \"40 °C\" --length \"45 min\""
    )?;
    Ok(ExitCode::SUCCESS)
}
