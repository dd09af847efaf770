//! Who pours the warm water, and so how many benches can be served at once.

use crate::plan::{Period, Plan};
use crate::prep::facts::{HAND_LIMIT, MIX_AHEAD, WAVE};
use crate::prep::jug_celsius;

/// Who pours the warm water of a period.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Pouring {
    /// Each group its own, as many at once as have to.
    Groups,
    /// The teacher, one bench after the other: the jug is too hot for students.
    Teacher,
}

impl Pouring {
    /// How many benches can be served at once; `None` where that is no limit.
    pub const fn at_once(self) -> Option<usize> {
        match self {
            Self::Groups => None,
            Self::Teacher => Some(1),
        }
    }

    /// Who pours, told by the hottest water of a period: the teacher, if a jug that is right in the
    /// middle of pouring bench by bench was above the hand limit when it was mixed.
    pub(super) fn of(plan: &Plan, period: &Period) -> Self {
        let Some(day) = plan.day(&period.day) else { return Self::Groups };
        let timing = plan.timing;
        let one_by_one = WAVE.value * f64::from(period.groups.min(99));
        let first = MIX_AHEAD.value + (timing.mixing_min - timing.wet_before_zero_min).max(0.0);
        let middle = first + one_by_one / 2.0;
        let hot =
            |celsius: f64| jug_celsius(celsius, day.room_celsius, -middle) > HAND_LIMIT.value;
        let too_hot = plan.treatments().any(|(_, treatment)| {
            let own = treatment.difference.water_celsius.unwrap_or(plan.base.water_celsius);
            let here = |bag: &crate::plan::PlannedBag| {
                bag.period == period.name && bag.treatment == treatment.name
            };
            hot(own) && plan.bags.iter().any(here)
        });
        if too_hot { Self::Teacher } else { Self::Groups }
    }
}
