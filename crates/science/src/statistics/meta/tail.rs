//! Student's t where degrees of freedom may be endless.

use crate::statistics::distribution::{normal, student};

/// From so many degrees of freedom on t is told by the normal distribution, within 1 part in 10⁹.
const ENDLESS: f64 = 1e9;

/// Standard errors on either side of a 95 % interval (1).
pub(super) fn factor(df: f64) -> f64 {
    if df < ENDLESS { student::upper_quantile(0.025, df) } else { -normal::quantile(0.025) }
}

/// Chance of a value at least as far from 0 as `t`, on either side (1).
pub(super) fn two_sided(t: f64, df: f64) -> f64 {
    if df < ENDLESS { student::two_sided(t, df) } else { 2.0 * normal::cdf(-t.abs()) }
}
