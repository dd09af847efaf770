//! Nonlinear least squares by a trust region.

use super::problem::Problem;
use super::triangle::Triangle;
use super::trust::{self, Step};
use crate::householder::length;
use thiserror::Error;

/// Radius of the first trust region, as a share of the scaled length of the start (1).
const FIRST_RADIUS: f64 = 10.0;
/// Steps that are tried at most.
const ROUNDS: usize = 2_000;
/// A step that gains less than this share of the sum of squares has arrived: rounding hides it (1).
const GAINED: f64 = 4.0 * f64::EPSILON;
/// Where the residuals can still be made less along the model by this share of what is left, the
/// search has not arrived (1). D. M. Bates & D. G. Watts, Technometrics 23, 179–183 (1981).
const ARRIVED: f64 = 1e-3;

/// Fitted parameters.
#[derive(Debug, Clone, PartialEq)]
pub struct Estimates {
    /// The parameters, in the order of the problem.
    pub parameters: Vec<f64>,
    /// Sum of squared residuals.
    pub residual_ss: f64,
    /// Residuals less parameters.
    pub df: usize,
    /// (JᵀJ)⁻¹: covariances in units of the residual variance. `None` where the data cannot tell the
    /// parameters apart.
    pub unscaled_covariance: Option<Vec<Vec<f64>>>,
    /// How much of the residuals the parameters could still take up (1); at the minimum 0.
    pub relative_offset: f64,
    /// Whether the search arrived.
    pub converged: bool,
    /// Steps that were tried.
    pub rounds: usize,
}

/// Why nothing could be fitted.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum FitError {
    /// Fewer residuals than parameters.
    #[error(
        "{residuals} values cannot tell {parameters} parameters; measure more or fit fewer"
    )]
    TooFew {
        /// Values.
        residuals: usize,
        /// Parameters.
        parameters: usize,
    },
    /// The start is no point of the model.
    #[error("the model gives no number at the parameters that the search starts from")]
    NoStart,
}

impl Estimates {
    /// Variance of a residual (unit of the residuals squared); `None` without degrees of freedom.
    pub fn residual_variance(&self) -> Option<f64> {
        (self.df > 0).then(|| self.residual_ss / self.df as f64)
    }

    /// Standard error of each parameter, by the linear approximation at the minimum. `None` without
    /// degrees of freedom, or where the data cannot tell the parameters apart.
    pub fn standard_errors(&self) -> Option<Vec<f64>> {
        let (variance, covariance) =
            (self.residual_variance()?, self.unscaled_covariance.as_ref()?);
        let error = |(at, row): (usize, &Vec<f64>)| libm::sqrt(variance * row[at]);
        Some(covariance.iter().enumerate().map(error).collect())
    }
}

/// Where a search stands.
struct Stand {
    parameters: Vec<f64>,
    residuals: Vec<f64>,
    /// Length of the residuals.
    left: f64,
}

impl Stand {
    fn at(problem: &impl Problem, parameters: Vec<f64>) -> Self {
        let mut residuals = vec![0.0; problem.count()];
        problem.residuals(&parameters, &mut residuals);
        let left = length(&residuals);
        let left = if residuals.iter().all(|r| r.is_finite()) { left } else { f64::INFINITY };
        Self { parameters, residuals, left }
    }

    fn triangle(&self, slopes: Vec<Vec<f64>>) -> Triangle {
        Triangle::of(slopes, self.residuals.clone())
    }

    fn moved(&self, problem: &impl Problem, change: &[f64]) -> Self {
        Self::at(problem, self.parameters.iter().zip(change).map(|(p, c)| p + c).collect())
    }
}

/// Finds the parameters with the least sum of squared residuals, from a start.
///
/// A trust region scaled by how much each parameter has moved the residuals so far (J. J. Moré, Lect.
/// Notes Math. 630, 105–116 (1978)), then undamped steps for as long as they come nearer. It finds the
/// minimum in whose valley the start lies, which need not be the least of all.
///
/// # Errors
/// [`FitError`] for too few values, or a start at which the model gives no number.
pub fn least_squares(problem: &impl Problem, start: &[f64]) -> Result<Estimates, FitError> {
    let (stand, rounds) = search(problem, start)?;
    Ok(polished(problem, stand, rounds))
}

