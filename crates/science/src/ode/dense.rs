//! One accepted step and the solution inside it.

/// An accepted step with a polynomial for every time in between.
#[derive(Debug, Clone, Copy)]
pub struct Step<const N: usize> {
    /// Start of the step.
    pub t0: f64,
    /// End of the step.
    pub t1: f64,
    pub(super) y0: [f64; N],
    pub(super) y1: [f64; N],
    /// Third, fourth and (explicit method only) fifth coefficients of the nested form
    /// y0 + s (Δ + (1 − s) (c₂ + s (c₃ + (1 − s) c₄))).
    pub(super) c2: [f64; N],
    pub(super) c3: [f64; N],
    pub(super) c4: [f64; N],
}

impl<const N: usize> Step<N> {
    /// State at the start of the step.
    pub const fn start(&self) -> &[f64; N] {
        &self.y0
    }

    /// State at the end of the step.
    pub const fn end(&self) -> &[f64; N] {
        &self.y1
    }

    /// State at time `t` inside the step, accurate to order 4 (explicit) or 3 (implicit).
    ///
    /// A linear invariant of the step's ends holds inside as well, as every coefficient is a
    /// combination of increments.
    pub fn at(&self, t: f64) -> [f64; N] {
        let s = (t - self.t0) / (self.t1 - self.t0);
        let r = 1.0 - s;
        core::array::from_fn(|i| {
            let rise = self.y1[i] - self.y0[i];
            self.y0[i] + s * (rise + r * (self.c2[i] + s * (self.c3[i] + r * self.c4[i])))
        })
    }

    /// One state at time `t` inside the step.
    pub fn state_at(&self, i: usize, t: f64) -> f64 {
        let s = (t - self.t0) / (self.t1 - self.t0);
        let r = 1.0 - s;
        let rise = self.y1[i] - self.y0[i];
        self.y0[i] + s * (rise + r * (self.c2[i] + s * (self.c3[i] + r * self.c4[i])))
    }
}
