//! A day's numbers out of its readings.

mod dealt;
mod leaks;
mod odd;
mod onward;
mod recovery;

use barm_science::fit::day::{DayError, DayFit, fit_day};
use barm_science::prior::Prior;
use barm_science::statistics::chance::Chance;

#[test]
fn without_readings_there_is_nothing_to_fit() {
    let prior = Prior::default();
    assert!(matches!(fit_day(&[], &prior), Err(DayError::NoReadings)));
    let planned = dealt::day();
    let mut bags = dealt::deal(&planned, &prior, &mut Chance::from_seed(1), dealt::right).bags;
    bags[3].readings[2].0 = -4.0;
    let error = fit_day(&bags, &prior).unwrap_err();
    assert!(matches!(error, DayError::Reading { bag: 3, .. }), "{error}");
}

/// Whether two fits say the same, to far below what either leaves open.
#[track_caller]
fn agree(one: &DayFit, other: &DayFit) {
    let (one, other) = (&one.learned, &other.learned);
    assert_eq!(one.len(), other.len());
    for (at, name) in one.names.iter().enumerate() {
        let there = other.place(name).expect("the same numbers");
        let off = (one.means[at] - other.means[there]).abs();
        assert!(off < 1e-3, "{name}: {} {}", one.means[at], other.means[there]);
        let off = (one.sd(at) - other.sd(there)).abs();
        assert!(off < 1e-3, "{name}: {} {}", one.sd(at), other.sd(there));
    }
}

/// Neither the order in which bags are given nor that of the table may decide where a search ends.
#[test]
fn the_order_of_bags_and_of_the_table_does_not_matter() {
    let mut prior = Prior::default();
    let planned = dealt::day();
    let mut bags = dealt::deal(&planned, &prior, &mut Chance::from_seed(2), dealt::right).bags;
    let one = fit_day(&bags, &prior).unwrap();
    bags.reverse();
    prior.rows.reverse();
    agree(&one, &fit_day(&bags, &prior).unwrap());
}
