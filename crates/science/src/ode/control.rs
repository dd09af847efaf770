//! Tolerances, error norms and the choice of the next step.

use super::System;

/// How close a solution must be: the local error of every state at most
/// `absolute + relative · |y|`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance<const N: usize> {
    /// Relative part (1).
    pub relative: f64,
    /// Absolute part, one for each state (unit of the state).
    pub absolute: [f64; N],
}

impl<const N: usize> Tolerance<N> {
    /// The same absolute tolerance for every state.
    pub const fn uniform(relative: f64, absolute: f64) -> Self {
        Self { relative, absolute: [absolute; N] }
    }

    /// Largest share of its allowance that any part of `error` takes (1); not-a-number if any part
    /// is.
    ///
    /// The allowance goes by the state at the `end` of the step, so that what has just run out is
    /// not driven below zero by an error that was small beside what there had been.
    pub(super) fn norm(&self, error: &[f64; N], end: &[f64; N]) -> f64 {
        let shares: [f64; N] = core::array::from_fn(|i| {
            error[i].abs() / (self.absolute[i] + self.relative * end[i].abs())
        });
        let mut most: f64 = 0.0;
        for share in shares {
            if share > most || share.is_nan() {
                most = share;
            }
            if share.is_nan() {
                break;
            }
        }
        most
    }
}

/// Why an integration gave up.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum OdeError {
    /// The rates gave no number.
    #[error("the rates of change are not numbers at time {t}")]
    NotFinite {
        /// Time of the failure.
        t: f64,
    },
    /// The step became so small that time no longer moved.
    #[error("the step shrank to {step:e} at time {t}")]
    StepTooSmall {
        /// Time of the failure.
        t: f64,
        /// The last step tried.
        step: f64,
    },
    /// More steps than any bag should need.
    #[error("no end after {steps} steps; time {t} was reached")]
    TooManySteps {
        /// Time reached.
        t: f64,
        /// Steps taken.
        steps: usize,
    },
}

/// Steps after which a solver gives up.
pub(super) const MOST_STEPS: usize = 500_000;

/// Whether a step of `h` no longer moves time on.
pub(super) fn stands_still(t: f64, h: f64) -> bool {
    h.abs() <= t.abs() * f64::EPSILON * 4.0 || h.abs() < f64::MIN_POSITIVE * 1e10
}

/// A first step: the size for which an explicit Euler step would err by about a hundredth of the
/// tolerance, held down by the curvature.
///
/// # Source
/// E. Hairer, S. P. Nørsett, G. Wanner, *Solving Ordinary Differential Equations I*, 2nd ed.
/// (1993), section II.4, "Starting step size".
pub(super) fn first_step<const N: usize, S: System<N>>(
    system: &S,
    t: f64,
    y: &[f64; N],
    rates: &[f64; N],
    span: f64,
    order: f64,
    tolerance: &Tolerance<N>,
) -> f64 {
    let size = tolerance.norm(y, y);
    let slope = tolerance.norm(rates, y);
    let guess = if size < 1e-5 || slope < 1e-5 { 1e-6 } else { 0.01 * size / slope };
    let guess = guess.min(span);
    let ahead: [f64; N] = core::array::from_fn(|i| y[i] + guess * rates[i]);
    let later = system.rates(t + guess, &ahead);
    let change: [f64; N] = core::array::from_fn(|i| later[i] - rates[i]);
    let bend = tolerance.norm(&change, y) / guess;
    let steepest = slope.max(bend);
    let second = if steepest.is_nan() {
        guess
    } else if steepest <= 1e-15 {
        (guess * 1e-3).max(1e-6)
    } else {
        libm::pow(0.01 / steepest, 1.0 / order)
    };
    (100.0 * guess).min(second).min(span)
}
