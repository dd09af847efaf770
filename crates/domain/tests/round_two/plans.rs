//! The plan that a proposal makes.

use crate::class::{BARE, bags, found, is_shared, read, scattered, sugar, with};
use barm_domain::check::check;
use barm_domain::finding::Severity;
use barm_domain::outlook::{Entry, Look, Treated, forecast, gather};
use barm_domain::plan::{Plan, Round, Variable};
use barm_domain::round_two::{By, MOST, Proposals, Reason, RoundOne, propose};
use barm_domain::testing::{bag, food, treatment};
use barm_science::prior::Learned;
use barm_science::statistics::chance::Chance;
use std::collections::BTreeSet;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Second rounds of a class whose sugars hardly differ.
pub(crate) fn proposals(plan: &Plan, by: By) -> Proposals {
    let mut chance = Chance::from_seed(3);
    let means = |name: &str| match name {
        "Spoon" => 9.0,
        "Pinch" => 6.5,
        _ => 6.0,
    };
    let readings = scattered(plan, means, 3.0, &mut chance);
    let result = found(plan, &readings);
    let one = RoundOne { plan, result: &result, learned: &Learned::default() };
    propose(&one, by, &|_, _| ()).expect("second rounds")
}

fn faults(plan: &Plan) -> Vec<String> {
    faults_with(plan, &[])
}

fn faults_with(plan: &Plan, outlook: &[Entry]) -> Vec<String> {
    let found = check(plan, outlook).into_iter();
    found.filter(|f| f.severity == Severity::Fault).map(|f| f.message).collect()
}

/// Faults as a page of the plan tells them, those among them that rest on a forecast.
fn faults_foreseen(plan: &Plan) -> Vec<String> {
    let treated: Vec<Treated> = plan
        .treatments()
        .map(|(_, one)| forecast(plan, one, Look::default()).expect("a forecast"))
        .collect();
    faults_with(plan, &gather(plan, &treated))
}

/// Of so much sugar a bag holds until its last reading, and of half as much again it does not: then more is not
/// proposed, whatever it would tell.
#[test]
fn what_a_bag_cannot_hold_is_not_proposed() {
    let plan_with = |grams: f64| {
        let spoon = treatment("Sugar", food("white sugar", &format!("{grams} g")));
        let asked = crate::class::of_foods("food", [spoon], 4);
        with(Round::Only, vec![asked])
    };
    let amounts = (1..40).map(|step| 0.25 * f64::from(step));
    let most = amounts
        .take_while(|grams| faults_foreseen(&plan_with(*grams)).is_empty())
        .last()
        .expect("a little sugar fits");
    let first = plan_with(most);
    assert!(!faults_foreseen(&plan_with(1.5 * most)).is_empty(), "{most} g");
    let readings = read(&first, |name| if name == "Sugar" { 25.0 } else { 4.0 });
    let result = found(&first, &readings);
    let one = RoundOne { plan: &first, result: &result, learned: &Learned::default() };
    let all = propose(&one, By::Clear, &|_, _| ()).expect("second rounds");
    let fresh = all.ranked.iter().filter(|one| !one.shared.new.is_empty());
    let mut seen = BTreeSet::new();
    for one in fresh.filter(|one| seen.insert(one.shared.new.clone())) {
        assert_eq!(faults_foreseen(&one.plan), Vec::<String>::new(), "{:?}", one.shared.new);
    }
    assert!(!seen.is_empty(), "something new is proposed all the same");
}

#[test]
fn every_plan_is_valid_and_both_rounds_can_be_put_together() {
    let first = sugar(Round::First, 4);
    assert_eq!(faults(&first), Vec::<String>::new());
    let old: BTreeSet<&str> = first.bags.iter().map(|bag| bag.code.as_str()).collect();
    let all = proposals(&first, By::ClearPerBag);
    assert!(all.ranked.len() > 20 && all.tried <= MOST, "{}", all.ranked.len());
    for one in &all.ranked {
        let plan = &one.plan;
        assert_eq!(faults(plan), Vec::<String>::new(), "{:?}", one.reason);
        assert_eq!(plan.round, Round::Second);
        assert!(plan.bags.iter().all(|bag| !old.contains(bag.code.as_str())));
        assert_eq!(one.gain.bags as usize, plan.bags.len());
        for told in &one.told {
            let pair = &told.pair;
            assert_eq!(told.bags, (bags(plan, &pair.treatment), bags(plan, &pair.reference)));
            assert!(told.bags.0 >= one.each as usize && told.bags.1 >= one.each as usize);
            assert!((0.0..=1.0).contains(&told.clear), "{told:?}");
            assert!(told.half_now_mm > 0.0 && told.half_then_mm > 0.0, "{told:?}");
            let asked = plan.questions.iter().find(|question| question.id == pair.question);
            let asked = asked.expect("its question");
            let made = plan.treatment(&pair.treatment).expect("its treatment");
            assert_eq!(plan.beside(asked, made), Some(pair.reference.as_str()));
        }
        // Neither the group nor the period is mistaken for the treatment.
        for bag in plan.bags.iter().filter(|bag| !is_shared(bag)) {
            let mates =
                plan.bags.iter().filter(|b| (&b.period, b.group) == (&bag.period, bag.group));
            let kinds: BTreeSet<&str> = mates.map(|bag| bag.treatment.as_str()).collect();
            assert!((2..=4).contains(&kinds.len()), "{kinds:?}");
        }
    }
}

