//! Bags of which a biology teacher knows what holds them back.

use super::{HeldBackBy, Limit, limit};
use crate::pilot::{EnzymeLot, Known, Lot, Lots, Part};
use crate::plan::{Difference, Plan};
use crate::testing::{amount, base_plan, enzyme, food, period, treatment};
use barm_science::prior::Learned;
use jiff::civil::date;

fn of(difference: Difference) -> Limit {
    let mut plan = base_plan();
    plan.periods.push(period("1"));
    limit(&plan, &treatment("It", difference)).expect("a bag that can be made")
}

#[test]
fn without_yeast_or_food_nothing_else_is_asked() {
    let bare = of(Difference { yeast: Some(None), ..food("white sugar", "2 g") });
    assert_eq!((bare.by, bare.more_food, bare.more_yeast), (HeldBackBy::NoYeast, None, None));
    let hungry = of(Difference { food: Some(None), ..Difference::default() });
    assert_eq!((hungry.by, hungry.more_food), (HeldBackBy::NoFood, None));
    let salted = of(food("salt", "1 g"));
    assert_eq!(salted.by, HeldBackBy::NoFood, "salt feeds nothing");
}

#[test]
fn much_sugar_leaves_it_to_the_yeast_and_little_sugar_runs_out() {
    let much = of(food("white sugar", "1.5 g"));
    assert_eq!(much.by, HeldBackBy::Yeast, "{much:?}");
    // More sugar than it can use gains nothing; a quarter more yeast gains about a quarter.
    assert!(much.more_food.is_some_and(|gain| gain.abs() < 0.05), "{much:?}");
    assert!(much.more_yeast.is_some_and(|gain| (0.15..0.35).contains(&gain)), "{much:?}");
    let little = of(food("white sugar", "0.05 g"));
    assert_eq!(little.by, HeldBackBy::Food, "{little:?}");
    // What is used up whole gives a quarter more ethanol from a quarter more of it (a balance).
    assert!(little.more_food.is_some_and(|gain| gain > 0.1), "{little:?}");
}

#[test]
fn milk_sugar_and_starch_are_closed_until_their_own_enzyme_opens_them() {
    assert_eq!(of(food("nonfat dry milk", "2 g")).by, HeldBackBy::Locked);
    assert_eq!(of(food("cornstarch", "2 g")).by, HeldBackBy::Locked);
    let both = |id: &str, of_enzyme: &str, much: &str| {
        let with = enzyme(of_enzyme, much);
        Difference { enzyme: with.enzyme, enzyme_amount: with.enzyme_amount, ..food(id, "2 g") }
    };
    let slow = of(both("nonfat dry milk", "lactase drops", "1 drops"));
    assert_eq!(slow.by, HeldBackBy::Enzyme, "{slow:?}");
    // Milk sugar that is cut and used up is closed no more.
    let quick = of(both("nonfat dry milk", "lactase drops", "15 drops"));
    assert_eq!(
        quick.along.last().map(|stretch| stretch.by),
        Some(HeldBackBy::Food),
        "{quick:?}"
    );
    let wrong = of(both("cornstarch", "lactase drops", "5 drops"));
    assert_eq!(wrong.by, HeldBackBy::Locked, "{wrong:?}");
}

/// A drop of lactase opens 2 g of dry milk until it runs out; a bottle that a pilot found to have lost nearly
/// all of its strength never gets so far.
#[test]
fn what_a_pilot_found_of_an_enzyme_decides() {
    let mut plan = base_plan();
    plan.periods.push(period("1"));
    let drop = enzyme("lactase drops", "1 drops");
    let one = Difference {
        enzyme: drop.enzyme,
        enzyme_amount: drop.enzyme_amount,
        ..food("nonfat dry milk", "2 g")
    };
    let end = |plan: &Plan| {
        let found = limit(plan, &treatment("It", one.clone())).expect("a bag that can be made");
        found.along.last().map(|stretch| stretch.by)
    };
    assert_eq!(end(&plan), Some(HeldBackBy::Food));
    let weak = Learned {
        names: vec!["activity of neutral lactase".into()],
        means: vec![-5.0],
        covariance: vec![vec![0.01]],
    };
    let bottle = EnzymeLot { product: "lactase-drops".into(), numbers: weak };
    let lot = Lot {
        name: "first".into(),
        date: date(2027, 3, 2),
        in_use: true,
        parts: vec![Part::Bags],
        found: bottle,
    };
    plan.known = Known::of(&Lots { enzymes: vec![lot], ..Lots::default() });
    let by = end(&plan);
    assert!(matches!(by, Some(HeldBackBy::Enzyme | HeldBackBy::Locked)), "{by:?}");
}

/// Every minute from the zero reading to the last one, once.
fn covers(limit: &Limit) -> bool {
    let ends = limit.along.windows(2).all(|pair| pair[0].to_min + 1 == pair[1].from_min);
    let differ = limit.along.windows(2).all(|pair| pair[0].by != pair[1].by);
    ends && differ && limit.along.first().is_some_and(|first| first.from_min == 0)
}

#[test]
fn first_it_wakes_and_then_what_there_is_decides() {
    let much = of(food("white sugar", "1.5 g"));
    assert!(covers(&much), "{much:?}");
    let by: Vec<HeldBackBy> = much.along.iter().map(|stretch| stretch.by).collect();
    assert_eq!(by, [HeldBackBy::Waking, HeldBackBy::Yeast], "{much:?}");
    // The first gas stays in the liquid (a balance: 34 mL of gas dissolve in 40 mL of water).
    assert!((3..15).contains(&much.dissolved_to_min), "{much:?}");
    let little = of(food("white sugar", "0.05 g"));
    assert!(covers(&little), "{little:?}");
    assert_eq!(little.along.last().map(|stretch| stretch.by), Some(HeldBackBy::Food));
}

#[test]
fn a_plan_without_time_has_no_limit_to_tell() {
    let mut plan = base_plan();
    plan.timing.mixing_min = 500.0;
    plan.periods.push(period("1"));
    assert!(limit(&plan, &treatment("It", food("white sugar", "2 g"))).is_err());
    plan.base.water = amount("60 mL");
    plan.days.clear();
    assert!(limit(&plan, &treatment("It", food("white sugar", "2 g"))).is_err());
}
