//! A schedule for a calendar program.

use super::Planned;
use super::says::{counted, unfit_says, who};
use crate::desk::paper::plan_mark;
use barm_documents::calendar::{Calendar, Event, Moment, ics};
use barm_domain::plan::Plan;
use barm_domain::schedule::{RUN_MIN, Task, Turn};
use jiff::civil::DateTime;
use jiff::{SignedDuration, Timestamp};

/// The schedules as an `.ics` file: each wave's zero reading, each round of readings, the meter, opening
/// and emptying. What was done before a stop is left out.
pub(crate) fn schedule_ics(plan: &Plan, planned: &[Planned<'_>], made: Timestamp) -> Vec<u8> {
    let events = planned.iter().flat_map(events).collect();
    ics(&Calendar { title: plan.title.clone(), made, events })
}

fn events(of: &Planned<'_>) -> Vec<Event> {
    let course = &of.course;
    let mut all = Vec::new();
    let mut rounds: Vec<(Task, f64, Vec<&Turn>)> = Vec::new();
    let mut runs: Vec<&Turn> = Vec::new();
    for turn in course.turns.iter().filter(|turn| !turn.done) {
        if matches!(turn.task, Task::Meter { .. }) {
            runs.push(turn);
            continue;
        }
        let alike = |(task, at, _): &&mut (Task, f64, Vec<&Turn>)| {
            *task == turn.task && (*at - turn.at_min).abs() < 1e-6
        };
        match rounds.iter_mut().find(alike) {
            Some((_, _, own)) => own.push(turn),
            None => rounds.push((turn.task, turn.at_min, vec![turn])),
        }
    }
    for (task, at, own) in rounds {
        let groups = who(of, own.iter().map(|turn| turn.group));
        let (name, title) = match task {
            Task::Reading { planned } => {
                (format!("read-{planned}"), format!("Read, minute {planned}: {groups}"))
            }
            _ => ("zero".to_owned(), format!("Seal, zero reading: {groups}")),
        };
        // The first group of a round tells it from the other waves of that minute.
        let key = format!("{name}-{}", own.first().map_or(0, |turn| turn.group));
        // A calendar shows nothing shorter than a minute.
        all.push(event(of, &key, &title, counted(own.len(), "bag", "bags"), (at, at + 1.0)));
    }
    if let (Some(first), Some(last)) = (runs.first(), runs.last()) {
        let line = |run: &&Turn| match run.task {
            Task::Meter { meter } => {
                format!("{} {}: meter {meter}", super::says::clock(of, run.at_min), run.bag)
            }
            _ => run.bag.clone(),
        };
        let lines: Vec<String> = runs.iter().map(line).collect();
        let title = format!("Meter: {}", counted(runs.len(), "bag", "bags"));
        let span = (first.at_min, last.at_min + RUN_MIN);
        all.push(event(of, "meter", &title, lines.join("\n"), span));
    }
    let (open, clean) = (course.hour.clearing_min(), course.hour.cleaning_min());
    let unfit = unfit_says(of).join("\n");
    all.push(event(of, "open", "Open the bags", unfit, (open, clean)));
    let title = "Empty, wipe, wash hands";
    all.push(event(of, "clean", title, String::new(), (clean, course.bell_min)));
    // What lasts no time is no event.
    all.into_iter().flatten().collect()
}

fn event(
    of: &Planned<'_>,
    key: &str,
    title: &str,
    details: String,
    (from_min, to_min): (f64, f64),
) -> Option<Event> {
    let day = of.plan.day(&of.period.day)?;
    let at = |minute: f64| -> DateTime {
        let seconds = (60.0 * minute).clamp(0.0, 172_800.0).round() as i64;
        let bell = day.date.to_datetime(of.period.start);
        bell.saturating_add(SignedDuration::from_secs(seconds))
    };
    let (from, to) = (at(from_min), at(to_min.min(of.course.bell_min)));
    let place = of.plan.periods.iter().position(|one| one.name == of.period.name)?;
    let mark = plan_mark(of.plan);
    let year = day.date.year();
    (to > from).then(|| Event {
        key: format!("schedule-{place}-{key}-{year}-{mark:016x}@barm.invalid"),
        title: format!("{title} (period {})", of.period.name),
        details,
        when: Moment::Span { from, to, zone: day.zone.clone() },
    })
}
