//! Files of a pilot: its readings as a teacher types them, and what is kept of each lot.
//!
//! [`readings()`] takes any part of a pilot's readings and says everything that is wrong with them at
//! once, each with its line. [`TypedSheet`] is a sheet whose cells are still as somebody typed them.
//! [`read_lots`] and [`write_lots`] are the file beside the plan.

mod cell;
mod heading;
mod lots_read;
mod lots_write;
mod readings;
mod rows;
mod typed;
mod typed_read;
mod typed_write;

pub use lots_read::{ReadLots, read_lots};
pub use lots_write::write_lots;
pub use readings::{PilotFile, readings};
pub use typed::TypedSheet;
pub use typed_write::WrittenSheet;
