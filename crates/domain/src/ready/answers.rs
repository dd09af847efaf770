//! The six answers that a ready plan is fitted by.

use crate::amount::AmountError;
use crate::cupboard::NotInCupboard;
use crate::plan::{BagChoice, ChoiceError};
use crate::starter::{self, StarterError};

/// Minutes of a period that are taken: fewer leave no time for a curve of three readings.
pub const MINUTES: (f64, f64) = (25.0, 180.0);

/// Temperatures of the water in the bags that are taken (°C): colder water shows nothing in a
/// period, warmer water kills yeast.
pub const WARMTH: (f64, f64) = (30.0, 48.0);

/// What is asked, in order, in the words of the pages.
pub const QUESTIONS: [&str; 6] = [
    "When is it?",
    "How many periods and groups?",
    "What is in the cupboard?",
    "Which bags?",
    "How warm is the water in the bags?",
    "How long is a period?",
];

/// What must be known for a ready plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Answers {
    /// When and where, how many periods and groups, and how long a period is.
    pub school: starter::Answers,
    /// What is in the cupboard: ids of foods and keys of enzymes.
    pub cupboard: Vec<String>,
    /// Which bags.
    pub bag: BagChoice,
    /// Temperature of the water as poured (°C).
    pub water_celsius: f64,
}

/// Why no ready plan can be written.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ReadyError {
    /// No ready plan is called so.
    #[error("there is no ready plan called “{written}”")]
    Unknown {
        /// As written.
        written: String,
        /// What was probably meant.
        meant: Option<&'static str>,
    },
    /// Too short for a curve, or no length at all.
    #[error("a period of {minutes} min cannot be planned; write 25 to 180 min")]
    Minutes {
        /// What was answered.
        minutes: f64,
    },
    /// Too cold to show anything, or so hot that it kills yeast.
    #[error("water of {celsius} °C does not suit yeast in bags; write 30 to 48 °C")]
    Warmth {
        /// What was answered.
        celsius: f64,
    },
    /// A bag in which no card rises readably.
    #[error(
        "a bag of {written} is too small or too large; take snack, sandwich, quart or gallon"
    )]
    Bag {
        /// What was answered.
        written: String,
    },
    /// A name in the cupboard is not known.
    #[error(transparent)]
    Cupboard(#[from] NotInCupboard),
    /// The school day cannot be written.
    #[error(transparent)]
    School(#[from] StarterError),
    /// An amount cannot be read.
    #[error(transparent)]
    Amount(#[from] AmountError),
    /// A bag or card is not known.
    #[error(transparent)]
    Choice(#[from] ChoiceError),
}

impl ReadyError {
    /// What to do about it, where the message does not say so itself.
    pub fn fix(&self) -> Option<String> {
        match self {
            Self::Unknown { meant: Some(meant), .. } => Some(format!("did you mean {meant}?")),
            Self::Unknown { meant: None, .. } => {
                let names = super::Ready::ALL.map(super::Ready::name);
                Some(format!("write one of: {}", names.join(", ")))
            }
            Self::Cupboard(error) => Some(error.fix()),
            Self::Choice(error) => Some(error.fix()),
            Self::Amount(error) => Some(error.fix()),
            Self::Minutes { .. } | Self::Warmth { .. } | Self::Bag { .. } | Self::School(_) => {
                None
            }
        }
    }
}
