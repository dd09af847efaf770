//! A schedule in the teacher's words.

use super::Planned;
use barm_domain::schedule::{Advice, Change, Pouring, Task, Turn, Why};
use std::collections::BTreeMap;

/// A line of a period's schedule.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Step {
    /// When (min after the bell).
    pub(crate) minute: f64,
    /// By the clock.
    pub(crate) clock: String,
    /// Who.
    pub(crate) who: String,
    /// What.
    pub(crate) what: String,
}

/// Every step of a period in the order of time; what is done with several bags at once is one step.
pub(crate) fn steps(of: &Planned<'_>) -> Vec<Step> {
    let course = &of.course;
    let mut all: Vec<(f64, String, String)> = Vec::new();
    let mut add =
        |minute: f64, who: &str, what: String| all.push((minute, who.to_owned(), what));
    add(0.0, "all", "bell: roles, goggles, dry things in".to_owned());
    if let Some((from, length)) = of.stop {
        add(from, "all", format!("out of the room for {} min", short(length)));
    }
    for (minute, who, what) in rounds(of) {
        add(minute, &who, what);
    }
    let (open, clean) = (course.hour.clearing_min(), course.hour.cleaning_min());
    add(open, "all", "open the bags that are done with".to_owned());
    add(clean, "all", "empty, wipe, wash hands".to_owned());
    add(course.bell_min, "all", "bell".to_owned());
    // What falls on one minute keeps the order in which it was told.
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let step = |(minute, who, what): (f64, String, String)| Step {
        minute,
        clock: clock(of, minute),
        who,
        what,
    };
    all.into_iter().map(step).collect()
}

/// Turns that begin together and are alike, in the order of time.
fn rounds(of: &Planned<'_>) -> Vec<(f64, String, String)> {
    let mut rounds: Vec<(f64, Task, Vec<&Turn>)> = Vec::new();
    for turn in &of.course.turns {
        let alike = |(at, task, _): &&mut (f64, Task, Vec<&Turn>)| {
            (*at - turn.at_min).abs() < 1e-6 && *task == turn.task
        };
        match rounds.iter_mut().find(alike) {
            Some((_, _, own)) => own.push(turn),
            None => rounds.push((turn.at_min, turn.task, vec![turn])),
        }
    }
    let says = |(at, task, own): (f64, Task, Vec<&Turn>)| {
        let bags = counted(own.len(), "bag", "bags");
        let done = if own.iter().all(|turn| turn.done) { "; done" } else { "" };
        let what = match task {
            Task::Zero => format!("seal, card on, zero reading: {bags}{done}"),
            Task::Reading { planned } => format!("reading at minute {planned}: {bags}{done}"),
            Task::Meter { meter } => {
                let codes: Vec<&str> = own.iter().map(|turn| turn.bag.as_str()).collect();
                format!("meter {meter}: {}{done}", codes.join(", "))
            }
        };
        (at, who(of, own.iter().map(|turn| turn.group)), what)
    };
    rounds.into_iter().map(says).collect()
}

/// Groups by their own words.
pub(super) fn who(of: &Planned<'_>, groups: impl Iterator<Item = u32>) -> String {
    let mut numbers: Vec<u32> = groups.collect();
    numbers.sort_unstable();
    numbers.dedup();
    let names: Vec<String> = numbers.into_iter().map(|group| name(of, group)).collect();
    names.join(", ")
}

fn name(of: &Planned<'_>, group: u32) -> String {
    if group == 0 {
        return "you".to_owned();
    }
    let settings = of.plan.group_settings.iter();
    let own = settings.filter(|set| set.period == of.period.name && set.group == group);
    own.filter_map(|set| set.label.clone()).next().unwrap_or_else(|| group.to_string())
}

/// Who pours, and how many benches at once.
pub(crate) fn pours_says(of: &Planned<'_>) -> String {
    let waves = &of.course.waves;
    let most = waves.iter().map(|wave| wave.groups.len()).max().unwrap_or(0);
    match of.course.pouring {
        Pouring::Teacher => {
            "You pour, one bench after the other: the jug is too hot for students.".to_owned()
        }
        Pouring::Groups if most > 1 => format!(
            "Groups pour; up to {most} benches at once, so have that many jugs or cups of warm \
             water ready."
        ),
        Pouring::Groups => "Groups pour, one after the other.".to_owned(),
    }
}

