//! How fast a curve rises.

use super::linear::LARGEST;
use super::sum::total;
use thiserror::Error;

/// A straight line through points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Rise of y for one unit of x (unit of y per unit of x).
    pub slope: f64,
    /// Height of the line at x = 0 (unit of y).
    pub intercept: f64,
    /// How far points lie from the line, with n − 2 (unit of y), where there are three or more.
    pub residual_sd: Option<f64>,
    /// Standard error of the slope (unit of y per unit of x), where there are three points or more.
    pub slope_se: Option<f64>,
    /// Standard error of the intercept (unit of y), where there are three points or more.
    pub intercept_se: Option<f64>,
    /// Points.
    pub n: usize,
}

/// The steepest stretch of a curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steepest {
    /// Which point it begins with, from 0.
    pub from: usize,
    /// The line through its points.
    pub line: Line,
}

/// Why no line can be laid.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum LineError {
    /// Fewer than two points.
    #[error("a line needs two points or more, and there are {found}; take more readings")]
    TooFew {
        /// Points found.
        found: usize,
    },
    /// Another number of x than of y.
    #[error("there are {x} times and {y} heights; each reading needs both")]
    Uneven {
        /// Number of x.
        x: usize,
        /// Number of y.
        y: usize,
    },
    /// All points at the same x.
    #[error("all readings are at the same time, so there is no slope; check the times")]
    OneTime,
    /// A number is not finite, or too large to be squared.
    #[error("point {at} is ({x}, {y}), which cannot be used; correct it or set it aside")]
    OutOfReach {
        /// Which point, from 0.
        at: usize,
        /// Its x.
        x: f64,
        /// Its y.
        y: f64,
    },
    /// The stretch asked for has fewer than two points.
    #[error("a stretch of {points} points has no slope; ask for two or more")]
    ShortStretch {
        /// Points asked for.
        points: usize,
    },
}

/// Lays the least-squares line through points.
///
/// ```text
/// slope = Σ (x−x̄)(y−ȳ) / Σ (x−x̄)²      se = s/√Σ(x−x̄)²      s² = Σ rest²/(n−2)
/// ```
///
/// # Source
/// Legendre (1805) and Gauss (1809); Draper & Smith, *Applied Regression Analysis*, chapter 1.
/// # Errors
/// [`LineError`] for fewer than two points, one x only, or numbers that are not finite.
pub fn line(x: &[f64], y: &[f64]) -> Result<Line, LineError> {
    check(x, y)?;
    let n = x.len();
    let count = n as f64;
    let middle_x = total(x.iter().copied()) / count;
    let middle_y = total(y.iter().copied()) / count;
    let spread = total(x.iter().map(|x| (x - middle_x) * (x - middle_x)));
    let reach = x.iter().fold(0.0_f64, |most, x| most.max(x.abs()));
    // Times that differ by rounding only are one time.
    if spread <= count * (1e-14 * reach) * (1e-14 * reach) {
        return Err(LineError::OneTime);
    }
    let along = total(x.iter().zip(y).map(|(x, y)| (x - middle_x) * (y - middle_y)));
    let slope = along / spread;
    let intercept = middle_y - slope * middle_x;
    let rest = |(x, y): (&f64, &f64)| (y - middle_y) - slope * (x - middle_x);
    let squares = total(x.iter().zip(y).map(|point| rest(point) * rest(point)));
    let residual_sd = (n > 2).then(|| libm::sqrt(squares / (count - 2.0)));
    let slope_se = residual_sd.map(|s| s / libm::sqrt(spread));
    let intercept_se =
        residual_sd.map(|s| s * libm::sqrt(1.0 / count + middle_x * middle_x / spread));
    Ok(Line { slope, intercept, residual_sd, slope_se, intercept_se, n })
}

/// Finds the stretch of `points` consecutive readings that rises fastest: of equal ones, the first.
///
/// Points count in the order of their x. `None` where no stretch of that many has a slope.
///
/// # Errors
/// [`LineError`] for a stretch of fewer than two points, and for numbers that are not finite.
pub fn steepest(x: &[f64], y: &[f64], points: usize) -> Result<Option<Steepest>, LineError> {
    if points < 2 {
        return Err(LineError::ShortStretch { points });
    }
    check_numbers(x, y)?;
    let mut order: Vec<usize> = (0..x.len()).collect();
    order.sort_by(|&a, &b| x[a].total_cmp(&x[b]));
    let x: Vec<f64> = order.iter().map(|&i| x[i]).collect();
    let y: Vec<f64> = order.iter().map(|&i| y[i]).collect();
    let mut best: Option<Steepest> = None;
    for (from, (x, y)) in x.windows(points).zip(y.windows(points)).enumerate() {
        let Ok(line) = line(x, y) else { continue };
        if best.is_none_or(|best| line.slope > best.line.slope) {
            best = Some(Steepest { from, line });
        }
    }
    Ok(best)
}

fn check(x: &[f64], y: &[f64]) -> Result<(), LineError> {
    check_numbers(x, y)?;
    if x.len() < 2 { Err(LineError::TooFew { found: x.len() }) } else { Ok(()) }
}

fn check_numbers(x: &[f64], y: &[f64]) -> Result<(), LineError> {
    if x.len() != y.len() {
        return Err(LineError::Uneven { x: x.len(), y: y.len() });
    }
    let beyond = |v: f64| v.is_nan() || v.abs() > LARGEST;
    let at = x.iter().zip(y).position(|(&x, &y)| beyond(x) || beyond(y));
    at.map_or(Ok(()), |at| Err(LineError::OutOfReach { at, x: x[at], y: y[at] }))
}
