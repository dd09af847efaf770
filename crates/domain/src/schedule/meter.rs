//! Whose turn it is at the breath meter.
//!
//! A bag is metered once, after its last reading, since the push takes gas out of it. A run keeps one
//! meter busy for a minute: it warms up, the bag is pushed steadily, then the meter recovers and is pushed
//! clean. The push must be over when bags are emptied.
//!
//! Runs are equally long, may not begin before their bag is read, and share one end. Seen backward from
//! that end it is the problem of unit jobs with deadlines, and the sets of bags that can all have a turn
//! form a matroid; so taking bags in the order of what matters, each if it still fits, loses least (exact).
//! Those that fit go in the order in which they are ready, the first free meter first: with equal runs no
//! other order ends earlier, and nobody waits while a meter stands idle.

use super::READ_MIN;
use super::waves::{Bounds, SAME};
use crate::plan::{CONTROLS, Circumstance, Period, Plan, PlannedBag};
use std::collections::{BTreeMap, BTreeSet};

/// A meter warms up for so long before a push (s; common practice, no source).
pub const WARM_UP_S: f64 = 10.0;
/// A steady push lasts so long (s; common practice, no source).
pub const PUSH_S: f64 = 10.0;
/// A meter recovers for so long after a push, clean air and a wiped tube among it (s; common practice,
/// no source).
pub const RECOVERY_S: f64 = 40.0;
/// Minutes that one bag keeps a meter busy.
pub const RUN_MIN: f64 = (WARM_UP_S + PUSH_S + RECOVERY_S) / 60.0;

/// A bag that waits for a meter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Waiting {
    /// From when on it may be pushed (min).
    pub ready_min: f64,
    /// How much it matters: less is more.
    pub tier: u32,
}

/// Who goes when, and who does not.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Queue {
    /// Runs in the order of time: the place of the bag among those that wait, the meter from 1, the
    /// minute at which its run begins.
    pub runs: Vec<(usize, u32, f64)>,
    /// Places of the bags for which there is no time.
    pub left: Vec<usize>,
}

/// The queue at so many meters that loses least: no run begins before its bag is ready, and each is over,
/// recovery and all, [`RUN_MIN`] later and by `end_min`.
///
/// Of all sets of bags that can have a turn it takes the one with most bags of the first tier, among
/// those the one with most of the second, and so on. With no meter everything is left.
#[must_use]
pub fn queue(waiting: &[Waiting], meters: u32, end_min: f64) -> Queue {
    let places: Vec<usize> =
        waiting.iter().map(|bag| turns_left(bag.ready_min, end_min, waiting.len())).collect();
    let mut order: Vec<usize> = (0..waiting.len()).collect();
    order.sort_by(|a, b| {
        let (one, two) = (&waiting[*a], &waiting[*b]);
        one.tier.cmp(&two.tier).then(one.ready_min.total_cmp(&two.ready_min)).then(a.cmp(b))
    });
    // How many bags that are in must have one of the last 1, 2, 3 … turns.
    let mut within = vec![0_usize; waiting.len() + 1];
    let room = |turns: usize| turns.saturating_mul(meters as usize);
    let (mut taken, mut left) = (Vec::new(), Vec::new());
    for bag in order {
        let from = places[bag];
        let fits = from > 0 && (from..within.len()).all(|turns| within[turns] < room(turns));
        if fits {
            within[from..].iter_mut().for_each(|count| *count += 1);
            taken.push(bag);
        } else {
            left.push(bag);
        }
    }
    left.sort_unstable();
    taken.sort_by(|a, b| {
        let (one, two) = (&waiting[*a], &waiting[*b]);
        one.ready_min.total_cmp(&two.ready_min).then(one.tier.cmp(&two.tier)).then(a.cmp(b))
    });
    // More meters than bags are never in use.
    let mut free = vec![f64::NEG_INFINITY; (meters as usize).min(taken.len())];
    let mut runs = Vec::new();
    for bag in taken {
        let first = (0..free.len()).min_by(|a, b| free[*a].total_cmp(&free[*b]));
        let Some(meter) = first else { break };
        let at = waiting[bag].ready_min.max(free[meter]);
        free[meter] = at + RUN_MIN;
        runs.push((bag, meter as u32 + 1, at));
    }
    Queue { runs, left }
}

