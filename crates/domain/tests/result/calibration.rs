//! How often a class is told something that is not so, by simulated days with a known truth.

use crate::class::{Class, answer};
use barm_science::statistics::chance::Chance;
use barm_science::statistics::verdict::Code;

/// Days per test: the suite is quick, ordinary or long by an environment variable.
fn days() -> usize {
    crate::size::counts(200, 400, 6_000)
}

/// 99 % sampling error of a share found in that many days (two-sided normal).
fn sampling_error(share: f64, days: usize) -> f64 {
    2.576 * (share * (1.0 - share) / days as f64).sqrt()
}

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];
const FOODS: [&str; 3] = ["Maple syrup", "Oat flour", "Banana"];

/// A day of four periods with a bag of each food and two without food in each: periods differ by
/// 2 mm, bags alike by 2 mm (standard deviations), heights are read to whole millimeters with the
/// eye up to 1 mm off, and one reading in twelve is missed.
fn day(rises: [f64; 3], none: f64, chance: &mut Chance) -> Class {
    let mut class = Class::foods(&PERIODS, &FOODS);
    for period in PERIODS {
        let warm = 2.0 * chance.normal();
        let foods = FOODS.into_iter().zip(rises).chain([("No food", none); 2]);
        for (name, rise) in foods {
            let bag = class.add(name, period);
            let rise = rise + warm + 2.0 * chance.normal();
            let slant = 2.0 * chance.uniform() - 1.0;
            let mut points = Vec::new();
            for minute in (0..=24).step_by(4) {
                let missed = minute > 0 && chance.uniform() < 1.0 / 12.0;
                let height = rise * f64::from(minute) / 24.0 + slant * f64::from(minute.min(1));
                if !missed {
                    points.push((f64::from(minute), height.round()));
                }
            }
            class.read(&bag, &points);
        }
    }
    class
}

/// With no difference at all a class hears "clear" of any of its foods in at most 1 day of 20.
#[test]
fn clear_is_false_at_most_once_in_twenty() {
    let mut chance = Chance::from_seed(41);
    let days = days();
    let wrong = (0..days)
        .filter(|_| {
            let result = day([9.0; 3], 9.0, &mut chance).result();
            let comparisons = &answer(&result, "food").comparisons;
            comparisons.iter().any(|compared| compared.with.verdict.code == Code::Clear)
        })
        .count();
    let share = wrong as f64 / days as f64;
    let bar = 0.05 + sampling_error(0.05, days);
    assert!(share <= bar, "{wrong} of {days} days said clear, {bar:.4} allowed");
}

/// All three intervals of a day hold the truth in 93 to 98 days of 100: what is not known of groups and of
/// spreads may make them wider than 95, and never narrower than 93.
#[test]
fn intervals_hold_the_truth_all_at_once() {
    let mut chance = Chance::from_seed(42);
    let days = days();
    let (rises, none) = ([14.0, 9.0, 5.0], 4.0);
    let held = (0..days)
        .filter(|_| {
            let result = day(rises, none, &mut chance).result();
            let comparisons = &answer(&result, "food").comparisons;
            comparisons.len() == 3
                && comparisons.iter().zip(rises).all(|(compared, rise)| {
                    let truth = rise - none;
                    compared.with.difference.is_some_and(|d| d.low <= truth && truth <= d.high)
                })
        })
        .count();
    let share = held as f64 / days as f64;
    let (low, high) = (0.93, 0.98);
    let bars = (low - sampling_error(low, days), high + sampling_error(high, days));
    assert!(bars.0 <= share && share <= bars.1, "{held} of {days} days held, {bars:?} allowed");
}
