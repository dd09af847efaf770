//! `barm schedule`.

use super::failure::Failure;
use super::page;
use crate::desk;
use crate::desk::schedule::{
    Asked, Planned, advice_says, out_says, pours_says, schedule_ics, schedules, steps,
    unfit_says,
};
use crate::desk::start::time_of_day;
use crate::json;
use jiff::Timestamp;
use jiff::civil::Time;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// When each group seals and reads, whose turn it is at the meter, and what does not fit
///
/// Waves of starts, readings from each bag's own zero, the breath meter, clearing away: nothing
/// after the bell. On a short day, or after a fire drill, it says what is left and what is missed.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Only this period
    #[arg(long, value_name = "NAME")]
    period: Option<String>,
    /// Periods are only so many minutes long: a short day
    #[arg(long, value_name = "MINUTES", value_parser = minutes)]
    short: Option<f64>,
    /// Everybody is out of the room from this time on, such as 10:52; with --stop
    #[arg(long, value_name = "HH:MM", value_parser = clock, requires = "stop")]
    from: Option<Time>,
    /// For so many minutes, as in a fire drill; with --from
    #[arg(long, value_name = "MINUTES", value_parser = minutes, requires = "from")]
    stop: Option<f64>,
    /// Also write it for a calendar program to this file
    #[arg(long, value_name = "FILE")]
    ics: Option<PathBuf>,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
}

/// Minutes of a school day.
fn minutes(text: &str) -> Result<f64, String> {
    let bare = text.trim().parse::<f64>().ok();
    let found = bare.or_else(|| barm_domain::amount::minutes(text).ok());
    let found = found.filter(|minutes| (0.5..=600.0).contains(minutes));
    found.ok_or_else(|| "write minutes from 0.5 to 600, such as 30".to_owned())
}

fn clock(text: &str) -> Result<Time, String> {
    let time = time_of_day(text);
    time.ok_or_else(|| format!("“{text}” is not a time; write it like 10:52 or 1:20 pm"))
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(file) = &arguments.ics {
        desk::must_be_free(file, "schedule.ics")?;
    }
    let open = desk::open_plan(&arguments.plan)?;
    let asked = Asked {
        period: arguments.period.clone(),
        short_min: arguments.short,
        stop: arguments.from.zip(arguments.stop),
    };
    let planned = schedules(&open.plan, &asked)?;
    if let Some(file) = &arguments.ics {
        desk::write_new(file, &schedule_ics(&open.plan, &planned, Timestamp::now()))?;
    }
    if arguments.json {
        json::write(out, &json::scheduled(&planned))?;
        return Ok(ExitCode::SUCCESS);
    }
    page::title(out, &open.plan.title)?;
    if planned.is_empty() {
        page::paragraph(out, 0, "The plan has no period.")?;
    }
    for one in &planned {
        period(out, one)?;
    }
    if let Some(file) = &arguments.ics {
        writeln!(out)?;
        writeln!(out, "Calendar: {}", file.display())?;
    }
    Ok(ExitCode::SUCCESS)
}

fn period(out: &mut impl Write, of: &Planned<'_>) -> Result<(), Failure> {
    let from = of.period.start.strftime("%H:%M");
    let to = of.at(of.course.bell_min).strftime("%H:%M");
    page::part(out, &format!("Period {}, {from} to {to}", of.period.name))?;
    let out_of = out_says(of);
    if !out_of.is_empty() {
        page::paragraph(out, 0, &out_of)?;
    }
    if of.course.turns.is_empty() && of.course.unfit.is_empty() {
        let says = "No bag is on the list of this period. `barm bags` writes the list.";
        page::paragraph(out, 0, says)?;
        return Ok(());
    }
    page::paragraph(out, 0, &pours_says(of))?;
    let rows = steps(of).into_iter();
    let rows = rows.map(|step| vec![minute(step.minute), step.clock, step.who, step.what]);
    let rows: Vec<Vec<String>> = rows.collect();
    page::rows(out, &["min", "clock", "who", "what"], &[0, 1], rows)?;
    load(out, of)?;
    let unfit = unfit_says(of);
    if !unfit.is_empty() {
        writeln!(out)?;
        writeln!(out, "What does not fit")?;
        for line in unfit {
            page::note(out, 2, &line)?;
        }
        for advice in &of.course.advice {
            page::note(out, 2, &format!("\u{2192} {}", advice_says(advice)))?;
        }
    }
    if let Some(next) = &of.changeover {
        writeln!(out)?;
        let room = if next.is_enough() { "" } else { ": too little to swap trays and wipe" };
        let says = format!("{} min until period {}{room}.", minute(next.minutes), next.next);
        page::paragraph(out, 0, &says)?;
    }
    Ok(())
}

/// Bags that want something in each minute, as a small bar.
fn load(out: &mut impl Write, of: &Planned<'_>) -> Result<(), Failure> {
    let Some((at, most)) = of.course.load.peak() else { return Ok(()) };
    writeln!(out)?;
    let all = of.course.one_wave;
    let says = format!(
        "Bags that want something, minute by minute: at most {most}, in minute {at}; sealed all at \
         once, it would be {all}."
    );
    page::paragraph(out, 0, &says)?;
    let widest = 60_usize;
    let wide = |bags: u32| (bags as usize * widest).div_ceil((most as usize).max(widest));
    let some = of.course.load.bags.iter().enumerate().filter(|(_, bags)| **bags > 0);
    for (minute, bags) in some {
        writeln!(out, "{minute:>5}  {} {bags}", "\u{25a0}".repeat(wide(*bags)))?;
    }
    Ok(())
}

/// Minutes with seconds where they are not whole, such as `14:30`.
fn minute(minute: f64) -> String {
    let seconds = (60.0 * minute).round() as i64;
    let sign = if seconds < 0 { "-" } else { "" };
    let (whole, rest) = (seconds.abs() / 60, seconds.abs() % 60);
    if rest == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}:{rest:02}") }
}
