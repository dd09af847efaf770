//! Forecasts of all treatments of a plan, several at a time.

use super::Progress;
use barm_domain::outlook::{self, Entry, Look, OutlookError, Overnight, Treated};
use barm_domain::plan::{Plan, Treatment};
use rayon::prelude::*;
use std::sync::atomic::{AtomicUsize, Ordering};

/// What every treatment of the plan is expected to do.
#[derive(Debug)]
pub(crate) struct Outlook {
    /// One entry for each treatment of each question.
    pub(crate) entries: Vec<Entry>,
    /// The forecasts behind them; those for other days than the first, if there are any, behind all others.
    pub(crate) treated: Vec<Treated>,
    /// Why a treatment has no forecast, each with its name, in the order of the plan.
    pub(crate) failed: Vec<OutlookError>,
}

/// Titles of the plans that were forecast, so that tests see who asks.
#[cfg(test)]
static FORESEEN: std::sync::Mutex<Vec<String>> = std::sync::Mutex::new(Vec::new());

/// Whether a plan of this title was forecast.
#[cfg(test)]
pub(crate) fn was_foreseen(title: &str) -> bool {
    FORESEEN.lock().expect("nobody panics with it").iter().any(|known| known == title)
}

/// Forecasts a treatment on the plan's first day. Every forecast of the program comes through here
/// or through [`further_days`].
pub(super) fn forecast(
    plan: &Plan,
    treatment: &Treatment,
    look: Look,
) -> Result<Treated, OutlookError> {
    #[cfg(test)]
    FORESEEN.lock().expect("nobody panics with it").push(plan.title.clone());
    outlook::forecast(plan, treatment, look)
}

/// Forecasts every treatment that can be. The answer does not depend on how many run at a time.
///
/// # Errors
/// [`OutlookError`] if no treatment can be forecast, for want of a day or of time.
pub(crate) fn outlook(
    plan: &Plan,
    look: Look,
    progress: &dyn Progress,
) -> Result<Outlook, OutlookError> {
    let treatments: Vec<&Treatment> =
        plan.treatments().map(|(_, treatment)| treatment).collect();
    let done = AtomicUsize::new(0);
    let of = treatments.len();
    let made: Vec<Result<Treated, OutlookError>> = treatments
        .par_iter()
        .map(|treatment| {
            let forecast = forecast(plan, treatment, look);
            progress.step("forecasting", done.fetch_add(1, Ordering::Relaxed) + 1, of);
            forecast
        })
        .collect();
    let (treated, failed) = parted(made);
    match failed.iter().find(|error| error.treatment().is_none()) {
        Some(error) => Err(error.clone()),
        None => Ok(Outlook { entries: outlook::gather(plan, &treated), treated, failed }),
    }
}

/// Forecasts treatments once more for days in another room or air than the plan's first, where
/// they have bags. What cannot be forecast there is left out: it could not on the first day either.
pub(crate) fn further_days(plan: &Plan, look: Look, progress: &dyn Progress) -> Vec<Treated> {
    let days = outlook::further_days(plan);
    let done = AtomicUsize::new(0);
    let forecasts = days.par_iter().map(|(treatment, day)| {
        let forecast = outlook::forecast_on(plan, day, treatment, look);
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress.step("forecasting the other days", done, days.len());
        forecast
    });
    parted(forecasts.collect()).0
}

/// What worked and what did not, each in its order.
fn parted<T>(made: Vec<Result<T, OutlookError>>) -> (Vec<T>, Vec<OutlookError>) {
    let (mut worked, mut failed) = (Vec::new(), Vec::new());
    for one in made {
        match one {
            Ok(one) => worked.push(one),
            Err(error) => failed.push(error),
        }
    }
    (worked, failed)
}

/// What every treatment may hold the next day if its bag is left sealed, for the cautions, and why
/// a treatment is not among them.
pub(crate) fn overnight(
    plan: &Plan,
    look: Look,
    progress: &dyn Progress,
) -> (Vec<Overnight>, Vec<OutlookError>) {
    let treatments: Vec<&Treatment> =
        plan.treatments().map(|(_, treatment)| treatment).collect();
    let done = AtomicUsize::new(0);
    let made = treatments.par_iter().map(|treatment| {
        let overnight = outlook::overnight(plan, treatment, look);
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress.step("looking at the next day", done, treatments.len());
        overnight
    });
    parted(made.collect())
}

/// Whether a treatment is compared with something else than its question's reference.
pub(crate) fn has_own_reference(plan: &Plan, entry: &Entry) -> bool {
    let question = plan.questions.iter().find(|question| question.id == entry.question);
    question.is_some_and(|question| question.reference != entry.beside)
}
