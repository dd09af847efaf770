//! One number a bag, at one minute for all.

use crate::class::{Class, bag, compared};
use barm_domain::outlook::{Look, forecast};
use barm_domain::result::Hint;
use barm_science::statistics::verdict::Code;

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

fn two_foods() -> Class {
    let mut class = Class::foods(&PERIODS, &["Maple syrup"]);
    for period in PERIODS {
        class.grow("Maple syrup", period, 24.0);
        class.grow("No food", period, 1.2);
    }
    class
}

#[test]
fn a_short_period_moves_the_common_minute_for_all() {
    let mut class = Class::foods(&["1", "2"], &["Maple syrup"]);
    for (period, last) in [("1", 24), ("1", 24), ("2", 16), ("2", 16)] {
        class.grow_until("Maple syrup", period, 24.0, last);
        class.grow_until("No food", period, 0.0, last);
    }
    let result = class.result();
    assert_eq!(result.minute, Some(16.0));
    assert!(
        (compared(&result, "Maple syrup").with.difference.unwrap().difference - 16.0).abs()
            < 1e-9
    );
}

#[test]
fn one_bag_that_stops_early_is_left_out_instead() {
    let mut class = two_foods();
    let spilled = class.grow_until("Maple syrup", "1", 24.0, 8);
    let result = class.result();
    assert_eq!(result.minute, Some(24.0));
    assert_eq!(bag(&result, &spilled).summary, None);
    assert!(bag(&result, &spilled).hints.contains(&Hint::StoppedEarly { last: 8.0 }));
    assert_eq!(compared(&result, "Maple syrup").left_out, 1);
}

#[test]
fn readings_after_the_bell_are_said_and_do_not_move_the_minute() {
    let mut class = two_foods();
    let late = class.plan.bags[0].code.clone();
    class.read(&late, &[(28.0, 27.0), (40.0, 30.0)]);
    let result = class.result();
    assert_eq!(result.minute, Some(24.0));
    let late = bag(&result, &late);
    assert!(
        late.hints.contains(&Hint::AfterTheBell { minute: 40.0, bell: 31.0 }),
        "{:?}",
        late.hints
    );
    assert!((late.summary.as_ref().unwrap().rise_mm.value - 24.0).abs() < 1e-9);
}

#[test]
fn a_fall_is_hinted_at_and_changes_nothing() {
    let mut class = two_foods();
    let fell = class.add("Maple syrup", "1");
    class.read(&fell, &[(0.0, 0.0), (8.0, 9.0), (12.0, 5.5), (24.0, 20.0)]);
    let result = class.result();
    let fell = bag(&result, &fell);
    assert_eq!(fell.hints, [Hint::Fell { by_mm: 3.5, from: 8.0, to: 12.0 }]);
    assert!((fell.summary.as_ref().unwrap().rise_mm.value - 20.0).abs() < 1e-9);
    assert_eq!(fell.set_aside, None);
}

#[test]
fn what_cannot_be_a_reading_is_rejected() {
    let mut class = two_foods();
    let first = class.plan.bags[0].code.clone();
    class.read("P9-01A-0", &[(0.0, 0.0)]);
    class.read(&first, &[(24.0, 1.0), (f64::NAN, 3.0), (-4.0, 3.0), (12.5, f64::INFINITY)]);
    let result = class.result();
    assert_eq!(result.rejected.len(), 5, "{:?}", result.rejected);
    assert!((bag(&result, &first).summary.as_ref().unwrap().rise_mm.value - 24.0).abs() < 1e-9);
}

#[test]
fn a_class_that_read_nothing_has_an_empty_result() {
    let mut class = Class::foods(&["1"], &["Maple syrup"]);
    class.add("Maple syrup", "1");
    class.add("No food", "1");
    let result = class.result();
    assert_eq!(result.minute, None);
    assert_eq!(result.bags[0].hints, [Hint::NotRead]);
    assert_eq!(compared(&result, "Maple syrup").with.verdict.code, Code::NotComparable);
}

/// Gas and ethanol of a snack bag with 40 mL of liquid, by hand: the curve family of the bag model
/// gives about 9 mL a millimeter there, and 100 mL of carbon dioxide go with about 0.19 g ethanol
/// at 24 L/mol (common practice, no source), more at 1400 m, more again for what stays dissolved.
#[test]
fn heights_become_gas_and_ethanol_with_their_doubt() {
    let class = two_foods();
    let forecasts: Vec<_> = class
        .plan
        .treatments()
        .map(|(_, treatment)| {
            forecast(&class.plan, treatment, Look { draws: 64, ..Look::default() }).unwrap()
        })
        .collect();
    let result = class.result_with(&forecasts);
    let risen = bag(&result, &class.plan.bags[0].code).contents.unwrap();
    let gas = risen.gas_ml;
    assert!((150.0..250.0).contains(&gas.value), "{gas:?}");
    assert!(gas.low < gas.value && gas.value < gas.high);
    let ethanol = risen.ethanol_g.unwrap();
    assert!((0.2..0.6).contains(&ethanol.value), "{ethanol:?}");
    assert!(ethanol.low < ethanol.value && ethanol.value < ethanol.high);
    let flat = bag(&result, &class.plan.bags[1].code).contents.unwrap();
    assert!(flat.gas_ml.low >= 0.0 && flat.gas_ml.high < gas.low);
    assert!(class.result().bags.iter().all(|bag| bag.contents.is_none()));
}
