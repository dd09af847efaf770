//! What a handful of numbers looks like: center and spread.

use super::distribution::student;
use super::linear::LARGEST;
use super::sum::total;
use thiserror::Error;

/// Why numbers cannot be summarized.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum SummaryError {
    /// None at all.
    #[error("there are no numbers to summarize; add at least one")]
    Empty,
    /// A number is not finite, or too large to be squared.
    #[error("number {at} is {value}, which cannot be used; correct it or set it aside")]
    OutOfReach {
        /// Which number, from 0.
        at: usize,
        /// The number.
        value: f64,
    },
}

/// Center and spread of numbers, all in the unit of the numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// How many.
    pub n: usize,
    /// Mean.
    pub mean: f64,
    /// Middle number, or the mean of the two in the middle.
    pub median: f64,
    /// Mean absolute deviation from the mean: the MAD of school mathematics (Common Core State
    /// Standards for Mathematics 6.SP.B.5c), not the median deviation of that name.
    pub mad: f64,
    /// Standard deviation with n − 1, where there are two numbers or more.
    pub sd: Option<f64>,
    /// Smallest.
    pub low: f64,
    /// Largest.
    pub high: f64,
}

impl Summary {
    /// Largest less smallest.
    pub fn range(&self) -> f64 {
        self.high - self.low
    }

    /// Half the width of the 95 % interval of the mean (unit of the numbers), where there are two
    /// numbers or more.
    ///
    /// ```text
    /// t(0.975, n − 1) · s / √n
    /// ```
    ///
    /// # Source
    /// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.2.
    pub fn half_width_95(&self) -> Option<f64> {
        let sd = self.sd?;
        let n = self.n as f64;
        Some(student::quantile(0.975, n - 1.0) * sd / n.sqrt())
    }
}

/// Summarizes numbers.
///
/// # Accuracy
/// Mean to the last digit or nearly; deviations are taken from it before they are squared, and
/// what rounding left in the mean is corrected (Chan, Golub & LeVeque 1983, *Am. Stat.* 37,
/// 242–247, corrected two-pass algorithm).
/// # Errors
/// [`SummaryError`] for no numbers, and for numbers that are not finite or beyond [`LARGEST`].
pub fn summarize(numbers: &[f64]) -> Result<Summary, SummaryError> {
    let n = numbers.len();
    let mut sorted = numbers.to_vec();
    sorted.sort_by(f64::total_cmp);
    let (Some(&low), Some(&high)) = (sorted.first(), sorted.last()) else {
        return Err(SummaryError::Empty);
    };
    let beyond = |v: &f64| v.is_nan() || v.abs() > LARGEST;
    if let Some(at) = numbers.iter().position(beyond) {
        return Err(SummaryError::OutOfReach { at, value: numbers[at] });
    }
    let mean = mean(numbers);
    let mad = total(numbers.iter().map(|v| (v - mean).abs())) / n as f64;
    let sd = (n > 1).then(|| libm::sqrt(squared_deviations(numbers, mean) / (n - 1) as f64));
    let median = 0.5 * (sorted[(n - 1) / 2] + sorted[n / 2]);
    Ok(Summary { n, mean, median, mad, sd, low, high })
}

/// Mean (unit of the numbers); NaN for none.
pub(super) fn mean(numbers: &[f64]) -> f64 {
    total(numbers.iter().copied()) / numbers.len() as f64
}

/// Sum of squared deviations from `mean` (unit squared), corrected for its rounding.
pub(super) fn squared_deviations(numbers: &[f64], mean: f64) -> f64 {
    let squares = total(numbers.iter().map(|v| (v - mean) * (v - mean)));
    let left_over = total(numbers.iter().map(|v| v - mean));
    squares - left_over * left_over / numbers.len() as f64
}
