//! Forecasts of all treatments of a plan, several at a time.

use super::{DeskError, Progress};
use barm_domain::outlook::{self, Entry, Look, Overnight, Treated};
use barm_domain::plan::{Plan, Treatment};
use rayon::prelude::*;
use std::sync::atomic::{AtomicUsize, Ordering};

/// What every treatment of the plan is expected to do.
#[derive(Debug)]
pub(crate) struct Outlook {
    /// One entry for each treatment of each question.
    pub(crate) entries: Vec<Entry>,
    /// The forecasts behind them.
    pub(crate) treated: Vec<Treated>,
}

/// Forecasts every treatment. The answer does not depend on how many run at a time.
pub(crate) fn outlook(
    plan: &Plan,
    look: Look,
    progress: &dyn Progress,
) -> Result<Outlook, DeskError> {
    let treatments: Vec<&Treatment> =
        plan.treatments().map(|(_, treatment)| treatment).collect();
    let done = AtomicUsize::new(0);
    let of = treatments.len();
    let treated = treatments
        .par_iter()
        .map(|treatment| {
            let forecast = outlook::forecast(plan, treatment, look);
            progress.step("forecasting", done.fetch_add(1, Ordering::Relaxed) + 1, of);
            forecast
        })
        .collect::<Result<Vec<_>, _>>()?;
    Ok(Outlook { entries: outlook::gather(plan, &treated), treated })
}

/// Forecasts treatments once more for days in another room or air than the plan's first, where
/// they have bags.
pub(crate) fn further_days(
    plan: &Plan,
    look: Look,
    progress: &dyn Progress,
) -> Result<Vec<Treated>, DeskError> {
    let days = outlook::further_days(plan);
    let done = AtomicUsize::new(0);
    let forecasts = days.par_iter().map(|(treatment, day)| {
        let forecast = outlook::forecast_on(plan, day, treatment, look);
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress.step("forecasting the other days", done, days.len());
        forecast
    });
    Ok(forecasts.collect::<Result<Vec<_>, _>>()?)
}

/// What every treatment may hold the next day if its bag is left sealed, for the cautions.
pub(crate) fn overnight(
    plan: &Plan,
    look: Look,
    progress: &dyn Progress,
) -> Result<Vec<Overnight>, DeskError> {
    let treatments: Vec<&Treatment> =
        plan.treatments().map(|(_, treatment)| treatment).collect();
    let done = AtomicUsize::new(0);
    let overnight = treatments.par_iter().map(|treatment| {
        let overnight = outlook::overnight(plan, treatment, look);
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress.step("looking at the next day", done, treatments.len());
        overnight
    });
    Ok(overnight.collect::<Result<Vec<_>, _>>()?)
}

/// Whether a treatment is compared with something else than its question's reference.
pub(crate) fn has_own_reference(plan: &Plan, entry: &Entry) -> bool {
    let question = plan.questions.iter().find(|question| question.id == entry.question);
    question.is_some_and(|question| question.reference != entry.beside)
}
