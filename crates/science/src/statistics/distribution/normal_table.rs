//! The normal distribution from a table, for integrals that ask for it very many times.

use super::normal;
use std::sync::OnceLock;

const FROM: f64 = -9.0;
const PER_UNIT: f64 = 256.0;
const STEPS: usize = 4608;

/// Value and slope at each step, the slope for a whole step.
static TABLE: OnceLock<Vec<(f64, f64)>> = OnceLock::new();

/// The table, for loops that would otherwise look it up each time.
pub(super) fn table() -> &'static [(f64, f64)] {
    TABLE.get_or_init(|| {
        (0..=STEPS)
            .map(|i| {
                let z = FROM + i as f64 / PER_UNIT;
                (normal::cdf(z), normal::density(z) / PER_UNIT)
            })
            .collect()
    })
}

/// Chance that a standard normal value is at most `z` (1), within 1e-12.
///
/// By cubic interpolation through values and slopes (Hermite): the error is at most the largest
/// fourth derivative, 1.4, over 384, times the fourth power of the step.
#[inline]
pub(super) fn cdf(table: &[(f64, f64)], z: f64) -> f64 {
    let place = (z - FROM) * PER_UNIT;
    if place <= 0.0 {
        return 0.0;
    }
    if place >= STEPS as f64 {
        return 1.0;
    }
    let i = place as usize;
    let ((a, slope_a), (b, slope_b)) = (table[i], table[i + 1]);
    let t = place - i as f64;
    let rest = 1.0 - t;
    rest * rest * (a * (1.0 + 2.0 * t) + slope_a * t)
        + t * t * (b * (1.0 + 2.0 * rest) - slope_b * rest)
}
