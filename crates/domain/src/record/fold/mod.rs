//! What the entries about one subject add up to. Each takes them in the order of their time.

mod bag;
mod group;
mod heights;
mod period;
mod rivals;
mod whole;

pub(super) use bag::{Seen, bag};
pub(super) use group::{FirstZero, Stretches, group, stands_in};
pub(super) use period::period;
pub(super) use whole::{Whole, whole};

use super::{Entry, Key, Refused};
use jiff::Timestamp;

/// Entries that do not count, each with its time.
#[derive(Debug, Clone, Default)]
pub(super) struct Refusals(pub(super) Vec<(Timestamp, Key, Refused)>);

impl Refusals {
    fn add(&mut self, entry: &Entry, reason: Refused) {
        self.0.push((entry.measured, entry.key, reason));
    }
}
