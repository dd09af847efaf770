//! One line of the record.

use super::{Key, What};
use crate::code::BagCode;
use jiff::Timestamp;
use std::sync::Arc;

/// One thing that happened. Entries are added, never changed.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Made where the entry was typed; the same key is the same entry.
    pub key: Key,
    /// What it is about.
    pub subject: Subject,
    /// What happened.
    pub what: What,
    /// When it happened, on this program's clock: the difference of the device's clock is taken
    /// off before.
    pub measured: Timestamp,
    /// When it reached the program; later than `measured` by hours if a device was cut off.
    pub arrived: Timestamp,
    /// Who says so.
    pub who: Who,
}

/// What an entry is about.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Subject {
    /// The investigation as a whole.
    Investigation,
    /// A period, by its name in the plan.
    Period(String),
    /// A group of a period; 0 is the teacher's bench.
    Group {
        /// Name of the period, shared by all heights that the group has read.
        period: String,
        /// Number within the period.
        group: u32,
    },
    /// A bag.
    Bag(BagCode),
}

/// Who made an entry. Never a name.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Who {
    /// The teacher.
    Teacher,
    /// A group, from a device that joined with its code.
    Group {
        /// Name of the period.
        period: Arc<str>,
        /// Number within the period.
        group: u32,
    },
    /// An aide or co-teacher.
    Aide,
    /// Typed from paper or taken from a file by the teacher.
    Import,
    /// The program itself, such as a stand-in for an absent group. Heights of its never count.
    Program,
}
