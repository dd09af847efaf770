//! Ranks, and what tests by ranks have in common.

use super::distribution::gamma;
use super::linear::LARGEST;
use thiserror::Error;

/// What a test by ranks says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RankTest {
    /// The statistic (1), to be held against chi-square.
    pub h: f64,
    /// Degrees of freedom: levels less one.
    pub df: usize,
    /// Chance of such a statistic if the levels did nothing (1), by chi-square.
    pub p: f64,
}

/// Why values cannot be tested by their ranks.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum RankError {
    /// Fewer than two levels.
    #[error("there are {found} levels; a comparison needs two or more")]
    TooFewLevels {
        /// Levels found.
        found: usize,
    },
    /// A level has no values.
    #[error("level {level} has no values; leave it out or fill it")]
    EmptyLevel {
        /// Which level, from 0.
        level: usize,
    },
    /// A block lacks a level, or has another number of its values than the others.
    #[error("block {block} has not as many values of each level as the other blocks")]
    Incomplete {
        /// Which block, from 0.
        block: usize,
    },
    /// All values that are ranked together are equal.
    #[error("the values do not differ, so there is nothing to rank")]
    AllEqual,
    /// A value is not finite, or too large for the other statistics.
    #[error("a value is {value}, which cannot be used; correct it or set it aside")]
    OutOfReach {
        /// The value.
        value: f64,
    },
}

impl RankTest {
    pub(super) fn new(h: f64, levels: usize) -> Self {
        let df = levels - 1;
        Self { h, df, p: gamma::incomplete(0.5 * df as f64, 0.5 * h).1 }
    }
}

/// Ranks from 1 upward, in the order of the values; equal values share the mean of their ranks.
pub(super) fn ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
    let mut ranks = vec![0.0; values.len()];
    let mut before = 0;
    // Zero and minus zero are one value, though they sort apart.
    for alike in order.chunk_by(|&a, &b| values[a] >= values[b]) {
        let shared = before as f64 + 0.5 * (alike.len() + 1) as f64;
        for &at in alike {
            ranks[at] = shared;
        }
        before += alike.len();
    }
    ranks
}

/// The first value that cannot be ranked.
pub(super) fn usable<'a>(values: impl IntoIterator<Item = &'a f64>) -> Result<(), RankError> {
    let beyond = |v: &&f64| v.is_nan() || v.abs() > LARGEST;
    let found = values.into_iter().find(beyond);
    found.map_or(Ok(()), |&value| Err(RankError::OutOfReach { value }))
}
