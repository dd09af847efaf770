//! The multivariate t distribution: a normal one whose spread is itself uncertain, so that a bag
//! a little outside of all that was assumed is no miracle.

/// Degrees of freedom (1): tails as heavy as those of a spread known to a quarter or so (own
/// judgement; with the misfit of other rate laws in mind).
const FREEDOM: f64 = 16.0;

/// L of a scale matrix L Lᵀ, with what every density needs of it.
#[derive(Debug, Clone)]
pub(super) struct Student {
    /// Number of rows.
    count: usize,
    /// Rows of L one after the other, each up to its diagonal.
    lower: Vec<f64>,
    /// ln of the density at the middle.
    peak: f64,
}

/// Where a row of a triangle begins.
const fn row_at(row: usize) -> usize {
    row * (row + 1) / 2
}

impl Student {
    /// Around nothing, with this scale matrix by row and column; `None` if it is not positive
    /// definite.
    pub(super) fn new(count: usize, scale: impl Fn(usize, usize) -> f64) -> Option<Self> {
        let mut lower: Vec<f64> = Vec::with_capacity(row_at(count));
        let mut det = 1.0;
        for row in 0..count {
            let start = row_at(row);
            for column in 0..=row {
                let above = row_at(column);
                let known: f64 = lower[start..start + column]
                    .iter()
                    .zip(&lower[above..above + column])
                    .map(|(a, b)| a * b)
                    .sum();
                let left = scale(row, column) - known;
                if column < row {
                    lower.push(left / lower[above + column]);
                } else if left > 0.0 {
                    det *= left;
                    lower.push(left.sqrt());
                } else {
                    return None;
                }
            }
        }
        Some(Self { count, lower, peak: constant(count) - 0.5 * libm::log(det) })
    }

    /// L⁻¹ x.
    pub(super) fn whitened(&self, x: &[f64]) -> Vec<f64> {
        let mut white: Vec<f64> = Vec::with_capacity(x.len());
        for (row, value) in x.iter().enumerate().take(self.count) {
            let line = &self.lower[row_at(row)..row_at(row + 1)];
            let known: f64 = line.iter().zip(&white).map(|(a, b)| a * b).sum();
            white.push((value - known) / line[row]);
        }
        white
    }

    /// ln of the density where |L⁻¹ x|² is `square`.
    pub(super) fn at_square(&self, square: f64) -> f64 {
        let freedom = FREEDOM + self.count as f64;
        self.peak - 0.5 * freedom * libm::log(1.0 + square / FREEDOM)
    }

    /// ln of the density at x.
    pub(super) fn log_density(&self, x: &[f64]) -> f64 {
        self.at_square(self.whitened(x).iter().map(|value| value * value).sum())
    }
}

/// ln Γ((ν + n)/2) − ln Γ(ν/2) − n/2 ln(νπ).
fn constant(count: usize) -> f64 {
    let n = count as f64;
    libm::lgamma(0.5 * (FREEDOM + n))
        - libm::lgamma(0.5 * FREEDOM)
        - 0.5 * n * libm::log(FREEDOM * core::f64::consts::PI)
}
