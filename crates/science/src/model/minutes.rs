//! Whole minutes along a solution.

use super::following::Stretch;
use super::state::State;

/// The whole minutes from 0 to the last, as stretches pass them.
pub(super) struct Minutes {
    /// Minutes from wetting to the zero reading.
    wet: f64,
    next: u32,
    last: u32,
}

impl Minutes {
    /// Those of a bag that was wetted so long before minute 0.
    pub(super) const fn new(wet_before_zero_min: f64, last: u32) -> Self {
        Self { wet: wet_before_zero_min.max(0.0), next: 0, last }
    }

    /// When the yeast gets wet (min from the zero reading).
    pub(super) fn start(&self) -> f64 {
        -self.wet
    }

    /// Minute 0, if it is the start itself.
    pub(super) const fn at_once(&mut self) -> Option<u32> {
        if self.wet > 0.0 {
            return None;
        }
        self.next = 1;
        Some(0)
    }

    /// Shows the state at every whole minute that a stretch passes.
    pub(super) fn within(&mut self, stretch: &dyn Stretch, mut show: impl FnMut(u32, State)) {
        while self.next <= self.last && f64::from(self.next) <= stretch.t1() {
            show(self.next, stretch.at(f64::from(self.next)));
            self.next += 1;
        }
    }
}
