//! The general linear model by a rank-revealing QR factorization.
//!
//! Columns are taken in the order given; one that the columns before it already explain is set
//! aside, so that the order of the terms decides which sum of squares each of them gets, and a
//! contrast that the design cannot tell is recognized instead of guessed.

use crate::householder::{Mirror, length};
use thiserror::Error;

/// Share of its own length below which a column counts as explained by those before it (1).
const EXPLAINED: f64 = 1e-9;

/// Why a model could not be fitted.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum FitError {
    /// No values at all.
    #[error("there are no values to fit; add at least one")]
    Empty,
    /// A column has another length than the values.
    #[error("column {column} has {found} entries where there are {wanted} values")]
    Uneven {
        /// Which column, from 0.
        column: usize,
        /// Entries found.
        found: usize,
        /// Entries wanted.
        wanted: usize,
    },
    /// A number is not finite, or so large that its square is not.
    #[error("value {row} is {value}, which cannot be squared; correct it or set it aside")]
    OutOfReach {
        /// Which value, from 0.
        row: usize,
        /// The number found.
        value: f64,
    },
}

/// Largest size of a number that the statistics take (same unit as the number): its square and
/// the sum of many such squares are still finite.
pub const LARGEST: f64 = 1e100;

/// A fitted linear model y = X b + rest.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    rows: usize,
    /// Columns of R for the kept columns, then for those set aside, each cut to the rank.
    r: Vec<Vec<f64>>,
    /// Qᵀ y.
    effects: Vec<f64>,
    kept: Vec<usize>,
    set_aside: Vec<usize>,
}

/// A linear combination of coefficients that the design can tell.
#[derive(Debug, Clone, PartialEq)]
pub struct Estimated {
    /// Its estimate (unit of the values).
    pub value: f64,
    /// Its direction: products of two directions are covariances in units of the residual variance.
    direction: Vec<f64>,
}

impl Estimated {
    /// Covariance with another estimate of the same fit, in units of the residual variance (1).
    pub fn covariance(&self, other: &Self) -> f64 {
        self.direction.iter().zip(&other.direction).map(|(a, b)| a * b).sum()
    }

    /// Variance in units of the residual variance (1).
    pub fn variance(&self) -> f64 {
        self.covariance(self)
    }
}

/// Fits y = X b by least squares.
///
/// # Source
/// Householder (1958), *J. ACM* 5, 339–342; Golub & Van Loan, *Matrix Computations*, section 5.2;
/// the order of the columns is kept where possible (limited pivoting), as sequential sums of
/// squares need.
/// # Errors
/// [`FitError`] for no values, columns of another length, or numbers beyond [`LARGEST`].
pub fn fit(columns: &[Vec<f64>], y: &[f64]) -> Result<Fit, FitError> {
    let rows = y.len();
    if rows == 0 {
        return Err(FitError::Empty);
    }
    for (column, entries) in columns.iter().enumerate() {
        if entries.len() != rows {
            return Err(FitError::Uneven { column, found: entries.len(), wanted: rows });
        }
    }
    for entries in columns.iter().map(Vec::as_slice).chain([y]) {
        if let Some((row, &value)) =
            entries.iter().enumerate().find(|(_, v)| v.is_nan() || v.abs() > LARGEST)
        {
            return Err(FitError::OutOfReach { row, value });
        }
    }
    Ok(factorize(columns, y))
}

fn factorize(columns: &[Vec<f64>], y: &[f64]) -> Fit {
    let rows = y.len();
    let mut work = columns.to_vec();
    let mut effects = y.to_vec();
    let (mut kept, mut set_aside) = (Vec::new(), Vec::new());
    for (at, original) in columns.iter().enumerate() {
        let rank = kept.len();
        let left = length(&work[at][rank.min(rows)..]);
        if rank == rows || left <= EXPLAINED * length(original) {
            set_aside.push(at);
            continue;
        }
        let Some((mirror, diagonal)) = Mirror::of(&work[at][rank..]) else {
            set_aside.push(at);
            continue;
        };
        for other in work.iter_mut().skip(at + 1).chain([&mut effects]) {
            mirror.turn(&mut other[rank..]);
        }
        for &aside in &set_aside {
            mirror.turn(&mut work[aside][rank..]);
        }
        work[at][rank] = diagonal;
        kept.push(at);
    }
    let r = kept.iter().chain(&set_aside).map(|&at| work[at][..kept.len()].to_vec()).collect();
    Fit { rows, r, effects, kept, set_aside }
}

impl Fit {
    /// Number of independent columns.
    pub fn rank(&self) -> usize {
        self.kept.len()
    }

    /// Residual degrees of freedom.
    pub fn df(&self) -> usize {
        self.rows - self.rank()
    }

    /// Residual sum of squares (unit of the values, squared).
    pub fn residual_ss(&self) -> f64 {
        self.effects[self.rank()..].iter().map(|e| e * e).sum()
    }

    /// Sum of squares and degrees of freedom of the columns in `range`, after all columns before.
    pub fn term(&self, range: std::ops::Range<usize>) -> (f64, usize) {
        let mut ss = 0.0;
        let mut df = 0;
        for (effect, at) in self.effects.iter().zip(&self.kept) {
            if range.contains(at) {
                ss += effect * effect;
                df += 1;
            }
        }
        (ss, df)
    }

    /// The combination Σ weights·coefficients, or `None` if the design cannot tell it.
    ///
    /// A combination can be told when it is a combination of rows of the design (Searle 1971,
    /// *Linear Models*, section 5.4, from memory).
    pub fn estimate(&self, weights: &[f64]) -> Option<Estimated> {
        let rank = self.rank();
        let weight = |at: &usize| weights.get(*at).copied().unwrap_or(0.0);
        // Forward substitution in Rᵀ d = w.
        let mut direction = vec![0.0; rank];
        for (i, at) in self.kept.iter().enumerate() {
            let known: f64 = (0..i).map(|j| self.r[i][j] * direction[j]).sum();
            direction[i] = (weight(at) - known) / self.r[i][i];
        }
        let size = weights.iter().fold(1.0_f64, |most, w| most.max(w.abs()));
        for (column, at) in self.r[rank..].iter().zip(&self.set_aside) {
            let implied: f64 = column.iter().zip(&direction).map(|(r, d)| r * d).sum();
            if (weight(at) - implied).abs() > 1e-7 * size {
                return None;
            }
        }
        let value = direction.iter().zip(&self.effects).map(|(d, e)| d * e).sum();
        Some(Estimated { value, direction })
    }
}
