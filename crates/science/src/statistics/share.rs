//! Exact bounds on a true share, from how often something was counted.

use super::distribution::fisher;

/// Largest true share (1) at which so few as `found` of `of` would still come with more than
/// 1 − `confidence`; 1 where nothing was counted.
///
/// ```text
/// P(X ≤ found | p) = 1 − confidence      X binomial (of, p)
/// p = a F/(b + a F)      a = found + 1, b = of − found, F the `confidence` quantile of F(2a, 2b)
/// ```
///
/// `confidence` lies strictly between 0 and 1; a `found` above `of` counts as `of`.
///
/// # Source
/// Clopper & Pearson (1934), *Biometrika* 26, 404–413 (from memory), through the quantiles of F;
/// one-sided: both ends of their 99 % interval are those of 0.995 here.
pub fn share_at_most(found: usize, of: usize, confidence: f64) -> f64 {
    if found >= of {
        return 1.0;
    }
    let (a, b) = (found as f64 + 1.0, (of - found) as f64);
    let over = a * fisher::quantile(confidence, 2.0 * a, 2.0 * b);
    over / (b + over)
}

/// Smallest true share (1) at which so many as `found` of `of` would still come with more than
/// 1 − `confidence`; 0 where nothing was counted. As [`share_at_most`], from the other side.
pub fn share_at_least(found: usize, of: usize, confidence: f64) -> f64 {
    if found == 0 || of == 0 {
        return 0.0;
    }
    1.0 - share_at_most(of.saturating_sub(found), of, confidence)
}
