//! Triangles of sums of squares and products: which columns stand on their own, and the inverse.

use super::square::{Square, dot};

/// Share of a column's own sum of squares below which it counts as explained by those before (1).
///
/// Sums of squares carry the square of a length: 1e-10 is a length of 1e-5. A treatment with a
/// hundred thousand bags, linked to the others by one of them, is well above it.
const EXPLAINED: f64 = 1e-10;

/// Which columns stand on their own, and what the others are made of.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Independent {
    /// Columns that those before do not explain.
    pub(super) kept: Vec<usize>,
    /// Each other column, as a combination of the kept ones.
    pub(super) aside: Vec<(usize, Vec<f64>)>,
}

impl Independent {
    /// Takes the columns in the order given; `own` are their sums of squares before anything was
    /// taken off.
    pub(super) fn of(products: &Square, own: &[f64]) -> Self {
        let mut kept: Vec<usize> = Vec::new();
        let mut lower: Vec<Vec<f64>> = Vec::new();
        let mut aside = Vec::new();
        for (column, own) in own.iter().enumerate() {
            let mut row: Vec<f64> = Vec::with_capacity(kept.len() + 1);
            for (other, before) in kept.iter().zip(&lower) {
                let known = dot(&row, before);
                row.push((products.at(column, *other) - known) / before[row.len()]);
            }
            let left = products.at(column, column) - dot(&row, &row);
            if left > EXPLAINED * own {
                row.push(libm::sqrt(left));
                lower.push(row);
                kept.push(column);
            } else {
                aside.push((column, back(&lower, row)));
            }
        }
        // Combinations found early lack the columns kept later.
        for (_, parts) in &mut aside {
            parts.resize(kept.len(), 0.0);
        }
        Self { kept, aside }
    }

    /// The weights of a combination of all columns on the kept ones, or `None` if the design cannot
    /// tell the combination.
    pub(super) fn weights(&self, all: &[f64]) -> Option<Vec<f64>> {
        const ROUNDING: f64 = 1e-6;
        let weight = |at: usize| all.get(at).copied().unwrap_or(0.0);
        let kept: Vec<f64> = self.kept.iter().map(|&at| weight(at)).collect();
        let size = all.iter().fold(0.0_f64, |most, w| most.max(w.abs()));
        let told = |(at, parts): &(usize, Vec<f64>)| {
            (weight(*at) - dot(parts, &kept)).abs() <= ROUNDING * size
        };
        (size > 0.0 && self.aside.iter().all(told)).then_some(kept)
    }
}

/// Solves Lᵀ x = b.
fn back(lower: &[Vec<f64>], b: Vec<f64>) -> Vec<f64> {
    let mut x = b;
    for i in (0..x.len()).rev() {
        x[i] /= lower[i][i];
        let (at, value) = (&lower[i], x[i]);
        for (known, l) in x[..i].iter_mut().zip(at) {
            *known -= l * value;
        }
    }
    x
}

/// The triangle of a matrix of full rank.
#[derive(Debug, Clone)]
pub(super) struct Triangle {
    lower: Vec<Vec<f64>>,
}

impl Triangle {
    /// `None` where a direction has no width.
    pub(super) fn of(matrix: &Square) -> Option<Self> {
        let mut lower: Vec<Vec<f64>> = Vec::with_capacity(matrix.size());
        for i in 0..matrix.size() {
            let mut row: Vec<f64> = Vec::with_capacity(i + 1);
            for (j, before) in lower.iter().enumerate() {
                let known = dot(&row, before);
                row.push((matrix.at(i, j) - known) / before[j]);
            }
            let left = matrix.at(i, i) - dot(&row, &row);
            if left.is_nan() || left <= 0.0 {
                return None;
            }
            row.push(libm::sqrt(left));
            lower.push(row);
        }
        Some(Self { lower })
    }

    /// Natural logarithm of the determinant (1).
    pub(super) fn ln_determinant(&self) -> f64 {
        2.0 * self.lower.iter().enumerate().map(|(i, row)| libm::log(row[i])).sum::<f64>()
    }

    /// L⁻¹ b.
    pub(super) fn forward(&self, b: &[f64]) -> Vec<f64> {
        let mut x: Vec<f64> = Vec::with_capacity(b.len());
        for (row, b) in self.lower.iter().zip(b) {
            let known = dot(&x, row);
            x.push((b - known) / row[x.len()]);
        }
        x
    }

    pub(super) fn inverse(&self) -> Square {
        let size = self.lower.len();
        let mut inverse = Square::zero(size);
        for at in 0..size {
            let mut unit = vec![0.0; size];
            unit[at] = 1.0;
            for (i, value) in back(&self.lower, self.forward(&unit)).into_iter().enumerate() {
                inverse.add(i, at, value);
            }
        }
        inverse
    }
}
