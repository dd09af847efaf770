//! Rosters and grades as other systems of a school exchange them: OneRoster as CSV files in a zip
//! (1EdTech OneRoster, CSV binding 1.1 and 1.2; from memory and from what others wrote of it).
//! Shapes, what is dropped and all limits stand in `docs/roster.md`.
//!
//! Of a roster only names, ids and classes of students are read; what stands in other columns and
//! files, and everything about other people, is dropped while it is read and is in no value.

mod columns;
mod manifest;
mod passed;
mod plain;
mod read;
mod write;

pub use passed::Passed;
pub use plain::plain;
pub use read::{Taken, read};
pub use write::{NotWritten, Written, write};

/// A version of the exchange format.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Version {
    /// OneRoster 1.1, with 1.1.1.
    V1_1,
    /// OneRoster 1.2, with 1.2.1.
    V1_2,
}

impl Version {
    /// Both.
    pub const ALL: [Self; 2] = [Self::V1_1, Self::V1_2];

    /// As a manifest writes it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::V1_1 => "1.1",
            Self::V1_2 => "1.2",
        }
    }
}
