//! Reasons why a table cannot be compared.

use crate::statistics::anova::AnovaError;
use crate::statistics::levels::MOST_LEVELS;
use crate::statistics::summary::SummaryError;

/// Why a table cannot be compared.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum LevelsError {
    /// No values.
    #[error("there are no values to compare")]
    Empty,
    /// A value is not finite, or too large to be squared.
    #[error("a value is {value:e}, which is too large to be used; correct it or set it aside")]
    OutOfReach {
        /// Which of the rows, from 0.
        row: usize,
        /// The value.
        value: f64,
    },
    /// A number in between has no row.
    #[error("level {level} has no values; number the levels without gaps")]
    NoValues {
        /// The level.
        level: usize,
    },
    /// One level only.
    #[error("all values are of one level, so there is nothing to compare it with")]
    OneLevel,
    /// More levels than a comparison can show.
    #[error(
        "there are {found} levels, and at most {MOST_LEVELS} can be compared; is this the column of levels?"
    )]
    TooMany {
        /// Levels found.
        found: usize,
    },
    /// All values are equal.
    #[error("all values are {value}, so nothing differs and chance cannot be judged")]
    AllEqual {
        /// The value.
        value: f64,
    },
    /// The control is none of the levels.
    #[error("no value is of the control's level")]
    NoControl,
    /// One block only.
    #[error(
        "all values are of one block, so there is nothing to adjust for; leave the blocks out"
    )]
    OneBlock,
    /// Levels that no chain of blocks links.
    #[error(
        "some levels never share a block with the others, nor hang together with them through a third, so their difference cannot be told from that between blocks"
    )]
    Apart {
        /// Levels that hang together.
        sets: Vec<Vec<usize>>,
    },
    /// Nothing to judge chance by.
    #[error(transparent)]
    Chance(#[from] AnovaError),
    /// A level cannot be summarized.
    #[error(transparent)]
    Values(SummaryError),
}
