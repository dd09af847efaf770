//! The fixed effects for a given ratio of variances, and how likely that ratio is.

use super::square::{Square, dot};
use super::sums::Sums;
use super::triangle::Triangle;
use super::weighed::Weighed;

/// Generalized least squares for one ratio γ, with what the likelihood and degrees of freedom need.
///
/// Everything is in units of the variance within groups: P stands for that of V = H.
#[derive(Debug, Clone)]
pub(super) struct Solved {
    /// The ratio of the variance between groups to that within (1).
    pub(super) gamma: f64,
    /// Coefficients of the kept columns.
    pub(super) coefficients: Vec<f64>,
    /// Φ = A⁻¹: their covariance.
    pub(super) covariance: Square,
    /// Φ T Φ: how that covariance grows with the variance between groups.
    pub(super) by_groups: Square,
    /// Φ (R − T Φ T) Φ: how far the coefficients still turn with the ratio.
    pub(super) turning: Square,
    /// yᵀ P y (values squared).
    pub(super) rest: f64,
    /// yᵀ P Z Zᵀ P y (values squared).
    pub(super) rest_between: f64,
    /// yᵀ P Z Zᵀ P Z Zᵀ P y (values squared).
    pub(super) rest_twice: f64,
    /// Trace of P Z Zᵀ (1).
    pub(super) trace: f64,
    /// Trace of (P Z Zᵀ)² (1).
    pub(super) trace_square: f64,
    /// ln |H| + ln |Xᵀ H⁻¹ X|, blocks included (1).
    pub(super) ln_determinants: f64,
    /// Values less the rank of blocks and columns.
    pub(super) df: f64,
}

impl Solved {
    /// For sums whose columns stand on their own; `df` = values less the rank of the design.
    /// `None` where rounding leaves a column no width.
    pub(super) fn at(sums: &Sums, gamma: f64, df: f64) -> Option<Self> {
        let last = sums.width - 1;
        let Weighed { a, t, r, ln_h, s1, s2 } = Weighed::at(sums, gamma);
        let (tx, rx) = (t.corner(last), r.corner(last));
        let triangle = Triangle::of(&a.corner(last))?;
        let phi = triangle.inverse();
        let products = &a.row(last)[..last];
        let coefficients = phi.on(products);
        let along = triangle.forward(products);
        let rest = (a.at(last, last) - dot(&along, &along)).max(0.0);
        // What a row leaves over: minus the coefficients, and one value.
        let over: Vec<f64> = coefficients.iter().map(|b| -b).chain([1.0]).collect();
        let t_over = t.on(&over);
        let rest_between = dot(&over, &t_over).max(0.0);
        let through = phi.between(&t_over[..last], &t_over[..last]);
        let rest_twice = (r.between(&over, &over) - through).max(0.0);
        let phi_t = phi.times(&tx);
        let by_groups = phi_t.times(&phi);
        let inner = rx.plus(-1.0, &tx.times(&phi_t));
        let turning = phi.times(&inner).times(&phi);
        let trace = (s1 - phi.trace_with(&tx)).max(0.0);
        let trace_square =
            (s2 - 2.0 * phi.trace_with(&rx) + by_groups.trace_with(&tx)).max(0.0);
        Some(Self {
            gamma,
            coefficients,
            covariance: phi,
            by_groups,
            turning,
            rest,
            rest_between,
            rest_twice,
            trace,
            trace_square,
            ln_determinants: ln_h + triangle.ln_determinant(),
            df,
        })
    }

    /// The variance within groups that is most likely for this ratio (values squared).
    pub(super) fn variance(&self) -> f64 {
        self.rest / self.df
    }

    /// Minus twice the restricted log-likelihood, at the best variance, less a constant (1).
    pub(super) fn criterion(&self) -> f64 {
        self.ln_determinants + self.df * libm::log(self.rest)
    }

    /// Twice the slope of the restricted log-likelihood along γ (1).
    pub(super) fn slope(&self) -> f64 {
        self.df * self.rest_between / self.rest - self.trace
    }
}
