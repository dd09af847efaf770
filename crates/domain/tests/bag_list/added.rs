//! A plan that grows: what stands on its list stays there, and only what is missing is added.

use crate::plans::{cases, codes, listed, plan, some_plan, treatment};
use barm_domain::bag_list::{write, write_anew};
use barm_domain::plan::{CONTROLS, Period, Plan};
use barm_domain::testing::period;
use proptest::prelude::*;
use std::collections::BTreeSet;

/// One way in which a plan grows.
#[derive(Debug, Clone)]
enum Growth {
    Period { at: usize, groups: u32, named: bool },
    Groups { period: usize, more: u32 },
    Treatment { question: usize, at: usize },
    Replicates { question: usize, more: u32 },
    Control { control: usize },
}

fn growth() -> impl Strategy<Value = Growth> {
    let at = || 0usize..9;
    prop_oneof![
        (at(), 1u32..=9, any::<bool>()).prop_map(|(at, groups, named)| Growth::Period {
            at,
            groups,
            named
        }),
        (at(), 1u32..=3).prop_map(|(period, more)| Growth::Groups { period, more }),
        (at(), at()).prop_map(|(question, at)| Growth::Treatment { question, at }),
        (at(), 1u32..=4).prop_map(|(question, more)| Growth::Replicates { question, more }),
        at().prop_map(|control| Growth::Control { control }),
    ]
}

fn grow(plan: &mut Plan, growth: &Growth, step: usize) {
    match *growth {
        Growth::Period { at, groups, named } => {
            let name = if named { format!("Club {step}") } else { (20 + step).to_string() };
            let at = at % (plan.periods.len() + 1);
            plan.periods.insert(at, Period { groups, ..period(&name) });
        }
        Growth::Groups { period, more } => {
            let at = period % plan.periods.len();
            plan.periods[at].groups += more;
        }
        Growth::Treatment { question, at } => {
            let question = question % plan.questions.len();
            let own = &mut plan.questions[question].treatments;
            own.insert(at % (own.len() + 1), treatment(&format!("added {step}"), None));
        }
        Growth::Replicates { question, more } => {
            let at = question % plan.questions.len();
            plan.questions[at].replicates += more;
        }
        Growth::Control { control } => {
            let at = control % plan.controls.len();
            plan.controls[at].per_period += 1;
        }
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn labels_that_are_printed_stay_true(
        plan in some_plan(),
        growths in prop::collection::vec(growth(), 1..4),
    ) {
        let Some(mut plan) = listed(plan) else { return Ok(()) };
        let mut ever = codes(&plan);
        for (step, growth) in growths.iter().enumerate() {
            let old = plan.bags.clone();
            grow(&mut plan, growth, step);
            let Some(now) = listed(plan) else { return Ok(()) };
            plan = now;
            // The same code, period, group, place, question, treatment and number.
            for bag in &old {
                prop_assert!(plan.bags.contains(bag), "{:?} changed {:?}", growth, bag);
            }
            prop_assert_eq!(&plan.retired_codes, &Vec::<String>::new());
            // A new bag has a code that none ever had.
            let new: BTreeSet<String> =
                plan.bags.iter().filter(|b| !old.contains(b)).map(|b| b.code.clone()).collect();
            prop_assert_eq!(new.len(), plan.bags.len() - old.len());
            prop_assert!(ever.is_disjoint(&new));
            ever.extend(new);
            nothing_is_missing(&plan)?;
            prop_assert_eq!(&write(&plan).unwrap().bags, &plan.bags, "a second time");
        }
    }
}

/// Every treatment has its bags, every period its controls, every bag a place of its own.
fn nothing_is_missing(plan: &Plan) -> Result<(), TestCaseError> {
    for question in &plan.questions {
        for treatment in &question.treatments {
            let bags = plan
                .bags
                .iter()
                .filter(|b| b.question == question.id && b.treatment == treatment.name);
            let (bags, wanted) = (bags.count(), question.replicates as usize);
            prop_assert!(bags >= wanted, "{}: {} of {}", treatment.name, bags, wanted);
        }
    }
    for period in &plan.periods {
        for control in &plan.controls {
            let bags = plan.bags.iter().filter(|b| {
                b.period == period.name
                    && b.question == CONTROLS
                    && b.treatment == control.treatment.name
            });
            prop_assert_eq!(bags.count(), control.per_period as usize);
        }
    }
    let places: BTreeSet<_> =
        plan.bags.iter().map(|bag| (&bag.period, bag.group, bag.place)).collect();
    prop_assert_eq!(places.len(), plan.bags.len());
    // A label names one period only.
    let named: BTreeSet<(&str, &str)> = plan
        .bags
        .iter()
        .filter_map(|bag| Some((bag.code.split_once('-')?.0, bag.period.as_str())))
        .collect();
    let numbers: BTreeSet<&str> = named.iter().map(|(number, _)| *number).collect();
    prop_assert_eq!(numbers.len(), named.len(), "{:?}", named);
    Ok(())
}

/// As many schools learn in August: a fifth class comes, and the labels of four are printed.
#[test]
fn a_fifth_class_takes_the_bags_that_more_replicates_ask_for() {
    let mut plan = listed(plan(&[8; 4], &[(5, 8, 0)], &[2, 1])).unwrap();
    let old = codes(&plan);
    plan.periods.push(period("5"));
    plan.questions[0].replicates = 10;
    let plan = listed(plan).unwrap();
    let new: Vec<_> = plan.bags.iter().filter(|bag| !old.contains(&bag.code)).collect();
    assert!(new.iter().all(|bag| bag.period == "5"), "{new:?}");
    for group in 1..=8 {
        assert!(new.iter().any(|bag| bag.group == group), "group {group} has no bag");
    }
    assert_eq!(new.iter().filter(|bag| bag.group == 0).count(), 3, "controls");
    assert!(old.iter().all(|code| plan.bags.iter().any(|bag| bag.code == *code)));
}

#[test]
fn a_list_that_is_written_anew_follows_the_plain_rule_and_retires_what_it_leaves() {
    let mut grown = listed(plan(&[8; 4], &[(5, 8, 0)], &[2, 1])).unwrap();
    grown.periods.push(period("5"));
    let list = write_anew(&grown).unwrap();
    let alike = |bags: &[barm_domain::plan::PlannedBag]| -> Vec<_> {
        let mut bags: Vec<_> =
            bags.iter().map(|b| (b.period.clone(), b.group, b.treatment.clone())).collect();
        bags.sort();
        bags
    };
    let mut bare = grown.clone();
    bare.bags.clear();
    assert_eq!(alike(&list.bags), alike(&write(&bare).unwrap().bags));
    assert!(!list.retired.is_empty());
    let kept: BTreeSet<String> = list.bags.iter().map(|bag| bag.code.clone()).collect();
    for bag in &grown.bags {
        assert_ne!(kept.contains(&bag.code), list.retired.contains(&bag.code), "{}", bag.code);
    }
}
