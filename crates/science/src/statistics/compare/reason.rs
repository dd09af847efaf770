//! Reasons why two treatments cannot be compared.

use crate::statistics::linear::FitError;
use crate::statistics::mixed::{GroupVariance, Mixed, MixedError, Told};

/// Why a treatment cannot be compared with its reference.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum NotComparable {
    /// A treatment was to be compared with itself.
    #[error("a treatment cannot be compared with itself; name another reference")]
    Itself,
    /// No bag on one side.
    #[error(
        "there are {n} bags of the treatment and {n_reference} of its reference; each needs at least one"
    )]
    NoBags {
        /// Bags of the treatment.
        n: usize,
        /// Bags of the reference.
        n_reference: usize,
    },
    /// No period, nor a chain of periods, has both.
    #[error(
        "they were never in the same period, nor linked through other treatments, so the difference cannot be told from that between periods"
    )]
    NoSharedBlock,
    /// A crossed question has no bag for one of the combinations that the comparison averages over.
    #[error(
        "one of the combinations has no bag, so an average over all of them cannot be made; compare within the others"
    )]
    EmptyCell,
    /// The difference hangs on how much groups differ, and too few groups made bags to see that.
    #[error(
        "too few groups made bags to see how much groups differ, so the treatment cannot be told from who made it; let each group make its own reference too, or let more groups make each"
    )]
    GroupsNotTold,
    /// Every bag is the only one of its kind.
    #[error(
        "no bag has a second one like it ({n} of the treatment, {n_reference} of its reference), so chance cannot be judged; make at least two of each"
    )]
    TooFewBags {
        /// Bags of the treatment.
        n: usize,
        /// Bags of the reference.
        n_reference: usize,
    },
    /// The bags are of a second round, which has no verdict by itself.
    #[error(
        "these bags belong to a second round and have no verdict by themselves; judge them together with those of the first"
    )]
    NotByItself,
    /// Bags alike gave exactly the same value and no reading doubt was given.
    #[error(
        "bags of the same treatment all read exactly the same, so chance cannot be judged; check that nobody copied, or give the reading doubt"
    )]
    NoSpread,
    /// A value is not a number or absurdly large.
    #[error(
        "a bag's value is {value}, which is not a usable number; correct it or set the bag aside"
    )]
    Unusable {
        /// Which of the bags handed in, from 0.
        bag: usize,
        /// The value.
        value: f64,
    },
}

impl NotComparable {
    /// What a model tells of a combination of treatments, `n` bags against `n_reference`, or why it
    /// tells nothing.
    pub(in crate::statistics) fn unless_told(
        model: &Result<Mixed, MixedError>,
        weights: &[f64],
        (n, n_reference): (usize, usize),
    ) -> Result<Told, Self> {
        let model = model.as_ref().map_err(|why| match *why {
            MixedError::Fit(FitError::OutOfReach { row, value }) => {
                Self::Unusable { bag: row, value }
            }
            MixedError::Fit(FitError::Empty | FitError::Uneven { .. }) => {
                Self::NoBags { n, n_reference }
            }
            MixedError::NoRest => Self::TooFewBags { n, n_reference },
            MixedError::NoSpread | MixedError::NothingToTest => Self::NoSpread,
        })?;
        let told = model.told(weights).ok_or(Self::NoSharedBlock)?;
        let unknown = model.variances().source == GroupVariance::NotTold;
        if unknown && told.hangs_on_groups {
            return Err(Self::GroupsNotTold);
        }
        Ok(told)
    }
}
