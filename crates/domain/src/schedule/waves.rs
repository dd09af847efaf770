//! Waves of starts: which groups take their zero reading together.
//!
//! A wave every half minute, the first at the end of mixing. A group that starts later reads later, so
//! waves may only last as long as no bag loses a planned reading by it; within that time the benches
//! are split, in their order through the room, into waves whose largest is as small as can be. That is
//! the linear partition problem: for a given largest wave, filling each wave as far as it goes needs the
//! fewest waves (exact, by exchange), and the largest wave is a sum of neighbors, so the least one is
//! found by trying those sums. Of all splits with that largest wave the one with the least sum of squares
//! is taken (exact, by dynamic programming over the benches), so that the others are even too.
//!
//! Where the teacher pours bench by bench, waves are single benches, and late ones may lose readings. Then
//! those with most bags go first, behind the controls: with losses that only grow along the waves no
//! other order loses fewer (rearrangement inequality).

use super::course::Wave;
use super::hands::Pouring;
use super::meter::{self, Metering};
use super::plain;
use crate::plan::{Period, Plan};
use crate::prep::facts::WAVE;

/// Times that differ by less are the same (min): far below a second, far above rounding.
pub(super) const SAME: f64 = 1e-6;

/// A bench with the bags that it seals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Bench {
    /// Group number, 0 for the teacher's.
    pub(super) group: u32,
    /// Bags.
    pub(super) bags: usize,
}

/// What bounds the waves.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds<'a> {
    /// First zero reading (min after the bell).
    pub(super) base_min: f64,
    /// Nothing is read after that minute.
    pub(super) clearing_min: f64,
    /// Planned minutes after zero.
    pub(super) minutes: &'a [u32],
    /// Benches that can be served at once.
    pub(super) at_once: Option<usize>,
}

/// The starts of a period in the order of time.
pub(super) fn of(plan: &Plan, period: &Period) -> Vec<(u32, f64)> {
    let minutes = plain::minutes(plan, period, None);
    with(plan, period, &minutes, Pouring::of(plan, period))
}

/// The same for other planned minutes, or where somebody else pours.
pub(super) fn with(
    plan: &Plan,
    period: &Period,
    minutes: &[u32],
    pouring: Pouring,
) -> Vec<(u32, f64)> {
    let phases = plain::phases(plan, period);
    let [_, read, vent, _] = phases.as_slice() else { return Vec::new() };
    let bounds = Bounds {
        base_min: plan.timing.mixing_min,
        clearing_min: read.to_min,
        minutes,
        at_once: pouring.at_once(),
    };
    let benches = benches(plan, period);
    let widest = starts(&benches, &bounds, benches.len());
    let Some(metering) = Metering::of(plan, period, vent.to_min) else { return widest };
    // Fewer waves only where that saves a run at the meter.
    let lost = |starts: &[(u32, f64)]| meter::lost(plan, period, &bounds, starts, &metering);
    // Nobody is ready earlier than with as few waves as can be.
    let least = lost(&starts(&benches, &bounds, 1));
    let mut best = (lost(&widest), widest);
    for fewer in (1..together(&best.1).len()).rev() {
        if best.0 <= least {
            break;
        }
        let other = starts(&benches, &bounds, fewer);
        let missed = lost(&other);
        if missed < best.0 {
            best = (missed, other);
        }
    }
    best.1
}

/// The teacher's bench first, if it has bags, then the groups. A group without bags takes no time,
/// unless nobody has any yet.
fn benches(plan: &Plan, period: &Period) -> Vec<Bench> {
    let mut bags = std::collections::BTreeMap::<u32, usize>::new();
    for bag in plan.bags.iter().filter(|bag| bag.period == period.name) {
        *bags.entry(bag.group).or_default() += 1;
    }
    let none = usize::from(bags.is_empty());
    let groups = (0..=period.groups).filter(|group| *group > 0 || bags.contains_key(&0));
    groups
        .map(|group| Bench { group, bags: bags.get(&group).copied().unwrap_or(none) })
        .collect()
}

