//! The one sentence to the whole class.

use super::benches::Expects;
use super::needs::followed;
use crate::desk::room::Scene;
use crate::desk::room::benches::{Benches, local};
use crate::desk::room::doubts::own;
use crate::desk::{Wording, say};
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
pub(super) fn call(
    scene: &Scene<'_>,
    w: Wording,
    period: &Period,
    benches: &Benches,
) -> Option<Call> {
    let standing = scene.ledger.standing();
    let expects = Expects::of(scene, benches);
    let all = benches.bags.iter();
    let followed: Vec<Followed<'_>> = all
        .filter_map(|bench| Some(followed(scene, bench, own(scene, period, bench)?, &expects)))
        .collect();
    let call = class_call(&followed)?;
    let planned = format!("{:.0}", scene.plan.base.water_celsius);
    let jugs = standing.periods.get(&period.name).map(|day| day.jugs.as_slice());
    let jug = match jugs.unwrap_or_default().last() {
        None => say!(w, "call-no-jug", planned = planned),
        Some((at, jug, celsius)) => say!(
            w,
            "call-jug",
            jug = jug.to_string(),
            celsius = format!("{celsius:.0}"),
            at = local(scene, period, *at),
            planned = planned,
        ),
    };
    let (low, of, minute) =
        (call.low.to_string(), call.of.to_string(), format!("{:.0}", call.minute));
    let low = if call.controls_of > 0 {
        say!(w, "call-low-controls", low = low, of = of, minute = minute)
    } else {
        say!(w, "call-low", low = low, of = of, minute = minute)
    };
    Some(Call {
        head: say!(w, "call-head"),
        says: format!("{low} {jug} {}", say!(w, "call-do")),
        why: vec![
            say!(w, "call-cold"),
            say!(w, "call-hot"),
            say!(w, "call-old"),
            say!(w, "call-forecast"),
        ],
    })
}
