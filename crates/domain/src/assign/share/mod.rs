//! Who works on what: groups are shared out to arms.
//!
//! Where all groups make the same number of bags this is one flow of least cost, from groups through
//! the arms of their period to the arms of the day: what a period goes without grows ever less with
//! every further group on an arm, and so does what the day lacks of it, so that both are convex costs
//! of arcs. A cheapest flow in whole numbers is then the best sharing-out, and its prices prove it.
//! Where numbers of bags differ, bags flow instead of groups, a flow may tear a group apart, and
//! branch and bound puts it together again.

mod build;
mod costs;
mod judge;
mod rows;

use super::case::Case;
use super::program::search;
use super::worth::{Part, Weights, Worth};
use build::Built;
use judge::Sharing;

/// The best sharing-out that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Shared {
    pub(super) parts: Vec<Part>,
    pub(super) worth: Worth,
    /// No sharing-out is better than this.
    pub(super) bound: Worth,
    /// Whether none is better than the one found, but for unevenness where bags differ.
    pub(super) proven: bool,
    pub(super) steps: u32,
}

/// Why there is no sharing-out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum NoShare {
    /// There is none.
    Impossible,
    /// None was found within the steps.
    NotFound,
}

/// Shares groups out as well as it can be done, over at most so many flows. Among equally good ways
/// the order of groups and arms decides, which `order` gives.
pub(super) fn share(case: &Case<'_>, order: &Order, steps: u32) -> Result<Shared, NoShare> {
    go(case, order, steps, false)
}

/// Any sharing-out that keeps the rules.
pub(super) fn any_share(case: &Case<'_>, order: &Order, steps: u32) -> Result<(), NoShare> {
    go(case, order, steps, true).map(|_| ())
}

/// In which order groups and arms are taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Order {
    pub(super) groups: Vec<usize>,
    pub(super) arms: Vec<usize>,
}

fn go(case: &Case<'_>, order: &Order, steps: u32, any: bool) -> Result<Shared, NoShare> {
    if !case.tools_suffice {
        return Err(NoShare::Impossible);
    }
    let weights = Weights::of(case);
    let built = Built::of(case, order, weights, any);
    let mut judge = Sharing::new(case, order, &built, any);
    let found = search(&built.program, steps, &mut judge);
    let scale = built.scale;
    match found.best {
        Some((_, (parts, worth))) => {
            let least = found.bound.map(|bound| (bound + built.fixed).div_euclid(scale));
            let own = weights.one(worth);
            let bound = weights.four(least.map_or(own, |least| least.min(own)));
            Ok(Shared { parts, worth, bound, proven: found.proven, steps: found.steps })
        }
        None if found.proven => Err(NoShare::Impossible),
        None => Err(NoShare::NotFound),
    }
}
