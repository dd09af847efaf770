//! The noncentral F distribution: how F falls where treatments truly differ.

use super::beta;
use super::poisson_mixture::mean_over;
use super::root::quantile_of_positive;

/// Chance that noncentral F is at most `f` (1), for `df1` and `df2` > 0 degrees of freedom and
/// noncentrality `lambda` ≥ 0; NaN outside.
///
/// ```text
/// F = (χ²(df1, λ)/df1) / (χ²(df2)/df2)      λ = Σ (true mean less grand mean)² / σ², a term a bag
/// ```
///
/// # Accuracy
/// About 1 part in 10¹¹, in either tail.
/// # Source
/// Johnson, Kotz & Balakrishnan (1995), *Continuous Univariate Distributions* 2, 30.3, from memory:
/// a Poisson mixture of incomplete beta functions. Held against SciPy and R in the tests.
pub fn cdf(f: f64, df1: f64, df2: f64, lambda: f64) -> f64 {
    shares(f, df1, df2, lambda, true)
}

/// Chance that noncentral F lies above `f` (1); as [`cdf`].
pub fn upper(f: f64, df1: f64, df2: f64, lambda: f64) -> f64 {
    shares(f, df1, df2, lambda, false)
}

fn shares(f: f64, df1: f64, df2: f64, lambda: f64, below: bool) -> f64 {
    let positive = |df: f64| df > 0.0 && df.is_finite();
    let known = positive(df1) && positive(df2) && (0.0..f64::INFINITY).contains(&lambda);
    if !known || f.is_nan() {
        return f64::NAN;
    }
    if f <= 0.0 || f == f64::INFINITY {
        return if (f <= 0.0) == below { 0.0 } else { 1.0 };
    }
    // Divided by the larger, neither is lost nor runs over.
    let over = df1 * f / df2;
    let (x, y) = (over / (1.0 + over), 1.0 / (1.0 + over));
    let x = if over.is_finite() { x } else { 1.0 };
    mean_over(0.5 * lambda, |j| {
        let (low, high) = beta::incomplete(0.5 * df1 + j, 0.5 * df2, x, y);
        if below { low } else { high }
    })
}

/// Value that noncentral F stays below with chance `p` strictly between 0 and 1 (1).
///
/// # Accuracy
/// About 1 part in 10¹⁰.
pub fn quantile(p: f64, df1: f64, df2: f64, lambda: f64) -> f64 {
    let middle = 1.0 + lambda / df1;
    quantile_of_positive(p, middle, |f| (cdf(f, df1, df2, lambda), upper(f, df1, df2, lambda)))
}
