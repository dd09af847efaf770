//! From entries to the state of everything: one total function.

use super::{Entry, Known, Ledger, Standing};

/// What the entries add up to. The order in which they come does not matter: they are taken by the
/// time they were measured, and by key where that is the same.
///
/// What the versions of the plan know decides which bags and rules count.
#[must_use]
pub fn replay<'e>(known: &Known, entries: impl IntoIterator<Item = &'e Entry>) -> Standing {
    Ledger::of(known.clone(), entries.into_iter().cloned()).into_standing()
}