/// What does not fit, a line for what is alike.
pub(crate) fn unfit_says(of: &Planned<'_>) -> Vec<String> {
    let mut alike: BTreeMap<(Why, Task), Vec<(&str, u32)>> = BTreeMap::new();
    for one in &of.course.unfit {
        alike.entry((one.why, one.task)).or_default().push((&one.bag, one.group));
    }
    let all = of.plan.bags.iter().filter(|bag| bag.period == of.period.name).count();
    let says = |((why, task), own): ((Why, Task), Vec<(&str, u32)>)| {
        let what = match task {
            Task::Zero => "Not sealed".to_owned(),
            Task::Reading { planned } => format!("No reading at minute {planned}"),
            Task::Meter { .. } => "Not at the meter".to_owned(),
        };
        let whose = if own.len() == all {
            "all bags".to_owned()
        } else {
            let groups = who(of, own.iter().map(|(_, group)| *group));
            format!("{} of {} ({groups})", counted(own.len(), "bag", "bags"), all)
        };
        format!("{what}: {whose}; {}.", why_says(why))
    };
    alike.into_iter().map(says).collect()
}

const fn why_says(why: Why) -> &'static str {
    match why {
        Why::Clearing => "it would fall after clearing has begun",
        Why::ShortDay => "the period is too short",
        Why::Stopped => "the stop moved it past the start of clearing",
        Why::NotTaken => "it was due before the stop, and nobody took it",
        Why::NoMeter => "no meter is free after its last reading",
        Why::NoGroup => "the period has no such group",
    }
}

/// What to change, and what is still lost then.
pub(crate) fn advice_says(advice: &Advice) -> String {
    let change = match advice.change {
        Change::GroupsPour => {
            "Take cooler water, so that groups can pour by themselves".to_owned()
        }
        Change::MixFaster(minutes) => {
            format!("Take the first zero reading {} earlier", counted_min(minutes))
        }
        Change::LastReading(minute) => {
            format!("Stop at minute {minute} for all, so that all bags can be compared there")
        }
        Change::Meters(meters) => {
            format!("Have {} in all", counted(meters as usize, "meter", "meters"))
        }
        Change::MeterOnly(0) => "Leave the meter out".to_owned(),
        Change::MeterOnly(bags) => {
            format!("Bring {} to the meter, as above", counted(bags, "bag", "bags"))
        }
    };
    let readings = counted(advice.readings, "reading", "readings");
    let runs = counted(advice.runs, "run", "runs");
    let are = if advice.readings + advice.runs == 1 { "is" } else { "are" };
    let lost = match (advice.readings, advice.runs) {
        (0, 0) => "then everything fits".to_owned(),
        (_, 0) => format!("then {readings} {are} lost"),
        (0, _) => format!("then {runs} at the meter {are} lost"),
        _ => format!("then {readings} and {runs} at the meter {are} lost"),
    };
    format!("{change}: {lost}.")
}

/// How the day differs from the plan; empty if it does not.
pub(crate) fn out_says(of: &Planned<'_>) -> String {
    let mut says = Vec::new();
    if of.course.bell_min < of.period.length_min {
        let (short_min, long) = (short(of.course.bell_min), short(of.period.length_min));
        says.push(format!("A short day: {short_min} min in place of {long}."));
    }
    if let Some((from, length)) = of.stop {
        says.push(format!(
            "Out of the room from {} for {} min. The bags' clocks stand still meanwhile; readings \
             keep their planned minute.",
            clock(of, from),
            short(length)
        ));
    }
    says.join(" ")
}

/// A time of day, with seconds where it is not on a minute.
pub(super) fn clock(of: &Planned<'_>, minute: f64) -> String {
    let time = of.at(minute);
    let form = if time.second() == 0 { "%H:%M" } else { "%H:%M:%S" };
    time.strftime(form).to_string()
}

pub(super) fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

fn counted_min(minutes: u32) -> String {
    counted(minutes as usize, "minute", "minutes")
}

fn short(minutes: f64) -> String {
    format!("{}", (minutes * 10.0).round() / 10.0)
}
