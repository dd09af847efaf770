//! Laws of the bag model that forecasts go beyond, as every face tells it: never in silence.

use super::{Outlook, voice};
use barm_domain::outlook::{Beyond, BeyondTogether, Entry, Treated, beyond_together};
use barm_domain::plan::Plan;
use barm_domain::result::ClassResult;

/// Laws that the forecasts of a plan go beyond, each once.
pub(crate) fn beyond(entries: &[Entry]) -> Vec<BeyondTogether> {
    beyond_together(
        entries.iter().map(|entry| (entry.treatment.as_str(), entry.beyond.clone())),
    )
}

/// The same of forecasts of several days, and of bags that were read higher than their card's curve is
/// known.
pub(super) fn beyond_on_the_day(
    treated: &[Treated],
    result: &ClassResult,
) -> Vec<BeyondTogether> {
    let forecast = treated.iter().map(|one| (one.treatment.as_str(), one.beyond()));
    let read = result.bags.iter().filter_map(|bag| {
        let mark = bag.contents.as_ref()?.beyond.as_ref()?;
        Some((bag.bag.treatment.as_str(), vec![Beyond::from(mark)]))
    });
    beyond_together(forecast.chain(read))
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
