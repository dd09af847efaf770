//! The triangle of a covariance.

/// L with L Lᵀ = a covariance (Cholesky), row by row. A direction without width stays without.
pub(crate) fn lower_triangle(covariance: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let count = covariance.len();
    let mut lower = vec![vec![0.0; count]; count];
    for row in 0..count {
        for column in 0..=row {
            let known: f64 = (0..column).map(|at| lower[row][at] * lower[column][at]).sum();
            let left = covariance[row][column] - known;
            lower[row][column] = if row == column {
                libm::sqrt(left.max(0.0))
            } else if lower[column][column] > 0.0 {
                left / lower[column][column]
            } else {
                0.0
            };
        }
    }
    lower
}
