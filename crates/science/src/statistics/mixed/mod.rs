//! Comparisons in which groups are chance: the linear mixed model of a class.
//!
//! ```text
//! value = block + treatment + group + rest       group, rest normal, independent
//! ```
//!
//! A block is a class period, a group the students who share a bench in it. Bags that one group
//! made have its way of working in common: they are less apart than bags of two groups, and a
//! difference between treatments of two groups is in part one between those groups.
//!
//! [`compare`](super::compare) is the door; [`Mixed`] is the model behind it. The equations stand
//! in `docs/science/tests.md`.

mod eigen;
mod family;
mod fit;
mod holm;
mod information;
mod joint;
mod policy;
mod records;
mod reml;
mod rows;
mod solved;
mod spreads;
mod square;
mod sums;
mod told;
mod triangle;
mod weighed;

use super::linear::FitError;
use thiserror::Error;

pub(in crate::statistics) use family::Family;
pub use family::Together;
pub use fit::{Mixed, Variances};
pub use holm::holm;
pub use joint::JointTest;
pub use policy::{Expected, GroupVariance, Policy};
pub(in crate::statistics) use records::Place;
pub use records::Records;
pub use spreads::TreatmentSpreads;
pub use told::Told;

/// How standard errors and degrees of freedom are found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Method {
    /// Kenward and Roger's: the standard error is made larger for the estimated ratio of variances,
    /// the information is the expected one.
    #[default]
    KenwardRoger,
    /// Satterthwaite's: the standard error as it is, the information that of the values.
    Satterthwaite,
}

/// Why there is no fitted model.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum MixedError {
    /// The values or the design cannot be used.
    #[error(transparent)]
    Fit(#[from] FitError),
    /// Nothing left to judge chance by.
    #[error(
        "no bag has a second one like it, so chance cannot be judged; make at least two of each"
    )]
    NoRest,
    /// Bags alike gave the same value, and no reading doubt was given.
    #[error(
        "bags of the same group and treatment all read exactly the same, so chance cannot be judged; check that nobody copied, or give the reading doubt"
    )]
    NoSpread,
    /// Nothing left to compare.
    #[error(
        "there is nothing to compare: no combination of these is left once all else is told; check the design"
    )]
    NothingToTest,
}