/// The starts of these benches in `most` waves at most, where that many are allowed.
pub(super) fn starts(benches: &[Bench], bounds: &Bounds<'_>, most: usize) -> Vec<(u32, f64)> {
    let at = |wave: usize| bounds.base_min + WAVE.value * wave as f64;
    let lost = |wave: usize| {
        let late = |minute: &u32| at(wave) + f64::from(*minute) > bounds.clearing_min + SAME;
        std::iter::once(&0).chain(bounds.minutes).filter(|minute| late(minute)).count()
    };
    let none_lost = lost(0);
    let gap = gap(bounds.minutes);
    let even = (0..benches.len())
        .take_while(|wave| WAVE.value * *wave as f64 + SAME < gap && lost(*wave) == none_lost)
        .count();
    let room = bounds.at_once.unwrap_or(usize::MAX);
    let needed = benches.len().div_ceil(room.max(1));
    let mut order = benches.to_vec();
    let runs = if needed <= even {
        let waves = even.min(most).max(needed);
        split(&order, waves, room)
    } else {
        if needed > 0 && lost(needed - 1) > none_lost {
            // Stable, so that equals stay in their order through the room.
            order.sort_by_key(|bench| (bench.group != 0, std::cmp::Reverse(bench.bags)));
        }
        order.chunks(room.max(1)).map(<[_]>::len).collect()
    };
    let mut starts = Vec::with_capacity(order.len());
    let mut rest = order.as_slice();
    for (wave, run) in runs.into_iter().enumerate() {
        let (here, after) = rest.split_at(run.min(rest.len()));
        starts.extend(here.iter().map(|bench| (bench.group, at(wave))));
        rest = after;
    }
    starts
}

/// The shortest time between two readings of one bag (min); waves that last longer run into the next
/// reading of the first wave, and nothing is evened by that.
fn gap(minutes: &[u32]) -> f64 {
    let from = std::iter::once(0).chain(minutes.iter().copied());
    let gaps = from.zip(minutes).map(|(from, to)| f64::from(to.saturating_sub(from)));
    gaps.reduce(f64::min).unwrap_or(f64::INFINITY)
}

/// Lengths of the runs into which the benches are split, so that the largest has as few bags as can be.
fn split(benches: &[Bench], waves: usize, room: usize) -> Vec<usize> {
    let mut sums: Vec<usize> = Vec::new();
    for from in 0..benches.len() {
        let mut sum = 0;
        for bench in &benches[from..] {
            sum += bench.bags;
            sums.push(sum);
        }
    }
    sums.sort_unstable();
    sums.dedup();
    let least = sums.partition_point(|most| filled(benches, *most, room).len() > waves);
    sums.get(least).map_or_else(Vec::new, |most| even(benches, waves, *most, room))
}

/// Of all splits into at most so many waves of at most so many bags and benches, the one with the least
/// sum of squares; of equals the one whose early waves are larger, which is over sooner.
fn even(benches: &[Bench], waves: usize, most: usize, room: usize) -> Vec<usize> {
    let count = benches.len();
    // The least sum of squares of the benches from a place on, in at most so many waves, and how many of
    // them the first wave takes.
    let mut best: Vec<Option<(usize, usize)>> = vec![None; count + 1];
    best[count] = Some((0, 0));
    let mut firsts = Vec::with_capacity(waves);
    for _ in 0..waves {
        let mut now = best.clone();
        for (from, least) in now.iter_mut().enumerate().take(count) {
            let mut bags = 0_usize;
            for to in from + 1..=count.min(from.saturating_add(room)) {
                bags += benches[to - 1].bags;
                if bags > most {
                    break;
                }
                let Some((rest, _)) = best[to] else { continue };
                let squares = rest + bags * bags;
                if least.is_none_or(|(known, _)| squares <= known) {
                    *least = Some((squares, to - from));
                }
            }
        }
        best.clone_from(&now);
        firsts.push(now);
    }
    let mut runs = Vec::new();
    let mut from = 0;
    for now in firsts.iter().rev() {
        let Some((_, run)) = now[from].filter(|_| from < count) else { break };
        runs.push(run);
        from += run;
    }
    runs
}

/// Waves filled one after the other up to `most` bags and `room` benches; a bench that is larger by
/// itself is more than `waves` can ever hold, and gives one run too many.
fn filled(benches: &[Bench], most: usize, room: usize) -> Vec<usize> {
    if benches.iter().any(|bench| bench.bags > most) {
        return vec![0; benches.len() + 1];
    }
    let mut runs = Vec::new();
    let (mut bags, mut count) = (0, 0);
    for bench in benches {
        if count > 0 && (bags + bench.bags > most || count == room) {
            runs.push(count);
            (bags, count) = (0, 0);
        }
        bags += bench.bags;
        count += 1;
    }
    if count > 0 {
        runs.push(count);
    }
    runs
}

/// Starts at the same minute as one wave.
pub(super) fn together(starts: &[(u32, f64)]) -> Vec<Wave> {
    let mut waves: Vec<Wave> = Vec::new();
    for (group, at_min) in starts {
        match waves.last_mut().filter(|wave| (wave.at_min - at_min).abs() < SAME) {
            Some(wave) => wave.groups.push(*group),
            None => waves.push(Wave { at_min: *at_min, groups: vec![*group] }),
        }
    }
    waves
}
