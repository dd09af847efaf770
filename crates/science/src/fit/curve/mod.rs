//! Six curves that lessons meet, fitted to points; starts are found by themselves.

mod refused;
mod scaled;
mod shape;
mod starts;

use super::least_squares::{Estimates, least_squares};
use super::problem::Problem;
use crate::statistics::distribution::student;
use crate::statistics::linear::LARGEST;
use crate::statistics::slope;
use scaled::Scaled;

pub use refused::CurveError;
pub use shape::Shape;

/// A curve laid through points.
#[derive(Debug, Clone, PartialEq)]
pub struct CurveFit {
    /// Its shape.
    pub shape: Shape,
    /// Its parameters, in the order of [`Shape::names`].
    pub parameters: Vec<Parameter>,
    /// Sum of squared residuals (unit of y, squared).
    pub rss: f64,
    /// Points less parameters.
    pub df: usize,
    /// Whether the search arrived at a least sum of squares at which the points tell the parameters
    /// apart. Where it is `false` the numbers are only where the search ended.
    pub converged: bool,
}

/// One parameter with its doubt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameter {
    /// What it is called in the formula.
    pub name: &'static str,
    /// Its estimate (unit by [`Shape::formula`]).
    pub value: f64,
    /// Its standard error and 95 % interval; none where the points cannot tell it.
    pub doubt: Option<Doubt>,
}

/// How far a parameter is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Doubt {
    /// Standard error, by the linear approximation at the minimum.
    pub se: f64,
    /// Low end of the 95 % interval by Student's t.
    pub low: f64,
    /// High end of that interval.
    pub high: f64,
}

impl CurveFit {
    /// Height of the curve at `x` (unit of y).
    pub fn at(&self, x: f64) -> f64 {
        let values: Vec<f64> = self.parameters.iter().map(|p| p.value).collect();
        self.shape.at(&values, x)
    }

    /// How far points lie from the curve (unit of y): √(rss/df).
    pub fn residual_sd(&self) -> f64 {
        libm::sqrt(self.rss / self.df as f64)
    }
}

/// A shape with points.
struct Points<'a> {
    shape: Shape,
    x: &'a [f64],
    y: &'a [f64],
}

impl Problem for Points<'_> {
    fn count(&self) -> usize {
        self.y.len()
    }

    fn residuals(&self, parameters: &[f64], out: &mut [f64]) {
        for ((out, &x), y) in out.iter_mut().zip(self.x).zip(self.y) {
            *out = y - self.shape.at(parameters, x);
        }
    }

    fn slopes(&self, parameters: &[f64]) -> Vec<Vec<f64>> {
        let mut columns = vec![Vec::with_capacity(self.x.len()); parameters.len()];
        for &x in self.x {
            for (column, slope) in columns.iter_mut().zip(self.shape.slopes(parameters, x)) {
                column.push(slope);
            }
        }
        columns
    }
}

/// Lays a curve of this shape through points by least squares.
///
/// The line is worked out directly. For the others, starts come from a grid over all parameters but
/// the height, which is the best for each; from the best few, and from a straightened form where
/// there is one, the search goes to its end, and the least sum of squares counts.
///
/// # Accuracy
/// NIST's Misra1a, BoxBOD and Rat43, and R's data sets, to 9 digits without a start being given (tests).
/// # Errors
/// [`CurveError`] for too few points, points that are not usable, or no fit at all.
pub fn curve(shape: Shape, x: &[f64], y: &[f64]) -> Result<CurveFit, CurveError> {
    checked(shape, x, y)?;
    if shape == Shape::Line {
        return line(x, y);
    }
    let scaled = Scaled::of(x, y);
    let found = best(shape, &scaled.x, &scaled.y).ok_or(CurveError::NoFit)?;
    let fit = told(shape, &scaled, &found);
    let finite = |p: &Parameter| {
        p.value.is_finite()
            && p.doubt
                .is_none_or(|d| d.se.is_finite() && d.low.is_finite() && d.high.is_finite())
    };
    let whole = fit.rss.is_finite() && fit.parameters.iter().all(finite);
    if whole { Ok(fit) } else { Err(CurveError::NoFit) }
}

