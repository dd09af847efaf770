//! What the record adds up to for a whole investigation.

use super::{Audience, Bag, Face, Key, Lent, Refused, WordsKey};
use crate::code::BagCode;
use jiff::Timestamp;
use std::collections::{BTreeMap, BTreeSet};

/// The state of an investigation after every entry of its record.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Standing {
    /// Bags that anything is on record of.
    pub bags: BTreeMap<BagCode, Bag>,
    /// Periods by name.
    pub periods: BTreeMap<String, PeriodStanding>,
    /// Groups by period and number.
    pub groups: BTreeMap<(String, u32), GroupStanding>,
    /// What is open, and to whom.
    pub open: BTreeSet<(Face, Audience)>,
    /// The newest version of the plan; 0 before the first.
    pub plan_version: u32,
    /// Entries that do not count, with the reason, in the order of their time.
    pub refused: Vec<(Key, Refused)>,
}

/// The state of a period.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PeriodStanding {
    /// When the clock was started.
    pub began: Option<Timestamp>,
    /// Stretches in which all clocks stood still; the last has no end while they do.
    pub stopped: Vec<(Timestamp, Option<Timestamp>)>,
    /// The last reading, if it was changed on the day (minutes after zero).
    pub last_reading: Option<u32>,
    /// Jugs: time, jug, temperature (°C).
    pub jugs: Vec<(Timestamp, u32, f64)>,
    /// Clean air pushed through the breath meter: what it showed (%), by turn; nothing where nobody
    /// noted it.
    pub blanks: BTreeMap<u32, Option<f64>>,
    /// When it ended.
    pub ended: Option<Timestamp>,
}

/// The state of a group.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct GroupStanding {
    /// The guess that counts.
    pub guess: Option<Guess>,
    /// Students at the bench, if it was counted.
    pub here: Option<u32>,
    /// What the group works with now in the place of its own numbers; it never counts.
    pub stand_in: Option<StandIn>,
    /// When anything last arrived from one of its devices.
    pub heard: Option<Timestamp>,
}

/// Numbers that stand in for a group's own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StandIn {
    /// Since when.
    pub since: Timestamp,
    /// Whose they are.
    pub lent: Lent,
}

/// What a group expects of its bags.
#[derive(Debug, Clone, PartialEq)]
pub struct Guess {
    /// When it was written.
    pub at: Timestamp,
    /// The rise that it expects of each bag at the last reading: bag code and mm.
    pub expects: Vec<(BagCode, f64)>,
    /// Where its reason lies, if it wrote one.
    pub because: Option<WordsKey>,
}
