//! Two sets of numbers: Student's, Welch's and the paired t.

use super::distribution::student;
use super::summary::{SummaryError, squared_deviations, summarize};
use thiserror::Error;

/// A difference of two means with its test.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TTest {
    /// First less second (unit of the numbers).
    pub difference: f64,
    /// Standard error of the difference (unit of the numbers).
    pub se: f64,
    /// Difference over its standard error (1).
    pub t: f64,
    /// Degrees of freedom, a fraction for unequal spreads.
    pub df: f64,
    /// Two-sided chance of such a t without a difference (1).
    pub p: f64,
    /// Low end of the 95 % interval (unit of the numbers).
    pub low: f64,
    /// High end of the 95 % interval (unit of the numbers).
    pub high: f64,
}

/// Why two sets cannot be tested.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum TTestError {
    /// A set cannot be summarized.
    #[error(transparent)]
    Numbers(#[from] SummaryError),
    /// Not enough numbers to see a spread.
    #[error(
        "{first} and {second} numbers are too few to see how much they differ by chance; at least two of each are needed"
    )]
    TooFew {
        /// Numbers in the first set.
        first: usize,
        /// Numbers in the second set.
        second: usize,
    },
    /// Pairs of which one half is missing.
    #[error("{first} and {second} numbers do not make pairs; complete the pairs")]
    Unpaired {
        /// Numbers in the first set.
        first: usize,
        /// Numbers in the second set.
        second: usize,
    },
    /// All numbers of a set are equal, in both sets.
    #[error("the numbers do not differ among themselves at all, so chance cannot be judged")]
    NoSpread,
}

/// Compares two means without taking their spreads to be equal.
///
/// ```text
/// t = (x̄−ȳ)/√(a+b)    a = s_x²/n_x    b = s_y²/n_y    df = (a+b)² / (a²/(n_x−1) + b²/(n_y−1))
/// ```
///
/// # Source
/// Welch (1947), *Biometrika* 34, 28–35.
/// # Errors
/// [`TTestError`] for fewer than two numbers in a set, or no spread at all.
pub fn welch(first: &[f64], second: &[f64]) -> Result<TTest, TTestError> {
    let (x, y) = (Moments::of(first)?, Moments::of(second)?);
    enough(&x, &y)?;
    let (a, b) = (x.squares / (x.n - 1.0) / x.n, y.squares / (y.n - 1.0) / y.n);
    let df = (a + b) * (a + b) / (a * a / (x.n - 1.0) + b * b / (y.n - 1.0));
    test(x.mean - y.mean, libm::sqrt(a + b), df)
}

/// Compares two means, taking their spreads to be equal.
///
/// # Source
/// Student (1908), *Biometrika* 6, 1–25, in Fisher's form.
/// # Errors
/// [`TTestError`] for fewer than two numbers in a set, or no spread at all.
pub fn equal_spread(first: &[f64], second: &[f64]) -> Result<TTest, TTestError> {
    let (x, y) = (Moments::of(first)?, Moments::of(second)?);
    enough(&x, &y)?;
    let df = x.n + y.n - 2.0;
    let variance = (x.squares + y.squares) / df;
    test(x.mean - y.mean, libm::sqrt(variance * (1.0 / x.n + 1.0 / y.n)), df)
}

/// Compares two halves of pairs, such as two bags of one group, through their differences.
///
/// # Source
/// Student (1908), *Biometrika* 6, 1–25.
/// # Errors
/// [`TTestError`] for uneven sets, fewer than two pairs, or differences that are all equal.
pub fn paired(first: &[f64], second: &[f64]) -> Result<TTest, TTestError> {
    if first.len() != second.len() {
        return Err(TTestError::Unpaired { first: first.len(), second: second.len() });
    }
    let differences: Vec<f64> = first.iter().zip(second).map(|(a, b)| a - b).collect();
    let pairs = Moments::of(&differences)?;
    enough(&pairs, &pairs)?;
    let df = pairs.n - 1.0;
    test(pairs.mean, libm::sqrt(pairs.squares / df / pairs.n), df)
}

struct Moments {
    n: f64,
    mean: f64,
    squares: f64,
}

impl Moments {
    fn of(numbers: &[f64]) -> Result<Self, SummaryError> {
        let mean = summarize(numbers)?.mean;
        Ok(Self { n: numbers.len() as f64, mean, squares: squared_deviations(numbers, mean) })
    }
}

fn enough(x: &Moments, y: &Moments) -> Result<(), TTestError> {
    if x.n < 2.0 || y.n < 2.0 {
        return Err(TTestError::TooFew { first: x.n as usize, second: y.n as usize });
    }
    // Below this the squares are rounding of the arithmetic, not numbers that differ.
    let size = x.mean.abs().max(y.mean.abs());
    let rounding = (1e-14 * size) * (1e-14 * size) * (x.n + y.n);
    if x.squares + y.squares <= rounding { Err(TTestError::NoSpread) } else { Ok(()) }
}

fn test(difference: f64, se: f64, df: f64) -> Result<TTest, TTestError> {
    let t = difference / se;
    let half = se * student::upper_quantile(0.025, df);
    let p = student::two_sided(t, df);
    if !(t.is_finite() && half.is_finite() && p.is_finite()) {
        return Err(TTestError::NoSpread);
    }
    Ok(TTest { difference, se, t, df, p, low: difference - half, high: difference + half })
}
