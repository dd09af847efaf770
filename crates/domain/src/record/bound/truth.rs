//! Bags whose label is wrong.

use super::held::{Held, Versions, listed};
use crate::code::BagCode;
use crate::plan::{Plan, PlannedBag};
use crate::record::{Ledger, Truth};
use std::collections::BTreeMap;

/// What somebody said that a bag is in truth.
pub(super) struct Meant<'p, 't> {
    pub(super) truth: &'t Truth,
    /// The older version that knows its treatment: number, version and name; nothing if that is
    /// the newest.
    pub(super) old: Option<(u32, &'p Plan, &'t str)>,
}

/// All bags that were set right.
pub(super) fn meant<'p, 't>(
    versions: Versions<'p>,
    held: &BTreeMap<BagCode, &Held<'p>>,
    ledger: &'t Ledger,
) -> BTreeMap<BagCode, Meant<'p, 't>> {
    let one = |(code, bag): (&BagCode, &'t crate::record::Bag)| {
        let truth = bag.truth.as_ref()?;
        let name = truth.treatment.as_deref();
        let old = name.and_then(|name| versions.meant(name, held.get(code).copied()));
        Some((*code, Meant { truth, old }))
    };
    ledger.standing().bags.iter().filter_map(one).collect()
}

/// Bags that were set right, as they are in truth.
pub(super) fn set_right(
    plan: &Plan,
    all: &BTreeMap<BagCode, Meant<'_, '_>>,
    name: impl Fn(u32, &str) -> String,
) -> BTreeMap<BagCode, PlannedBag> {
    let mut right = BTreeMap::new();
    for (code, Meant { truth, old }) in all {
        let Some(mut bag) = listed(plan, *code).cloned() else { continue };
        if let Some(group) = truth.group {
            bag.group = group;
        }
        let treatment = match old {
            Some((version, _, treatment)) => Some(name(*version, treatment)),
            None => truth.treatment.clone(),
        };
        let found =
            treatment.and_then(|name| plan.treatments().find(|(_, known)| known.name == name));
        if let Some((question, treatment)) = found {
            bag.treatment.clone_from(&treatment.name);
            // A bag that answers its question as well with what it is in truth stays there.
            let own = plan.questions.iter().find(|question| question.id == bag.question);
            let answers = own.is_some_and(|own| {
                plan.answering(own).iter().any(|answer| answer.name == treatment.name)
            });
            if !answers {
                question.clone_into(&mut bag.question);
            }
        }
        right.insert(*code, bag);
    }
    right
}
