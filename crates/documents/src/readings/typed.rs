//! One height as typed, before its time is settled.

use super::time::When;

/// One height as typed.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Typed {
    /// Place of the bag in the plan's list.
    pub(super) bag: usize,
    /// When it was read.
    pub(super) when: When,
    /// Height (mm).
    pub(super) mm: f64,
    /// Line of the file.
    pub(super) line: u64,
    /// What was noted beside it.
    pub(super) event: Option<String>,
    /// Whether it stands in a column of zero readings, which may be repeated on every line.
    pub(super) from_zero_column: bool,
}
