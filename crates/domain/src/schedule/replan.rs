//! What is left of a period after a fire drill.
//!
//! All clocks stand still while the class is out, as they do on the run page: what was not done yet moves by
//! the length of the stop, and each bag is read when its own clock shows the planned minute. (The yeast
//! does not stop; results use true minutes.) The bells stay where they are, so what then falls after the
//! start of clearing is missed. What was done stays as it was, and what nobody took is missed, never made up.
//! Groups that had not started yet are put into waves anew, in the time that is left.

use super::READ_MIN;
use super::course::{Frame, Laid, Task, Turn, Unfit, Why, turn, unfit};
use super::meter::{PUSH_S, WARM_UP_S};
use super::waves::{self, Bench, Bounds, SAME};
use std::collections::BTreeSet;

/// What the day takes away from a period.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Upset {
    /// How long the period is on a short day (min).
    pub length_min: Option<f64>,
    /// A stop in the middle.
    pub stop: Option<Stop>,
}

/// A stretch in which everybody is out of the room.
#[derive(Debug, Clone, PartialEq)]
pub struct Stop {
    /// From this minute after the bell on.
    pub from_min: f64,
    /// For so long (min).
    pub for_min: f64,
    /// What was done until then: bag and planned minute, 0 for the zero reading. `None` for everything that
    /// was planned before.
    pub done: Option<BTreeSet<(String, u32)>>,
}

/// Turns, what does not fit and who may be metered after the stop; the starts; runs that were over before.
pub(super) type After<'a> = (Laid<'a>, Vec<(u32, f64)>, Vec<Turn>);

pub(super) fn after<'a>(
    frame: &Frame<'a>,
    before: &Laid<'a>,
    runs: &[Turn],
    stop: &Stop,
) -> After<'a> {
    let from = stop.from_min.max(0.0);
    let resume = from + stop.for_min;
    let taken = |bag: &str, planned: u32| {
        let done = stop.done.as_ref();
        done.is_none_or(|done| done.contains(&(bag.to_owned(), planned)))
    };
    // When a bag's clock began, if it did.
    let zeros: Vec<&Turn> =
        before.turns.iter().filter(|turn| turn.task == Task::Zero).collect();
    let began = |turn: &&&Turn| turn.at_min + SAME < from && taken(&turn.bag, 0);
    let begun: Vec<(&str, f64)> =
        zeros.iter().filter(began).map(|turn| (turn.bag.as_str(), turn.at_min)).collect();
    let mut waiting: Vec<Bench> = Vec::new();
    let mut first = f64::INFINITY;
    for turn in zeros.iter().filter(|turn| !began(turn)) {
        first = first.min(turn.at_min.max(from));
        match waiting.iter_mut().find(|bench| bench.group == turn.group) {
            Some(bench) => bench.bags += 1,
            None => waiting.push(Bench { group: turn.group, bags: 1 }),
        }
    }
    let bounds = Bounds {
        base_min: first + stop.for_min,
        clearing_min: frame.hour.clearing_min(),
        minutes: &frame.planned,
        at_once: frame.pouring.at_once(),
    };
    let anew = waves::starts(&waiting, &bounds, waiting.len());
    let mut laid = Laid::default();
    for (bag, nth) in &frame.seats {
        let was = |task: Task| {
            before.turns.iter().find(|turn| turn.bag == bag.code && turn.task == task)
        };
        let clock = begun.iter().find(|(code, _)| *code == bag.code).map(|(_, at)| *at);
        let start = anew.iter().find(|(group, _)| *group == bag.group).map(|(_, at)| *at);
        let mut last = None;
        for (planned, task) in frame.tasks() {
            let Some(old) = was(task) else {
                let known = |one: &&Unfit| one.bag == bag.code && one.task == task;
                laid.unfit.extend(before.unfit.iter().find(known).cloned());
                continue;
            };
            let passed = clock.is_some() && old.at_min + SAME < from;
            let at_min = match (clock, start) {
                (Some(_), _) if passed => old.at_min,
                (Some(zero), _) => zero + f64::from(planned) + stop.for_min,
                (None, Some(start)) => start + f64::from(planned),
                (None, None) => f64::INFINITY,
            };
            if passed && !taken(&bag.code, planned) {
                laid.unfit.push(unfit(bag, task, Why::NotTaken));
            } else if frame.is_read_at(at_min) {
                let moved_min = at_min - old.at_min;
                laid.turns.push(Turn { done: passed, moved_min, ..turn(bag, at_min, task) });
                last = Some(at_min);
            } else {
                laid.unfit.push(unfit(bag, task, Why::Stopped));
            }
        }
        if let Some(last) = last {
            laid.ready.push((*bag, (last + READ_MIN * f64::from(*nth)).max(resume)));
        }
    }
    let mut starts: Vec<(u32, f64)> = Vec::new();
    let zeros = laid.turns.iter().filter(|turn| turn.task == Task::Zero);
    for turn in zeros {
        let known =
            |(group, at): &(u32, f64)| *group == turn.group && (at - turn.at_min).abs() < SAME;
        if !starts.iter().any(known) {
            starts.push((turn.group, turn.at_min));
        }
    }
    starts.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
    // A push that was cut short is made again.
    let over = |run: &&Turn| run.at_min + (WARM_UP_S + PUSH_S) / 60.0 <= from + SAME;
    let runs = runs.iter().filter(over).map(|run| Turn { done: true, ..run.clone() });
    (laid, starts, runs.collect())
}
