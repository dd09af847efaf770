//! Laws of the bag model that forecasts go beyond, as every face tells it: never in silence.

use super::{Outlook, voice};
use barm_domain::outlook::{BeyondTogether, Entry, Treated, beyond_together};
use barm_domain::plan::Plan;

/// Laws that the forecasts of a plan go beyond, each once.
pub(crate) fn beyond(entries: &[Entry]) -> Vec<BeyondTogether> {
    beyond_together(entries.iter().map(|entry| (entry.treatment.as_str(), entry.beyond.clone())))
}

/// The same of forecasts of several days.
pub(super) fn beyond_on_any_day(treated: &[Treated]) -> Vec<BeyondTogether> {
    beyond_together(treated.iter().map(|one| (one.treatment.as_str(), one.beyond())))
}

/// A line a law: whose bags, where it is known, and how far they go.
pub(crate) fn beyond_says(plan: &Plan, beyond: &[BeyondTogether]) -> Vec<String> {
    beyond.iter().map(|one| voice(plan).beyond_together(one)).collect()
}

/// The same of one treatment's bag, where its forecast is known.
pub(crate) fn beyond_of_bag(
    plan: &Plan,
    outlook: Option<&Outlook>,
    treatment: &str,
) -> Vec<String> {
    let entries = outlook.map_or(&[][..], |outlook| &outlook.entries);
    let entry = entries.iter().find(|entry| entry.treatment == treatment);
    let own = entry.into_iter().flat_map(|entry| &entry.beyond);
    own.map(|one| voice(plan).beyond(one)).collect()
}
