//! What happens in classes with a second round.

use crate::class::{BARE, found, handed, one_food, read, scattered, sugar};
use barm_domain::plan::{Plan, Round};
use barm_domain::reading::Reading;
use barm_domain::round_two::{By, Pooled, RoundOne, pool, propose};
use barm_science::prior::Learned;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::verdict::Code;

fn codes(pooled: &Pooled) -> [Vec<Code>; 2] {
    [&pooled.first, &pooled.both].map(|result| {
        let all = result.questions.iter().flat_map(|answer| &answer.comparisons);
        all.map(|compared| compared.without.verdict.code).collect()
    })
}

/// The plan of the first proposal that makes so many bags more of what was open.
fn second_of(first: &Plan, readings: &[Reading], each: u32) -> Plan {
    let result = found(first, readings);
    let one = RoundOne { plan: first, result: &result, learned: &Learned::default() };
    let all = propose(&one, By::Clear, &|_, _| ()).expect("second rounds").ranked;
    let more = all.into_iter().find(|one| one.each == each && one.shared.new.is_empty());
    more.expect("more bags").plan
}

/// Six millimeters between bags that differ by four: too few bags on the first day, enough on both.
#[test]
fn what_leans_becomes_clear_when_both_days_say_the_same() {
    let first = one_food(Round::First, 4);
    let mut chance = Chance::from_seed(12);
    let mean = |name: &str| if name == BARE { 4.0 } else { 8.0 };
    let one = scattered(&first, mean, 2.5, &mut chance);
    let second = second_of(&first, &one, 8);
    let two = scattered(&second, mean, 2.0, &mut chance);
    let told = pool(&handed(&first, &one), &handed(&second, &two)).expect("two rounds");
    let [before, after] = codes(&told);
    assert!(matches!(before[0], Code::Leaning | Code::Unclear), "{before:?}");
    assert_eq!(after, [Code::Clear]);
    let wide = told.first.questions[0].comparisons[0].with.difference.unwrap();
    let both = told.both.questions[0].comparisons[0].with.difference.unwrap();
    assert!(both.high - both.low < wide.high - wide.low);
}

/// Round one counts once: the pooled difference is where both rounds' own are, and not nearer to the first.
#[test]
fn the_pooled_difference_lies_between_those_of_both_rounds_by_their_bags() {
    let first = one_food(Round::First, 4);
    let of = |plan: &Plan, apart: f64, shift: f64| {
        let mut at = 0;
        read(plan, |name| {
            at += 1;
            // Bags alike differ by the same in both rounds, and it sums up to nothing.
            let own = if at % 2 == 0 { 1.0 } else { -1.0 };
            shift + own + if name == BARE { 0.0 } else { apart }
        })
    };
    let one = of(&first, 2.0, 5.0);
    let second = crate::levels::again(&first);
    // Another day is colder: all bags rise 3 mm less.
    let two = of(&second, 6.0, 2.0);
    let told = pool(&handed(&first, &one), &handed(&second, &two)).expect("two rounds");
    let difference = |result: &barm_domain::result::ClassResult| {
        result.questions[0].comparisons[0].with.difference.unwrap().difference
    };
    let (a, b) = (difference(&told.first), difference(&told.second));
    // As many bags in the same places: half of either.
    assert!((difference(&told.both) - 0.5 * (a + b)).abs() < 0.3, "{a} {b}");
    let n = told.both.questions[0].comparisons[0].with.n;
    assert_eq!(n, 8);
}

/// Only one of two treatments is made again: the other stays as round one told it.
#[test]
fn what_got_no_new_bags_is_not_judged_again() {
    let first = sugar(Round::First, 4);
    let mut chance = Chance::from_seed(21);
    let mean = |name: &str| match name {
        "Spoon" => 30.0,
        "Pinch" => 6.0,
        _ => 5.0,
    };
    let one = scattered(&first, mean, 2.0, &mut chance);
    let second = second_of(&first, &one, 4);
    assert!(second.treatment("Spoon").is_none(), "it was clear");
    let two = scattered(&second, mean, 2.0, &mut chance);
    let told = pool(&handed(&first, &one), &handed(&second, &two)).expect("two rounds");
    let again: Vec<&str> =
        told.looks[0].again.iter().map(|pair| pair.treatment.as_str()).collect();
    assert_eq!(again, ["Pinch"]);
}
