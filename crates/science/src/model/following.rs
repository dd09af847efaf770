//! Following a bag by those of its states that move.

use super::mixture::Mixture;
use super::moving::{Few, Task, with_few};
use super::state::{STATES, State};
use crate::ode::lockstep::Track;
use crate::ode::{self, End, OdeError, Step, Tolerance};
use core::ops::ControlFlow;

/// A stretch of a bag's course: one accepted step, whichever states were carried.
pub(crate) trait Stretch {
    /// Its start (min).
    fn t0(&self) -> f64;
    /// Its end (min).
    fn t1(&self) -> f64;
    /// The state at its end.
    fn end(&self) -> State;
    /// The state at a time inside it.
    fn at(&self, minute: f64) -> State;
    /// One number of that state.
    fn one_at(&self, place: usize, minute: f64) -> f64;
}

/// Who is shown each stretch of a course.
pub(crate) type Observer<'a> = &'a mut dyn FnMut(&dyn Stretch) -> ControlFlow<()>;

/// A solver's step through a few states.
struct Shown<'a, const N: usize> {
    few: &'a Few<'a, N>,
    step: &'a Step<N>,
}

impl<const N: usize> Stretch for Shown<'_, N> {
    fn t0(&self) -> f64 {
        self.step.t0
    }

    fn t1(&self) -> f64 {
        self.step.t1
    }

    fn end(&self) -> State {
        self.few.whole(self.step.end())
    }

    fn at(&self, minute: f64) -> State {
        self.few.whole(&self.step.at(minute))
    }

    fn one_at(&self, place: usize, minute: f64) -> f64 {
        let carried = self.few.places.iter().position(|&carried| carried == place);
        carried.map_or(self.few.standing[place], |index| self.step.state_at(index, minute))
    }
}

/// From when to when, from where, and how closely.
struct Course<'a> {
    t0: f64,
    y0: &'a State,
    t1: f64,
    tolerance: &'a Tolerance<STATES>,
}

impl Course<'_> {
    fn tolerance<const N: usize>(&self, few: &Few<'_, N>) -> Tolerance<N> {
        Tolerance {
            relative: self.tolerance.relative,
            absolute: few.chosen(&self.tolerance.absolute),
        }
    }
}

struct Solve<'a>(Course<'a>, Observer<'a>);

impl Task for Solve<'_> {
    type Done = Result<End<STATES>, OdeError>;

    fn with<const N: usize>(self, few: &Few<'_, N>) -> Self::Done {
        let Self(course, observe) = self;
        let (start, tolerance) = (few.chosen(course.y0), course.tolerance(few));
        let end = ode::solve(few, course.t0, &start, course.t1, &tolerance, |step| {
            observe(&Shown { few, step })
        })?;
        let End { t, y, effort, stiff, stopped } = end;
        Ok(End { t, y: few.whole(&y), effort, stiff, stopped })
    }
}

struct Mark<'a>(Course<'a>, &'a mut dyn FnMut(&dyn Stretch));

impl Task for Mark<'_> {
    type Done = Result<Track, OdeError>;

    fn with<const N: usize>(self, few: &Few<'_, N>) -> Self::Done {
        let Self(course, observe) = self;
        let (start, tolerance) = (few.chosen(course.y0), course.tolerance(few));
        Track::of(few, course.t0, &start, course.t1, &tolerance, |step| {
            observe(&Shown { few, step });
        })
    }
}

struct Retrace<'a>(&'a Track, &'a State, &'a mut dyn FnMut(&dyn Stretch));

impl Task for Retrace<'_> {
    type Done = Result<(), OdeError>;

    fn with<const N: usize>(self, few: &Few<'_, N>) -> Self::Done {
        let Self(track, start, observe) = self;
        track.follow(few, &few.chosen(start), |step| observe(&Shown { few, step }))
    }
}

impl Mixture {
    /// Follows the bag as [`ode::solve`] does.
    pub(crate) fn solve(
        &self,
        t0: f64,
        y0: &State,
        t1: f64,
        tolerance: &Tolerance<STATES>,
        observe: Observer<'_>,
    ) -> Result<End<STATES>, OdeError> {
        with_few(self, t0, y0, Solve(Course { t0, y0, t1, tolerance }, observe))
    }

    /// Follows the bag from its start and keeps the steps, as [`Track::of`] does.
    pub(crate) fn track(
        &self,
        t0: f64,
        t1: f64,
        tolerance: &Tolerance<STATES>,
        see: &mut dyn FnMut(&dyn Stretch),
    ) -> Result<Track, OdeError> {
        let course = Course { t0, y0: &self.start, t1, tolerance };
        with_few(self, t0, &self.start, Mark(course, see))
    }

    /// Follows the bag from its start by the steps of another, as [`Track::follow`] does.
    pub(crate) fn retrace(
        &self,
        t0: f64,
        track: &Track,
        see: &mut dyn FnMut(&dyn Stretch),
    ) -> Result<(), OdeError> {
        with_few(self, t0, &self.start, Retrace(track, &self.start, see))
    }
}
