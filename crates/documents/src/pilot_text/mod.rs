//! Files of a pilot: its readings as a teacher types them, and what is kept of each lot.
//!
//! [`readings`] takes any part of a pilot's readings and says everything that is wrong with them at
//! once, each with its line. [`read_lots`] and [`write_lots`] are the file beside the plan.

mod cell;
mod heading;
mod lots_read;
mod lots_write;
mod readings;
mod rows;

pub use lots_read::{ReadLots, read_lots};
pub use lots_write::write_lots;
pub use readings::{PilotFile, readings};
