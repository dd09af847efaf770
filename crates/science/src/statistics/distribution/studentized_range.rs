//! The studentized range, for comparing all pairs of treatments (Tukey).

use super::normal;
use super::quadrature::{OverSpread, Rule};
use super::root::rising_root;

/// The range of `k` standard normal values over an independent estimate of their spread with `df`
/// degrees of freedom.
///
/// ```text
/// P(q) = ∫ f(s) R(q s) ds        R(w) = k ∫ φ(z) [Φ(z) − Φ(z − w)]^(k−1) dz
/// ```
///
/// # Accuracy
/// Chances within 1e-11 for 2 to 10 treatments and 2 degrees of freedom or more (tests, against
/// SciPy).
/// # Source
/// Lund & Lund (1983), "Algorithm AS 190", *Applied Statistics* 32, 204–210, for the double
/// integral; the quadrature is Gauss–Legendre.
#[derive(Debug, Clone)]
pub struct StudentizedRange {
    k: i32,
    over: OverSpread,
    rule: Rule,
}

impl StudentizedRange {
    /// For `k` ≥ 2 values and `df` > 0, which may be infinite.
    pub fn new(k: u16, df: f64) -> Self {
        Self { k: i32::from(k.max(2)), over: OverSpread::new(df, 12.0), rule: Rule::new(24) }
    }

    /// Chance that the studentized range is at most `q` (1).
    pub fn cdf(&self, q: f64) -> f64 {
        if q <= 0.0 {
            return 0.0;
        }
        self.over.average(q, |w| self.range(w)).clamp(0.0, 1.0)
    }

    /// Chance that the studentized range exceeds `q` (1).
    pub fn upper(&self, q: f64) -> f64 {
        1.0 - self.cdf(q)
    }

    /// Value that the studentized range stays below with chance `p` (1), for `p` strictly between
    /// 0 and 1.
    pub fn quantile(&self, p: f64) -> f64 {
        if p.is_nan() || p <= 0.0 || p >= 1.0 {
            return f64::NAN;
        }
        let mut high = 4.0;
        while self.cdf(high) < p && high < 1e12 {
            high *= 2.0;
        }
        rising_root(0.0, high, |q| self.cdf(q) - p)
    }

    fn range(&self, w: f64) -> f64 {
        const FAR: f64 = 8.5;
        let mut sum = 0.0;
        for (z, weight) in self.rule.spread(-FAR, FAR, 6) {
            let between = normal::cdf(z) - normal::cdf(z - w);
            sum += weight * normal::density(z) * power(between, self.k - 1);
        }
        f64::from(self.k) * sum
    }
}

/// By repeated squaring, since the standard library's power may differ between machines.
fn power(base: f64, times: i32) -> f64 {
    let (mut result, mut square, mut left) = (1.0, base, times);
    while left > 0 {
        if left & 1 == 1 {
            result *= square;
        }
        square *= square;
        left >>= 1;
    }
    result
}
