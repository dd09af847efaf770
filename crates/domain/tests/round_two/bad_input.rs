//! What cannot be a second round, and what is said of it.

use crate::class::{found, handed, one_food, scattered, sugar};
use crate::levels::again;
use barm_domain::plan::Round;
use barm_domain::round_two::{By, NoRoundTwo, NotPooled, RoundOne, pool, propose};
use barm_domain::testing::amount;
use barm_science::prior::Learned;
use barm_science::statistics::chance::Chance;

fn refused(
    plan: &barm_domain::plan::Plan,
    readings: &[barm_domain::reading::Reading],
) -> NoRoundTwo {
    let result = found(plan, readings);
    let one = RoundOne { plan, result: &result, learned: &Learned::default() };
    propose(&one, By::Clear, &|_, _| ()).expect_err("nothing to propose")
}

#[test]
fn without_readings_or_with_those_of_another_plan_nothing_is_proposed() {
    let plan = sugar(Round::Only, 4);
    assert_eq!(refused(&plan, &[]), NoRoundTwo::NoReadings);
    let other = again(&plan);
    let readings = scattered(&other, |_| 5.0, 1.0, &mut Chance::from_seed(1));
    assert_eq!(refused(&plan, &readings), NoRoundTwo::NoReadings);
}

#[test]
fn a_plan_that_compares_nothing_has_no_second_round() {
    let mut plan = sugar(Round::Only, 4);
    plan.questions[0].reference = None;
    let readings = scattered(&plan, |_| 5.0, 1.0, &mut Chance::from_seed(1));
    assert_eq!(refused(&plan, &readings), NoRoundTwo::NothingCompared);
}

#[test]
fn a_class_without_groups_enough_is_told_so() {
    let mut plan = one_food(Round::Only, 4);
    let readings = scattered(&plan, |_| 5.0, 1.0, &mut Chance::from_seed(1));
    let result = found(&plan, &readings);
    for period in &mut plan.periods {
        period.groups = 0;
    }
    let one = RoundOne { plan: &plan, result: &result, learned: &Learned::default() };
    let none = propose(&one, By::Clear, &|_, _| ()).expect_err("no groups");
    assert!(matches!(none, NoRoundTwo::NoneFits { tried } if tried > 0), "{none}");
}

#[test]
fn rounds_that_do_not_belong_together_are_not_put_together() {
    let first = sugar(Round::First, 4);
    let second = again(&first);
    let mut chance = Chance::from_seed(4);
    let one = scattered(&first, |_| 5.0, 1.0, &mut chance);
    let two = scattered(&second, |_| 5.0, 1.0, &mut chance);
    let put = |plan: &barm_domain::plan::Plan, readings: &[barm_domain::reading::Reading]| {
        pool(&handed(&first, &one), &handed(plan, readings)).expect_err("refused")
    };
    assert!(matches!(put(&first, &one), NotPooled::SameCode { .. }));
    assert_eq!(put(&second, &one), NotPooled::NoReadings { round: "second" });
    assert_eq!(put(&second, &[]), NotPooled::NoReadings { round: "second" });
    let mut other = second.clone();
    other.questions[0].id = "other".into();
    assert_eq!(put(&other, &two), NotPooled::NothingInCommon);
    let mut warm = second.clone();
    warm.base.water = amount("50 mL");
    assert!(matches!(put(&warm, &two), NotPooled::OtherRecipe { .. }));
    let mut beside = second.clone();
    beside.questions[0].reference = Some("Pinch".into());
    assert!(matches!(put(&beside, &two), NotPooled::OtherReference { .. }));
    let mut coarse = second.clone();
    coarse.readable_mm = 5.0;
    assert!(matches!(put(&coarse, &two), NotPooled::OtherReadable { .. }));
    for says in [put(&first, &one), put(&other, &two), put(&warm, &two)] {
        assert!(says.to_string().contains(';') || says.to_string().contains('?'), "{says}");
    }
}
