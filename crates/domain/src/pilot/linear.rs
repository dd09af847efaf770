//! Small matrices: covariances of a few numbers.

/// L with L Lᵀ = a covariance (Cholesky); nothing if it is none.
pub(super) fn root(covariance: &[Vec<f64>]) -> Option<Vec<Vec<f64>>> {
    let count = covariance.len();
    let mut lower = vec![vec![0.0; count]; count];
    for row in 0..count {
        for column in 0..=row {
            let known: f64 = (0..column).map(|at| lower[row][at] * lower[column][at]).sum();
            let left: f64 = covariance[row][column] - known;
            if row != column {
                lower[row][column] = left / lower[column][column];
            } else if left > 0.0 {
                lower[row][row] = left.sqrt();
            } else {
                return None;
            }
        }
    }
    Some(lower)
}

/// A covariance that is nowhere wider than L Lᵀ: in the coordinates in which that is a ball, no axis is
/// longer than 1.
pub(super) fn narrowed(covariance: &[Vec<f64>], lower: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let count = lower.len();
    let halved: Vec<Vec<f64>> = covariance.iter().map(|row| forward(lower, row)).collect();
    let column =
        |of: &[Vec<f64>], at: usize| of.iter().map(|row| row[at]).collect::<Vec<f64>>();
    // Row i of this is L⁻¹ times column i of what was halved.
    let ball: Vec<Vec<f64>> =
        (0..count).map(|at| forward(lower, &column(&halved, at))).collect();
    let (axes, lengths) = axes(ball);
    let kept: Vec<f64> = lengths.into_iter().map(|length| length.min(1.0)).collect();
    // L V diag Vᵀ Lᵀ
    let spread = |row: &[f64], axis: usize| -> f64 {
        row.iter().zip(&axes).map(|(l, v)| l * v[axis]).sum()
    };
    let entry = |i: usize, j: usize| {
        let terms = kept.iter().enumerate();
        terms.map(|(k, kept)| kept * spread(&lower[i], k) * spread(&lower[j], k)).sum()
    };
    (0..count).map(|i| (0..count).map(|j| entry(i, j)).collect()).collect()
}

/// Axes (as columns) and variances along them of a small covariance.
///
/// # Source
/// C. G. J. Jacobi's rotations (1846), as in any textbook; from memory.
fn axes(mut a: Vec<Vec<f64>>) -> (Vec<Vec<f64>>, Vec<f64>) {
    let count = a.len();
    let unit = |i: usize| (0..count).map(|j| f64::from(u8::from(i == j))).collect();
    let mut v: Vec<Vec<f64>> = (0..count).map(unit).collect();
    for _ in 0..SWEEPS {
        for p in 0..count {
            for q in p + 1..count {
                if a[p][q].abs() < f64::MIN_POSITIVE {
                    continue;
                }
                let angle = 0.5 * libm::atan2(2.0 * a[p][q], a[p][p] - a[q][q]);
                let (s, c) = (libm::sin(angle), libm::cos(angle));
                for row in a.iter_mut().chain(v.iter_mut()) {
                    (row[p], row[q]) = (c * row[p] + s * row[q], c * row[q] - s * row[p]);
                }
                let (above, below) = a.split_at_mut(q);
                for (one, other) in above[p].iter_mut().zip(&mut below[0]) {
                    (*one, *other) = (c * *one + s * *other, c * *other - s * *one);
                }
            }
        }
    }
    let lengths = (0..count).map(|at| a[at][at]).collect();
    (v, lengths)
}

/// Rounds of rotations: three numbers need four.
const SWEEPS: usize = 12;

/// x with L x = b.
fn forward(lower: &[Vec<f64>], b: &[f64]) -> Vec<f64> {
    let mut x = b.to_vec();
    for i in 0..x.len() {
        let known: f64 = (0..i).map(|j| lower[i][j] * x[j]).sum();
        x[i] = (x[i] - known) / lower[i][i];
    }
    x
}

/// x with L Lᵀ x = b.
pub(super) fn solved(lower: &[Vec<f64>], b: &[f64]) -> Vec<f64> {
    let count = b.len();
    let mut x = forward(lower, b);
    for i in (0..count).rev() {
        let known: f64 = (i + 1..count).map(|j| lower[j][i] * x[j]).sum();
        x[i] = (x[i] - known) / lower[i][i];
    }
    x
}
