//! The full check of the record while the program runs: every page of the file, every entry.
//!
//! The check at the start is quick, so that a teacher does not wait for it before a bell.

use super::Shelf;
use crate::desk::DeskError;
use jiff::Timestamp;

/// What a full check found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Checkup {
    /// The record is whole.
    Whole {
        /// When it was read through.
        at: Timestamp,
        /// Entries that were read.
        entries: usize,
    },
    /// Something in it is not as it was written.
    Damaged {
        /// When it was found.
        at: Timestamp,
        /// The first thing that is wrong, as a sentence.
        what: String,
    },
}

impl Checkup {
    /// A line for the log.
    pub(crate) fn in_the_log(&self) -> String {
        match self {
            Self::Whole { entries, .. } => {
                format!("full check: the record is whole, {entries} entries")
            }
            Self::Damaged { what, .. } => {
                format!(
                    "full check: the record is damaged: {what}; keep a copy of the data \
                         folder as it is, and restore the newest backup"
                )
            }
        }
    }
}

/// Reads the whole record through and keeps what was found for the shelf page. Waits for the disk,
/// for long; entries are written meanwhile.
pub(crate) fn check_whole(shelf: &Shelf, now: Timestamp) -> Result<Checkup, DeskError> {
    let found = match shelf.store.full_check() {
        Ok(checked) => Checkup::Whole { at: now, entries: checked.entries },
        Err(error) => Checkup::Damaged { at: now, what: error.to_string() },
    };
    shelf.keep_checkup(found.clone());
    Ok(found)
}