/// Where the search ends, and after how many steps.
fn search(problem: &impl Problem, start: &[f64]) -> Result<(Stand, usize), FitError> {
    let (residuals, parameters) = (problem.count(), start.len());
    if residuals < parameters || parameters == 0 {
        return Err(FitError::TooFew { residuals, parameters });
    }
    let mut stand = Stand::at(problem, start.to_vec());
    if !stand.left.is_finite() {
        return Err(FitError::NoStart);
    }
    let mut scale = vec![0.0; parameters];
    let mut radius = None;
    let mut rounds = 0;
    'search: while rounds < ROUNDS && stand.left > 0.0 {
        let slopes = problem.slopes(&stand.parameters);
        for (scale, column) in scale.iter_mut().zip(&slopes) {
            let long = length(column);
            *scale = if long.is_finite() { f64::max(*scale, long) } else { *scale };
            if *scale <= 0.0 {
                *scale = 1.0;
            }
        }
        let triangle = stand.triangle(slopes);
        let radius = radius.get_or_insert_with(|| first_radius(&stand.parameters, &scale));
        loop {
            rounds += 1;
            let step = trust::step(&triangle, &scale, *radius);
            let next = stand.moved(problem, &step.change);
            let tried = Tried::of(&stand, &next, &triangle, &step);
            *radius = tried.radius(*radius, &step);
            let far = length(&scaled(&stand.parameters, &scale));
            let arrived = tried.arrived() || *radius <= GAINED * far;
            let better = tried.ratio >= 1e-4;
            if better {
                stand = next;
            }
            if arrived || rounds >= ROUNDS {
                break 'search;
            }
            if better {
                break;
            }
        }
    }
    Ok((stand, rounds))
}

fn scaled(parameters: &[f64], scale: &[f64]) -> Vec<f64> {
    parameters.iter().zip(scale).map(|(p, d)| p * d).collect()
}

fn first_radius(parameters: &[f64], scale: &[f64]) -> f64 {
    let far = length(&scaled(parameters, scale));
    if far > 0.0 { FIRST_RADIUS * far } else { FIRST_RADIUS }
}

/// What a step gained of the sum of squares, and what the linear model promised, as shares.
struct Tried {
    gained: f64,
    promised: f64,
    ratio: f64,
}

impl Tried {
    fn of(from: &Stand, to: &Stand, triangle: &Triangle, step: &Step) -> Self {
        let share = |length: f64| (length / from.left) * (length / from.left);
        let along = share(length(&triangle.times(&step.change)));
        let damped = step.lambda * share(step.length);
        let gained = if to.left.is_finite() { 1.0 - share(to.left) } else { -1.0 };
        let promised = along + 2.0 * damped;
        let ratio = if promised > 0.0 { gained / promised } else { 0.0 };
        Self { gained, promised, ratio }
    }

    fn arrived(&self) -> bool {
        self.promised <= GAINED && self.gained.abs() <= GAINED
    }

    fn radius(&self, radius: f64, step: &Step) -> f64 {
        if self.ratio <= 0.25 {
            0.25 * radius.min(step.length.max(f64::MIN_POSITIVE))
        } else if self.ratio >= 0.75 || step.lambda == 0.0 {
            (2.0 * step.length).max(radius * 0.5)
        } else {
            radius
        }
    }
}

/// Takes undamped steps for as long as they come nearer to the minimum, which the sum of squares is
/// too flat to show, and says how near it is.
fn polished(problem: &impl Problem, mut stand: Stand, rounds: usize) -> Estimates {
    let mut triangle = stand.triangle(problem.slopes(&stand.parameters));
    let mut near = offset(&stand, &triangle);
    for _ in 0..20 {
        if !triangle.is_whole() || near <= 0.0 {
            break;
        }
        let next = stand.moved(problem, &triangle.solution());
        if next.left > stand.left * (1.0 + 1e-9) || next.left.is_nan() {
            break;
        }
        let factor = next.triangle(problem.slopes(&next.parameters));
        let nearer = offset(&next, &factor);
        if nearer >= near || nearer.is_nan() {
            break;
        }
        (stand, triangle, near) = (next, factor, nearer);
    }
    told(problem, stand, &triangle, near, rounds)
}

/// How much of the residuals the parameters could still take up (1).
fn offset(stand: &Stand, triangle: &Triangle) -> f64 {
    if stand.left > 0.0 { length(triangle.turned()) / stand.left } else { 0.0 }
}

fn told(
    problem: &impl Problem,
    stand: Stand,
    triangle: &Triangle,
    near: f64,
    rounds: usize,
) -> Estimates {
    Estimates {
        residual_ss: stand.left * stand.left,
        df: problem.count() - stand.parameters.len(),
        unscaled_covariance: triangle.is_whole().then(|| triangle.covariance()),
        converged: near < ARRIVED || stand.left <= 0.0,
        relative_offset: near,
        parameters: stand.parameters,
        rounds,
    }
}
