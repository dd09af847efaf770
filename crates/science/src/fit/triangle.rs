//! The triangle R of columns = Q R, with a right-hand side turned along.

use crate::householder::{Mirror, length};

/// Share of its own length that a column must keep beside those before it to count as another (1):
/// above the error of slopes that are worked out by differences.
const INDEPENDENT: f64 = 1e-11;

/// An upper triangle and Qᵀ times the right-hand side.
pub(super) struct Triangle {
    /// Columns of R, each as long as there are columns.
    r: Vec<Vec<f64>>,
    /// Qᵀ times the right-hand side, its first entries.
    turned: Vec<f64>,
}

impl Triangle {
    /// Factorizes; there are at least as many rows as columns.
    pub(super) fn of(mut columns: Vec<Vec<f64>>, mut right: Vec<f64>) -> Self {
        let count = columns.len();
        for at in 0..count {
            let Some((mirror, diagonal)) = Mirror::of(&columns[at][at..]) else { continue };
            for other in columns.iter_mut().skip(at + 1).chain([&mut right]) {
                mirror.turn(&mut other[at..]);
            }
            columns[at][at] = diagonal;
            columns[at][at + 1..].fill(0.0);
        }
        for column in &mut columns {
            column.truncate(count);
        }
        right.truncate(count);
        Self { r: columns, turned: right }
    }

    /// The same stacked on √λ times a diagonal.
    pub(super) fn stacked(&self, diagonal: &[f64], lambda: f64) -> Self {
        let count = self.r.len();
        let root = libm::sqrt(lambda);
        let columns = self.r.iter().zip(diagonal).enumerate().map(|(at, (column, d))| {
            let mut column = column.clone();
            column.resize(2 * count, 0.0);
            column[count + at] = root * d;
            column
        });
        let mut right = self.turned.clone();
        right.resize(2 * count, 0.0);
        Self::of(columns.collect(), right)
    }

    /// Whether the columns are independent.
    pub(super) fn is_whole(&self) -> bool {
        let own =
            |(at, column): (usize, &Vec<f64>)| column[at].abs() > INDEPENDENT * length(column);
        self.r.iter().enumerate().all(own)
    }

    /// The solution of R x = turned.
    pub(super) fn solution(&self) -> Vec<f64> {
        self.back(&self.turned)
    }

    /// The solution of R x = right.
    pub(super) fn back(&self, right: &[f64]) -> Vec<f64> {
        let count = self.r.len();
        let mut x = vec![0.0; count];
        for row in (0..count).rev() {
            let known: f64 = (row + 1..count).map(|at| self.r[at][row] * x[at]).sum();
            x[row] = (right[row] - known) / self.r[row][row];
        }
        x
    }

    /// The solution of Rᵀ x = right.
    pub(super) fn forward(&self, right: &[f64]) -> Vec<f64> {
        let mut x = vec![0.0; self.r.len()];
        for (row, column) in self.r.iter().enumerate() {
            let known: f64 = column[..row].iter().zip(&x).map(|(r, x)| r * x).sum();
            x[row] = (right[row] - known) / column[row];
        }
        x
    }

    /// R x.
    pub(super) fn times(&self, x: &[f64]) -> Vec<f64> {
        let count = self.r.len();
        (0..count).map(|row| (row..count).map(|at| self.r[at][row] * x[at]).sum()).collect()
    }

    /// Rᵀ times the turned right-hand side: the gradient of half the sum of squares, downhill.
    pub(super) fn downhill(&self) -> Vec<f64> {
        let along =
            |column: &Vec<f64>| column.iter().zip(&self.turned).map(|(r, t)| r * t).sum();
        self.r.iter().map(along).collect()
    }

    /// The part of the right-hand side that the columns can still take up.
    pub(super) fn turned(&self) -> &[f64] {
        &self.turned
    }

    /// (Rᵀ R)⁻¹, row by row.
    pub(super) fn covariance(&self) -> Vec<Vec<f64>> {
        let count = self.r.len();
        let column = |at: usize| {
            let mut unit = vec![0.0; count];
            unit[at] = 1.0;
            self.back(&self.forward(&unit))
        };
        (0..count).map(column).collect()
    }
}
