//! Why the gain of a second round cannot be told.

use crate::statistics::power::PowerError;
use crate::statistics::second_look::SecondLookError;

/// Why there is no expected gain.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum GainError {
    /// A number that none can be.
    #[error("{what} is {value}, but must be {wanted}")]
    Unusable {
        /// What it stands for.
        what: &'static str,
        /// The number given.
        value: f64,
        /// What it must be.
        wanted: &'static str,
    },
    /// Nothing is believed.
    #[error("no draw of the true difference was given; at least one is needed")]
    NoDraws,
    /// Sizes that cannot belong together.
    #[error(
        "{what} is {value}, out of all proportion to bags that differ by {sd}; look for a wrong unit"
    )]
    TooUnequal {
        /// What it stands for.
        what: &'static str,
        /// The number given.
        value: f64,
        /// The spread of bags.
        sd: f64,
    },
    /// Bags that make no sides.
    #[error(transparent)]
    Sides(#[from] SecondLookError),
    /// Groups that bags cannot have.
    #[error(transparent)]
    Groups(#[from] PowerError),
}

/// A number that must lie in a range.
pub(super) fn within(
    what: &'static str,
    value: f64,
    range: std::ops::RangeInclusive<f64>,
    wanted: &'static str,
) -> Result<f64, GainError> {
    if range.contains(&value) {
        Ok(value)
    } else {
        Err(GainError::Unusable { what, value, wanted })
    }
}
