//! Small symmetric matrices, row by row.

/// A square matrix, row by row.
pub(super) type Matrix = Vec<Vec<f64>>;

/// A matrix by its entries.
pub(super) fn of(count: usize, entry: impl Fn(usize, usize) -> f64) -> Matrix {
    (0..count).map(|row| (0..count).map(|column| entry(row, column)).collect()).collect()
}

/// A x.
pub(super) fn times(matrix: &[Vec<f64>], x: &[f64]) -> Vec<f64> {
    matrix.iter().map(|row| row.iter().zip(x).map(|(a, x)| a * x).sum()).collect()
}

/// A⁻¹ of a symmetric positive definite matrix, by L with L Lᵀ = A; `None` if it is none.
pub(super) fn inverse(matrix: &[Vec<f64>]) -> Option<Matrix> {
    let count = matrix.len();
    let mut lower = of(count, |_, _| 0.0);
    for (row, line) in matrix.iter().enumerate() {
        for (column, value) in line.iter().enumerate().take(row + 1) {
            let known: f64 = (0..column).map(|at| lower[row][at] * lower[column][at]).sum();
            let left = value - known;
            if column < row {
                lower[row][column] = left / lower[column][column];
            } else if left > 0.0 {
                lower[row][row] = left.sqrt();
            } else {
                return None;
            }
        }
    }
    // L⁻¹, column by column, and A⁻¹ = L⁻ᵀ L⁻¹.
    let mut left = of(count, |_, _| 0.0);
    for column in 0..count {
        left[column][column] = 1.0 / lower[column][column];
        for (row, line) in lower.iter().enumerate().skip(column + 1) {
            let known: f64 = (column..row).map(|at| line[at] * left[at][column]).sum();
            left[row][column] = -known / line[row];
        }
    }
    Some(of(count, |a, b| (a.max(b)..count).map(|at| left[at][a] * left[at][b]).sum()))
}

/// A symmetric matrix with the ruler's variance (mm²) on its diagonal.
pub(super) fn with_ruler(
    count: usize,
    ruler: f64,
    between: impl Fn(usize, usize) -> f64,
) -> Vec<Vec<f64>> {
    let value = |row: usize, column: usize| {
        let ruler = if row == column { ruler } else { 0.0 };
        between(row, column) + ruler
    };
    (0..count).map(|row| (0..count).map(|column| value(row, column)).collect()).collect()
}
