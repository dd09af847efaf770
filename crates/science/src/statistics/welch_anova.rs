//! Welch's test of several means, which does not take their spreads to be equal.

use super::distribution::fisher;
use super::sum::total;
use super::summary::{mean, squared_deviations};

/// What Welch's test of several means says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WelchAnova {
    /// The statistic (1).
    pub f: f64,
    /// Degrees of freedom of the levels: their number less one.
    pub df1: f64,
    /// Degrees of freedom of the spread, a fraction (1).
    pub df2: f64,
    /// Chance of such an F if all means were equal (1).
    pub p: f64,
}

/// Tests whether several means are equal without taking their spreads to be equal; `None` where a
/// level has a single value or values that do not differ, so that its spread is not known.
///
/// ```text
/// w = n/s²    ȳ = Σ w m/Σ w    λ = Σ (1 − w/Σ w)²/(n − 1)
/// F = [Σ w (m − ȳ)²/(k − 1)] / [1 + 2 (k − 2) λ/(k² − 1)]        df2 = (k² − 1)/(3 λ)
/// ```
///
/// `groups` holds the values of each level; they must be finite and within
/// [`LARGEST`](super::linear::LARGEST).
///
/// # Source
/// Welch (1951), *Biometrika* 38, 330–336.
pub fn welch_anova(groups: &[Vec<f64>]) -> Option<WelchAnova> {
    let k = groups.len() as f64;
    if groups.len() < 2 || groups.iter().any(|group| group.len() < 2) {
        return None;
    }
    let told: Vec<(f64, f64, f64)> = groups
        .iter()
        .map(|group| {
            let (n, middle) = (group.len() as f64, mean(group));
            let variance = squared_deviations(group, middle) / (n - 1.0);
            // Below this the squares are rounding of the arithmetic, not values that differ.
            let rounding = 1e-15 * middle.abs();
            let variance = if variance <= rounding * rounding { 0.0 } else { variance };
            (n, middle, n / variance)
        })
        .collect();
    let all = total(told.iter().map(|(.., w)| *w));
    if !all.is_finite() || all <= 0.0 {
        return None;
    }
    let level = told[0].1;
    let grand = total(told.iter().map(|(_, m, w)| w / all * (m - level)));
    let between = total(told.iter().map(|(_, m, w)| {
        let off = (m - level) - grand;
        w * off * off
    }));
    let uneven = total(told.iter().map(|(n, _, w)| {
        let off = 1.0 - w / all;
        off * off / (n - 1.0)
    }));
    let square = k * k - 1.0;
    let f = between / (k - 1.0) / (1.0 + 2.0 * (k - 2.0) * uneven / square);
    let (df1, df2) = (k - 1.0, square / (3.0 * uneven));
    let p = fisher::upper(f, df1, df2);
    (f.is_finite() && df2.is_finite() && p.is_finite()).then_some(WelchAnova { f, df1, df2, p })
}
