//! What each treatment of a plan is expected to do, and whether that will show.
//!
//! Forecasting one treatment is the long part: [`forecast`] does one, so that a caller may do
//! several at a time. [`gather()`] then sets each beside its reference, draw by draw.

mod beyond;
mod days;
mod entry;
mod foretold;
mod gather;
mod limit;
mod overnight;
mod refused;

pub use beyond::{Beyond, BeyondTogether, beyond_together};
pub use days::further_days;
pub use entry::{Curve, Entry, Upper};
pub use foretold::{Foretold, ForetoldAt, Outside, Side};
pub use gather::gather;
pub use limit::{HeldBackBy, Limit, MORE, Stretch, limit};
pub use overnight::{HOURS, Overnight, overnight, overnight_from};
pub use refused::in_words;

use crate::bench::{self, BenchError};
use crate::plan::{Day, Plan, Treatment};
use barm_science::card_height::CurvePosterior;
use barm_science::forecast::{self as science, Forecast, SetupError, Span, Streams};
use barm_science::prior::{Prior, Typical};
use barm_science::setup::Setup;

/// How finely to look ahead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// Number of draws; 512 unless there is a reason.
    pub draws: usize,
    /// Seed of everything that is left to chance.
    pub seed: u64,
}

impl Default for Look {
    fn default() -> Self {
        Self { draws: 512, seed: 20_270_309 }
    }
}

/// The forecast of one treatment with what went into it.
#[derive(Debug, Clone, PartialEq)]
pub struct Treated {
    /// Name of the treatment.
    pub treatment: String,
    /// What stands on the bench.
    pub setup: Setup,
    /// What it is expected to do.
    pub forecast: Forecast,
    /// The best guess of such a bag, by what was known for the forecast.
    pub typical: Typical,
    /// What is known of the card's curve on a bag of this size, beside the table.
    pub curve: CurvePosterior,
}

/// Why a treatment cannot be forecast.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum OutlookError {
    /// The plan has no school day.
    #[error("the plan has no school day, so room and air pressure are not known")]
    NoDay,
    /// No period leaves time for a reading.
    #[error("no period leaves time for a reading between mixing and clearing")]
    NoTime,
    /// Part of the recipe cannot be weighed or measured out.
    #[error("{treatment}: {source}")]
    Bench {
        /// The treatment.
        treatment: String,
        /// What is wrong with it.
        source: BenchError,
    },
    /// A value is one that no bag can have.
    #[error("{treatment}: {}", in_words(source))]
    Setup {
        /// The treatment.
        treatment: String,
        /// What is wrong with it.
        source: SetupError,
    },
}

impl OutlookError {
    /// The treatment that could not be forecast; nothing if none of the plan can.
    pub fn treatment(&self) -> Option<&str> {
        match self {
            Self::NoDay | Self::NoTime => None,
            Self::Bench { treatment, .. } | Self::Setup { treatment, .. } => Some(treatment),
        }
    }

    /// Why, without the name of the treatment.
    pub fn reason(&self) -> String {
        match self {
            Self::NoDay | Self::NoTime => self.to_string(),
            Self::Bench { source, .. } => source.to_string(),
            Self::Setup { source, .. } => in_words(source),
        }
    }
}

/// Forecasts one treatment on the plan's first day, up to the last reading that all periods reach.
///
/// # Errors
/// [`OutlookError`] says which treatment cannot be made, and why.
pub fn forecast(
    plan: &Plan,
    treatment: &Treatment,
    look: Look,
) -> Result<Treated, OutlookError> {
    forecast_on(plan, plan.days.first().ok_or(OutlookError::NoDay)?, treatment, look)
}

/// Forecasts one treatment in the room and air of a day, up to the last reading that all periods
/// reach.
///
/// # Errors
/// [`OutlookError`] says which treatment cannot be made, and why.
pub fn forecast_on(
    plan: &Plan,
    day: &Day,
    treatment: &Treatment,
    look: Look,
) -> Result<Treated, OutlookError> {
    forecast_from(plan, day, treatment, look, &plan.known.prior())
}

/// The same from what was learned before: of a lot of yeast, of an enzyme, of a box of bags
/// ([`Prior::knowing`]).
///
/// # Errors
/// [`OutlookError`] says which treatment cannot be made, and why.
pub fn forecast_from(
    plan: &Plan,
    day: &Day,
    treatment: &Treatment,
    look: Look,
    prior: &Prior,
) -> Result<Treated, OutlookError> {
    let name = || treatment.name.clone();
    let setup = setup_on(plan, day, treatment)?;
    let last_minute = plan.common_last_reading_min();
    if last_minute == 0 {
        return Err(OutlookError::NoTime);
    }
    let span = Span { draws: look.draws, ..Span::to(last_minute) };
    let forecast = science::forecast_from(&setup, &span, &streams(look, treatment), prior)
        .map_err(|source| OutlookError::Setup { treatment: name(), source })?;
    let (typical, curve) = (prior.typical(&setup), prior.curve(&setup.bag));
    Ok(Treated { treatment: name(), setup, forecast, typical, curve })
}

/// What one bag of that treatment is on the plan's first day.
///
/// # Errors
/// [`OutlookError`] if it cannot be made or the plan has no day.
pub fn setup(plan: &Plan, treatment: &Treatment) -> Result<Setup, OutlookError> {
    setup_on(plan, plan.days.first().ok_or(OutlookError::NoDay)?, treatment)
}

pub(crate) fn setup_on(
    plan: &Plan,
    day: &Day,
    treatment: &Treatment,
) -> Result<Setup, OutlookError> {
    bench::setup(plan, &plan.recipe(treatment), day)
        .map_err(|source| OutlookError::Bench { treatment: treatment.name.clone(), source })
}

/// Where the chance of one treatment comes from.
fn streams(look: Look, treatment: &Treatment) -> Streams {
    // Treatments are compared as one class makes them: on the same day, in the same period; and by
    // different hands, as most plans have it and as is the harder case.
    let own = bag_seed(look.seed, &treatment.name);
    Streams { day: look.seed, period: look.seed, group: own, bag: own }
}

/// A seed of the treatment's own, so that its spoons differ from those of the others and its
/// forecast does not change when another treatment is added (FNV-1a, G. Fowler, L. C. Noll, P. Vo;
/// constants from memory).
fn bag_seed(seed: u64, name: &str) -> u64 {
    name.bytes().fold(seed ^ 0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}
