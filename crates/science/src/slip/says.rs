//! What bags say of the shares by which a day is above or below what is expected of it.

use super::matrix::{self, Matrix};
use super::nodes::between;
use super::student::Student;
use super::{Followed, scale};

/// Added to an expected rise, of which u and v are shares (mm): shares of next to nothing tell
/// nothing.
pub(super) const AT_LEAST_MM: f64 = 0.5;

/// What one bag, or some, say of u + v at the nodes.
#[derive(Debug, Clone)]
pub(super) struct Says {
    /// How surely: D' C⁻¹ D.
    pub(super) precision: Matrix,
    /// What: D' C⁻¹ (heights − zero − R).
    pub(super) toward: Vec<f64>,
}

impl Says {
    pub(super) fn nothing(count: usize) -> Self {
        Self { precision: matrix::of(count, |_, _| 0.0), toward: vec![0.0; count] }
    }

    pub(super) fn add(&mut self, other: &Self, times: f64) {
        for (row, others) in self.precision.iter_mut().zip(&other.precision) {
            row.iter_mut().zip(others).for_each(|(value, other)| *value += times * other);
        }
        self.toward
            .iter_mut()
            .zip(&other.toward)
            .for_each(|(value, other)| *value += times * other);
    }

    /// Scatter and middle.
    pub(super) fn solved(&self) -> Option<(Matrix, Vec<f64>)> {
        let scatter = matrix::inverse(&self.precision)?;
        let middle = matrix::times(&scatter, &self.toward);
        Some((scatter, middle))
    }

    /// What is said of u by what is said of u + v: Λ − Λ (V⁻¹ + Λ)⁻¹ Λ, and so on.
    pub(super) fn through(&self, own: &Matrix) -> Option<Self> {
        let count = own.len();
        let mut both = matrix::inverse(own)?;
        for (row, said) in both.iter_mut().zip(&self.precision) {
            row.iter_mut().zip(said).for_each(|(value, said)| *value += said);
        }
        let left = matrix::inverse(&both)?;
        let columns: Vec<Vec<f64>> =
            self.precision.iter().map(|row| matrix::times(&left, row)).collect();
        let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
        let precision = matrix::of(count, |a, b| {
            self.precision[a][b] - dot(&self.precision[a], &columns[b])
        });
        let drawn = matrix::times(&left, &self.toward);
        let toward =
            (0..count).map(|at| self.toward[at] - dot(&self.precision[at], &drawn)).collect();
        Some(Self { precision, toward })
    }
}

/// What one bag says, listened to with a weight.
pub(super) fn says(
    bag: &Followed,
    ruler: f64,
    base: &[f64],
    (nodes, weight): (&[f64], f64),
) -> Option<Says> {
    let count = bag.heights.len();
    if count < 2 || nodes.is_empty() {
        return None;
    }
    let minutes = bag.minutes();
    let paces = super::sound::paces(&minutes, base);
    let scatter = matrix::with_ruler(count, ruler, |a, b| {
        scale::ZERO_MM.1 * scale::ZERO_MM.1
            + scale::of_one_bag(
                (minutes[a], base[a], paces[a]),
                (minutes[b], base[b], paces[b]),
            )
    });
    let student = Student::new(count, |a, b| scatter[a][b])?;
    let off: Vec<f64> =
        bag.written().iter().zip(base).map(|(mm, rise)| mm - scale::ZERO_MM.0 - rise).collect();
    let white = student.whitened(&off);
    let mut shares = vec![vec![0.0; count]; nodes.len()];
    for (at, (minute, rise)) in minutes.iter().zip(base).enumerate().skip(1) {
        let (low, high, share) = between(nodes, *minute);
        shares[low][at] += (1.0 - share) * (rise + AT_LEAST_MM);
        shares[high][at] += share * (rise + AT_LEAST_MM);
    }
    let shares: Vec<Vec<f64>> = shares.iter().map(|share| student.whitened(share)).collect();
    let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
    Some(Says {
        precision: matrix::of(nodes.len(), |a, b| weight * dot(&shares[a], &shares[b])),
        toward: shares.iter().map(|share| weight * dot(share, &white)).collect(),
    })
}
