//! How far from 0 a difference must be to be called clear, over degrees of freedom.

use crate::statistics::compare::Question;
use crate::statistics::mixed::{Family, Told};
use std::collections::BTreeSet;

/// What a difference must exceed to be called clear, in standard errors, over degrees of freedom; none where no comparison can
/// be told.
#[derive(Default)]
pub(super) struct Widths {
    /// Reciprocals of degrees of freedom, in rising order, with the logarithm of the width there.
    known: Vec<(f64, f64)>,
}

/// Degrees of freedom for which widths are worked out.
const NODES: u32 = 9;

impl Widths {
    /// Of a question as it is usually seen: by the correlations of the deal whose first comparison has the middle
    /// degrees of freedom, from the fewest to the most of any.
    pub(super) fn of(all: &[Question], (levels, seed): ([f64; 2], u64)) -> Option<Self> {
        let mut order: Vec<(f64, &Question)> = all
            .iter()
            .filter_map(|one| Some((one.told.iter().flatten().next()?.df, one)))
            .collect();
        order.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (_, usual) = order.get(order.len() / 2)?;
        let told: Vec<&Told> = usual.told.iter().flatten().collect();
        let family = Family::new(usual.model.as_ref().ok()?, &told, None, (levels, seed));
        let dfs = || all.iter().flat_map(|one| &one.told).flatten().map(|told| 1.0 / told.df);
        let (low, high) = (dfs().fold(1.0, f64::min), dfs().fold(0.0, f64::max));
        let ways: BTreeSet<u64> = (0..NODES)
            .map(|node| {
                let share = f64::from(node) / f64::from(NODES - 1);
                (low * libm::pow(high / low, share)).to_bits()
            })
            .collect();
        let known = ways.into_iter().map(f64::from_bits);
        Some(Self {
            known: known.map(|at| (at, libm::log(family.clear_beyond(1.0 / at)))).collect(),
        })
    }

    /// The width with that many degrees of freedom.
    pub(super) fn at(&self, df: f64) -> f64 {
        let at = 1.0 / df;
        let after = self.known.partition_point(|(known, _)| *known < at);
        let logarithm =
            match (after.checked_sub(1).map(|i| self.known[i]), self.known.get(after)) {
                (Some((a, low)), Some(&(b, high))) => low + (high - low) * (at - a) / (b - a),
                (Some((_, only)), None) | (None, Some(&(_, only))) => only,
                (None, None) => 0.0,
            };
        libm::exp(logarithm)
    }
}
