//! The minutes between two classes.

use crate::plan::{Period, Plan};

/// Trays swapped and jugs topped up take so long at least (min; common practice, no source).
pub const LEAST_CHANGEOVER_MIN: f64 = 3.0;

/// The time until the next class comes in.
#[derive(Debug, Clone, PartialEq)]
pub struct Changeover {
    /// The next period.
    pub next: String,
    /// Minutes from this period's last bell to the next one's first; less than 0 where they overlap.
    pub minutes: f64,
}

impl Changeover {
    /// Whether there is time to swap trays, wipe and top up.
    pub fn is_enough(&self) -> bool {
        self.minutes >= LEAST_CHANGEOVER_MIN
    }
}

/// The time between a period and the next of its day; nothing after the last.
#[must_use]
pub fn changeover(plan: &Plan, period: &Period) -> Option<Changeover> {
    let seconds = |of: &Period| {
        let time = of.start;
        f64::from(3600 * i32::from(time.hour()) + 60 * i32::from(time.minute()))
            + f64::from(time.second())
    };
    let (own, end) = (seconds(period), seconds(period) + 60.0 * period.length_min);
    let others = plan.periods.iter().filter(|other| other.day == period.day);
    let later = others.filter(|other| other.name != period.name && seconds(other) >= own);
    let next = later.min_by(|a, b| seconds(a).total_cmp(&seconds(b)))?;
    Some(Changeover { next: next.name.clone(), minutes: (seconds(next) - end) / 60.0 })
}
