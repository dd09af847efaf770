//! A whole day, period by period, at prices for what periods have in common.
//!
//! A flow tears groups apart, and that a period needs a control of its own costs a flow next to
//! nothing; so its bound is wide just where groups make different numbers of bags, or a single one.
//! Here each period is shared out in whole groups, at prices for bags that the plan asks for and for
//! limits of the day. At any prices the least costs of all periods add up to a bound (Lagrangian
//! relaxation; Held & Karp 1971, *Mathematical Programming* 1, 6-25; Geoffrion 1974, *Mathematical
//! Programming Study* 2, 82-114; from memory). Then all ways near the bound are put together.

mod ahead;
mod joint;
mod layers;
mod near;
mod paid;
mod pass;

use super::by_period::missing_alone;
use super::{NoShare, Order};
use crate::assign::case::Case;
use crate::assign::flow::Cost;
use crate::assign::improve::improved;
use crate::assign::worth::{Part, Weights, Worth, worth};
use joint::Joint;
use layers::{Layers, NotLaid};
use pass::Pass;

/// A group, by place, and what it works on.
type Cell = (usize, Part);
/// An answer with what it is worth.
pub(super) type Answer = (Vec<Part>, Worth);

/// What came of it.
pub(super) struct Together {
    /// The best answer, if any was found or known.
    pub(super) answer: Option<Answer>,
    /// No answer is better than this.
    pub(super) bound: Worth,
    /// Whether none is better, but for unevenness where numbers of bags differ.
    pub(super) proven: bool,
    /// How often periods were laid out and priced.
    pub(super) steps: u32,
}

/// Shares out period by period at prices, at most so many times; nothing is known of materials here.
///
/// # Errors
/// [`NoShare`] if there is no answer, or there are too many ways to look at.
pub(super) fn together(
    case: &Case<'_>,
    order: &Order,
    known: Option<Answer>,
    (steps, any): (u32, bool),
) -> Result<Together, NoShare> {
    let weights =
        if any { Weights { missing: 1, short: 1, regret: 1 } } else { Weights::of(case) };
    let joint = Joint::of(case, weights, any);
    let (least, first) = fewest_missing(case, order, &joint)?;
    let missing: u64 = least.iter().sum();
    let mut best = known.map(|known| (joint.worth(case, weights, &known.1), known));
    let mut layers = first;
    let (mut bound, mut used, mut slack) = (weights.missing * Cost::from(missing), 0, 0);
    let proven = loop {
        let mut pass = Pass { case, weights, joint: &joint, layers: &layers, best, steps };
        let found = pass.go();
        best = pass.best;
        used += steps - pass.steps;
        // Days that are left out here have a period that goes without more, and so the day does.
        let beyond = weights.missing * Cost::from(missing + slack + 1);
        let whole = any || slack >= kinds(case);
        bound = bound.max(if whole { found } else { found.min(beyond) });
        let own = best.as_ref().map(|(cost, _)| *cost);
        if own.is_some_and(|own| own <= bound) {
            break true;
        }
        if whole {
            if found >= layers::NEVER {
                return Err(NoShare::Impossible);
            }
            break false;
        }
        // Known to go without so many: nothing better goes without more.
        let most = best.as_ref().map(|(_, (_, worth))| worth.missing.saturating_sub(missing));
        let next = most.unwrap_or(2 * slack + 1);
        if next <= slack {
            break false;
        }
        slack = next;
        match all(case, order, &joint, |place| least[place] + slack) {
            Ok(wider) => layers = wider,
            Err(_) => break false,
        }
    };
    let own = best.as_ref().map_or(bound, |(cost, _)| *cost);
    let bound = weights.four(bound.min(own));
    // Unevenness is not searched for where numbers differ; small changes find the most of it.
    let answer = best.map(|(_, (parts, found))| {
        if any {
            return (parts, found);
        }
        let parts = improved(case, parts);
        let worth = worth(case, &parts);
        (parts, worth)
    });
    Ok(Together { answer, bound, proven, steps: used })
}

fn kinds(case: &Case<'_>) -> u64 {
    case.day.arms.iter().map(|arm| arm.treatments.len() as u64).sum()
}

/// The fewest treatments that each period goes without, whatever others do, and all ways to that.
fn fewest_missing(
    case: &Case<'_>,
    order: &Order,
    joint: &Joint,
) -> Result<(Vec<u64>, Vec<Layers>), NoShare> {
    let (mut fewest, mut layers) = (Vec::new(), Vec::new());
    for period in 0..case.day.periods.len() {
        let own: Vec<usize> = (0..case.day.groups.len())
            .filter(|g| case.day.groups[*g].period == period)
            .collect();
        let mut missing = match own.is_empty() {
            _ if joint.any => 0,
            true => kinds(case),
            false => missing_alone(case, order, (period, &own))?,
        };
        layers.push(loop {
            match Layers::of(case, order, joint, period, missing) {
                Ok(layers) => break layers,
                Err(NotLaid::TooMany) => return Err(NoShare::NotFound),
                Err(NotLaid::None) if joint.any || missing >= kinds(case) => {
                    return Err(NoShare::Impossible);
                }
                Err(NotLaid::None) => missing += 1,
            }
        });
        fewest.push(missing);
    }
    Ok((fewest, layers))
}

fn all(
    case: &Case<'_>,
    order: &Order,
    joint: &Joint,
    missing: impl Fn(usize) -> u64,
) -> Result<Vec<Layers>, NotLaid> {
    let periods = 0..case.day.periods.len();
    periods.map(|period| Layers::of(case, order, joint, period, missing(period))).collect()
}

/// The parts of a day out of the ways of its periods.
fn parts(case: &Case<'_>, layers: &[Layers], ways: &[Vec<usize>]) -> Answer {
    let mut parts = vec![Part { arm: 0, reference: false }; case.day.groups.len()];
    for (layers, way) in layers.iter().zip(ways) {
        for (group, part) in layers.parts(way) {
            parts[group] = part;
        }
    }
    let worth = worth(case, &parts);
    (parts, worth)
}
