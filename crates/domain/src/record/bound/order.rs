//! The order of questions and treatments, from which pages deal out colors and marks.

use super::carry::older_name;
use crate::plan::Plan;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Puts questions, treatments and controls in the order in which versions first had them, so that
/// a sealed bag looks as it did on the day it was sealed, and what is new comes after.
pub(super) fn keep(plan: &mut Plan, saved: &BTreeMap<u32, Arc<Plan>>) {
    let mut questions = First::default();
    let mut treatments = First::default();
    for version in saved.values() {
        version.questions.iter().for_each(|own| questions.seen(&own.id));
        version.treatments().for_each(|(_, own)| treatments.seen(&own.name));
    }
    plan.questions.sort_by_key(|own| questions.rank(&own.id));
    for question in &mut plan.questions {
        question.treatments.sort_by_key(|own| treatments.rank(&own.name));
    }
    plan.controls.sort_by_key(|own| treatments.rank(&own.treatment.name));
}

/// In which order names came up.
#[derive(Default)]
struct First(BTreeMap<String, usize>);

impl First {
    fn seen(&mut self, name: &str) {
        let next = self.0.len();
        self.0.entry(name.to_owned()).or_insert(next);
    }

    /// The name's own place; one of an older version stands after the newer of its name.
    fn rank(&self, name: &str) -> (usize, bool) {
        let of = |name: &str| self.0.get(name).copied();
        match of(name) {
            Some(own) => (own, false),
            None => {
                let older = older_name(name).and_then(|(name, _)| of(name));
                (older.unwrap_or(usize::MAX), older.is_some())
            }
        }
    }
}
