//! To what marks of its ruler a group reads, by the numbers that it wrote.

use super::{Followed, scale};
use std::collections::BTreeMap;

/// Distance of the marks (mm), and how many groups read to such (1; own judgement).
const HABITS: [(f64, f64); 3] = [(0.5, 0.1), (1.0, 0.8), (2.0, 0.1)];

/// Numbers that do not lie on a group's marks after all (1; own judgement): other units, and readings that
/// somebody took more care with.
const BESIDE: f64 = 0.04;

/// What the ruler leaves open in each bag's readings (variance, mm²), in the order given: of a group that wrote
/// even numbers only it is more than of one that wrote halves.
pub(super) fn variances(bags: &[Followed]) -> Vec<f64> {
    let mut groups: BTreeMap<usize, Vec<f64>> = BTreeMap::new();
    for bag in bags {
        groups.entry(bag.group).or_default().extend(bag.heights.iter().map(|height| height.mm));
    }
    let of_group: BTreeMap<usize, f64> =
        groups.into_iter().map(|(group, numbers)| (group, of(&numbers))).collect();
    bags.iter()
        .map(|bag| of_group.get(&bag.group).copied().unwrap_or_else(scale::reading_variance))
        .collect()
}

/// What the ruler leaves open of one reading (variance, mm²) in the hands that wrote these numbers (mm): what it
/// leaves open by any habit, each as likely as the numbers make it.
fn of(numbers: &[f64]) -> f64 {
    let logs = HABITS.map(|(step, prior)| {
        let likely = numbers.iter().map(|mm| libm::log(likely(*mm, step)));
        libm::log(prior) + likely.sum::<f64>()
    });
    let most = logs.into_iter().fold(f64::NEG_INFINITY, f64::max);
    let (mut sum, mut all) = (0.0, 0.0);
    for ((step, _), log) in HABITS.into_iter().zip(logs) {
        let weight = libm::exp(log - most);
        sum += weight * to(step);
        all += weight;
    }
    sum / all
}

/// Variance of a reading to marks so far apart (mm²): [`scale::reading_variance`] holds the rounding to 1 mm.
fn to(step: f64) -> f64 {
    scale::reading_variance() + (step * step - 1.0) / 12.0
}

/// How likely such a number is, of the four kinds "even", "odd", "and a half" and any other, if it is read to such
/// marks.
fn likely(mm: f64, step: f64) -> f64 {
    let on = |marks: f64| ((mm / marks) - (mm / marks).round()).abs() < 1e-6;
    let kind = match (on(2.0), on(1.0), on(0.5)) {
        (true, _, _) => 0,
        (_, true, _) => 1,
        (_, _, true) => 2,
        _ => 3,
    };
    // Even, odd, half, other.
    let shares = match step {
        step if step < 1.0 => [0.25, 0.25, 0.5, 0.0],
        step if step < 2.0 => [0.5, 0.5, 0.0, 0.0],
        _ => [1.0, 0.0, 0.0, 0.0],
    };
    (1.0 - BESIDE) * shares[kind] + 0.25 * BESIDE
}
