//! What happens in a period, minute by minute, in the teacher's words.

use super::super::clock::{Hours, minute};
use super::super::hour::Hour;
use super::run_sheet::group_name;
use barm_documents::sheet::Step;
use barm_domain::amount::show::both_degrees;
use barm_domain::outlook::Entry;
use barm_domain::plan::{Period, Plan};
use barm_domain::prep::{Hands, Prep};
use barm_domain::schedule::Schedule;

/// Share of the time for mixing after which dry things are measured out: before it, goggles and who
/// does what (common practice, no source).
const ROLES: f64 = 0.3;

/// A rise that an eye tells from nothing across a bench (mm), the same as for the call to the
/// whole class.
const SEEN_MM: f64 = 3.0;

/// The period that is told.
pub(super) struct Told<'a> {
    /// The plan.
    pub(super) plan: &'a Plan,
    /// One of its periods.
    pub(super) period: &'a Period,
    /// Its starts and planned minutes.
    pub(super) schedule: &'a Schedule,
    /// The minutes that matter in it.
    pub(super) hour: Hour,
    /// How times are written.
    pub(super) hours: Hours,
}

/// A step before its times are written.
struct At {
    minute: f64,
    what: String,
    loud: String,
    who: &'static str,
}

/// Every step of a period in the order of time.
pub(super) fn steps(told: &Told<'_>, prep: &Prep, own: &[&Entry]) -> Vec<Step> {
    let mut all = Vec::new();
    setting_up(told, prep, &mut all);
    reading(told, own, &mut all);
    clearing(told, &mut all);
    // What falls on one minute keeps the order in which it was told.
    all.sort_by(|a, b| a.minute.total_cmp(&b.minute));
    let written = |step: At| Step {
        clock: told.hours.at_minute(told.period.start, step.minute),
        minute: minute(step.minute),
        what: step.what,
        loud: step.loud,
        who: step.who.to_owned(),
    };
    all.into_iter().map(written).collect()
}

fn step(minute: f64, what: impl Into<String>, who: &'static str) -> At {
    At { minute: minute.max(0.0), what: what.into(), loud: String::new(), who }
}

fn setting_up(told: &Told<'_>, prep: &Prep, all: &mut Vec<At>) {
    let (plan, period) = (told.plan, told.period);
    let wet = told.hour.water;
    let say = "Bell. Who mixes, who reads, who writes? Guesses onto the sheet.";
    let loud = "Goggles on.".to_owned();
    all.push(At { loud, ..step(0.0, say, "all") });
    all.push(step((ROLES * wet).floor(), dry(plan), "groups"));
    let ready = prep.periods.iter().find(|ready| ready.period == period.name);
    let jugs = ready.map(|ready| ready.jugs.as_slice()).unwrap_or_default();
    if !jugs.is_empty() {
        let degrees: Vec<String> =
            jugs.iter().map(|jug| both_degrees(jug.poured_celsius)).collect();
        let word = if jugs.len() == 1 { "Jug" } else { "Jugs" };
        let what =
            format!("{word} at {}? Warmer: wait. Cooler: top up with hot.", degrees.join(", "));
        all.push(step(wet - 1.0, what, "you"));
    }
    let by_teacher = jugs.iter().any(|jug| jug.hands != Hands::Students);
    let pours = if by_teacher { "You pour the hot. " } else { "" };
    let what = format!("{pours}Water in, air out, zip, card on. {}.", order(told));
    all.push(step(wet, what, "groups"));
    for top_up in ready.into_iter().flat_map(|ready| &ready.jugs).filter_map(|jug| jug.top_up) {
        let after = (f64::from(seconds(top_up.at) - seconds(period.start)) / 60.0).round();
        let water = if top_up.hot { "hot" } else { "cold" };
        all.push(step(
            after,
            format!("Top the jug up with {} of {water} water.", top_up.adds),
            "you",
        ));
    }
}

/// Who begins, and how the others follow.
fn order(told: &Told<'_>) -> String {
    let (starts, hour) = (&told.schedule.starts, told.hour);
    let Some((first, _)) = starts.first() else { return "Group by group".to_owned() };
    if starts.len() > 1 && hour.waves == 1 {
        return "All benches at once".to_owned();
    }
    if hour.at_once > 1 {
        return format!("{} benches at a time, every ½ min, as timed below", hour.at_once);
    }
    let name = group_name(told.plan, told.period, *first);
    let firsts =
        if *first == 0 { "Your bench first".to_owned() } else { format!("Group {name} first") };
    let waves = if starts.len() > 1 { ", then a group every ½ min" } else { "" };
    format!("{firsts}{waves}")
}

