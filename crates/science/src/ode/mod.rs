//! Solvers for ordinary differential equations of fixed size.
//!
//! Two published one-step methods with the same face: [`dopri5`] (explicit, order 5(4)) for bags
//! in which sugar is plentiful, and [`rodas4`] (linearly implicit, order 4(3), L-stable) for stiff
//! ones. [`solve`] starts with the first and goes over to the second when the first one's own
//! test finds the problem stiff. Both keep every linear invariant of the rates (a carbon balance,
//! say): the explicit one to rounding, the implicit one to the rounding of its Jacobian.

pub mod control;
pub mod dense;
pub mod dopri5;
pub mod lockstep;
pub mod matrix;
pub mod rodas4;

pub use control::{OdeError, Tolerance};
pub use dense::Step;

use core::ops::ControlFlow;

/// A system y' = f(t, y) of `N` equations.
pub trait System<const N: usize> {
    /// Rates of change at time `t` and state `y` (unit of `y` per unit of `t`).
    fn rates(&self, t: f64, y: &[f64; N]) -> [f64; N];

    /// A size of state `index` below which its differences do not matter (unit of `y`); it sets
    /// the smallest step of the difference quotients in [`rodas4`].
    fn smallest(&self, _index: usize) -> f64 {
        1e-8
    }

    /// Whether any rate hangs on state `index`: [`rodas4`] does not ask how, where none does.
    fn is_read(&self, _index: usize) -> bool {
        true
    }
}

/// How a solution was reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Effort {
    /// Accepted steps.
    pub steps: usize,
    /// Rejected steps.
    pub rejected: usize,
    /// Evaluations of the rates, those for Jacobians included.
    pub evaluations: usize,
}

impl Effort {
    fn plus(self, other: Self) -> Self {
        Self {
            steps: self.steps + other.steps,
            rejected: self.rejected + other.rejected,
            evaluations: self.evaluations + other.evaluations,
        }
    }
}

/// Where an integration stopped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct End<const N: usize> {
    /// Time of the last accepted step's end, or of the stop that the observer asked for.
    pub t: f64,
    /// State there.
    pub y: [f64; N],
    /// What it took.
    pub effort: Effort,
    /// The explicit method found the problem stiff and stopped here; always false from [`solve`]
    /// and from [`rodas4::solve`].
    pub stiff: bool,
    /// The observer asked to stop.
    pub stopped: bool,
}

/// Integrates from `t0` to `t1`, showing each accepted step to `observe`, by the explicit method
/// as long as it serves and by the implicit one after it has met stiffness.
///
/// # Errors
/// [`OdeError`] when the rates are not finite or the step shrinks to nothing.
pub fn solve<const N: usize, S: System<N>>(
    system: &S,
    t0: f64,
    y0: &[f64; N],
    t1: f64,
    tolerance: &Tolerance<N>,
    mut observe: impl FnMut(&Step<N>) -> ControlFlow<()>,
) -> Result<End<N>, OdeError> {
    let first = dopri5::solve(system, t0, y0, t1, tolerance, &mut observe)?;
    if !first.stiff {
        return Ok(first);
    }
    let second = rodas4::solve(system, first.t, &first.y, t1, tolerance, &mut observe)?;
    Ok(End { effort: first.effort.plus(second.effort), ..second })
}
