//! Who works on what: groups are shared out to arms.
//!
//! Where all groups make the same number of bags this is one flow of least cost, from groups through
//! the arms of their period to the arms of the day: what a period goes without grows ever less with
//! every further group on an arm, and so does what the day lacks of it, so that both are convex costs
//! of arcs. A cheapest flow in whole numbers is then the best sharing-out, and its prices prove it.
//! Where numbers of bags differ, or a flow does not settle it, whole groups are shared out period by
//! period, at prices for what the day has in common (`together`). Where materials are short, bags
//! flow instead of groups, a flow may tear a group apart, and branch and bound puts it together again.

mod build;
mod by_period;
mod costs;
mod judge;
mod rows;
mod together;

use super::case::Case;
use super::program::search;
use super::worth::{Part, Weights, Worth};
use build::Built;
use judge::Sharing;
use together::together;

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

/// The same, where what a flow leaves open is shared out period by period at prices.
pub(super) fn share_well(
    case: &Case<'_>,
    order: &Order,
    steps: u32,
) -> Result<Shared, NoShare> {
    if !case.tools_suffice || !case.stocks.is_empty() {
        return share_apart(case, order, steps);
    }
    // One flow of whole groups is mostly enough, and always where nothing goes beyond it.
    let flow = if case.is_even() { share(case, order, steps) } else { Err(NoShare::NotFound) };
    let known = match flow {
        Err(NoShare::Impossible) => return Err(NoShare::Impossible),
        Ok(shared) if shared.proven => return Ok(shared),
        Ok(shared) => Some(shared),
        Err(NoShare::NotFound) => None,
    };
    let answer = known.as_ref().map(|own| (own.parts.clone(), own.worth));
    match together(case, order, answer, (steps, false)) {
        Err(NoShare::Impossible) => Err(NoShare::Impossible),
        Err(NoShare::NotFound) => known.map_or_else(|| share_apart(case, order, steps), Ok),
        Ok(found) => {
            let (bound, flows) =
                known.map_or_else(Default::default, |own| (own.bound, own.steps));
            let Some((parts, worth)) = found.answer else {
                return share_apart(case, order, steps);
            };
            let bound = found.bound.max(bound).min(worth);
            let steps = found.steps + flows;
            Ok(Shared { parts, worth, bound, proven: found.proven, steps })
        }
    }
}

/// Shares groups with different numbers of bags out period by period first, without prices.
fn share_apart(case: &Case<'_>, order: &Order, steps: u32) -> Result<Shared, NoShare> {
    if case.is_even() || case.day.periods.len() < 2 || !case.tools_suffice {
        return share(case, order, steps);
    }
    let apart = match by_period::by_period(case, order, steps) {
        Ok(apart) => apart,
        Err(NoShare::Impossible) => return Err(NoShare::Impossible),
        Err(NoShare::NotFound) => return share(case, order, steps),
    };
    let settled = |worth: &Worth, bound: &Worth| {
        (worth.missing, worth.short, worth.regret) == (bound.missing, bound.short, bound.regret)
    };
    let mut best = None;
    if let Some((parts, worth)) = apart.answer {
        let (bound, steps) = (apart.bound, apart.steps);
        let own = Shared { proven: settled(&worth, &bound), parts, worth, bound, steps };
        if own.proven {
            return Ok(own);
        }
        best = Some(own);
    }
    match (share(case, order, steps), best) {
        (Err(NoShare::Impossible), _) => Err(NoShare::Impossible),
        (Err(NoShare::NotFound), best) => best.ok_or(NoShare::NotFound),
        (Ok(whole), best) => {
            let bound = whole.bound.max(apart.bound);
            let steps = whole.steps + apart.steps;
            let better = best.filter(|own| own.worth < whole.worth).unwrap_or(whole);
            let bound = bound.min(better.worth);
            let proven = better.proven || settled(&better.worth, &bound);
            Ok(Shared { bound, proven, steps, ..better })
        }
    }
}

/// Flows that are tried before periods are laid out.
const FLOWS: u32 = 8;

/// Any sharing-out that keeps the rules.
pub(super) fn any_share(case: &Case<'_>, order: &Order, steps: u32) -> Result<(), NoShare> {
    if !case.stocks.is_empty() {
        return go(case, order, steps, true).map(|_| ());
    }
    // Mostly one flow says it; where single bags wait for controls, periods are laid out.
    match go(case, order, steps.min(FLOWS), true) {
        Err(NoShare::NotFound) => {
            let found = together(case, order, None, (steps, true))?;
            found.answer.map(|_| ()).ok_or(NoShare::NotFound)
        }
        found => found.map(|_| ()),
    }
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
