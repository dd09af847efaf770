//! Warmth of water that is hard to believe.

use crate::desk::room::Scene;
use crate::desk::{Wording, say};
use barm_domain::amount::show::both_degrees;
use barm_domain::record::{Entry, Subject, What};

/// Water hotter than this (°C) burns skin within seconds (own rule; 60 °C is 140 °F).
const HOT_CELSIUS: f64 = 60.0;
/// Farther from the plan than this (°C), the unit may be another: 40 °C is 104 °F (own rule, as at
/// the bench).
const FAR_CELSIUS: f64 = 15.0;

/// What is asked about water that was written; it stays written all the same.
pub(super) fn hard_to_believe(scene: &Scene<'_>, w: Wording, entry: &Entry) -> Option<String> {
    let (celsius, planned) = match (&entry.what, &entry.subject) {
        (What::Jug { celsius, .. }, _) => (*celsius, None),
        (What::Made(_), Subject::Bag(code)) => {
            let made = scene.standing().bags.get(code)?.made.as_ref()?;
            let treatment = scene.plan.treatment(scene.treatment_of(*code)?)?;
            (made.water_celsius?, Some(scene.plan.recipe(treatment).water_celsius))
        }
        _ => return None,
    };
    let is = both_degrees(celsius);
    if celsius > HOT_CELSIUS && planned.is_none_or(|planned| planned <= HOT_CELSIUS) {
        return Some(say!(w, "done-hot", is = is));
    }
    let planned = planned.filter(|planned| (celsius - planned).abs() > FAR_CELSIUS)?;
    Some(say!(w, "done-far", is = is, plan = both_degrees(planned)))
}
