//! The board of a period: which bag is due, late or waiting at a given time.
//!
//! A bag's own zero reading starts its clock. While all clocks stand still, as in a fire drill,
//! nothing falls due, and afterwards each bag waits as long as it had left. (The yeast does not
//! stop: results use the true minutes, see [`crate::record::Counted`].)

mod clock;
mod line;

use crate::code::BagCode;
use crate::plan::{Period, Plan, PlannedBag};
use crate::record::{PeriodStanding, Standing};
use crate::schedule::Schedule;
use clock::Clock;
use jiff::Timestamp;

pub use clock::running_minutes;
pub(crate) use clock::{falls_at, running_s};

/// A reading is late after so many seconds: by then the group next door is being read too (own
/// rule; bags rise a few millimeters in a whole interval).
pub const LATE_S: f64 = 60.0;

/// The bags of a period, in the order of what is due next.
#[derive(Debug, Clone, PartialEq)]
pub struct Board {
    /// One line a bag.
    pub lines: Vec<Line>,
}

/// One bag on the board.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The bag as planned.
    pub bag: PlannedBag,
    /// Its code.
    pub code: BagCode,
    /// What is the matter with it now.
    pub state: State,
    /// Height of the card at its last reading that counts (mm).
    pub height_mm: Option<f64>,
    /// Minutes after zero and rise above zero (mm).
    pub rises: Vec<(f64, f64)>,
}

/// What is the matter with a bag now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum State {
    /// It has no zero reading yet.
    NotStarted,
    /// To be read now.
    Due {
        /// The planned minute.
        planned: u32,
        /// Seconds since then.
        since_s: f64,
    },
    /// To be read more than [`LATE_S`] ago.
    Late {
        /// The planned minute.
        planned: u32,
        /// Seconds since then.
        late_s: f64,
    },
    /// To be read later.
    Waiting {
        /// The planned minute.
        planned: u32,
        /// Seconds until then.
        in_s: f64,
    },
    /// All clocks stand still, and it has readings to come.
    Stopped,
    /// No reading is left, or its group works with numbers that are not its own.
    Done,
    /// Set aside by a rule.
    SetAside,
    /// Vented.
    Vented,
    /// Lost.
    Lost,
}

/// The board of a period at a time.
#[must_use]
pub fn board(
    plan: &Plan,
    schedule: &Schedule,
    standing: &Standing,
    period: &Period,
    now: Timestamp,
) -> Board {
    let nothing = PeriodStanding::default();
    let day = standing.periods.get(&period.name).unwrap_or(&nothing);
    let clock = Clock { schedule, day, now };
    let of_period = plan.bags.iter().filter(|bag| bag.period == period.name);
    let mut lines: Vec<(line::Turn, Line)> = of_period
        .filter_map(|bag| {
            let code: BagCode = bag.code.parse().ok()?;
            let group = standing.groups.get(&(period.name.clone(), bag.group));
            let lent = group.is_some_and(|group| group.stand_in.is_some());
            Some(line::line(&clock, bag, code, standing.bags.get(&code), lent))
        })
        .collect();
    lines.sort_by(|(a, _), (b, _)| a.compare(b));
    Board { lines: lines.into_iter().map(|(_, line)| line).collect() }
}
