//! Which version of the plan a bag is held to.

use super::carry::older_name;
use crate::code::BagCode;
use crate::plan::{Plan, PlannedBag};
use crate::record::Ledger;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A bag with the version that says what it is.
#[derive(Debug, Clone, Copy)]
pub(super) struct Held<'p> {
    pub(super) code: BagCode,
    pub(super) version: u32,
    pub(super) plan: &'p Plan,
    pub(super) bag: &'p PlannedBag,
}

/// All versions, and the newest, which may not be among them yet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Versions<'p> {
    pub(super) saved: &'p BTreeMap<u32, Arc<Plan>>,
    pub(super) newest: &'p Arc<Plan>,
}

impl<'p> Versions<'p> {
    /// Every bag that is held to a version: sealed or read ones to the version of that time, and
    /// others of which anything is on record to the last that lists them, if the newest does not.
    pub(super) fn held(self, ledger: &Ledger) -> Vec<Held<'p>> {
        let one = |(code, bag): (&BagCode, &crate::record::Bag)| {
            let at = bag.sealed.map(|(_, version)| version).or_else(|| {
                Some(ledger.version_at(bag.zero.as_ref()?.measured).unwrap_or_default())
            });
            let (version, plan, bag) = match at {
                Some(at) => self.nearest(at, |plan| listed(plan, *code))?,
                None if listed(self.newest, *code).is_some() => return None,
                None => self.nearest(u32::MAX, |plan| listed(plan, *code))?,
            };
            Some(Held { code: *code, version, plan, bag })
        };
        ledger.standing().bags.iter().filter_map(one).collect()
    }

    /// What a bag's true treatment is called and in which version it stands, if that is not the
    /// newest: a bag that is held to a version is meant in that version's words.
    pub(super) fn meant<'t>(
        self,
        treatment: &'t str,
        held: Option<&Held<'p>>,
    ) -> Option<(u32, &'p Plan, &'t str)> {
        if let Some((name, version)) = older_name(treatment)
            && let Some(plan) = self.saved.get(&version)
            && plan.treatment(name).is_some()
        {
            return Some((version, plan, name));
        }
        if let Some(held) = held
            && held.plan.treatment(treatment).is_some()
        {
            return Some((held.version, held.plan, treatment));
        }
        if self.newest.treatment(treatment).is_some() {
            return None;
        }
        let (version, plan, _) = self.nearest(u32::MAX, |plan| plan.treatment(treatment))?;
        Some((version, plan, treatment))
    }

    /// The version nearest to this one that has something: itself, else a later, else an earlier.
    fn nearest<T>(
        self,
        version: u32,
        has: impl Fn(&'p Plan) -> Option<T>,
    ) -> Option<(u32, &'p Plan, T)> {
        let later = self.saved.range(version..);
        let earlier = self.saved.range(..version).rev();
        later.chain(earlier).find_map(|(number, plan)| Some((*number, &**plan, has(plan)?)))
    }
}

/// The bag as a plan lists it.
pub(super) fn listed(plan: &Plan, code: BagCode) -> Option<&PlannedBag> {
    let written = code.to_string();
    plan.bags.iter().find(|bag| bag.code == written)
}
