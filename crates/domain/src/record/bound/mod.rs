//! What every bag is: sealed ones as they were sealed, the others as the newest plan has them.

mod alike;
mod carry;
mod held;
mod list;
mod order;
mod truth;

use super::{Home, Ledger};
use crate::code::BagCode;
use crate::plan::{Plan, PlannedBag, SetAsideRule};
use alike::alike;
use carry::Carry;
pub(super) use carry::older_name;
pub use carry::older_version;
use held::{Held, Versions, listed};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// The plan as the class day is read: the newest version, with every bag that was sealed under an
/// older one as it was sealed.
///
/// - A bag is held to the version under which it was sealed; one that was read without being
///   sealed, to the version of its zero reading. One of which anything else is on record is held
///   once it leaves the list.
/// - A treatment that a held bag needs, and that the newest version makes otherwise or not at all,
///   comes in from its own version. Where both ways are made, the older is called `Honey (plan 2)`.
/// - So do its question, what it is compared with, its period, and the rule by which it is set
///   aside, where they are gone.
/// - How the day runs, what is said of it and when it is read, is the newest version's.
#[derive(Debug, Clone, PartialEq)]
pub struct Bound {
    /// That plan, each bag as its label says. The newest itself where nothing is held.
    pub plan: Arc<Plan>,
    /// Bags that the newest version makes otherwise, or does not list any more.
    pub kept: BTreeSet<BagCode>,
    /// Bags that are in truth something else than their label says.
    truth: BTreeMap<BagCode, PlannedBag>,
}

impl Bound {
    /// What every bag is. `saved` holds the versions by number; `newest` may be one that is not
    /// saved yet.
    #[must_use]
    pub fn of(saved: &BTreeMap<u32, Arc<Plan>>, newest: &Arc<Plan>, ledger: &Ledger) -> Self {
        let versions = Versions { saved, newest };
        let held = versions.held(ledger);
        let by_code: BTreeMap<BagCode, &Held<'_>> =
            held.iter().map(|held| (held.code, held)).collect();
        let truths = truth::meant(versions, &by_code, ledger);
        let rules = lost_rules(saved, newest, ledger);
        let as_newest = held.iter().all(|held| same(newest, held));
        if as_newest && rules.is_empty() && truths.values().all(|meant| meant.old.is_none()) {
            let truth = truth::set_right(newest, &truths, |_, name| name.to_owned());
            return Self { plan: newest.clone(), kept: BTreeSet::new(), truth };
        }
        let mut wanted: BTreeMap<(u32, &str), &Plan> = BTreeMap::new();
        for held in &held {
            wanted.insert((held.version, &held.bag.treatment), held.plan);
            let of = held.plan.questions.iter().find(|own| own.id == held.bag.question);
            let beside = of
                .zip(held.plan.treatment(&held.bag.treatment))
                .and_then(|(of, treatment)| held.plan.beside(of, treatment));
            if let Some(beside) = beside.filter(|name| newest.treatment(name).is_none()) {
                wanted.insert((held.version, beside), held.plan);
            }
        }
        let old = truths.values().filter_map(|meant| meant.old);
        wanted.extend(old.map(|(version, plan, name)| ((version, name), plan)));
        let mut in_use = in_use(newest, &by_code);
        let as_now = truths.values().filter(|meant| meant.old.is_none());
        in_use.extend(as_now.filter_map(|meant| meant.truth.treatment.clone()));
        let mut carry = Carry::into(newest, in_use);
        // What stands there already keeps its name, before anything takes it.
        for ((version, name), plan) in wanted.iter().rev() {
            carry.find(*version, plan, name);
        }
        for ((version, name), plan) in wanted.iter().rev() {
            carry.bring(*version, plan, name);
        }
        for held in &held {
            carry.beside(held.version, held.plan, &held.bag.question, &held.bag.treatment);
        }
        let mut kept = BTreeSet::new();
        for held in &held {
            if !same(newest, held) {
                kept.insert(held.code);
                list::put(&mut carry, newest, held);
            }
        }
        carry.clear_out(newest);
        order::keep(&mut carry.plan, saved);
        carry.plan.set_aside_rules.extend(rules);
        let truth = truth::set_right(&carry.plan, &truths, |version, name| {
            carry.name(version, name).cloned().unwrap_or_else(|| name.to_owned())
        });
        Self { plan: Arc::new(carry.plan), kept, truth }
    }

