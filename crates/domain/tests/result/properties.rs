//! What must hold whatever was read.

use crate::class::{Class, answer};
use barm_domain::reading::{Reading, SetAside};
use barm_domain::result::ClassResult;
use proptest::prelude::*;

/// Cases per property: the suite is quick, ordinary or long by an environment variable.
fn cases() -> u32 {
    crate::size::counts(50, 400, 5000)
}

const PERIODS: [&str; 3] = ["1", "2", "3"];

/// Two foods and a control in three periods, two bags of each, with these rises.
fn class(rises: &[f64]) -> Class {
    let mut class = Class::foods(&PERIODS, &["Maple syrup", "Oat flour"]);
    let mut rises = rises.iter().copied().cycle();
    for period in PERIODS {
        for name in ["Maple syrup", "Oat flour", "No food"] {
            for _ in 0..2 {
                class.grow(name, period, rises.next().unwrap_or(0.0));
            }
        }
    }
    class
}

fn differences(result: &ClassResult) -> Vec<Option<(f64, f64, f64)>> {
    let told = |c: &barm_domain::result::Compared| {
        c.with.difference.map(|d| (d.difference, d.low, d.high))
    };
    answer(result, "food").comparisons.iter().map(told).collect()
}

fn rises() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec((0_i32..400).prop_map(|tenths| f64::from(tenths) / 10.0), 18)
}

#[track_caller]
fn same(a: &ClassResult, b: &ClassResult) -> Result<(), TestCaseError> {
    for (a, b) in differences(a).into_iter().zip(differences(b)) {
        match (a, b) {
            (Some(a), Some(b)) => {
                for (a, b) in [(a.0, b.0), (a.1, b.1), (a.2, b.2)] {
                    prop_assert!((a - b).abs() < 1e-7, "{} and {}", a, b);
                }
            }
            (a, b) => prop_assert_eq!(a, b),
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    /// Every height counts from the bag's own zero: how high that stood does not matter.
    #[test]
    fn a_bag_may_start_anywhere(rises in rises(), shifts in prop::collection::vec(0_u8..20, 18)) {
        let plain = class(&rises);
        let mut shifted = class(&rises);
        for reading in &mut shifted.readings {
            let bag = shifted.plan.bags.iter().position(|bag| bag.code == reading.bag);
            reading.height_mm += f64::from(shifts[bag.unwrap_or(0) % 18]);
        }
        same(&plain.result(), &shifted.result())?;
    }

    /// The order in which readings were typed does not matter.
    #[test]
    fn readings_may_come_in_any_order(rises in rises(), turn in 0_usize..100) {
        let plain = class(&rises);
        let mut turned = class(&rises);
        let place = turn % turned.readings.len();
        turned.readings.rotate_left(place);
        turned.readings.reverse();
        prop_assert_eq!(plain.result(), turned.result());
    }

    /// A warmer period lifts all its bags and changes no difference.
    #[test]
    fn a_period_may_be_warmer(rises in rises(), lift in 0_u8..30) {
        let mut lifted: Vec<f64> = rises.clone();
        for rise in &mut lifted[6..12] {
            *rise += f64::from(lift);
        }
        same(&class(&rises).result(), &class(&lifted).result())?;
    }

    /// A set-aside bag changes the answer without it exactly as if it had never been made.
    #[test]
    fn a_bag_set_aside_is_as_if_never_made(rises in rises(), which in 0_usize..18) {
        let mut aside = class(&rises);
        let code = aside.plan.bags[which].code.clone();
        aside.put_aside(&code, "leak");
        let mut gone = class(&rises);
        gone.readings.retain(|reading| reading.bag != code);
        let (aside, gone) = (aside.result(), gone.result());
        for (a, b) in answer(&aside, "food").comparisons.iter().zip(&answer(&gone, "food").comparisons) {
            prop_assert_eq!(&a.without, &b.with);
        }
    }

    #[test]
    fn nothing_that_is_read_makes_it_panic(
        readings in prop::collection::vec((0_usize..20, any::<f64>(), any::<f64>()), 0..60),
        ordinary in prop::collection::vec((0_usize..18, 0_u8..40, 0_u8..60), 0..60),
        aside in prop::collection::vec((0_usize..20, "leak|x|"), 0..4),
    ) {
        let mut class = class(&[]);
        let codes: Vec<String> = class.plan.bags.iter().map(|bag| bag.code.clone()).collect();
        let code = |at: usize| codes.get(at).cloned().unwrap_or_default();
        class.readings.clear();
        let ordinary = ordinary.into_iter().map(|(b, m, h)| (b, f64::from(m), f64::from(h)));
        for (bag, minute, height_mm) in ordinary.chain(readings) {
            class.readings.push(Reading { bag: code(bag), minute, height_mm, line: 1, event: None });
        }
        for (bag, rule) in aside {
            class.set_aside.push(SetAside { bag: code(bag), rule, line: 1 });
        }
        let result = class.result();
        for (_, low, high) in differences(&result).into_iter().flatten() {
            prop_assert!(low <= high);
        }
    }
}