fn checked(shape: Shape, x: &[f64], y: &[f64]) -> Result<(), CurveError> {
    if x.len() != y.len() {
        return Err(CurveError::Uneven { x: x.len(), y: y.len() });
    }
    let beyond = |v: f64| v.is_nan() || v.abs() > LARGEST;
    if let Some(at) = x.iter().zip(y).position(|(&x, &y)| beyond(x) || beyond(y)) {
        return Err(CurveError::OutOfReach { at, x: x[at], y: y[at] });
    }
    let count = shape.names().len();
    if y.len() <= count {
        return Err(CurveError::TooFew { found: y.len(), parameters: count });
    }
    let mut places = x.to_vec();
    places.sort_by(f64::total_cmp);
    // Zero and minus zero are one place, though they sort apart.
    let places = places.chunk_by(|a, b| a >= b).count();
    if places < count {
        return Err(CurveError::FewPlaces { found: places, needed: count });
    }
    if y.iter().all(|&v| (v - y[0]).abs() <= 0.0) {
        return Err(CurveError::AllEqual { value: y[0] });
    }
    Ok(())
}

fn line(x: &[f64], y: &[f64]) -> Result<CurveFit, CurveError> {
    let line = slope::line(x, y)?;
    let df = line.n - 2;
    let parameter = |(name, (value, se)): (&&'static str, (f64, Option<f64>))| Parameter {
        name,
        value,
        doubt: se.map(|se| Doubt::of(value, se, df)),
    };
    let told = [(line.intercept, line.intercept_se), (line.slope, line.slope_se)];
    let parameters = Shape::Line.names().iter().zip(told).map(parameter).collect();
    let sd = line.residual_sd.unwrap_or(0.0);
    let rss = sd * sd * df as f64;
    Ok(CurveFit { shape: Shape::Line, parameters, rss, df, converged: true })
}

impl Doubt {
    fn of(value: f64, se: f64, df: usize) -> Self {
        let half = se * student::upper_quantile(0.025, df as f64);
        Self { se, low: value - half, high: value + half }
    }
}

/// The least sum of squares that any start leads to.
fn best(shape: Shape, x: &[f64], y: &[f64]) -> Option<Estimates> {
    let (few_x, few_y) = starts::thinned(x, y);
    let few = Points { shape, x: &few_x, y: &few_y };
    let from = |start: Vec<f64>| least_squares(&few, &start).ok();
    let mut tried: Vec<Estimates> =
        starts::starts(shape, &few_x, &few_y).into_iter().filter_map(from).collect();
    if few_x.len() < x.len() {
        let all = Points { shape, x, y };
        let best = least(tried)?;
        tried = least_squares(&all, &best.parameters).into_iter().collect();
    }
    least(tried)
}

/// The one with the least sum of squares; of equal ones, one that arrived.
fn least(tried: Vec<Estimates>) -> Option<Estimates> {
    let least = tried.iter().map(|one| one.residual_ss).fold(f64::INFINITY, f64::min);
    let near = tried.into_iter().filter(|one| one.residual_ss <= least * (1.0 + 1e-9));
    near.max_by_key(|one| one.converged && one.unscaled_covariance.is_some())
}

fn told(shape: Shape, scaled: &Scaled, found: &Estimates) -> CurveFit {
    let errors = found.standard_errors();
    let units = scaled.units(shape);
    let parameters = shape
        .names()
        .iter()
        .zip(&found.parameters)
        .zip(&units)
        .enumerate()
        .map(|(at, ((name, value), unit))| {
            let value = value * unit;
            let se = errors.as_ref().map(|errors| errors[at] * unit);
            Parameter { name, value, doubt: se.map(|se| Doubt::of(value, se, found.df)) }
        })
        .collect();
    // Below this the residuals are rounding of the arithmetic, which has no minimum to arrive at.
    let exact = found.residual_ss <= scaled.y.len() as f64 * 1e-24;
    CurveFit {
        shape,
        parameters,
        rss: found.residual_ss * scaled.y_unit * scaled.y_unit,
        df: found.df,
        converged: (found.converged || exact) && errors.is_some(),
    }
}