    /// What a bag is in truth; nothing for one that no version lists.
    #[must_use]
    pub fn in_truth(&self, code: BagCode) -> Option<&PlannedBag> {
        self.truth.get(&code).or_else(|| listed(&self.plan, code))
    }

    /// The plan with every bag as it is in truth, as results need it.
    #[must_use]
    pub fn plan_in_truth(&self) -> Plan {
        let mut plan = Plan::clone(&self.plan);
        for bag in &mut plan.bags {
            let code = bag.code.parse::<BagCode>().ok();
            if let Some(truth) = code.and_then(|code| self.truth.get(&code)) {
                bag.clone_from(truth);
            }
        }
        plan
    }

    /// Whose every held bag is.
    pub(super) fn homes(&self) -> impl Iterator<Item = (BagCode, Home)> {
        self.kept.iter().filter_map(|code| {
            let bag = listed(&self.plan, *code)?;
            Some((*code, Home { period: bag.period.clone(), group: bag.group }))
        })
    }
}

/// Whether the newest version still makes a held bag as it was made.
fn same(newest: &Plan, held: &Held<'_>) -> bool {
    let Some(bag) = listed(newest, held.code) else { return false };
    let (Some(now), Some(then)) =
        (newest.treatment(&bag.treatment), held.plan.treatment(&held.bag.treatment))
    else {
        return false;
    };
    let (now, then) = (newest.recipe(now), held.plan.recipe(then));
    let label = |plan: &Plan, item: &String| {
        plan.label_foods.iter().find(|food| food.name == *item).cloned()
    };
    let mut items = then.food.iter().chain(then.extras.iter().map(|extra| &extra.item));
    let variable = |plan: &Plan, id: &str| {
        plan.questions
            .iter()
            .find(|own| own.id == id)
            .map(|own| (own.variable, own.crossed_with))
    };
    let then_bag = held.bag;
    (&bag.period, bag.group, &bag.question, &bag.treatment)
        == (&then_bag.period, then_bag.group, &then_bag.question, &then_bag.treatment)
        && variable(newest, &bag.question) == variable(held.plan, &then_bag.question)
        && alike(&now, &then)
        && items.all(|item| label(newest, item) == label(held.plan, item))
}

/// Treatments of bags that the newest version may still change, with what they are compared with.
fn in_use(newest: &Plan, held: &BTreeMap<BagCode, &Held<'_>>) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for bag in &newest.bags {
        if bag.code.parse().is_ok_and(|code: BagCode| held.contains_key(&code)) {
            continue;
        }
        let of = newest.questions.iter().find(|own| own.id == bag.question);
        let beside = of
            .zip(newest.treatment(&bag.treatment))
            .and_then(|(of, treatment)| newest.beside(of, treatment));
        names.insert(bag.treatment.clone());
        names.extend(beside.map(str::to_owned));
    }
    names
}

/// Rules by which bags are set aside and that the newest version does not have any more.
fn lost_rules(
    saved: &BTreeMap<u32, Arc<Plan>>,
    newest: &Plan,
    ledger: &Ledger,
) -> Vec<SetAsideRule> {
    let bags = ledger.standing().bags.values();
    let rules: BTreeSet<&String> = bags.filter_map(|bag| bag.set_aside.as_ref()).collect();
    let of = |plan: &Plan, id: &String| {
        plan.set_aside_rules.iter().find(|rule| rule.id == *id).cloned()
    };
    let lost = rules.into_iter().filter(|id| of(newest, id).is_none());
    lost.filter_map(|id| saved.values().rev().find_map(|plan| of(plan, id))).collect()
}
