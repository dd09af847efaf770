//! Data sheets on paper, typed by the teacher or read from a file, and what they add to the record.
//!
//! Nothing is overwritten and nothing is added before the teacher says so: [`judge()`] and
//! [`look_at_file`] tell what would be added, by the very function that adds it.

mod clock;
mod file;
mod judge;
#[cfg(test)]
mod tests;
mod view;

pub(crate) use file::{FileLook, from_file, look_at_file};
pub(crate) use judge::{Judged, JudgedCell, State, Typed, TypedCell, TypedZero, Wrong, judge};
pub(crate) use view::{Cell, Fate, Row, SheetView, first_sheet, sheet_named, sheet_view};
