//! Power before the day: how likely a class's bags will give each question a clear verdict.
//!
//! Two ways that share the rule of the day and the forecast, and nothing else: from the spread that the forecast
//! gives bags and groups, dealt as plain numbers; and by trying, with simulated classes whose readings go through
//! [`result::analyze`](crate::result::analyze), the very door of the real day, without slips and
//! with them. Both are told for the plan's own bags and for 1 to 8 bags of each treatment, dealt out
//! as [`bag_list`](crate::bag_list) would.
//!
//! The long parts are [`expected()`], once a treatment, [`Variant::follow`], once a bag, and
//! [`Variant::class`], once a class, so that a caller may do several at a time; [`gather()`] then sets
//! them side by side. Everything comes from a seed.

mod by_spreads;
mod class;
mod expected;
mod gather;
mod variant;

pub(crate) use by_spreads::foretold;
pub use class::Outcome;
pub use expected::{Expected, Rises, expected};
pub use gather::{Chances, Pair, QuestionPower, Tried, gather};
pub use variant::{Variant, variants};

use crate::bag_list::BagListError;
use crate::outlook::{Look, OutlookError};
use crate::rehearsal::Rates;

use barm_science::statistics::compare;

pub use barm_science::statistics::power::USUAL;

/// The chance with which a question finds a difference where there is none (1), as its verdict has
/// it.
pub const LEVEL: f64 = compare::LEVEL * compare::USED;

/// The most bags of each treatment that are tried.
pub const MOST_EACH: u32 = 8;

/// How much is tried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trial {
    /// Number of simulated classes for the plan's own bags; half as many for every other number.
    pub classes: usize,
    /// Seed of everything that is left to chance.
    pub seed: u64,
    /// How often each slip is made where slips are made.
    pub rates: Rates,
}

impl Default for Trial {
    fn default() -> Self {
        Self { classes: 100, seed: Look::default().seed, rates: Rates::default() }
    }
}

/// Why there is nothing to say.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NoPower {
    /// No question compares anything.
    #[error(
        "no question of the plan compares a treatment with another, so there is nothing to find"
    )]
    NothingCompared,
    /// No bag could be listed.
    #[error("the plan's bags cannot be listed: {0}")]
    Bags(#[from] BagListError),
    /// A plan without groups makes no bags.
    #[error("no group of the plan makes a bag; give a period some groups")]
    NoBags,
    /// A bag cannot be followed.
    #[error(transparent)]
    Outlook(#[from] OutlookError),
}
