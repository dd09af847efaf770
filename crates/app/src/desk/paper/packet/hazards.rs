//! What could hurt, what brings it up, and what becomes of what is left.

use super::super::caution;
use barm_documents::sheet::{Entry, Hazard};
use barm_domain::check::{CAUTION_RULES, CautionRule};
use barm_domain::finding::Finding;
use barm_domain::plan::{Circumstance, Plan};
use barm_domain::prep::{Item, Prep};

/// The cautions of a plan, those that it answers among them, in the order of their codes.
pub(super) fn hazards(found: &[Finding]) -> Vec<Hazard> {
    let hazard = |rule: &CautionRule| {
        let finding = found.iter().find(|finding| finding.code == rule.code)?;
        Some(Hazard {
            hazard: rule.hazard.to_owned(),
            trigger: rule.trigger.to_owned(),
            caution: caution(finding),
        })
    };
    CAUTION_RULES.iter().filter_map(hazard).collect()
}

/// The same in a word or two.
pub(super) fn in_brief(found: &[Finding]) -> Vec<Entry> {
    let brief = |one: Hazard| Entry { head: one.caution.code, says: one.hazard };
    hazards(found).into_iter().map(brief).collect()
}

/// What becomes of bags, liquids, solutions and tools.
pub(super) fn clearing(plan: &Plan, prep: &Prep) -> Vec<Entry> {
    let entry = |head: &str, says: &str| Entry { head: head.to_owned(), says: says.to_owned() };
    let mut list = vec![
        entry(
            "Open",
            "Goggles stay on. Each bag is opened away from faces, near a window or a door. Nobody \
             sniffs at it.",
        ),
        entry(
            "Count",
            "Count bags and cards back, group by group, before anybody leaves. Write down what is \
             missing.",
        ),
        entry(
            "Liquid",
            "Down the drain with plenty of water, the same day. Thick food goes through a sieve \
             first and into the bin.",
        ),
        entry(
            "Bags",
            "Empty, into the bin with a lid. None is taken home and none is used again.",
        ),
    ];
    if plan.circumstances.contains(&Circumstance::KeptOvernight) {
        list.push(entry(
            "Overnight",
            "Bags that stay are left open a finger wide, upright in a tub, with a label. What is \
             in them by then is no drink and smells of alcohol.",
        ));
    }
    if prep.totals.iter().any(|total| matches!(total.item, Item::Solution(_) | Item::Enzyme(_)))
    {
        list.push(entry(
            "Enzymes",
            "What is left of solutions goes down the drain with water by the hour on its label. \
             Wipe spills and benches wet; never sweep or wipe powder dry.",
        ));
    }
    list.push(entry(
        "Food",
        "What was opened in the room is laboratory material now. Keep it apart, marked, or throw \
         it away. Nobody eats it.",
    ));
    list.push(entry(
        "Benches",
        "Wipe with soap and water, then the floor where it is wet. Wash towels, jugs and spoons. \
         Everybody washes hands with soap.",
    ));
    list
}
