//! What the record adds up to for one bag.

use super::{Key, Made, Odd, Truth, Who};
use jiff::Timestamp;

/// The state of one bag.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Bag {
    /// What really went in.
    pub made: Option<Made>,
    /// When it was sealed and under which version of the plan.
    pub sealed: Option<(Timestamp, u32)>,
    /// The zero reading that counts. Its time is the start of the bag's clock.
    pub zero: Option<Height>,
    /// Other zero readings that nobody has decided about; the earliest stands in [`Bag::zero`].
    pub other_zeros: Vec<Height>,
    /// All other readings that count, by time. Two devices may have written for one planned
    /// minute; then both stand here, and [`Height::rival`] marks them.
    pub readings: Vec<Height>,
    /// What the breath meter showed: time, percent, turn.
    pub meter: Vec<(Timestamp, f64, Option<u32>)>,
    /// Odd things that were not taken back, by time.
    pub odd: Vec<Tapped>,
    /// What it is in truth, if not what its label says.
    pub truth: Option<Truth>,
    /// The rule by which it is set aside now.
    pub set_aside: Option<String>,
    /// When it was vented.
    pub vented: Option<Timestamp>,
    /// When it was lost.
    pub lost: Option<Timestamp>,
    /// Time of the last entry.
    pub last: Option<Timestamp>,
}

/// An odd thing that somebody tapped.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tapped {
    /// The entry that brought it.
    pub key: Key,
    /// When.
    pub at: Timestamp,
    /// What.
    pub odd: Odd,
    /// Who.
    pub who: Who,
}

/// A height of the card that counts, with its history.
#[derive(Debug, Clone, PartialEq)]
pub struct Height {
    /// The entry that brought it.
    pub key: Key,
    /// When it was read.
    pub measured: Timestamp,
    /// The planned minute it is for.
    pub planned: Option<u32>,
    /// Height above the bench that counts now (mm).
    pub height_mm: f64,
    /// Who read it.
    pub who: Who,
    /// What stood there before, oldest first; with it the rivals that a choice put aside.
    pub mended: Vec<Mended>,
    /// Another reading, from another device or sheet, says something else for the same planned
    /// minute; a person must choose.
    pub rival: bool,
}

impl Height {
    /// Whether somebody has looked at it again and left it as it is: its last correction is to
    /// itself.
    pub fn is_confirmed(&self) -> bool {
        let before = self.mended.last();
        before.is_some_and(|before| (before.height_mm - self.height_mm).abs() < 1e-9)
    }
}

/// A height that no longer counts.
#[derive(Debug, Clone, PartialEq)]
pub struct Mended {
    /// The height that stood there (mm).
    pub height_mm: f64,
    /// The entry that replaced it.
    pub by: Key,
    /// When.
    pub at: Timestamp,
}

impl Bag {
    /// Minutes from the bag's own zero to `at`; stopped clocks are not taken off.
    pub fn minute_at(&self, at: Timestamp) -> Option<f64> {
        let zero = self.zero.as_ref()?;
        Some(minutes(zero.measured, at))
    }

    /// Rise above its own zero at each reading: minutes after zero and mm.
    pub fn rises(&self) -> Vec<(f64, f64)> {
        let Some(zero) = &self.zero else { return Vec::new() };
        let start = std::iter::once((0.0, 0.0));
        let later = self
            .readings
            .iter()
            .map(|r| (minutes(zero.measured, r.measured), r.height_mm - zero.height_mm));
        start.chain(later).collect()
    }
}

/// Minutes between two moments.
fn minutes(from: Timestamp, to: Timestamp) -> f64 {
    to.duration_since(from).as_secs_f64() / 60.0
}
