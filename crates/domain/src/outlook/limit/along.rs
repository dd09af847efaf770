//! What holds a bag back, minute by minute, from its shares of control.

use super::HeldBackBy;
use barm_science::model::shares::{Control, Shares, Thing};

/// Some minutes in which one thing holds a bag back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stretch {
    /// Minutes from the zero reading, first.
    pub from_min: u32,
    /// And last.
    pub to_min: u32,
    /// What holds it back.
    pub by: HeldBackBy,
}

/// Yeast that works at this share of what it could with plenty of sugar is not held back by its
/// food (1, own rule).
const BUSY: f64 = 0.75;

/// From this share of its waking on a pace is one of waking up (1, own rule): until about one and
/// a quarter time constants.
const WAKES: f64 = 0.5;

/// Enzyme that has this share in a pace is at work (1, own rule).
const AT_WORK: f64 = 0.2;

/// A stretch that is shorter (min) is not worth naming (own rule): nobody reads a bag within it.
const SHORTEST_MIN: u32 = 3;

/// What is known of a bag before it is followed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Larder {
    /// There is something in it that feeds yeast.
    pub(super) fed: bool,
    /// Most of that is of kinds that yeast cannot take in.
    pub(super) closed: bool,
}

/// What holds a bag back at a minute, by the shares in its pace there or in all its gas so far.
fn at(control: &Control, of: &Shares, larder: Larder) -> HeldBackBy {
    if larder.fed && control.busy >= BUSY {
        return if control.pace.of(Thing::Waking) >= WAKES {
            HeldBackBy::Waking
        } else {
            HeldBackBy::Yeast
        };
    }
    let enzyme = of.of(Thing::Enzyme);
    if !larder.fed {
        HeldBackBy::NoFood
    } else if enzyme >= AT_WORK && enzyme >= of.of(Thing::Food) {
        HeldBackBy::Enzyme
    } else if larder.closed && control.uncut > 0.5 {
        HeldBackBy::Locked
    } else {
        HeldBackBy::Food
    }
}

/// The stretches from minute 1 on; short ones go with what comes before them, a short first one
/// with what comes after.
pub(super) fn along(controls: &[Control], larder: Larder) -> Vec<Stretch> {
    let minutes = controls.iter().filter(|control| control.minute > 0);
    let mut runs: Vec<Stretch> = Vec::new();
    for control in minutes {
        let (minute, by) = (control.minute, at(control, &control.pace, larder));
        match runs.last_mut() {
            Some(run) if run.by == by => run.to_min = minute,
            _ => runs.push(Stretch { from_min: minute, to_min: minute, by }),
        }
    }
    let mut whole: Vec<Stretch> = Vec::new();
    for run in runs {
        let short = run.to_min - run.from_min + 1 < SHORTEST_MIN;
        match whole.last_mut() {
            Some(last) if last.by == run.by || short => last.to_min = run.to_min,
            Some(last) if last.to_min - last.from_min + 1 < SHORTEST_MIN => {
                *last = Stretch { from_min: last.from_min, ..run };
            }
            _ => whole.push(run),
        }
    }
    if let Some(first) = whole.first_mut() {
        first.from_min = 0;
    }
    whole
}

/// What has held all of a bag's gas back by the last minute.
pub(super) fn in_all(controls: &[Control], larder: Larder) -> HeldBackBy {
    let last = controls.last();
    last.map_or(HeldBackBy::Yeast, |control| at(control, &control.gas, larder))
}

/// The last minute at which most of the gas made is still in the liquid.
pub(super) fn dissolved_to(controls: &[Control]) -> u32 {
    let most = controls.iter().filter(|control| control.dissolved > 0.5);
    most.map(|control| control.minute).max().unwrap_or(0)
}
