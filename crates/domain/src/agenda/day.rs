//! What there is to do on a school day.

use super::{Task, What, When};
use crate::plan::{Day, Plan};
use crate::prep::Prep;
use jiff::ToSpan as _;
use jiff::civil::{DateTime, Time};

/// Minutes that it takes to make a stock solution (common practice, no source).
const MIXING_MIN: i64 = 20;
/// Minutes that it takes to throw away what is left.
const DISCARDING_MIN: i64 = 5;
/// Minutes that it takes to count, empty and wash after the last period (common practice, no
/// source).
const CLEARING_MIN: i64 = 30;

pub(super) fn tasks(plan: &Plan, prep: &Prep, day: &Day) -> Vec<Task> {
    let at = |time: Time| day.date.to_datetime(time);
    let task = |what, from: DateTime, minutes: i64| {
        let to = from.saturating_add(minutes.minutes());
        Task { what, when: When::At { from, to, zone: day.zone.clone() } }
    };
    let mut tasks = Vec::new();
    for (place, stock) in prep.stocks.iter().enumerate().filter(|(_, s)| s.day == day.name) {
        tasks.push(task(What::Mix(place), at(stock.make_at), MIXING_MIN));
        tasks.push(task(What::Discard(place), at(stock.use_by), DISCARDING_MIN));
    }
    let mut last: Option<DateTime> = None;
    for (place, period) in plan.periods.iter().enumerate().filter(|(_, p)| p.day == day.name) {
        let minutes = period.length_min.clamp(0.0, 1440.0).round() as i64;
        let from = at(period.start);
        let end = from.saturating_add(minutes.minutes());
        last = Some(last.map_or(end, |before| before.max(end)));
        tasks.push(task(What::Period(place), from, minutes));
    }
    if let Some(end) = last {
        tasks.push(task(What::Clear(day.name.clone()), end, CLEARING_MIN));
    }
    tasks
}
