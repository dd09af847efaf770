//! What goes wrong at the benches, and how often.

use crate::code::BagCode;
use crate::slip::{Slip, SlipKind};

/// Something that goes wrong in real classes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Mishap {
    /// Centimeters written for millimeters.
    Unit,
    /// The two digits of a height swapped, such as 12 for 21.
    Transposed,
    /// A reading that nobody made.
    Missed,
    /// A reading made more than a minute late, at the true time.
    Late,
    /// A seal that leaks: from some minute on the card falls.
    Leak,
    /// The zero reading typed minutes after it was made, so that the bag's clock starts late.
    WrongStart,
    /// The heights of the next bench copied.
    Copied,
    /// Two bags of a group taken for one another from the start.
    Swapped,
}

impl Mishap {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::Unit,
        Self::Transposed,
        Self::Missed,
        Self::Late,
        Self::Leak,
        Self::WrongStart,
        Self::Copied,
        Self::Swapped,
    ];

    /// What happened, in words that finish "bag 3B: ...".
    pub const fn says(self) -> &'static str {
        match self {
            Self::Unit => "centimeters written for millimeters",
            Self::Transposed => "two digits swapped",
            Self::Missed => "a reading missed",
            Self::Late => "a reading made late",
            Self::Leak => "a seal that leaks",
            Self::WrongStart => "the zero reading typed late",
            Self::Copied => "heights copied from the next bench",
            Self::Swapped => "two bags taken for one another",
        }
    }
}

/// How often each goes wrong: the chance each time that it can (1). Own estimates, no source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// Of readings.
    pub unit: f64,
    /// Of readings whose height has two unlike digits, neither of them 0.
    pub transposed: f64,
    /// Of readings.
    pub missed: f64,
    /// Of readings.
    pub late: f64,
    /// Of bags.
    pub leak: f64,
    /// Of bags.
    pub wrong_start: f64,
    /// Of bags beside which another group has one at the same place of its bench.
    pub copied: f64,
    /// Of groups with two bags of unlike treatments.
    pub swapped: f64,
}

impl Default for Rates {
    fn default() -> Self {
        Self {
            unit: 0.01,
            transposed: 0.01,
            missed: 0.02,
            late: 0.03,
            leak: 0.04,
            wrong_start: 0.03,
            copied: 0.02,
            swapped: 0.03,
        }
    }
}

impl Rates {
    /// Nothing goes wrong.
    pub const NONE: Self = Self {
        unit: 0.0,
        transposed: 0.0,
        missed: 0.0,
        late: 0.0,
        leak: 0.0,
        wrong_start: 0.0,
        copied: 0.0,
        swapped: 0.0,
    };

    /// The chance of one of them.
    pub const fn of(&self, mishap: Mishap) -> f64 {
        match mishap {
            Mishap::Unit => self.unit,
            Mishap::Transposed => self.transposed,
            Mishap::Missed => self.missed,
            Mishap::Late => self.late,
            Mishap::Leak => self.leak,
            Mishap::WrongStart => self.wrong_start,
            Mishap::Copied => self.copied,
            Mishap::Swapped => self.swapped,
        }
    }
}

/// A mishap of a rehearsal: what went wrong and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Staged {
    /// What.
    pub mishap: Mishap,
    /// The bag.
    pub bag: BagCode,
    /// The bag that it was swapped with or copied from.
    pub other: Option<BagCode>,
    /// The planned minute, where one reading went wrong; of a leak, when it began.
    pub planned: Option<u32>,
}

impl Staged {
    /// Whether a slip that is shown tells of it. Missed readings are no slips: the board shows
    /// them as late.
    pub fn is_told_by(&self, slip: &Slip) -> bool {
        let hers = slip.bag == self.bag
            || (self.mishap == Mishap::Swapped && Some(slip.bag) == self.other);
        hers && match self.mishap {
            Mishap::Unit | Mishap::Transposed => matches!(
                slip.kind,
                SlipKind::Unit { .. }
                    | SlipKind::TooHigh { .. }
                    | SlipKind::HighZero { .. }
                    | SlipKind::Jumped { .. }
                    | SlipKind::Fell { .. }
                    | SlipKind::Transposed { .. }
                    | SlipKind::Misread { .. }
                    | SlipKind::Tilted { .. }
                    | SlipKind::FarFromBand { .. }
            ),
            Mishap::Late => {
                matches!(slip.kind, SlipKind::Late { planned, .. } if Some(planned) == self.planned)
            }
            Mishap::Leak => {
                matches!(
                    slip.kind,
                    SlipKind::Fell { .. }
                        | SlipKind::Leaks { .. }
                        | SlipKind::FarFromBand { .. }
                )
            }
            Mishap::WrongStart => {
                matches!(slip.kind, SlipKind::WrongStart | SlipKind::FarFromBand { .. })
            }
            Mishap::Swapped => {
                matches!(slip.kind, SlipKind::Swapped { .. } | SlipKind::FarFromBand { .. })
            }
            Mishap::Copied => matches!(slip.kind, SlipKind::Copied { .. }),
            Mishap::Missed => false,
        }
    }
}