/// How many runs one after the other fit between a bag's last reading and the end, `most` at most.
fn turns_left(ready_min: f64, end_min: f64, most: usize) -> usize {
    let turns = ((end_min - ready_min + SAME) / RUN_MIN).floor();
    // No number at all is no turn.
    if turns >= 1.0 { turns.min(most as f64) as usize } else { 0 }
}

/// The meters of a period.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Metering {
    /// How many there are.
    pub(super) meters: u32,
    /// When the last run is over, recovery and all (min).
    pub(super) end_min: f64,
}

impl Metering {
    /// Nothing where there is no meter, or where a substitute teaches, who uses none.
    pub(super) fn of(plan: &Plan, period: &Period, cleaning_min: f64) -> Option<Self> {
        let meters = plan.equipment.meters.filter(|meters| *meters > 0)?;
        if plan.circumstances.contains(&Circumstance::Substitute) {
            return None;
        }
        // A meter may recover while bags are emptied, and is put away by the bell.
        let end_min = (cleaning_min + RECOVERY_S / 60.0).min(period.length_min.max(0.0));
        Some(Self { meters, end_min })
    }
}

/// The bags of a period that want a meter, each with the minute from which on it is ready.
///
/// One bag of each control comes first, then one of each treatment, then all others; of bags alike the
/// one that is ready first stands for its kind.
pub(super) fn tiers<'a>(
    plan: &Plan,
    ready: &[(&'a PlannedBag, f64)],
) -> Vec<(&'a PlannedBag, Waiting)> {
    let mut order: Vec<usize> = (0..ready.len()).collect();
    order.sort_by(|a, b| {
        let key = |place: &usize| (ready[*place].0.group, ready[*place].0.place);
        ready[*a].1.total_cmp(&ready[*b].1).then(key(a).cmp(&key(b)))
    });
    let mut seen = BTreeSet::new();
    let mut tier = vec![2; ready.len()];
    for place in order {
        let bag = ready[place].0;
        if seen.insert(bag.treatment.as_str()) {
            let control = bag.question == CONTROLS || plan.is_control(&bag.treatment);
            tier[place] = u32::from(!control);
        }
    }
    let waits = |((bag, ready_min), tier): (&(&'a PlannedBag, f64), u32)| {
        (*bag, Waiting { ready_min: *ready_min, tier })
    };
    ready.iter().zip(tier).map(waits).collect()
}

/// Runs that are lost with these starts: how many do not depend on which.
pub(super) fn lost(
    plan: &Plan,
    period: &Period,
    bounds: &Bounds<'_>,
    starts: &[(u32, f64)],
    metering: &Metering,
) -> usize {
    let mut nth = BTreeMap::<u32, u32>::new();
    let mut waiting = Vec::new();
    for bag in plan.bags.iter().filter(|bag| bag.period == period.name) {
        let Some((_, start)) = starts.iter().find(|(group, _)| *group == bag.group) else {
            continue;
        };
        let before = nth.entry(bag.group).or_default();
        *before += 1;
        let reads = std::iter::once(&0).chain(bounds.minutes);
        let mut reads = reads.map(|minute| start + f64::from(*minute));
        if let Some(last) = reads.rfind(|at| *at <= bounds.clearing_min + SAME) {
            let ready_min = last + READ_MIN * f64::from(*before);
            waiting.push(Waiting { ready_min, tier: 0 });
        }
    }
    queue(&waiting, metering.meters, metering.end_min).left.len()
}
