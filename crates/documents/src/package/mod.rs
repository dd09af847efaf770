//! Open data of an investigation: a Frictionless Data Package (version 2) in a zip, written and read.
//! Every file of it and all limits stand in `docs/package.md`.
//!
//! What goes in is [`Shared`], which can hold no name. What comes back is the same.

mod cells;
mod descriptor;
mod flat;
mod licence;
mod read;
mod readme;
mod row;
mod tables;
mod write;

pub use flat::flat;
pub use licence::Licence;
pub use read::{Opened, read, read_files};
pub use tables::{Field, Kind, TABLES, Table};
pub use write::{files, write};

#[cfg(doc)]
use barm_domain::shared::Shared;

/// The file by which a package is known.
pub const DESCRIPTOR: &str = descriptor::FILE;

/// The layout that is written. An older one is read too, a newer one is refused.
pub const FORMAT: u64 = 1;

/// What is said of the data beside the data.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct About {
    /// Under which licence they are given away; the teacher chooses it.
    pub licence: Licence,
    /// US grade of the class, if that is to be said.
    pub grade: Option<u8>,
    /// Whether no class made these bags: a rehearsal or an invented school.
    pub made_up: bool,
    /// The smallest difference in rise that counted as readable (mm), if that is to be said.
    pub readable_mm: Option<f64>,
    /// Minutes between readings as they were planned, if that is to be said.
    pub interval_min: Option<f64>,
}