#[test]
fn there_is_more_of_the_same_another_amount_and_more_of_what_held_back() {
    // In larger bags than usual, which hold what twice the sugar makes.
    let mut first = sugar(Round::First, 4);
    first.base.bag = bag("sandwich");
    let all = proposals(&first, By::Clear);
    let kind =
        |of: fn(&Reason) -> bool| all.ranked.iter().filter(|one| of(&one.reason)).count();
    assert!(kind(|reason| matches!(reason, Reason::Open { .. })) >= 6);
    assert!(kind(|reason| matches!(reason, Reason::Beyond { .. })) > 0);
    assert!(kind(|reason| matches!(reason, Reason::Between { .. })) > 0);
    let more = |reason: &Reason| {
        matches!(
            reason,
            Reason::HeldBack { thing: Variable::FoodAmount | Variable::YeastAmount, .. }
        )
    };
    assert!(kind(more) > 0);
    // What is new says so, and what is not shares its name with round one.
    for one in &all.ranked {
        assert_eq!(one.shared.new.is_empty(), matches!(one.reason, Reason::Open { .. }));
        assert!(
            one.shared.controls.iter().any(|name| name == BARE) || !one.shared.new.is_empty()
        );
        assert!(one.shared.lots.iter().any(|lot| lot == "instant yeast"), "{:?}", one.shared);
        assert!(!one.foreseen.is_empty());
        for foreseen in &one.foreseen {
            let (low, middle, high) = foreseen.rise_mm;
            assert!(low <= middle && middle <= high, "{foreseen:?}");
        }
    }
}

#[test]
fn they_stand_in_the_order_that_was_asked_for_and_every_step_is_told() {
    let plan = sugar(Round::First, 4);
    for by in [By::Clear, By::ClearPerBag, By::ShrinksPerBag] {
        let all = proposals(&plan, by);
        let worth: Vec<f64> = all
            .ranked
            .iter()
            .map(|one| match by {
                By::Clear => one.gain.clear,
                By::ClearPerBag => one.gain.clear_per_bag(),
                _ => one.gain.shrinks_per_bag(),
            })
            .collect();
        assert!(worth.windows(2).all(|pair| pair[0] >= pair[1]), "{by:?}: {worth:?}");
    }
    let readings = scattered(&plan, |_| 6.0, 3.0, &mut Chance::from_seed(8));
    let result = found(&plan, &readings);
    let one = RoundOne { plan: &plan, result: &result, learned: &Learned::default() };
    let (last, total) = (AtomicUsize::new(0), AtomicUsize::new(0));
    propose(&one, By::Clear, &|done, of| {
        // One after the other, however many work at it.
        assert_eq!(last.swap(done, Ordering::SeqCst) + 1, done);
        total.store(of, Ordering::SeqCst);
    })
    .expect("second rounds");
    let (last, total) = (last.into_inner(), total.into_inner());
    assert!(last > 0 && last == total);
}

#[test]
fn a_question_about_foods_gets_amounts_as_a_question_of_its_own() {
    let asked = crate::class::of_foods(
        "food",
        [
            treatment("Sugar", food("white sugar", "1 g")),
            treatment("Maple", food("maple syrup", "1 g")),
        ],
        4,
    );
    let first = with(Round::Only, vec![asked]);
    let all = proposals(&first, By::ClearPerBag);
    let amounts: Vec<_> = all.ranked.iter().filter(|one| !one.shared.new.is_empty()).collect();
    assert!(!amounts.is_empty());
    for one in amounts {
        assert!(one.told.iter().all(|told| told.pair.question != "food" && !told.pooled));
        assert_eq!(one.plan.questions.len(), 1);
        assert_eq!(one.plan.round, Round::Only);
    }
    // Told at the full level, so no second verdict on both rounds is foreseen.
    assert!(all.ranked.iter().flat_map(|one| &one.told).all(|told| !told.pooled));
}
