//! Bags for the comparisons.

use crate::experiments::{Trial, numbered};
use barm_science::statistics::compare::{BagValue, Comparison};

/// One bag.
pub(crate) fn bag(treatment: usize, block: usize, group: usize, value: f64) -> BagValue {
    BagValue { value, treatment, block, group }
}

/// Bags of an experiment; treatments and blocks numbered in the order of their first row, every
/// bag by a group of its own.
pub(crate) fn bags(trials: &[Trial]) -> Vec<BagValue> {
    let treatments = numbered(trials.iter().map(|trial| trial.treatment.as_str()));
    let blocks = numbered(trials.iter().map(|trial| trial.block.as_str()));
    trials
        .iter()
        .zip(treatments.iter().zip(&blocks))
        .enumerate()
        .map(|(group, (trial, (&treatment, &block)))| bag(treatment, block, group, trial.value))
        .collect()
}

/// Whether nothing in an answer is NaN or endless.
pub(crate) fn finite(answer: &Comparison) -> bool {
    let all = |numbers: &[f64]| numbers.iter().all(|v| v.is_finite());
    answer.contrasts.iter().all(|contrast| {
        contrast.highest.is_none_or(f64::is_finite)
            && contrast
                .outcome
                .as_ref()
                .map_or(true, |e| all(&[e.difference, e.low, e.high, e.se, e.df, e.factor]))
    }) && answer.variances.is_none_or(|found| all(&[found.bag, found.group]))
}
