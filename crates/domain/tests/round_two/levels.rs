//! At which level both rounds are judged.

use crate::class::{handed, one_food, scattered, sugar};
use barm_domain::plan::{Plan, Round};
use barm_domain::round_two::{Looks, Pooled, pool};
use barm_science::statistics::chance::Chance;

/// The same plan with other bag codes, as a second round has.
pub(crate) fn again(first: &Plan) -> Plan {
    let mut plan = first.clone();
    plan.round = if first.round == Round::First { Round::Second } else { Round::Only };
    plan.retired_codes = first.bags.iter().map(|bag| bag.code.clone()).collect();
    plan.bags.clear();
    plan.bags = barm_domain::bag_list::write(&plan).expect("codes enough").bags;
    plan
}

fn pooled(first: &Plan) -> Pooled {
    let second = again(first);
    let mut chance = Chance::from_seed(77);
    let one = scattered(first, |_| 8.0, 2.0, &mut chance);
    let two = scattered(&second, |_| 8.0, 2.0, &mut chance);
    pool(&handed(first, &one), &handed(&second, &two)).expect("two rounds")
}

fn only(pooled: &Pooled) -> &Looks {
    assert_eq!(pooled.looks.len(), 1);
    &pooled.looks[0]
}

/// After a first look at 2 % two equal rounds have 3.79 % left by normal values (SciPy 1.17.1, bivariate
/// normal; docs/science/years.md), and a little less by Student's t.
#[test]
fn two_equal_rounds_with_many_bags_have_what_normal_values_leave() {
    let many = pooled(&one_food(Round::First, 14));
    let left = only(&many).pooled.expect("a second look");
    assert!((0.0370..0.0379).contains(&left), "{left}");
    assert_eq!(only(&many).first, Some(0.02));
    let few = pooled(&one_food(Round::First, 3));
    let left = only(&few).pooled.expect("a second look");
    assert!((0.0325..0.0370).contains(&left), "{left}");
    assert_eq!(few.both.questions[0].level, Some(left));
    assert_eq!(few.first.questions[0].level, Some(0.02));
    assert_eq!(few.second.questions[0].level, None);
}

/// A round that was told at 5 % has used up everything (docs/science/years.md).
#[test]
fn a_round_told_at_the_full_level_leaves_nothing_and_the_second_is_judged_by_itself() {
    let told = pooled(&sugar(Round::Only, 4));
    let looks = only(&told);
    assert_eq!((looks.first, looks.pooled), (Some(0.05), None));
    assert_eq!(looks.again.len(), 2);
    assert_eq!(told.both.questions[0].level, None);
    assert_eq!(told.second.questions[0].level, Some(0.05));
    for compared in &told.both.questions[0].comparisons {
        assert_eq!(compared.with.verdict.code.word(), "not-comparable");
        assert!(compared.with.difference.is_some(), "the best estimate there is");
    }
}

/// The same bags at a stricter level have wider intervals, and are never clearer.
#[test]
fn a_first_of_two_is_judged_more_strictly_than_an_only_one() {
    let mut chance = Chance::from_seed(5);
    for _ in 0..crate::size::counts(5, 20, 200) {
        let plan = sugar(Round::Only, 4);
        let readings =
            scattered(&plan, |name| if name == "Spoon" { 6.0 } else { 3.0 }, 2.0, &mut chance);
        let wide =
            crate::class::found(&Plan { round: Round::First, ..plan.clone() }, &readings);
        let usual = crate::class::found(&plan, &readings);
        let both = usual.questions[0].comparisons.iter().zip(&wide.questions[0].comparisons);
        for (usual, wide) in both {
            let (a, b) = (usual.with.difference.unwrap(), wide.with.difference.unwrap());
            assert!((a.difference - b.difference).abs() < 1e-12 && (a.se - b.se).abs() < 1e-12);
            assert!(b.high - b.low > 1.1 * (a.high - a.low), "{a:?} {b:?}");
            let clear =
                |c: &barm_domain::result::Compared| c.with.verdict.code.word() == "clear";
            assert!(clear(usual) || !clear(wide));
        }
    }
}