/// What goes in dry, as the plan has it.
fn dry(plan: &Plan) -> &'static str {
    let enzyme = plan.treatments().any(|(_, t)| plan.recipe(t).enzyme.is_some());
    if enzyme {
        "Labels on. Yeast and food into bags. Enzyme shaken, drops counted."
    } else {
        "Labels on. Yeast and food into bags."
    }
}

fn seconds(time: jiff::civil::Time) -> i32 {
    3600 * i32::from(time.hour()) + 60 * i32::from(time.minute()) + i32::from(time.second())
}

fn reading(told: &Told<'_>, own: &[&Entry], all: &mut Vec<At>) {
    let (plan, period, schedule, hour) = (told.plan, told.period, told.schedule, told.hour);
    let Some(end) = schedule.waves().pop() else { return };
    let (first, last) = (hour.first_zero, hour.last_zero);
    let loud = latest(told);
    if last > first {
        all.push(step(first, "First zero reading.", "groups"));
        let names = end.groups.iter().map(|group| group_name(plan, period, *group));
        let names: Vec<String> = names.collect();
        let word = if names.len() == 1 { "group" } else { "groups" };
        let what = format!("Last zero, {word} {}.", names.join(", "));
        all.push(At { loud, ..step(last, what, "you") });
    } else {
        all.push(At { loud, ..step(first, "Zero readings.", "groups") });
    }
    if schedule.last == 0 {
        return;
    }
    if let Some(look) = look_round(schedule, own) {
        let what = format!(
            "Minute {look} for all: any card up {SEEN_MM:.0} mm? If none: jug first, then yeast."
        );
        all.push(step(last + f64::from(look), what, "you"));
    }
    if last > first {
        all.push(step(hour.first_last, "Last readings begin.", "groups"));
        if hour.last_read <= hour.bell {
            all.push(step(hour.last_read, "Last reading of the last group.", "groups"));
        }
    } else {
        all.push(step(hour.first_last, "Last reading.", "groups"));
    }
}

/// From when on it is too late to begin a bag, or what becomes of those who do.
fn latest(told: &Told<'_>) -> String {
    let clock = |minute: f64| told.hours.at_minute(told.period.start, minute);
    let (hour, length) = (told.hour, f64::from(told.schedule.last));
    let (clearing, bell) = (hour.open - length, hour.bell - length);
    if length == 0.0 {
        String::new()
    } else if hour.last_zero <= clearing {
        format!("No new bag after {}: no time to read it to the end.", clock(clearing))
    } else if hour.last_zero <= bell {
        format!("Who starts after {} still reads when others open.", clock(clearing))
    } else {
        format!("Who starts after {} misses the last reading.", clock(bell))
    }
}

/// The first planned minute at which the best treatment has risen enough to be seen; none if that
/// is the last reading or later.
fn look_round(hour: &Schedule, own: &[&Entry]) -> Option<u32> {
    let seen = |minute: &&u32| {
        let rise = |entry: &&Entry| entry.rise_mm.median.get(**minute as usize).copied();
        own.iter().filter_map(rise).any(|rise| rise >= SEEN_MM)
    };
    hour.minutes.iter().find(seen).copied().filter(|minute| *minute < hour.last)
}

fn clearing(told: &Told<'_>, all: &mut Vec<At>) {
    let (plan, period, hour) = (told.plan, told.period, told.hour);
    let bags = plan.bags.iter().filter(|bag| bag.period == period.name).count();
    let meters = plan.equipment.meters.is_some_and(|count| count > 0);
    let meter = if meters { " Meters off." } else { "" };
    let what = if hour.open < hour.last_read {
        format!("Open finished bags only, over the tub.{meter}")
    } else {
        format!("Open all bags over the tub.{meter}")
    };
    let loud = "Goggles on, faces away.".to_owned();
    all.push(At { loud, ..step(hour.open, what, "all") });
    let count = if bags == 1 {
        "1 bag and its card".to_owned()
    } else {
        format!("{bags} bags and their cards")
    };
    let what = format!("Empty, wipe, count {count} back. Wash hands.");
    all.push(step(hour.clean, what, "groups"));
    let sheets =
        format!("Bell. Sheets into the folder of period {}. Trays swapped.", period.name);
    all.push(step(hour.bell, sheets, "you"));
}
