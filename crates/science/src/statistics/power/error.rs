//! Why a chance of finding a difference cannot be told.

/// Why there is no such chance.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PowerError {
    /// A level or a chance that is none.
    #[error("{what} is {value}, but must lie between 0 and 1, both left out")]
    NoChance {
        /// What it stands for.
        what: &'static str,
        /// The number given.
        value: f64,
    },
    /// A spread that bags cannot have.
    #[error("bags alike differ by {sd}, but must differ by more than nothing")]
    NoSuchSpread {
        /// The standard deviation given.
        sd: f64,
    },
    /// A difference or a limit that is no usable number.
    #[error("{what} is {value}, which is not a usable number")]
    Unusable {
        /// What it stands for.
        what: &'static str,
        /// The number given.
        value: f64,
    },
    /// Fewer bags, treatments or periods than there must be.
    #[error("there are {found} {what}, but there must be at least {least}")]
    TooFew {
        /// What of.
        what: &'static str,
        /// How many were given.
        found: f64,
        /// How many are needed.
        least: f64,
    },
    /// Nothing would show how much bags alike differ.
    #[error(
        "so few bags leave nothing to see how much bags alike differ; make at least two of a kind"
    )]
    NoSpreadSeen,
    /// The bags cannot tell the two treatments apart from their periods.
    #[error(
        "the two are never in the same period, nor linked through other treatments, so no number of readings tells them apart"
    )]
    NoSharedBlock,
    /// Not even that many bags are enough.
    #[error("not even {most} bags of each would find it that often")]
    TooMany {
        /// The most bags that were tried.
        most: u32,
    },
}

/// A number that must be usable.
pub(super) fn usable(what: &'static str, value: f64) -> Result<f64, PowerError> {
    // Beyond this, squares are not finite any more.
    const LARGEST: f64 = 1e100;
    if value.abs() <= LARGEST { Ok(value) } else { Err(PowerError::Unusable { what, value }) }
}

/// A spread that must be one.
pub(super) fn spread(sd: f64) -> Result<f64, PowerError> {
    usable("the spread", sd)?;
    if sd > 0.0 { Ok(sd) } else { Err(PowerError::NoSuchSpread { sd }) }
}
