//! Directions in which a small covariance has its axes.

use super::square::Square;

/// Axes of a symmetric matrix, each of length 1.
///
/// # Source
/// Jacobi (1846), *J. reine angew. Math.* 30, 51–94; Golub & Van Loan, *Matrix Computations*,
/// section 8.5 (from memory).
pub(super) fn symmetric(matrix: &Square) -> Vec<Vec<f64>> {
    let size = matrix.size();
    let mut m: Vec<Vec<f64>> = (0..size).map(|row| matrix.row(row).to_vec()).collect();
    let mut axes: Vec<Vec<f64>> =
        (0..size).map(|i| (0..size).map(|j| f64::from(u8::from(i == j))).collect()).collect();
    for _ in 0..60 {
        let off: f64 = (0..size)
            .flat_map(|i| (0..i).map(move |j| (i, j)))
            .map(|(i, j)| m[i][j] * m[i][j])
            .sum();
        let whole: f64 = (0..size).map(|i| m[i][i] * m[i][i]).sum();
        if off <= 1e-30 * whole {
            break;
        }
        for p in 0..size {
            for q in 0..p {
                turn(&mut m, &mut axes, p, q);
            }
        }
    }
    axes
}

/// One turn in the plane of two axes, after which they do not correlate.
fn turn(m: &mut [Vec<f64>], axes: &mut [Vec<f64>], p: usize, q: usize) {
    if m[p][q].abs() <= 0.0 {
        return;
    }
    let theta = (m[q][q] - m[p][p]) / (2.0 * m[p][q]);
    let t = theta.signum() / (theta.abs() + libm::sqrt(theta * theta + 1.0));
    let c = 1.0 / libm::sqrt(t * t + 1.0);
    let s = t * c;
    for row in m.iter_mut() {
        let (a, b) = (row[p], row[q]);
        row[p] = c * a - s * b;
        row[q] = s * a + c * b;
    }
    let (a, b) = (m[p].clone(), m[q].clone());
    for k in 0..m.len() {
        m[p][k] = c * a[k] - s * b[k];
        m[q][k] = s * a[k] + c * b[k];
    }
    let (a, b) = (axes[p].clone(), axes[q].clone());
    for k in 0..axes.len() {
        axes[p][k] = c * a[k] - s * b[k];
        axes[q][k] = s * a[k] + c * b[k];
    }
}
