//! The bag list: what the plain rule promises, for any plan.

mod added;
mod plans;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;

use barm_domain::bag_list::{misleading, write, write_anew};
use barm_domain::code::BagCode;
use barm_domain::plan::{CONTROLS, Plan, PlannedBag};
use plans::{cases, codes, listed, plan, some_plan};
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

/// What a bag is, apart from its code, its place, its number and whom it answers.
fn what(bag: &PlannedBag) -> (String, u32, String) {
    (bag.period.clone(), bag.group, bag.treatment.clone())
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn every_bag_is_made_and_spread_over_periods_and_groups(plan in some_plan()) {
        let Some(plan) = listed(plan) else { return Ok(()) };
        for question in &plan.questions {
            for treatment in &question.treatments {
                let bags: Vec<&PlannedBag> =
                    plan.bags.iter().filter(|bag| bag.treatment == treatment.name).collect();
                prop_assert!(
                    bags.len() >= question.replicates as usize,
                    "{} has {} bags", treatment.name, bags.len()
                );
                let numbers: BTreeSet<u32> = bags.iter().map(|bag| bag.replicate).collect();
                prop_assert_eq!(numbers.len(), bags.len());
                let periods: BTreeSet<&str> = bags.iter().map(|b| b.period.as_str()).collect();
                // A period of one group cannot hold one bag of everything.
                let alike = plan.periods.iter().all(|p| p.groups == plan.periods[0].groups);
                prop_assert!(
                    !alike
                        || periods.len() >= plan.periods.len().min(question.replicates as usize),
                    "{} stands in {} periods", treatment.name, periods.len()
                );
            }
        }
        for period in &plan.periods {
            for control in &plan.controls {
                let made = plan.bags.iter().filter(|bag| {
                    bag.period == period.name
                        && bag.group == 0
                        && bag.question == CONTROLS
                        && bag.treatment == control.treatment.name
                });
                prop_assert_eq!(made.count(), control.per_period as usize);
            }
        }
    }

    #[test]
    fn groups_are_equally_busy_and_make_their_own_reference(plan in some_plan()) {
        let Some(plan) = listed(plan) else { return Ok(()) };
        let mut sizes = Vec::new();
        for period in &plan.periods {
            for group in 1..=period.groups {
                let bags: Vec<&PlannedBag> = plan
                    .bags
                    .iter()
                    .filter(|bag| bag.period == period.name && bag.group == group)
                    .collect();
                sizes.push(bags.len());
                let references: Vec<&str> = bags
                    .iter()
                    .filter_map(|bag| {
                        let question = plan.questions.iter().find(|q| q.id == bag.question)?;
                        question.reference_of(plan.treatment(&bag.treatment)?)
                    })
                    .collect();
                // One bag is compared with the shared controls; two or more have their own.
                if bags.len() >= 2 && !references.is_empty() {
                    let made = |name: &&str| bags.iter().any(|bag| bag.treatment == **name);
                    prop_assert!(references.iter().any(made), "{:?}", bags);
                }
            }
        }
        let most = sizes.iter().max().unwrap_or(&0);
        let least = sizes.iter().min().unwrap_or(&0);
        // Up to two bags more from dealing, one more for the reference that goes with them.
        prop_assert!(most - least <= 3, "{:?}", sizes);
    }

    #[test]
    fn codes_places_and_numbers_are_never_given_twice(plan in some_plan()) {
        let Some(plan) = listed(plan) else { return Ok(()) };
        prop_assert_eq!(codes(&plan).len(), plan.bags.len());
        let places: BTreeSet<_> =
            plan.bags.iter().map(|bag| (&bag.period, bag.group, bag.place)).collect();
        prop_assert_eq!(places.len(), plan.bags.len());
        for bag in &plan.bags {
            let code: BagCode = bag.code.parse().unwrap();
            prop_assert_eq!(code.period().to_string(), bag.period.clone());
            prop_assert_eq!(u32::from(code.group()), bag.group);
        }
        prop_assert_eq!(misleading(&plan).count(), 0);
        // Written again, nothing changes, in either way.
        prop_assert_eq!(write(&plan).unwrap().bags, plan.bags.clone());
        prop_assert_eq!(write_anew(&plan).unwrap().bags, plan.bags.clone());
    }

    /// Edits one after another; the codes of every list ever written stay what they were.
    #[test]
    fn a_code_is_made_once_and_never_given_to_another_bag(
        plans in prop::collection::vec(some_plan(), 2..6)
    ) {
        let mut ever: BTreeMap<String, (String, u32, String)> = BTreeMap::new();
        let mut carried = (Vec::new(), Vec::new());
        for mut plan in plans {
            (plan.bags, plan.retired_codes) = carried;
            let before = codes(&plan);
            let retired_before = plan.retired_codes.clone();
            let old = plan.clone();
            let Some(plan) = listed(plan) else { return Ok(()) };
            for bag in &plan.bags {
                let first = ever.entry(bag.code.clone()).or_insert_with(|| what(bag));
                prop_assert_eq!(first.clone(), what(bag), "{} is another bag now", bag.code);
                prop_assert!(!retired_before.contains(&bag.code), "{} came back", bag.code);
            }
            let after = codes(&plan);
            let retired: BTreeSet<String> = plan.retired_codes.iter().cloned().collect();
            prop_assert_eq!(retired.len(), plan.retired_codes.len());
            prop_assert!(retired.is_disjoint(&after));
            prop_assert!(before.iter().all(|code| after.contains(code) || retired.contains(code)));
            // What is still in the plan has not been taken away.
            for bag in &old.bags {
                let period = plan.period(&bag.period);
                let there = period.is_some_and(|period| bag.group <= period.groups)
                    && plan.treatment(&bag.treatment).is_some();
                prop_assert_eq!(after.contains(&bag.code), there, "{:?}", bag);
            }
            carried = (plan.bags, plan.retired_codes);
        }
    }
}

