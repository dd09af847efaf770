//! One combination of coefficients: its estimate, standard error and degrees of freedom.

use super::fit::Mixed;
use super::square::dot;

/// Fewest degrees of freedom that an interval is given (1): with less than one, no width is worth
/// printing.
const FEWEST: f64 = 1.0;

/// A combination of coefficients that the design can tell.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// Its estimate (unit of the values).
    pub value: f64,
    /// Its standard error (unit of the values).
    pub se: f64,
    /// Degrees of freedom of the standard error (1, at least 1, not whole in general).
    pub df: f64,
    /// Share of its variance that is due to groups (1).
    pub group_share: f64,
    /// Whether its variance hangs on how much groups differ.
    pub hangs_on_groups: bool,
    /// Weights on the kept columns.
    pub(super) weights: Vec<f64>,
}

impl Mixed {
    /// The combination Σ weights·coefficients, or `None` if the design cannot tell it.
    ///
    /// Degrees of freedom are 2 v²/Var(v) for the variance v of the estimate (Satterthwaite), with
    /// the variance of the two estimated variances from the likelihood.
    ///
    /// # Source
    /// Giesbrecht & Burns (1985), *Biometrics* 41, 477–486 (from memory); Kenward & Roger (1997),
    /// *Biometrics* 53, 983–997, whose degrees of freedom for one combination are the same but for
    /// the standard error (their λ is 1).
    pub fn told(&self, weights: &[f64]) -> Option<Told> {
        /// Share of the variance below which groups do not matter (1).
        const NOTHING: f64 = 1e-9;
        let weights = self.independent.weights(weights)?;
        let solved = &self.solved;
        let value: f64 =
            weights.iter().enumerate().map(|(at, w)| w * self.coefficient(at)).sum();
        let plain = solved.covariance.between(&weights, &weights);
        let between = solved.by_groups.between(&weights, &weights);
        let df = self.degrees(&weights);
        let adjusted = self.covariance.between(&weights, &weights);
        // A bag's share of the variance, at a ratio of one, measures what groups could add.
        let largest = plain.max(between);
        Some(Told {
            value: self.unit * value,
            se: self.unit * libm::sqrt(self.variance * adjusted),
            df,
            group_share: (solved.gamma * between / plain).clamp(0.0, 1.0),
            hangs_on_groups: between > NOTHING * largest,
            weights,
        })
    }

    /// Degrees of freedom of a combination with these weights on the kept columns.
    pub(super) fn degrees(&self, weights: &[f64]) -> f64 {
        let solved = &self.solved;
        let plain = solved.covariance.between(weights, weights);
        let between = solved.by_groups.between(weights, weights);
        let within = plain - solved.gamma * between;
        let alike = self
            .information
            .map(|known| 2.0 * plain * plain / known.of(within, between))
            .filter(|df| df.is_finite() && *df > 0.0)
            .unwrap_or(solved.df)
            .clamp(FEWEST, solved.df.max(FEWEST));
        self.apart
            .as_ref()
            .map_or(alike, |apart| {
                let whole = self.covariance.between(weights, weights);
                apart.degrees(weights, whole, plain, alike)
            })
            .clamp(FEWEST, solved.df.max(FEWEST))
    }

    /// Degrees of freedom of the variance of a bag of any group (1).
    pub(in crate::statistics) fn df_of_bag(&self) -> f64 {
        let whole = 1.0 + self.solved.gamma;
        self.information
            .map(|known| 2.0 * whole * whole / known.of(1.0, 1.0))
            .filter(|df| df.is_finite() && *df > 0.0)
            .unwrap_or(self.solved.df)
            .min(self.solved.df)
    }

    /// Covariance of two combinations (unit of the values, squared).
    pub fn covariance(&self, a: &Told, b: &Told) -> f64 {
        let both = dot(&a.weights, &self.covariance.on(&b.weights));
        self.unit * self.unit * self.variance * both
    }
}
