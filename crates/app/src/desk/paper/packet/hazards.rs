//! What could hurt, what brings it up, and what becomes of what is left.

use super::super::caution;
use barm_documents::sheet::{Entry, Hazard, Heed};
use barm_domain::check::{CAUTION_RULES, CautionRule};
use barm_domain::finding::Finding;
use barm_domain::outlook::Entry as Foreseen;
use barm_domain::plan::{Circumstance, Period, Plan};
use barm_domain::prep::{Item, Prep};
use std::collections::BTreeSet;

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

/// Cautions that bite while a class is at its benches, in the order of the hour, each with what is
/// done about it there; their rules tell the rest.
const AT_THE_BENCH: [(&str, &str); 8] = [
    ("S05", "goggles on from the bell until the last bag is empty"),
    ("S09", "nobody eats, drinks or tastes"),
    ("S03", "only you pour hot water; above 49 °C (120 °F) none goes to students"),
    ("S02", "never spray; wipe up wet, wash hands after"),
    ("S07", "open it in time, over the tub, away from faces"),
    ("S16", "nobody blows into the meter; a clean tube for each group"),
    ("S32", "nobody sniffs at a bag"),
    ("S19", "look at the floor, dry it at once"),
];

/// Cautions that a clipboard has room for.
const MOST_HEEDS: usize = 6;

/// The few of all cautions that bite in this period.
pub(super) fn in_the_hour(
    plan: &Plan,
    period: &Period,
    all: &[Hazard],
    own: &[&Foreseen],
) -> Vec<Heed> {
    let here = plan.bags.iter().filter(|bag| bag.period == period.name);
    let names: BTreeSet<&str> = here.map(|bag| bag.treatment.as_str()).collect();
    let enzyme = plan
        .treatments()
        .any(|(_, one)| names.contains(one.name.as_str()) && plan.recipe(one).enzyme.is_some());
    let left = period.length_min - plan.timing.mixing_min;
    let bursts = own.iter().filter_map(|one| one.vent_by_min).any(|minute| minute <= left);
    let bites = |code: &str| match code {
        "S02" => enzyme,
        "S07" => bursts,
        _ => true,
    };
    let heed = |(code, does): &(&str, &str)| {
        let own = all.iter().find(|one| one.caution.code == *code)?;
        bites(code).then(|| Heed {
            code: own.caution.code.clone(),
            hazard: own.hazard.clone(),
            does: (*does).to_owned(),
        })
    };
    AT_THE_BENCH.iter().filter_map(heed).take(MOST_HEEDS).collect()
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
