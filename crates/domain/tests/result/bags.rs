//! One number a bag, at one minute for all.

use crate::class::{Class, bag, compared};
use barm_domain::outlook::{Look, forecast, forecast_from, forecast_on, further_days, setup};
use barm_domain::plan::{Day, Place};
use barm_domain::result::Hint;
use barm_science::card_height::CurvePosterior;
use barm_science::prior::{Learned, Prior};
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
    class.read("P9-01A-W", &[(0.0, 0.0)]);
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
    assert_eq!(risen.beyond, None);
    assert!((150.0..250.0).contains(&gas.value), "{gas:?}");
    assert!(gas.low < gas.value && gas.value < gas.high);
    let ethanol = risen.ethanol_g.unwrap();
    assert!((0.2..0.6).contains(&ethanol.value), "{ethanol:?}");
    assert!(ethanol.low < ethanol.value && ethanol.value < ethanol.high);
    let flat = bag(&result, &class.plan.bags[1].code).contents.unwrap();
    assert!(flat.gas_ml.low >= 0.0 && flat.gas_ml.high < gas.low);
    assert!(class.result().bags.iter().all(|bag| bag.contents.is_none()));
}

/// A snack bag is drum-tight with its card some 48 mm higher; the curves are known up to 93 % of the gas, a
/// rise of about 34 mm (1 − 0.07 to the power of 1/2.1, of 48 mm).
#[test]
fn gas_of_a_bag_that_is_nearly_tight_is_marked() {
    let mut class = two_foods();
    let tight = class.add("Maple syrup", "1");
    class.read(&tight, &[(0.0, 0.0), (24.0, 43.0)]);
    let look = Look { draws: 16, ..Look::default() };
    let plan = &class.plan;
    let forecasts: Vec<_> =
        plan.treatments().map(|(_, t)| forecast(plan, t, look).unwrap()).collect();
    let result = class.result_with(&forecasts);
    let mark = bag(&result, &tight).contents.unwrap().beyond.expect("a mark");
    assert_eq!((mark.law.name, mark.from_min), ("card_height.family", 24.0));
    assert!((0.93..=1.0).contains(&mark.value), "{mark}");
}

/// Bags that were filled with a syringe before the day: the same rise leaves less open.
#[test]
fn a_calibrated_box_tells_gas_more_closely() {
    let class = two_foods();
    let look = Look { draws: 64, ..Look::default() };
    let treatments: Vec<_> = class.plan.treatments().map(|(_, treatment)| treatment).collect();
    let gas = |prior: &Prior| {
        let day = &class.plan.days[0];
        let forecasts: Vec<_> = treatments
            .iter()
            .map(|one| forecast_from(&class.plan, day, one, look, prior).unwrap())
            .collect();
        let result = class.result_with(&forecasts);
        bag(&result, &class.plan.bags[0].code).contents.unwrap().gas_ml
    };
    // A bag that holds about one standard deviation more than the table says.
    let third = 1.0 / 3.0;
    let root = [[third, 0.0, 0.0], [0.0, third, 0.0], [0.0, 0.0, third]];
    let posterior = CurvePosterior { mean: [0.0, 0.0, 1.0], root };
    let setup = setup(&class.plan, treatments[0]).unwrap();
    let learned = Learned::of_curve(&posterior, &setup.bag);
    let (before, after) =
        (gas(&Prior::default()), gas(&Prior::default().knowing(&learned).unwrap()));
    assert!(after.high - after.low < 0.9 * (before.high - before.low), "{after:?} {before:?}");
    assert!(after.value > before.value, "{after:?} {before:?}");
}

/// The same rise on two days: at 1400 m (about 85.6 kPa by the standard atmosphere) and on a day
/// of 101.325 kPa. As much gas holds about 101.3/85.6 times as much carbon dioxide at the higher
/// pressure, the water vapor in it aside, and so goes with about that much more ethanol.
#[test]
fn gas_and_ethanol_rest_on_the_air_of_the_bags_own_day() {
    let mut class = two_foods();
    let first = class.plan.days[0].clone();
    let pressed = Place::Pressure(101_325.0);
    let second = Day { name: "Friday".into(), place: pressed, ..first.clone() };
    // A third day like the first needs no forecast of its own.
    let third = Day { name: "Monday".into(), ..first };
    class.plan.days.extend([second, third]);
    class.plan.periods[1].day = "Friday".into();
    class.plan.periods[2].day = "Monday".into();
    let look = Look { draws: 128, ..Look::default() };
    let plan = &class.plan;
    let mut forecasts: Vec<_> =
        plan.treatments().map(|(_, t)| forecast(plan, t, look).unwrap()).collect();
    let without = class.result_with(&forecasts);
    let further = further_days(plan);
    let named: Vec<_> = further.iter().map(|(t, day)| (t.name.as_str(), &*day.name)).collect();
    assert_eq!(named, [("Maple syrup", "Friday"), ("No food", "Friday")]);
    forecasts.extend(further.iter().map(|(t, day)| forecast_on(plan, day, t, look).unwrap()));
    let result = class.result_with(&forecasts);
    let maple = |period: &str| {
        let of = |b: &&barm_domain::plan::PlannedBag| {
            b.period == period && b.treatment == "Maple syrup"
        };
        &plan.bags.iter().find(of).unwrap().code
    };
    let ethanol =
        |period| bag(&result, maple(period)).contents.unwrap().ethanol_g.unwrap().value;
    assert!((ethanol("3") - ethanol("1")).abs() < 1e-12);
    let ratio = ethanol("2") / ethanol("1");
    assert!((1.1..1.3).contains(&ratio), "{ratio}");
    // Without a forecast for its day a bag is given no figure, not that of another day.
    assert!(bag(&without, maple("2")).contents.is_none());
    assert!(bag(&without, maple("3")).contents.is_some());
}
