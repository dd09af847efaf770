//! What readings teach.

use super::school::{self, DAY, TRUTH};
use barm_domain::pilot::{Known, Lots, Numbers, Part, Taught, learn};
use barm_domain::plan::YeastKind;
use jiff::civil::date;

fn all_subsets() -> impl Iterator<Item = Vec<Part>> {
    (1_u32..32).map(|bits| {
        let parts = Part::ALL.into_iter().enumerate();
        parts.filter(|(at, _)| bits & (1 << at) != 0).map(|(_, part)| part).collect()
    })
}

fn taught(parts: &[Part], lots: &Lots) -> Taught {
    let plan = school::plan();
    let (protocol, readings) = school::readings(&plan, TRUTH, 7);
    let readings = school::only(&readings, parts);
    learn(&plan, &protocol, &readings, lots, DAY).expect("readings that can be")
}

fn sd(numbers: &Numbers, name: &str) -> f64 {
    numbers.place(name).map_or(1.0, |at| numbers.sd(at))
}

/// Whatever part is missing: nothing is known less well than before, and what was not measured is as
/// it was.
#[test]
fn any_part_may_be_missing_and_nothing_is_forgotten() {
    for parts in all_subsets() {
        let found = taught(&parts, &Lots::default());
        let has = |part| parts.contains(&part);
        assert_eq!(found.parts, parts);
        let known = Known::of(&found.lots);
        let numbers = known.numbers();
        for at in 0..numbers.len() {
            assert!(numbers.sd(at) <= 1.0 + 1e-9, "{parts:?}: {}", numbers.names[at]);
        }
        for change in &found.changes {
            assert!(change.left <= 1.0 + 1e-9, "{parts:?}: {}", change.title);
        }
        assert_eq!(found.lots.yeast.is_empty(), !has(Part::Spoons) && !has(Part::Bags));
        assert_eq!(found.lots.meters.is_empty(), !has(Part::Meter));
        assert_eq!(sd(&numbers, "heat") < 0.9, has(Part::Dummy), "{parts:?}");
        assert_eq!(found.bags.is_empty(), !has(Part::Bags));
        assert_eq!(found.noise.is_some(), has(Part::Bags));
        let teaspoon = known.yeast(YeastKind::Instant).and_then(|yeast| yeast.teaspoon);
        assert_eq!(teaspoon.is_some(), has(Part::Spoons));
    }
}

#[test]
fn a_whole_pilot_finds_what_is_true() {
    let found = taught(&Part::ALL, &Lots::default());
    let known = Known::of(&found.lots);
    let numbers = known.numbers();
    // Deviates of the table: log of the factor over its standard deviation there.
    let table = barm_science::prior::standard();
    let width = |name: &str| {
        let row = table.iter().find(|row| row.name == name).expect("a row");
        row.spread.day
    };
    let near = |name: &str, truth: f64| {
        let at = numbers.place(name).unwrap_or_else(|| panic!("{name} is not known"));
        let off = (numbers.means[at] - truth) / numbers.sd(at);
        assert!(off.abs() < 3.0, "{name}: {} ± {}", numbers.means[at], numbers.sd(at));
    };
    near("vigor of instant yeast", TRUTH.vigor.ln() / width("vigor"));
    near("heat", TRUTH.heat_loss.ln() / width("heat"));
    assert!(sd(&numbers, "vigor of instant yeast") < 0.6);
    assert!(sd(&numbers, "heat") < 0.7);
    let spoon =
        known.yeast(YeastKind::Instant).and_then(|yeast| yeast.teaspoon).expect("spoons");
    assert!((spoon.grams - TRUTH.teaspoon_g).abs() < 3.0 * spoon.grams_sd, "{spoon:?}");
    let meter = known.meter();
    assert!((meter.log_gain - TRUTH.gain.ln()).abs() < 3.0 * meter.log_gain_sd, "{meter:?}");
    assert!(meter.checked);
}

/// The bag's own readings, in the middle 80 % of what is expected after, and not of what was before.
#[test]
fn after_a_pilot_its_bags_are_as_expected() {
    let found = taught(&Part::ALL, &Lots::default());
    let first = &found.bags[0];
    let last = *first.seen.last().expect("a reading");
    let at = last.0 as usize;
    let width = |curve: &barm_domain::outlook::Curve| curve.high[at] - curve.low[at];
    assert!(width(&first.after) < 0.6 * width(&first.before));
    assert!((first.after.low[at] - 2.0..=first.after.high[at] + 2.0).contains(&last.1));
}

#[test]
fn the_same_readings_count_once() {
    let once = taught(&Part::ALL, &Lots::default());
    let again = taught(&Part::ALL, &once.lots);
    assert_eq!(once.lots, again.lots);
}

#[test]
fn parts_of_one_day_may_come_in_two_files() {
    let first = taught(&[Part::Spoons, Part::Dummy], &Lots::default());
    let second = taught(&[Part::Syringe, Part::Meter], &first.lots);
    let both =
        taught(&[Part::Spoons, Part::Dummy, Part::Syringe, Part::Meter], &Lots::default());
    let (one, other) = (Known::of(&second.lots).numbers(), Known::of(&both.lots).numbers());
    assert_eq!(second.lots.bags[0].parts, both.lots.bags[0].parts);
    for (at, name) in one.names.iter().enumerate() {
        let there = other.place(name).expect("the same numbers");
        assert!((one.means[at] - other.means[there]).abs() < 1e-9, "{name}");
        assert!((one.sd(at) - other.sd(there)).abs() < 1e-9, "{name}");
    }
}

#[test]
fn another_day_goes_on_and_another_lot_starts_anew() {
    let plan = school::plan();
    let (protocol, readings) = school::readings(&plan, TRUTH, 7);
    let dummy = school::only(&readings, &[Part::Dummy]);
    let first = learn(&plan, &protocol, &dummy, &Lots::default(), DAY).expect("readings");
    let heat = |taught: &Taught| sd(&Known::of(&taught.lots).numbers(), "heat");
    let mut later = dummy;
    later.date = Some(date(2027, 3, 3));
    let second = learn(&plan, &protocol, &later, &first.lots, DAY).expect("readings");
    assert!(heat(&second) < heat(&first));
    assert_eq!(second.lots.bags.len(), 2);
    later.lots.bags = Some("box 2".into());
    let other = learn(&plan, &protocol, &later, &first.lots, DAY).expect("readings");
    assert!((heat(&other) - heat(&first)).abs() < 1e-9);
    assert_eq!(other.lots.bags.iter().filter(|lot| lot.in_use).count(), 1);
    assert!(other.lots.bags.iter().any(|lot| lot.in_use && lot.name == "box 2"));
}

#[test]
fn a_line_names_what_forecasts_go_by() {
    let found = taught(&Part::ALL, &Lots::default());
    let line = Known::of(&found.lots).says().expect("a line");
    for word in ["yeast “first”", "bags “first”", "meter “first”", "2027-03-02"] {
        assert!(line.contains(word), "{line}");
    }
    assert_eq!(Known::default().says(), None);
    assert!(Known::default().is_nothing());
}
