//! Quantiles of an estimated spread, tabulated because sampling asks for very many of them.

use super::{gamma, normal};

/// Quantiles of an estimated spread over the true one, tabulated over the normal quantile.
#[derive(Debug, Clone)]
pub(super) struct SpreadTable {
    /// Value and slope at each step.
    rows: Vec<(f64, f64)>,
}

impl SpreadTable {
    const FROM: f64 = -8.0;
    const STEP: f64 = 0.0625;
    const STEPS: u32 = 256;

    pub(super) fn new(df: f64) -> Self {
        let rows = (0..=Self::STEPS)
            .map(|i| {
                let z = Self::FROM + f64::from(i) * Self::STEP;
                let s = if z <= 0.0 {
                    gamma::quantile_of_spread(normal::cdf(z), df)
                } else {
                    gamma::upper_quantile_of_spread(normal::cdf(-z), df)
                };
                (s, normal::density(z) / gamma::density_of_spread(s, df))
            })
            .collect();
        Self { rows }
    }

    /// By cubic interpolation through values and slopes (Hermite).
    pub(super) fn at(&self, p: f64) -> f64 {
        let z = normal::quantile(p.clamp(1e-14, 1.0 - 1e-14));
        let place = (z - Self::FROM) / Self::STEP;
        let i = (place as usize).min(self.rows.len() - 2);
        let t = place - i as f64;
        let ((a, slope_a), (b, slope_b)) = (self.rows[i], self.rows[i + 1]);
        let rest = 1.0 - t;
        rest * rest * (a * (1.0 + 2.0 * t) + slope_a * Self::STEP * t)
            + t * t * (b * (1.0 + 2.0 * rest) - slope_b * Self::STEP * rest)
    }
}
