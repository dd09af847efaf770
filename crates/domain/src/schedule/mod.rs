//! When things happen in a period: phases, starts of the groups, planned minutes.
//!
//! [`schedule()`] is the one way in. Behind it lies a plain rule: groups start in waves of half a
//! minute, the teacher's bench first, and read at the plan's interval from each bag's own zero.

mod plain;

use crate::plan::{Period, Plan};
use crate::record::PeriodStanding;

/// What a period is planned to be; minutes after its bell unless said otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct Schedule {
    /// What is done, from bell to bell.
    pub phases: Vec<Phase>,
    /// When each group takes its zero reading: its number, 0 for the teacher's bench, and the
    /// minute.
    pub starts: Vec<(u32, f64)>,
    /// When bags are read, in whole minutes after each bag's own zero reading, which is not among
    /// them.
    pub minutes: Vec<u32>,
    /// The last of them; 0 if there is no time for one.
    pub last: u32,
}

/// A part of the period.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phase {
    /// What is done.
    pub kind: PhaseKind,
    /// From this minute.
    pub from_min: f64,
    /// To this minute.
    pub to_min: f64,
}

/// What is done in a part of the period.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum PhaseKind {
    /// Roles, measuring, mixing, sealing.
    SetUp,
    /// Zero readings and readings.
    Read,
    /// Bags are opened.
    Vent,
    /// Emptying, washing, wiping.
    Clean,
}

/// The schedule of a period as the plan has it, with what was changed on the day.
#[must_use]
pub fn schedule(plan: &Plan, period: &Period, day: Option<&PeriodStanding>) -> Schedule {
    plain::schedule(plan, period, day)
}

impl Schedule {
    /// The minute at which clearing starts; nothing is read after it.
    pub fn clearing_min(&self) -> f64 {
        let vent = self.phases.iter().find(|phase| phase.kind == PhaseKind::Vent);
        vent.map_or(f64::INFINITY, |phase| phase.from_min)
    }

    /// When a group takes its zero reading.
    pub fn start_of(&self, group: u32) -> Option<f64> {
        self.starts.iter().find(|(number, _)| *number == group).map(|(_, minute)| *minute)
    }
}
