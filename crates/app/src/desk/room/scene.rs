//! What a page's view is made from.

use super::Kind;
use crate::desk::Outlook;
use barm_domain::code::BagCode;
use barm_domain::outlook::Entry as Expected;
use barm_domain::pilot::Known as KnownLots;
use barm_domain::plan::Plan;
use barm_domain::record::{Bound, Ledger, Standing};
use std::collections::BTreeMap;
use std::sync::Arc;

/// An investigation at one moment. Whoever holds it must not wait for anything.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scene<'a> {
    /// Its number.
    pub(crate) investigation: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// The plan of the class day: the newest version, with every sealed bag as it was sealed.
    pub(crate) plan: &'a Arc<Plan>,
    /// What every bag is, in truth as well.
    pub(crate) bound: &'a Bound,
    /// The newest version as it was saved: what is bought, mixed and planned by.
    pub(crate) newest: &'a Arc<Plan>,
    /// Its number; 0 if no version was saved yet.
    pub(crate) version: u32,
    /// All versions that can be read.
    pub(crate) plans: &'a BTreeMap<u32, Arc<Plan>>,
    /// The record.
    pub(crate) ledger: &'a Ledger,
    /// What every treatment of `plan` is expected to do, once it was worked out.
    /// For the teacher only.
    pub(crate) outlook: Option<&'a Outlook>,
    /// The same by lots that bags were sealed under and that are no longer in use.
    pub(crate) older: &'a [(KnownLots, Outlook)],
}

impl<'a> Scene<'a> {
    /// What the record adds up to.
    pub(crate) const fn standing(&self) -> &'a Standing {
        self.ledger.standing()
    }

    /// The treatment that a bag has in truth; nothing for one that no version lists.
    pub(crate) fn treatment_of(&self, bag: BagCode) -> Option<&'a str> {
        Some(self.bound.in_truth(bag)?.treatment.as_str())
    }

    /// The lots by which a bag is foreseen: those in use when it was sealed, or read first.
    pub(crate) fn lots_of(&self, bag: BagCode) -> &'a KnownLots {
        let own = self.standing().bags.get(&bag);
        let version = own.and_then(|bag| {
            let zero = || self.ledger.version_at(bag.zero.as_ref()?.measured);
            bag.sealed.map(|(_, version)| version).or_else(zero)
        });
        let plan = version.and_then(|version| self.plans.get(&version));
        plan.map_or(&self.newest.known, |plan| &plan.known)
    }

    /// Lots other than those in use now under which bags were sealed, each once.
    pub(crate) fn lots_of_sealed(&self) -> Vec<KnownLots> {
        let mut all: Vec<KnownLots> = Vec::new();
        if self.plans.values().all(|plan| plan.known == self.newest.known) {
            return all;
        }
        for code in self.standing().bags.keys() {
            let lots = self.lots_of(*code);
            if *lots != self.newest.known && !all.contains(lots) {
                all.push(lots.clone());
            }
        }
        all
    }

    /// What the treatments are expected to do by the lots of one bag, once it was worked out.
    pub(crate) fn outlook_of(&self, bag: BagCode) -> Option<&'a Outlook> {
        let lots = self.lots_of(bag);
        if *lots == self.newest.known {
            return self.outlook;
        }
        self.older.iter().find(|(own, _)| own == lots).map(|(_, outlook)| outlook)
    }

    /// One line about the lots that forecasts go by; nothing if none was tried. For the teacher
    /// only: what lots are called are words of hers.
    pub(crate) fn by_pilot(&self) -> Option<String> {
        self.newest.known.says()
    }

    /// How many sealed bags more would keep the plan they were sealed under, if this were the
    /// newest: it makes them otherwise, or does not list them.
    pub(crate) fn would_keep(&self, new: &Arc<Plan>) -> usize {
        let after = Bound::of(self.plans, new, self.ledger);
        after.kept.difference(&self.bound.kept).count()
    }

    /// What the treatments of the newest version are expected to do, as far as it was worked out
    /// for just what it makes.
    pub(crate) fn foreseen(&self) -> Vec<Expected> {
        let entries = self.outlook.map(|outlook| outlook.entries.as_slice());
        let entries = entries.unwrap_or_default();
        if Arc::ptr_eq(self.plan, self.newest) {
            return entries.to_vec();
        }
        let recipe = |plan: &Plan, name: &str| plan.treatment(name).map(|own| plan.recipe(own));
        let same = |entry: &&Expected| {
            let newest = recipe(self.newest, &entry.treatment);
            newest.is_some() && newest == recipe(self.plan, &entry.treatment)
        };
        entries.iter().filter(same).cloned().collect()
    }

    /// Whether what stands here never happened in a class.
    pub(crate) fn made_up(&self) -> bool {
        self.kind != Kind::Real
    }
}
