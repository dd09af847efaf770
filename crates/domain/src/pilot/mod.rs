//! A pilot: 40 minutes of one adult before the first lesson, in which this yeast, these bags and this
//! meter are tried, so that the forecast rests on them and not on what is usual.
//!
//! [`protocol()`] says what to do for a plan. Any part of it may be done ([`PilotReadings`]); each
//! narrows what is known of a lot of yeast, a box of bags, an enzyme or a meter ([`Lots`]), and
//! [`learn()`] works that out. What nobody measured stays as it was.

mod bags;
mod card;
mod cautions;
mod choose;
pub(crate) mod door;
mod dummy;
mod fault;
mod known;
mod learn;
mod linear;
mod lots;
mod made;
mod meter;
mod named;
mod numbers;
mod over_time;
mod plan;
mod protocol;
mod readings;
mod shown;
mod spoon;
mod start;
mod syringe;
mod timetable;
mod titles;

use barm_science::fact::Fact;

pub use bags::{PilotBag, Role};
pub use barm_science::prior::Learned as Numbers;
pub use cautions::cautions;
pub use choose::{LotLine, Thing};
pub use dummy::Dummy;
pub use fault::PilotFault;
pub use known::Known;
pub use learn::{BagBeforeAfter, Taught, learn};
pub use lots::{BagKind, EnzymeLot, FIRST_LOT, Lot, Lots, Teaspoon, YeastLot};
pub use named::named;
pub use numbers::impossible;
pub use over_time::{
    Ageing, By, Left, LotDay, LotOf, LotOverTime, class_days, over_time, pilot_days,
};
pub use plan::as_plan;
pub use protocol::{MeterCheck, PilotError, Protocol, SpoonCheck, protocol};
pub use readings::{
    BagHeights, Height, LotNames, Made, Part, PilotReadings, Seen, Shown, Temperature, Volume,
    Weight,
};
pub(crate) use shown::changes_of_day;
pub use shown::{Change, Unit};
pub use syringe::Syringe;
pub use timetable::{Step, timetable};
pub(crate) use titles::title;

/// Facts of the pilot.
pub const FACTS: &[Fact] = &[dummy::READ_SD, dummy::ROOM_SD, spoon::SPOONS_KNOWN];
