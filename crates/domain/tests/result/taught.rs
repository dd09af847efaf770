//! What a class's readings teach, on days of which the truth is known.

use crate::class::{Class, bag};
use barm_domain::outlook::{Look, Treated, forecast};
use barm_domain::pilot::{
    Ageing, FIRST_LOT, Known, Lot, LotDay, Lots, Numbers, YeastLot, class_days, over_time,
};
use barm_domain::plan::YeastKind;
use barm_domain::result::taught::{DayTaught, Looks, day_taught};
use barm_domain::testing::{self, food};
use barm_domain::words::Voice;
use barm_science::model::nominal;
use jiff::civil::{Date, date};
use std::collections::BTreeMap;

const STRENGTH: &str = "strength of the yeast";

/// Two periods with four bags of much and four of little sugar, read to whole millimeters every four
/// minutes, of a yeast of that strength over the usual one.
fn day(strength: f64) -> Class {
    let mut class = Class::with_periods(&["1", "2"]);
    let of = |name: &str, amount: &str| testing::treatment(name, food("white sugar", amount));
    class.ask("food", Some("Little"), [of("Much", "1 g"), of("Little", "0.1 g")]);
    let all = forecasts(&class);
    for period in ["1", "2"] {
        for name in ["Much", "Little", "Much", "Little"] {
            let code = class.add(name, period);
            let treated = all.iter().find(|one| one.treatment == name).expect("a forecast");
            let mut setup = treated.setup.clone();
            if let Some(yeast) = &mut setup.yeast {
                yeast.grams *= strength;
            }
            let course = nominal(&setup, 24).expect("a course");
            let moments = course.moments.iter().step_by(4);
            let points = moments.map(|moment| (moment.minute, moment.rise_mm.round()));
            class.read(&code, &points.collect::<Vec<_>>());
        }
    }
    class
}

fn forecasts(class: &Class) -> Vec<Treated> {
    let look = Look { draws: 16, ..Look::default() };
    let treatments = class.plan.treatments();
    treatments.map(|(_, one)| forecast(&class.plan, one, look).expect("a forecast")).collect()
}

fn taught(class: &Class) -> DayTaught {
    let forecasts = forecasts(class);
    let result = class.result_with(&forecasts);
    let found = day_taught(&class.plan, &forecasts, &result, &BTreeMap::new());
    found.expect("a day that can be").expect("bags with heights")
}

#[test]
fn strong_yeast_is_told_and_a_usual_day_asks_about_no_bag() {
    let usual = taught(&day(1.0));
    assert_eq!((usual.bags, usual.readings), (8, 48));
    assert_eq!(usual.unlike, []);
    let strength = |of: &DayTaught| {
        let change = of.changes.iter().find(|change| change.title == STRENGTH);
        change.map(|change| change.after).expect("its strength")
    };
    let (usual_after, strong_after) = (strength(&usual), strength(&taught(&day(1.5))));
    // Half as much again, less what bags' own spoons may explain.
    let ratio = strong_after[0] / usual_after[0];
    assert!((1.2..1.7).contains(&ratio), "{usual_after:?} {strong_after:?}");
    assert!(strong_after[1] > usual_after[0], "{usual_after:?} {strong_after:?}");
    // So few bags of sugar say nothing of an enzyme's heat or of maltose.
    assert!(!usual.unmoved.is_empty());
    let voice = Voice::english(8);
    assert!(voice.day_could_not_tell(&usual).is_some_and(|says| says.ends_with('.')));
    assert!(voice.day_rests_on(&usual).starts_with("From 8 bags with 48 readings."));
}

#[test]
fn a_bag_that_leaks_is_asked_about_and_one_set_aside_is_left_out() {
    let mut class = day(1.0);
    let leaks = class.plan.bags[2].code.clone();
    for reading in class.readings.iter_mut().filter(|reading| reading.bag == leaks) {
        let rise = reading.height_mm - crate::class::ZERO_MM;
        let left = 1.0 - 0.035 * reading.minute;
        reading.height_mm = crate::class::ZERO_MM + (rise * left).round();
    }
    let found = taught(&class);
    let asked: Vec<&str> = found.unlike.iter().map(|one| one.bag.code.as_str()).collect();
    assert_eq!(asked, [leaks.as_str()]);
    let one = &found.unlike[0];
    assert!(one.chance > 0.5 && one.looks == Looks::FallsBehind, "{one:?}");
    let says = Voice::english(6).day_asks(one);
    assert!(says.ends_with('?') && says.contains("zip"), "{says}");
    class.put_aside(&leaks, "leak");
    let without = taught(&class);
    assert_eq!((without.bags, without.unlike), (7, Vec::new()));
}

/// What a class says of the jar in use on a day on which its yeast is that strong. A pilot gave the jar its name.
fn jar_on(date: Date, strength: f64) -> LotDay {
    let mut class = day(strength);
    let numbers = Numbers {
        names: vec!["vigor of instant yeast".into()],
        means: vec![0.0],
        covariance: vec![vec![0.81]],
    };
    let found = YeastLot { kind: YeastKind::Instant, teaspoon: None, numbers };
    let lot = Lot { name: "jar".into(), date, in_use: true, parts: Vec::new(), found };
    class.plan.known = Known::of(&Lots { yeast: vec![lot], ..Lots::default() });
    let learned = taught(&class).learned;
    let mut said = class_days(&class.plan.known, &learned, date);
    assert_eq!(said.len(), 1, "{said:?}");
    said.remove(0)
}

/// A jar that has half its strength in May is told to have lost, with half within the interval; one that kept it is not
/// told to have lost anything.
#[test]
fn a_jar_that_halved_between_two_class_days_is_told_and_one_that_did_not_is_not() {
    let (march, may) = (date(2027, 3, 2), date(2027, 5, 11));
    let first = jar_on(march, 1.0);
    assert!(first.name != FIRST_LOT);
    let halved = over_time([first.clone(), jar_on(may, 0.5)]);
    let Ageing::Lost(left) = halved[0].ageing else { panic!("{halved:?}") };
    assert!(left.low < 0.5 && 0.5 < left.high && left.high < 1.0, "{left:?}");
    let kept = over_time([first, jar_on(may, 1.0)]);
    assert!(
        matches!(kept[0].ageing, Ageing::NotTold(left) if left.low < 1.0 && 1.0 < left.high),
        "{kept:?}"
    );
}

#[test]
fn a_day_without_heights_teaches_nothing() {
    let mut class = day(1.0);
    class.readings.clear();
    let forecasts = forecasts(&class);
    let result = class.result_with(&forecasts);
    let none = day_taught(&class.plan, &forecasts, &result, &BTreeMap::new());
    assert_eq!(none, Ok(None));
    assert!(bag(&result, &class.plan.bags[0].code).summary.is_none());
}
