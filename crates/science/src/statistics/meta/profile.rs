//! The interval of the variance between years.

use super::scaled::Scaled;
use super::weighed::Weighed;
use crate::statistics::distribution::{gamma, rising_root};

/// Where Q(τ²), which falls as τ² grows, is `wanted`; 0 where it is below that from the start.
pub(super) fn where_q_is(scaled: &Scaled, wanted: f64) -> f64 {
    if Weighed::at(scaled, 0.0).q <= wanted {
        return 0.0;
    }
    // Q ≤ Σ (y − ȳ)²/τ² ≤ k range²/(4 τ²).
    let last = 0.25 * scaled.count() * scaled.range() * scaled.range() / wanted;
    // One over Q is nearly a straight line.
    rising_root(0.0, last, |tau2| wanted / Weighed::at(scaled, tau2).q - 1.0)
}

/// Ends of the 95 % interval of τ² in scaled units: where Q(τ²) is the upper and the lower 2.5 % point
/// of chi-square with k − 1 degrees of freedom.
///
/// Years that are more alike than chance would have them give 0 for both.
///
/// # Source
/// Hartung & Knapp (2005), *Stat. Med.* 24, and Viechtbauer (2007), *Stat. Med.* 26, 37–52 (from
/// memory).
pub(super) fn interval(scaled: &Scaled) -> (f64, f64) {
    const TAIL: f64 = 0.025;
    let df = scaled.count() - 1.0;
    let square = |s: f64| df * s * s;
    let upper = square(gamma::upper_quantile_of_spread(TAIL, df));
    let lower = square(gamma::quantile_of_spread(TAIL, df));
    (where_q_is(scaled, upper), where_q_is(scaled, lower))
}
