//! What can be wrong with a written amount, and what to write instead.

use super::dimension::Wanted;

/// Why a written amount cannot be taken.
///
/// [`what`](Self::what) says what is wrong, [`fix`](Self::fix) what to write instead; `Display`
/// says both.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{}; {}", self.what(), self.fix())]
pub enum AmountError {
    /// Nothing but space.
    Empty {
        /// What is wanted there.
        wanted: Wanted,
    },
    /// Far too long to be an amount.
    TooLong {
        /// What is wanted there.
        wanted: Wanted,
    },
    /// There is no number where one must stand.
    NoNumber {
        /// What stands there.
        text: String,
        /// What is wanted there.
        wanted: Wanted,
    },
    /// A number without a unit.
    NoUnit {
        /// What is written.
        text: String,
        /// What is wanted there.
        wanted: Wanted,
    },
    /// A unit that is not in the table.
    UnknownUnit {
        /// The unit.
        unit: String,
        /// The unit that was probably meant.
        meant: Option<&'static str>,
        /// What is wanted there.
        wanted: Wanted,
    },
    /// A unit that different people read differently.
    UnclearUnit {
        /// The unit.
        unit: String,
        /// What to write instead.
        instead: &'static str,
    },
    /// It measures something else than is wanted.
    WrongKind {
        /// What is written.
        text: String,
        /// What it measures.
        is: &'static str,
        /// What is wanted there.
        wanted: Wanted,
    },
    /// A comma that may part thousands or decimals.
    Comma {
        /// The number if the comma parts thousands.
        thousands: String,
        /// The number if the comma parts decimals.
        decimal: String,
    },
    /// A fraction over zero.
    OverZero,
    /// Two numbers where one is wanted, such as `2-3 g`.
    Range {
        /// What is written.
        text: String,
    },
    /// A number broken by a space.
    Gap {
        /// What is written.
        text: String,
    },
    /// Something stands after the amount.
    Trailing {
        /// What stands there.
        rest: String,
    },
    /// Parts that do not go down from large to small, such as `30 s 3 min`.
    Order {
        /// What is written.
        text: String,
    },
    /// Below zero where that makes no sense.
    Negative {
        /// What is written.
        text: String,
    },
    /// So large that it cannot be meant.
    TooLarge {
        /// What is written.
        text: String,
    },
}

impl AmountError {
    /// What is wrong, in one clause.
    pub fn what(&self) -> String {
        match self {
            Self::Empty { wanted } => format!("{} is missing", wanted.name),
            Self::TooLong { wanted } => format!("this is too long to be {}", wanted.name),
            Self::NoNumber { text, .. } => format!("“{text}” has no number where one belongs"),
            Self::NoUnit { text, .. } => format!("“{text}” has no unit"),
            Self::UnknownUnit { unit, .. } => format!("“{unit}” is not a unit known here"),
            Self::UnclearUnit { unit, .. } => {
                format!("“{unit}” can be read in more than one way")
            }
            Self::WrongKind { text, is, wanted } => {
                format!("“{text}” is {is}, and {} is wanted here", wanted.name)
            }
            Self::Comma { thousands, decimal } => {
                format!("the comma can mean {thousands} or {decimal}")
            }
            Self::OverZero => "a fraction cannot have 0 below the line".into(),
            Self::Range { text } => {
                format!("“{text}” is a range, and one amount is wanted here")
            }
            Self::Gap { text } => {
                format!("“{text}” has a gap within its number or lacks a unit")
            }
            Self::Trailing { rest } => format!("“{rest}” stands after the amount"),
            Self::Order { text } => {
                format!("the parts of “{text}” do not go from large to small")
            }
            Self::Negative { text } => format!("“{text}” is below zero"),
            Self::TooLarge { text } => format!("“{text}” is too large to be meant"),
        }
    }

    /// What to write instead, in one clause.
    pub fn fix(&self) -> String {
        match self {
            Self::Empty { wanted }
            | Self::TooLong { wanted }
            | Self::NoNumber { wanted, .. }
            | Self::NoUnit { wanted, .. }
            | Self::WrongKind { wanted, .. }
            | Self::UnknownUnit { meant: None, wanted, .. } => {
                format!("write it like {}", wanted.example)
            }
            Self::UnknownUnit { meant: Some(meant), .. } => format!("did you mean {meant}?"),
            Self::UnclearUnit { instead, .. } => format!("write {instead}"),
            Self::Comma { thousands, decimal } => format!("write {thousands} or {decimal}"),
            Self::OverZero => "write it like 1/4 or 1 1/2".into(),
            Self::Range { .. } => "write one amount".into(),
            Self::Gap { .. } => {
                "write a whole number without spaces, and a unit after it".into()
            }
            Self::Trailing { .. } => "write the amount alone".into(),
            Self::Order { .. } => "write it like 3 min 30 s".into(),
            Self::Negative { .. } => "write an amount of 0 or more".into(),
            Self::TooLarge { .. } => "check the number and its unit".into(),
        }
    }
}
