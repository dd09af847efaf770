//! Which second round is worth most.

use super::gain::Gain;

/// What candidates are ranked by, most first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum By {
    /// Chance of a clear verdict.
    Clear,
    /// Chance of a clear verdict for each bag.
    ClearPerBag,
    /// Chance of a clear verdict for each dollar; what costs nothing comes first.
    ClearPerDollar,
    /// Shrinking of the interval for each bag.
    ShrinksPerBag,
    /// Shrinking of the interval for each dollar; what costs nothing comes first.
    ShrinksPerDollar,
}

/// Positions of candidates by what they are worth, most first; equals stay in the order given.
pub fn rank(gains: &[Gain], by: By) -> Vec<usize> {
    let worth = |gain: &Gain| match by {
        By::Clear => gain.clear,
        By::ClearPerBag => gain.clear_per_bag(),
        By::ClearPerDollar => gain.clear_per_dollar().unwrap_or(f64::INFINITY),
        By::ShrinksPerBag => gain.shrinks_per_bag(),
        By::ShrinksPerDollar => gain.shrinks_per_dollar().unwrap_or(f64::INFINITY),
    };
    let mut order: Vec<usize> = (0..gains.len()).collect();
    order.sort_by(|&a, &b| worth(&gains[b]).total_cmp(&worth(&gains[a])));
    order
}
