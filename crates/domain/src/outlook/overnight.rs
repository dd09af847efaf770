//! A bag that is forgotten: sealed, on the bench, until the next day.

use super::{Look, OutlookError, setup, streams};
use crate::plan::{Plan, Treatment};
use barm_science::ethanol;
use barm_science::forecast::{Forecast, Span, forecast_from};
use barm_science::prior::Prior;

/// Hours after the zero reading that a forgotten bag is followed.
pub const HOURS: f64 = 24.0;

/// Draws of a bag left overnight: enough for its 97.5th percentile, at an eighth of the work.
const DRAWS: usize = 64;

/// What a bag of one treatment may hold the next day if it is left sealed.
#[derive(Debug, Clone, PartialEq)]
pub struct Overnight {
    /// Name of the treatment.
    pub treatment: String,
    /// Ethanol after [`HOURS`], 97.5th percentile (% by volume of the liquid).
    pub ethanol_percent: f64,
}

/// Follows one treatment for a whole day, for the cautions. Draws fewer bags than [`Look`] says.
///
/// # Errors
/// [`OutlookError`] says which treatment cannot be made, and why.
pub fn overnight(
    plan: &Plan,
    treatment: &Treatment,
    look: Look,
) -> Result<Overnight, OutlookError> {
    overnight_from(plan, treatment, look, &plan.known.prior())
}

/// The same from what was learned before ([`Prior::knowing`]).
///
/// # Errors
/// [`OutlookError`] says which treatment cannot be made, and why.
pub fn overnight_from(
    plan: &Plan,
    treatment: &Treatment,
    look: Look,
    prior: &Prior,
) -> Result<Overnight, OutlookError> {
    let setup = setup(plan, treatment)?;
    let span = Span {
        last_minute: (60.0 * HOURS) as u32,
        draws: look.draws.min(DRAWS),
        until_hours: HOURS,
    };
    let forecast = forecast_from(&setup, &span, &streams(look, treatment), prior)
        .map_err(|source| OutlookError::Setup { treatment: treatment.name.clone(), source })?;
    Ok(Overnight {
        treatment: treatment.name.clone(),
        ethanol_percent: high_percent(&forecast),
    })
}

/// Ethanol at the last minute of a forecast, 97.5th percentile (% by volume of the liquid).
pub(super) fn high_percent(forecast: &Forecast) -> f64 {
    let grams = forecast.ethanol_g().minute(forecast.last_minute());
    let mut percents: Vec<f64> = grams
        .iter()
        .zip(forecast.solution_l())
        .map(|(grams, liters)| ethanol::percent_by_volume(grams / liters))
        .collect();
    percents.sort_by(f64::total_cmp);
    // The smallest value that at most 2.5 % of the draws exceed.
    percents.iter().rev().nth(percents.len() / 40).copied().unwrap_or(f64::NAN)
}