/// Four periods of eight groups, as in many schools: what a teacher would expect to read.
#[test]
fn an_enzyme_stands_beside_its_food_in_the_same_group_where_it_can() {
    let mut plan = plan(&[8; 4], &[(5, 7, 0), (3, 7, 2)], &[2, 1, 1]);
    for (enzyme, food) in [(0, 1), (1, 3), (2, 4)] {
        plan.questions[1].treatments[enzyme].beside = Some(format!("treatment 0.{food}"));
    }
    let plan = listed(plan).unwrap();
    let beside = |bag: &&PlannedBag| {
        let question = plan.questions.iter().find(|q| q.id == bag.question).unwrap();
        let reference = question.reference_of(plan.treatment(&bag.treatment).unwrap()).unwrap();
        plan.bags
            .iter()
            .any(|b| b.period == bag.period && b.group == bag.group && b.treatment == reference)
    };
    let enzyme: Vec<&PlannedBag> =
        plan.bags.iter().filter(|bag| bag.treatment.starts_with("treatment 1.")).collect();
    assert_eq!(enzyme.len(), 21);
    let together = enzyme.iter().copied().filter(beside).count();
    assert!(together * 2 > enzyme.len(), "{together} of {}", enzyme.len());
}

#[test]
fn a_label_that_would_mislead_is_found() {
    let found = |plan: &Plan| misleading(plan).map(|(index, _)| index).collect::<Vec<_>>();
    let mut plan = listed(plan(&[2, 2], &[(2, 2, 0)], &[1])).unwrap();
    // Another order of the periods leaves the numbers in their names.
    plan.periods.swap(0, 1);
    assert_eq!(found(&plan), Vec::<usize>::new());
    plan.bags[3].group = 3 - plan.bags[3].group;
    assert_eq!(found(&plan), [3]);
    plan.bags[3].group = 3 - plan.bags[3].group;
    // Periods that are named by words count by their place.
    for (number, name) in [("1", "early"), ("2", "late")] {
        for period in plan.periods.iter_mut().filter(|period| period.name == number) {
            period.name = name.into();
        }
        for bag in plan.bags.iter_mut().filter(|bag| bag.period == number) {
            bag.period = name.into();
        }
    }
    assert_eq!(found(&plan).len(), plan.bags.len());
    plan.periods.swap(0, 1);
    assert_eq!(found(&plan), Vec::<usize>::new());
}
