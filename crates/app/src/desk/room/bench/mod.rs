//! What a group sees of its own bags, and what it may write.
//!
//! [`Bench`] has no field that could hold a forecast or a mark; heights of others stand in
//! [`Bench::opened`] alone, once the teacher gave or opened them.

mod typed;
mod view;

pub(crate) use typed::{Typed, keep_reasons, take};
pub(crate) use view::bench_view;
pub(super) use view::{own_labels, own_rises};

use super::Kind;
use super::opened::Opened;
use crate::desk::contents::Dry;
use barm_domain::code::BagCode;
use barm_domain::plan::{Inquiry, Lies};
use barm_domain::record::{Key, Lent, Odd};
use jiff::Timestamp;

/// A group's page.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Bench {
    /// Whose it is, in one word that is the same as long as the data folder is.
    pub(crate) seat: String,
    /// Real, rehearsed or invented.
    pub(crate) kind: Kind,
    /// Name of the period.
    pub(crate) period: String,
    /// Number within the period.
    pub(crate) group: u32,
    /// The group's own label.
    pub(crate) label: Option<String>,
    /// How much of the doing is given.
    pub(crate) inquiry: Inquiry,
    /// The newest version of the plan.
    pub(crate) version: u32,
    /// What it works with in the place of its own numbers.
    pub(crate) stand_in: Option<Lent>,
    /// What the teacher gave or opened to it.
    pub(crate) opened: Option<Opened>,
    /// The clocks of the period.
    pub(crate) hours: Hours,
    /// What it expects: when it said so, and mm above zero for each bag.
    pub(crate) guess: Option<(Timestamp, Vec<(BagCode, f64)>)>,
    /// Its bags by bench place.
    pub(crate) bags: Vec<OwnBag>,
    /// Keys of its own entries that are on record.
    pub(crate) keys: Vec<Key>,
    /// Those of them that do not count.
    pub(crate) refused: Vec<Key>,
}

/// The clocks of a period.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Hours {
    /// When the bell rang.
    pub(crate) began: Option<Timestamp>,
    /// When it was over.
    pub(crate) ended: Option<Timestamp>,
    /// When all clocks stood still.
    pub(crate) stopped: Vec<(Timestamp, Option<Timestamp>)>,
    /// When the group's zero reading is planned (s after the bell).
    pub(crate) start_s: Option<f64>,
    /// When clearing starts (s after the bell).
    pub(crate) clearing_s: f64,
    /// Planned minutes after each bag's own zero.
    pub(crate) minutes: Vec<u32>,
}

/// A bag of the group.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OwnBag {
    /// Its code.
    pub(crate) code: BagCode,
    /// Its treatment, as its label says.
    pub(crate) treatment: String,
    /// How that treatment looks on every page.
    pub(crate) look: u8,
    /// Whether an earlier bag of the group wears the filled mark.
    pub(crate) hollow: bool,
    /// How high a bag of its size is when it is full (mm).
    pub(crate) full_mm: f64,
    /// What goes in before the water: amount and thing.
    pub(crate) dry: Vec<(String, Dry)>,
    /// How much water.
    pub(crate) water: String,
    /// How warm, in both units.
    pub(crate) degrees: String,
    /// How it lies while it works.
    pub(crate) lies: Lies,
    /// The question it belongs to; nothing for a control, or where the method is given.
    pub(crate) asks: String,
    /// Whether it is sealed.
    pub(crate) sealed: bool,
    /// The zero reading that counts.
    pub(crate) zero: Option<OwnHeight>,
    /// Other zero readings that nobody has decided about.
    pub(crate) other_zeros: Vec<OwnHeight>,
    /// All other readings that count, by time.
    pub(crate) readings: Vec<OwnHeight>,
    /// Odd things, by time; with the entry's key where the group itself may take it back.
    pub(crate) odd: Vec<(Timestamp, Odd, Option<Key>)>,
    /// How warm the water was at pouring (°C), if that was measured.
    pub(crate) poured_celsius: Option<f64>,
    /// Whether it is open.
    pub(crate) vented: bool,
    /// Whether it is lost.
    pub(crate) lost: bool,
}

/// A height that counts.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OwnHeight {
    /// Its first entry.
    pub(crate) key: Key,
    /// When it was read.
    pub(crate) at: Timestamp,
    /// The planned minute it is for.
    pub(crate) planned: Option<u32>,
    /// Height above the bench (mm).
    pub(crate) mm: f64,
    /// Who read it.
    pub(crate) who: Reader,
    /// What stood there before, oldest first (mm).
    pub(crate) was: Vec<f64>,
    /// Whether somebody looked again and left it.
    pub(crate) confirmed: bool,
    /// Whether another height was written for the same minute.
    pub(crate) rival: bool,
}

/// Who read a height, as a group may know it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Reader {
    /// The group.
    Group,
    /// The teacher or somebody who helps.
    Teacher,
    /// From paper.
    Paper,
}
