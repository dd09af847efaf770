//! The order of questions and treatments, from which pages deal out colors and marks.

use super::carry::older_name;
use crate::plan::Plan;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Puts questions, treatments and controls in the order in which versions first had them, so that
/// a sealed bag looks as it did on the day it was sealed, and what is new comes after: also what
/// has taken an older one's name.
pub(super) fn keep(plan: &mut Plan, saved: &BTreeMap<u32, Arc<Plan>>) {
    let mut questions = First::default();
    let mut treatments = First::default();
    for version in saved.values() {
        version.questions.iter().for_each(|own| questions.seen(&own.id));
        version.treatments().for_each(|(_, own)| treatments.seen(&own.name));
    }
    questions.stand(plan.questions.iter().map(|own| own.id.as_str()));
    treatments.stand(plan.treatments().map(|(_, own)| own.name.as_str()));
    plan.questions.sort_by_key(|own| questions.rank(&own.id));
    for question in &mut plan.questions {
        question.treatments.sort_by_key(|own| treatments.rank(&own.name));
    }
    plan.controls.sort_by_key(|own| treatments.rank(&own.treatment.name));
}

/// In which order names came up.
#[derive(Default)]
struct First {
    /// The place at which a name first came up.
    places: BTreeMap<String, usize>,
    /// The oldest version of a name that stands in the plan; the newest is `u32::MAX`.
    oldest: BTreeMap<String, u32>,
}

/// The name by itself and the version whose it is; the newest is `u32::MAX`.
fn parted(called: &str) -> (&str, u32) {
    older_name(called).unwrap_or((called, u32::MAX))
}

impl First {
    fn seen(&mut self, name: &str) {
        let next = self.places.len();
        self.places.entry(name.to_owned()).or_insert(next);
    }

    fn stand<'a>(&mut self, called: impl Iterator<Item = &'a str>) {
        for (name, version) in called.map(parted) {
            let oldest = self.oldest.entry(name.to_owned()).or_insert(version);
            *oldest = version.min(*oldest);
        }
    }

    /// The place of a name: its own for the oldest of that name, behind all others for the rest.
    fn rank(&self, called: &str) -> (bool, usize, u32) {
        let (name, version) = parted(called);
        let newer = self.oldest.get(name).is_some_and(|oldest| *oldest < version);
        (newer, self.places.get(name).copied().unwrap_or(usize::MAX), version)
    }
}
