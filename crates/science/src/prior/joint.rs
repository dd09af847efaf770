//! Numbers that are known together.

use super::Row;
use super::key::Key;
use super::learned::Learned;
use crate::cholesky::lower_triangle;

/// Part of a variance by which it may be off where a table was rounded in a file (1).
const ROUNDED: f64 = 1e-6;

/// A normal distribution of some of the day's deviates: mean + root · u with independent u.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Joint {
    pub(crate) keys: Vec<Key>,
    pub(crate) means: Vec<f64>,
    /// Lower triangle, row by row: root rootᵀ is the covariance.
    pub(crate) root: Vec<Vec<f64>>,
}

impl Joint {
    /// Of what passed [`Learned::check`]; names that no row has are left out.
    pub(super) fn new(learned: &Learned, rows: &[Row]) -> Self {
        let learned = learned.only(|name| Key::read(name, rows).is_some());
        let keys = learned.names.iter().filter_map(|name| Key::read(name, rows)).collect();
        Self { keys, root: lower_triangle(&learned.covariance), means: learned.means }
    }

    pub(super) fn learned(&self) -> Learned {
        Learned {
            names: self.keys.iter().map(Key::to_string).collect(),
            means: self.means.clone(),
            covariance: squared(&self.root),
        }
    }

    /// The lower triangle of a covariance, or the place of the first row that cannot be.
    pub(super) fn root_of(covariance: &[Vec<f64>]) -> Result<Vec<Vec<f64>>, usize> {
        let root = lower_triangle(covariance);
        let again = squared(&root);
        for (at, row) in covariance.iter().enumerate() {
            for (column, entry) in row.iter().enumerate() {
                let size = (again[at][at] * again[column][column]).sqrt();
                let off = (entry - again[at][column]).abs();
                if off > ROUNDED * size.max(f64::MIN_POSITIVE) {
                    return Err(at);
                }
            }
        }
        Ok(root)
    }

    /// Covariance of the deviates at two places.
    pub(super) fn covariance(&self, one: usize, other: usize) -> f64 {
        self.root[one].iter().zip(&self.root[other]).map(|(a, b)| a * b).sum()
    }

    /// Deviate at a place for independent standard normal ones, of which `u` gives the one of a place.
    pub(crate) fn deviate(&self, at: usize, u: impl Fn(usize) -> f64) -> f64 {
        // A number of which nothing was learned keeps its bits: no term but its own is added.
        let terms = self.root[at].iter().enumerate().filter(|(_, part)| **part != 0.0);
        let sum: f64 = terms.map(|(of, part)| part * u(of)).sum();
        if self.means[at] == 0.0 { sum } else { self.means[at] + sum }
    }
}

/// L Lᵀ.
fn squared(root: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let entry = |a: &Vec<f64>, b: &Vec<f64>| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    root.iter().map(|row| root.iter().map(|other| entry(row, other)).collect()).collect()
}
