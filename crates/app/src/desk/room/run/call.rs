//! The one sentence to the whole class.

use super::benches::Expects;
use crate::desk::room::Scene;
use crate::desk::room::benches::{Benches, local};
use barm_domain::plan::Period;
use barm_domain::slip::{Followed, class_call};

/// The whole class is low.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Call {
    /// In a few words.
    pub(crate) head: String,
    /// What was seen and what to do now.
    pub(crate) says: String,
    /// What it may be, and how to tell.
    pub(crate) why: Vec<String>,
}

/// The call, if there is reason for one.
pub(super) fn call(scene: &Scene<'_>, period: &Period, benches: &Benches) -> Option<Call> {
    let standing = scene.ledger.standing();
    let expects = Expects::of(scene, benches);
    let followed: Vec<Followed<'_>> = benches
        .bags
        .iter()
        .filter_map(|bag| {
            Some(Followed {
                code: bag.code,
                bag: standing.bags.get(&bag.code)?,
                control: scene.plan.is_control(&bag.treatment),
                band: expects.band(bag.code),
            })
        })
        .collect();
    let call = class_call(&followed)?;
    let controls = if call.controls_of > 0 { ", controls too" } else { "" };
    let planned = scene.plan.base.water_celsius;
    let jugs = standing.periods.get(&period.name).map(|day| day.jugs.as_slice());
    let jug = jugs.unwrap_or_default().last().map_or_else(
        || format!(" No jug was measured; the plan has {planned:.0} °C."),
        |(at, jug, celsius)| {
            let at = local(scene, period, *at);
            format!(" Jug {jug} read {celsius:.0} °C at {at}; the plan has {planned:.0} °C.")
        },
    );
    Some(Call {
        head: "The whole class is low".to_owned(),
        says: format!(
            "{} of {} bags stand under their forecast at {:.0} min{controls}.{jug} Think of yeast \
             and water first: feel the bags now.",
            call.low, call.of, call.minute
        ),
        why: vec![
            "Water too cold: bags feel cool. Lay them in trays of warm water, all of them alike, \
             and note the jug."
                .to_owned(),
            "Water too hot (over about 50 °C): an early puff, then nothing. The yeast is dead; \
             start one group again with a measured jug."
                .to_owned(),
            "Old yeast: no foam in a cup of warm sugar water after ten minutes. Open a fresh \
             packet for the next period."
                .to_owned(),
            "The forecast has not met your yeast and bags. A class that is low and alike still \
             compares well."
                .to_owned(),
        ],
    })
}
