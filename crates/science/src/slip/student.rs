//! The multivariate t distribution: a normal one whose spread is itself uncertain, so that a bag
//! a little outside of all that was assumed is no miracle.

/// Degrees of freedom (1): tails as heavy as those of a spread known to a quarter or so (own
/// judgement; with the misfit of other rate laws in mind).
const FREEDOM: f64 = 8.0;

/// L of a scale matrix L Lᵀ, with what every density needs of it.
#[derive(Debug, Clone)]
pub(super) struct Student {
    /// Rows of L.
    lower: Vec<Vec<f64>>,
    /// ln of the density at the middle.
    peak: f64,
}

impl Student {
    /// Around nothing, with this scale matrix (row by row); `None` if it is not positive definite.
    pub(super) fn new(scale: &[Vec<f64>]) -> Option<Self> {
        let count = scale.len();
        let mut lower: Vec<Vec<f64>> = Vec::with_capacity(count);
        let mut half_log_det = 0.0;
        for row in 0..count {
            let mut line = Vec::with_capacity(row + 1);
            for column in 0..=row {
                let above: &[f64] = if column == row { &line } else { &lower[column] };
                let known: f64 = line.iter().zip(&above[..column]).map(|(a, b)| a * b).sum();
                let left = scale[row][column] - known;
                if column < row {
                    line.push(left / lower[column][column]);
                } else if left > 0.0 {
                    half_log_det += 0.5 * libm::log(left);
                    line.push(left.sqrt());
                } else {
                    return None;
                }
            }
            lower.push(line);
        }
        Some(Self { peak: constant(count) - half_log_det, lower })
    }

    /// L⁻¹ x.
    pub(super) fn whitened(&self, x: &[f64]) -> Vec<f64> {
        let mut white: Vec<f64> = Vec::with_capacity(x.len());
        for (row, value) in self.lower.iter().zip(x) {
            let known: f64 = row.iter().zip(&white).map(|(a, b)| a * b).sum();
            white.push((value - known) / row[white.len()]);
        }
        white
    }

    /// ln of the density where |L⁻¹ x|² is `square`.
    pub(super) fn at_square(&self, square: f64) -> f64 {
        let freedom = FREEDOM + self.lower.len() as f64;
        self.peak - 0.5 * freedom * libm::log1p(square / FREEDOM)
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
