//! Slips of the pen and of the bench, seen while they can still be mended.
//!
//! A slip is a question, never a change: it names a reading that is hard to believe and offers
//! mends, and a person chooses. Whoever answers "it is right" corrects the height to itself; it
//! stays as it is and is not asked about again.
//!
//! What a group is shown rests on its own bag, the ruler and the size of the bag alone, so that no
//! slip tells what other bags do or what is expected: see [`Own`]. What the teacher sees goes by
//! likelihood ([`barm_science::slip`]): each slip beside the forecast, the class and the sister
//! bags, with its probability. `docs/slips.md` says how often it is right.

mod class_call;
mod code;
mod expected;
mod followed;
mod heights;
mod late;
mod likely;
mod named;
mod own;
mod teacher;
mod unit;

pub use class_call::{ClassCall, class_call};
pub use code::seen_in_code;
pub use expected::Expected;
pub use followed::Followed;
pub use likely::{Likely, likely};
pub use own::{Own, seen_by_group};
pub use teacher::{TOLD_FROM, seen_by_teacher};
pub use unit::WrittenIn;

use crate::code::BagCode;
use crate::record::{Key, Odd};

/// Something that is worth a second look now.
#[derive(Debug, Clone, PartialEq)]
pub struct Slip {
    /// The bag.
    pub bag: BagCode,
    /// What it looks like.
    pub kind: SlipKind,
    /// The reading in question, by its first entry; of a whole bag, its last.
    pub reading: Option<Key>,
    /// What can be done, the likeliest first.
    pub mends: Vec<Mend>,
    /// Probability that it is so (1), for the teacher only; nothing for what is seen by a group,
    /// and for what is no question of likelihood.
    pub probability: Option<f64>,
}

/// What a slip looks like. Minutes are true minutes after the bag's own zero reading.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum SlipKind {
    /// Perhaps not written in millimeters.
    Unit {
        /// What is written, taken for millimeters.
        wrote_mm: f64,
        /// What it may be.
        written_in: WrittenIn,
    },
    /// Higher than a bag of this size can be.
    TooHigh {
        /// What is written (mm).
        wrote_mm: f64,
        /// How high the bag is when it is full (mm).
        full_mm: f64,
    },
    /// A zero reading that is high for a bag just sealed.
    HighZero {
        /// What is written (mm).
        wrote_mm: f64,
        /// How high the bag is when it is full (mm).
        full_mm: f64,
    },
    /// It rose by more than yeast can do in that time.
    Jumped {
        /// By how much (mm).
        by_mm: f64,
        /// Minute of the lower reading.
        from: f64,
        /// Minute of the higher reading.
        to: f64,
    },
    /// It fell by more than reading can explain: perhaps a leak.
    Fell {
        /// By how much (mm).
        by_mm: f64,
        /// Minute of the higher reading.
        from: f64,
        /// Minute of the lower reading.
        to: f64,
    },
    /// Read late; the true minute counts, so nothing has to be done.
    Late {
        /// The planned minute.
        planned: u32,
        /// Seconds after it, without stopped clocks.
        late_s: f64,
    },
    /// Two heights for one planned minute, or two zero readings.
    Rivals {
        /// The planned minute; nothing for the zero reading.
        planned: Option<u32>,
    },
    /// The code on the label is one of another period.
    OtherPeriod,
    /// The code on the label is one of another group of this period.
    OtherGroup,
    /// No bag of this group has the code, though it looks like one.
    NoSuchBag,
    /// The same heights as a bag of another group. For the teacher only: ask gently.
    Copied {
        /// The other bag.
        with: BagCode,
        /// Heights that are the same, the zero reading included.
        readings: usize,
    },
    /// Two digits that changed places. For the teacher only.
    Transposed {
        /// What is written (mm).
        wrote_mm: f64,
        /// What was meant (mm).
        meant_mm: f64,
    },
    /// Far from what the other heights of the bag, its class and its sisters say. For the teacher
    /// only, as all that follow.
    Misread {
        /// What is written (mm).
        wrote_mm: f64,
    },
    /// A few millimeters off: perhaps one end of a tilted card.
    Tilted {
        /// Minute of the reading.
        minute: f64,
    },
    /// Gas gets out.
    Leaks {
        /// Minute of the last reading before it began.
        from: f64,
        /// Minute of the first reading after.
        to: f64,
    },
    /// The card was lifted, perhaps by foam.
    Lifted {
        /// Minute of the first reading of it.
        minute: f64,
    },
    /// The clock of the bag began late or early.
    WrongStart,
    /// No living yeast in this bag, in a class whose yeast lives.
    NoYeast,
    /// A start and then nothing more: perhaps water that was too hot for this bag.
    HotWater,
    /// An enzyme that was perhaps not shaken.
    Unshaken,
    /// More than its sisters: perhaps a heaped spoon.
    Heaped,
    /// Two bags of a group taken for one another.
    Swapped {
        /// The other bag.
        with: BagCode,
    },
    /// All heights end in 0 or 5.
    Fives,
    /// Far from where it is expected, for no reason that can be told.
    FarFromBand {
        /// Minute of the reading.
        minute: f64,
        /// Its rise (mm).
        rise_mm: f64,
        /// Low end of the band (mm).
        low_mm: f64,
        /// High end of the band (mm).
        high_mm: f64,
    },
}

/// A way to mend a slip.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Mend {
    /// Correct the height to this (mm).
    Write(f64),
    /// Choose this one of the rivals, by its first entry.
    Choose(Key),
    /// Look at the bag again and write what the ruler says, or read the label again.
    AskAgain,
    /// Tap what happened.
    Tap(Odd),
    /// Set the bag aside by this rule of the plan.
    SetAside(String),
    /// It is right as it is: correct the height to itself.
    Leave,
}
