//! Two systems that differ a little, followed by the very same steps.
//!
//! Two solutions with steps of their own differ by their errors as well as by what was changed.
//! With the steps of the first the errors are nearly the same in both, and their difference is the
//! derivative of the computed solution itself.
//!
//! # Source
//! H. G. Bock (1981), "Numerical treatment of inverse problems in chemical reaction kinetics",
//! in K. H. Ebert, P. Deuflhard, W. Jäger (eds.), *Modelling of Chemical Reaction Systems*,
//! Springer, 102-125: internal numerical differentiation. From memory.

use super::{OdeError, Step, System, Tolerance, dopri5, rodas4};
use core::ops::ControlFlow;

/// Where the accepted steps of a solution begin and end, and by which method each was made.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Track {
    /// Begin and end of each step of the explicit method, which come first.
    explicit: Vec<(f64, f64)>,
    /// Begin and end of each step of the implicit method.
    implicit: Vec<(f64, f64)>,
}

impl Track {
    /// Solves a system as [`super::solve`] does, and keeps the steps.
    ///
    /// # Errors
    /// [`OdeError`] as there.
    pub fn of<const N: usize, S: System<N>>(
        system: &S,
        t0: f64,
        y0: &[f64; N],
        t1: f64,
        tolerance: &Tolerance<N>,
        mut observe: impl FnMut(&Step<N>),
    ) -> Result<Self, OdeError> {
        let mut track = Self::default();
        let first = dopri5::solve(system, t0, y0, t1, tolerance, |step| {
            track.explicit.push((step.t0, step.t1));
            observe(step);
            ControlFlow::Continue(())
        })?;
        if first.stiff {
            rodas4::solve(system, first.t, &first.y, t1, tolerance, |step| {
                track.implicit.push((step.t0, step.t1));
                observe(step);
                ControlFlow::Continue(())
            })?;
        }
        Ok(track)
    }

    /// Follows a system by these steps, whatever its own errors are.
    ///
    /// # Errors
    /// [`OdeError::NotFinite`] when the rates are not finite or a step cannot be solved.
    pub fn follow<const N: usize, S: System<N>>(
        &self,
        system: &S,
        y0: &[f64; N],
        mut observe: impl FnMut(&Step<N>),
    ) -> Result<(), OdeError> {
        let mut y = *y0;
        let mut known = None;
        for &(t0, t1) in &self.explicit {
            let rates = known.unwrap_or_else(|| system.rates(t0, &y));
            let mut trial = dopri5::step(system, t0, &y, &rates, t1 - t0);
            trial.step.t1 = t1;
            finite(t0, &trial.step.y1)?;
            y = trial.step.y1;
            known = Some(trial.rates);
            observe(&trial.step);
        }
        for &(t0, t1) in &self.implicit {
            let rates = system.rates(t0, &y);
            let slopes = rodas4::slopes(system, t0, &y, &rates, t1 - t0);
            let trial = rodas4::step(system, t0, &y, &rates, &slopes, t1 - t0);
            let mut step = trial.ok_or(OdeError::NotFinite { t: t0 })?.step;
            step.t1 = t1;
            finite(t0, &step.y1)?;
            y = step.y1;
            observe(&step);
        }
        Ok(())
    }
}

fn finite<const N: usize>(t: f64, y: &[f64; N]) -> Result<(), OdeError> {
    if y.iter().all(|value| value.is_finite()) {
        Ok(())
    } else {
        Err(OdeError::NotFinite { t })
    }
}
