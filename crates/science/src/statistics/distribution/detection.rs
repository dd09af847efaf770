//! How large a true difference must be to be found.

use super::noncentral_student::beyond;
use super::root::rising_root;

/// Chance that an estimate, its true value `shift` standard errors from 0, lies further from 0 than
/// `c` times its estimated standard error with `df` degrees of freedom (1); for positive `c`, `df`.
///
/// ```text
/// 1 − ∫ f(s) [Φ(c s − δ) − Φ(−c s − δ)] ds        s an estimated spread over the true one
/// ```
///
/// # Accuracy
/// As [`beyond`].
/// # Source
/// The noncentral t distribution by its definition (Johnson, Kotz & Balakrishnan 1995, *Continuous
/// Univariate Distributions* 2, chapter 31, from memory).
pub fn chance(shift: f64, c: f64, df: f64) -> f64 {
    let (above, below) = beyond(c, 0.0, df, shift);
    above + below
}

/// The true value, in standard errors, that is found with chance `power` (1, above the chance at 0
/// and below 1) by a test that rejects beyond `c`.
pub fn smallest(power: f64, c: f64, df: f64) -> f64 {
    let mut high = c + 4.0;
    while chance(high, c, df) < power && high < 1e9 {
        high *= 2.0;
    }
    rising_root(0.0, high, |shift| chance(shift, c, df) - power)
}
