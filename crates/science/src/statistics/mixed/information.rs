//! How well the two variances are known.

use super::solved::Solved;

/// Covariance of the estimated variances within and between groups, in units of the squared
/// variance within (1).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Information {
    pub(super) within: f64,
    pub(super) both: f64,
    pub(super) between: f64,
}

impl Information {
    /// From the expected information of the restricted likelihood.
    ///
    /// ```text
    /// I_ij = ½ tr(P V_i P V_j)       V_within = I, V_between = Z Zᵀ
    /// ```
    ///
    /// `known` is what is known beforehand, in the same order.
    pub(super) fn expected(solved: &Solved, known: [f64; 3]) -> Option<Self> {
        Self::inverse(traces(solved).map(|trace| 0.5 * trace), known)
    }

    /// From the curvature that the restricted likelihood has at its top; `variance` is the variance
    /// within groups (values squared).
    pub(super) fn observed(solved: &Solved, variance: f64, known: [f64; 3]) -> Option<Self> {
        let [within, both, between] = traces(solved);
        // yᵀ P V_i P V_j P y, by V_within = V − γ V_between.
        let gamma = solved.gamma;
        let y_both = solved.rest_between - gamma * solved.rest_twice;
        let y_within = (solved.rest - gamma * solved.rest_between) - gamma * y_both;
        let curved = |values: f64, trace: f64| values / variance - 0.5 * trace;
        let seen = [
            curved(y_within, within),
            curved(y_both, both),
            curved(solved.rest_twice, between),
        ];
        Self::inverse(seen, known)
    }

    fn inverse(seen: [f64; 3], known: [f64; 3]) -> Option<Self> {
        let [within, both, between] = [0, 1, 2].map(|at| seen[at] + known[at]);
        /// Below this share of the product the two variances cannot be told apart (1).
        const APART: f64 = 1e-10;
        let determinant = within * between - both * both;
        (within > 0.0 && between > 0.0 && determinant > APART * within * between).then(|| {
            Self {
                within: between / determinant,
                both: -both / determinant,
                between: within / determinant,
            }
        })
    }

    /// Variance of d_within·within + d_between·between.
    pub(super) fn of(&self, within: f64, between: f64) -> f64 {
        self.within * within * within
            + 2.0 * self.both * within * between
            + self.between * between * between
    }
}

/// tr(P V_i P V_j), by P V_within P = P − γ P V_between P.
fn traces(solved: &Solved) -> [f64; 3] {
    let gamma = solved.gamma;
    let between = solved.trace_square;
    let both = solved.trace - gamma * between;
    let within = (solved.df - gamma * solved.trace) - gamma * both;
    [within, both, between]
}
