//! When things happen in a period: phases, waves of starts, readings, the meter, what does not fit.
//!
//! [`schedule()`] is what every page and sheet asks: phases, the start of each group, the planned
//! minutes. [`course()`] is the same hour bag by bag: who reads what when, whose turn it is at the breath
//! meter, how many bags want something in each minute, and what is left out where time is short. It
//! also plans a short day, and what is left of a period after a fire drill.
//!
//! The order of what matters: controls first, then readings at their planned times, then runs at the
//! meter, then an even load for the teacher. Each step is a small problem that is solved exactly (a file
//! a step says by what rule), and nothing in it is drawn: one plan gives one schedule.

mod advice;
mod at_meter;
mod changeover;
mod course;
mod hands;
mod load;
mod meter;
mod plain;
mod replan;
mod waves;

use crate::plan::{Period, Plan};
use crate::record::PeriodStanding;

pub use advice::{Advice, Change};
pub use at_meter::at_meter;
pub use changeover::{Changeover, LEAST_CHANGEOVER_MIN, changeover};
pub use course::{Course, Task, Turn, Unfit, Wave, Why, course};
pub use hands::Pouring;
pub use load::Load;
pub use meter::{PUSH_S, Queue, RECOVERY_S, RUN_MIN, WARM_UP_S, Waiting, queue};
pub use replan::{Stop, Upset};

/// Minutes that one reading of one bag takes: find it, stand the ruler up, read at eye level, write
/// height and time (common practice, no source).
pub const READ_MIN: f64 = 0.5;

/// What a period is planned to be; minutes after its bell unless said otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct Schedule {
    /// What is done, from bell to bell.
    pub phases: Vec<Phase>,
    /// When each group takes its zero reading, in the order of time: its number, 0 for the teacher's
    /// bench, and the minute.
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
///
/// A last reading that was changed on the day changes the planned minutes and no start: groups have
/// begun by then.
#[must_use]
pub fn schedule(plan: &Plan, period: &Period, day: Option<&PeriodStanding>) -> Schedule {
    let minutes = plain::minutes(plan, period, day.and_then(|day| day.last_reading));
    Schedule {
        phases: plain::phases(plan, period),
        starts: waves::of(plan, period),
        last: minutes.last().copied().unwrap_or(0),
        minutes,
    }
}

impl Schedule {
    /// The minute at which clearing starts; nothing is read after it.
    pub fn clearing_min(&self) -> f64 {
        let vent = self.phases.iter().find(|phase| phase.kind == PhaseKind::Vent);
        vent.map_or(f64::INFINITY, |phase| phase.from_min)
    }

    /// The minute at which bags are emptied; no bag is pushed through the meter after it.
    pub fn cleaning_min(&self) -> f64 {
        let clean = self.phases.iter().find(|phase| phase.kind == PhaseKind::Clean);
        clean.map_or(f64::INFINITY, |phase| phase.from_min)
    }

    /// When a group takes its zero reading.
    pub fn start_of(&self, group: u32) -> Option<f64> {
        self.starts.iter().find(|(number, _)| *number == group).map(|(_, minute)| *minute)
    }

    /// Groups that start together, in the order of time.
    pub fn waves(&self) -> Vec<Wave> {
        waves::together(&self.starts)
    }
}
