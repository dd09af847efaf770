//! The noncentral chi-square distribution: a sum of squares of normal values that do not lie about 0.

use super::gamma;
use super::poisson_mixture::mean_over;
use super::root::quantile_of_positive;

/// Chance that noncentral chi-square is at most `x` (1), for `df` > 0 degrees of freedom and
/// noncentrality `lambda` ≥ 0, the sum of the squared means; NaN outside.
///
/// # Accuracy
/// About 1 part in 10¹², in either tail.
/// # Source
/// Johnson, Kotz & Balakrishnan (1995), *Continuous Univariate Distributions* 2, 29.3, from memory:
/// a Poisson mixture of central ones. Held against SciPy and R in the tests.
pub fn cdf(x: f64, df: f64, lambda: f64) -> f64 {
    shares(x, df, lambda, true)
}

/// Chance that noncentral chi-square lies above `x` (1); as [`cdf`].
pub fn upper(x: f64, df: f64, lambda: f64) -> f64 {
    shares(x, df, lambda, false)
}

fn shares(x: f64, df: f64, lambda: f64, below: bool) -> f64 {
    let known = df > 0.0 && df.is_finite() && (0.0..f64::INFINITY).contains(&lambda);
    if !known || x.is_nan() {
        return f64::NAN;
    }
    mean_over(0.5 * lambda, |j| {
        let (low, high) = gamma::incomplete(0.5 * df + j, 0.5 * x);
        if below { low } else { high }
    })
}

/// Value that noncentral chi-square stays below with chance `p` strictly between 0 and 1 (1).
///
/// # Accuracy
/// About 1 part in 10¹¹.
pub fn quantile(p: f64, df: f64, lambda: f64) -> f64 {
    quantile_of_positive(p, df + lambda, |x| (cdf(x, df, lambda), upper(x, df, lambda)))
}
