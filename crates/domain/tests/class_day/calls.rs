//! The class call on days that the forecast draws.

use crate::day::{at, bag, key};
use crate::slip::{alike, own};
use barm_domain::outlook::{Look, Treated, forecast};
use barm_domain::record::{Bag, Height, Who};
use barm_domain::slip::{Expected, Followed, class_call};
use barm_domain::testing::{base_plan, food, period, treatment};

/// Bags of a class, all made alike, each with its own spoon but all with the day's yeast.
const BAGS: usize = 6;

/// A plan's own forecast of 4 g of sugar, once for each bag.
fn bags_of_a_class() -> Vec<Treated> {
    let mut plan = base_plan();
    plan.periods.push(period("1"));
    let made = |nth| treatment(&format!("sugar {nth}"), food("sucrose", "4 g"));
    (0..BAGS)
        .map(|nth| forecast(&plan, &made(nth), Look::default()).expect("a forecast"))
        .collect()
}

fn band(treated: &Treated) -> Vec<Expected> {
    let band = treated.forecast.rise_mm().band();
    let edges = band.low.iter().zip(&band.median).zip(&band.high);
    let expected = |(minute, ((low, median), high)): (u32, ((&f64, &f64), &f64))| Expected {
        minute: f64::from(minute),
        low_mm: *low,
        median_mm: *median,
        high_mm: *high,
    };
    (0..).zip(edges).map(expected).collect()
}

fn bag_that_rose(rise_mm: f64, minute: u32) -> Bag {
    let height = |number, minute, height_mm| Height {
        key: key(number),
        measured: at(60 * i64::from(minute)),
        planned: None,
        height_mm,
        who: Who::Teacher,
        mended: Vec::new(),
        rival: false,
    };
    Bag {
        zero: Some(height(0, 0, 8.0)),
        readings: vec![height(1, minute, 8.0 + rise_mm)],
        ..Bag::default()
    }
}

/// Whether the class is called at a minute, with one of its bags a control.
fn called(bands: &[Vec<Expected>], rises: &[f64], minute: u32) -> bool {
    let bags: Vec<Bag> = rises.iter().map(|rise| bag_that_rose(*rise, minute)).collect();
    let followed: Vec<Followed<'_>> = bags
        .iter()
        .enumerate()
        .map(|(nth, found)| {
            let code = bag(1, if nth < BAGS / 2 { 1 } else { 2 }, nth % 3);
            alike(own(found, code), &bands[nth], nth + 1 == BAGS)
        })
        .collect();
    class_call(&followed).is_some()
}

/// At most 1 bag in 10 lies under its band, so three in four of a class do on at most 2 days in
/// 15 (Markov's inequality: 0.1 / 0.75), however much its bags go together.
#[test]
fn an_ordinary_day_is_seldom_called() {
    let class = bags_of_a_class();
    let bands: Vec<Vec<Expected>> = class.iter().map(band).collect();
    for minute in [4, 8, 12, 24] {
        let rises: Vec<Vec<f64>> =
            class.iter().map(|treated| treated.forecast.rise_mm().minute(minute)).collect();
        let days = rises[0].len();
        let called = (0..days).filter(|day| {
            // Read to whole millimeters, each up to one off.
            let read =
                |nth: usize| rises[nth][*day].round() + ((7 * day + 13 * nth) % 3) as f64;
            let rises: Vec<f64> = (0..BAGS).map(|nth| read(nth) - 1.0).collect();
            called(&bands, &rises, minute)
        });
        let called = called.count();
        assert!(called * 15 <= days * 2, "minute {minute}: called on {called} of {days} days");
        let median = bands[0][minute as usize].median_mm;
        assert!(median >= 3.0 || called == 0, "minute {minute}: called at {median} mm");
    }
}

/// The trade asks for the call by minute 10.
#[test]
fn a_dead_class_is_called_by_minute_ten() {
    let bands: Vec<Vec<Expected>> = bags_of_a_class().iter().map(band).collect();
    assert!(!called(&bands, &[0.0; BAGS], 4), "too early to tell");
    assert!(called(&bands, &[0.0, 1.0, 0.0, -1.0, 1.0, 0.0], 8));
}
