//! Lots over the days on which they were used: identities, and stories of jars that age and jars that do not.

use barm_domain::pilot::{
    Ageing, By, Known, Lot, LotDay, LotOf, Lots, Numbers, Part, YeastLot, class_days,
    over_time, pilot_days,
};
use barm_domain::plan::YeastKind;
use jiff::civil::{Date, date};
use proptest::prelude::*;

const KEY: &str = "vigor of instant yeast";
const MARCH: Date = date(2027, 3, 2);
const MAY: Date = date(2027, 5, 11);

fn numbers(mean: f64, sd: f64) -> Numbers {
    Numbers { names: vec![KEY.into()], means: vec![mean], covariance: vec![vec![sd * sd]] }
}

/// Bayes for one normal number: what is known once a measurement (mean, sd) is added to what was.
fn after((m0, s0): (f64, f64), (mean, sd): (f64, f64)) -> (f64, f64) {
    let (before, new) = (1.0 / (s0 * s0), 1.0 / (sd * sd));
    ((m0 * before + mean * new) / (before + new), (1.0 / (before + new)).sqrt())
}

fn tried(name: &str, date: Date, (mean, sd): (f64, f64)) -> Lot<YeastLot> {
    let found =
        YeastLot { kind: YeastKind::Instant, teaspoon: None, numbers: numbers(mean, sd) };
    Lot { name: name.into(), date, in_use: true, parts: vec![Part::Bags], found }
}

fn jar(yeast: Vec<Lot<YeastLot>>) -> Lots {
    Lots { yeast, ..Lots::default() }
}

fn lot_day(date: Date, log: f64, log_sd: f64) -> LotDay {
    let of = LotOf::Yeast(YeastKind::Instant);
    LotDay { of, name: "jar".into(), date, by: By::Pilot, log, log_sd }
}

/// Days of one jar, told together.
fn told(days: Vec<LotDay>) -> Ageing {
    let mut lots = over_time(days);
    assert_eq!(lots.len(), 1);
    lots.remove(0).ageing
}

/// A jar is measured twice, the second time on top of the first. The second day by itself is what was measured that
/// day, whatever was known before.
#[test]
fn each_day_is_told_by_itself() {
    let (one, other) = ((0.3, 0.4), (-1.5, 0.25));
    let first = after((0.0, 1.0), one);
    let second = after(first, other);
    let lots = jar(vec![tried("jar", MAY, second), tried("jar", MARCH, first)]);
    let days = pilot_days(&lots);
    assert_eq!(days.iter().map(|day| day.date).collect::<Vec<_>>(), [MARCH, MAY]);
    // Both in the one unit of the number: its standard deviation before anything was measured.
    let unit = days[0].log / one.0;
    for (day, (mean, sd)) in days.iter().zip([one, other]) {
        assert!((day.log - unit * mean).abs() < 1e-9, "{day:?}");
        assert!((day.log_sd - unit * sd).abs() < 1e-9, "{day:?}");
    }
    // Another jar does not go on from this one.
    let lots =
        jar(vec![tried("jar", MARCH, first), tried("box", MAY, after((0.0, 1.0), other))]);
    let days = pilot_days(&lots);
    assert!((days[1].log - unit * other.0).abs() < 1e-9, "{days:?}");
    assert_eq!(over_time(days).len(), 2);
}

#[test]
fn what_the_class_said_is_told_without_what_the_pilot_knew() {
    let (pilot, class) = ((0.3, 0.4), (-1.0, 0.2));
    let known = after((0.0, 1.0), pilot);
    let lots = jar(vec![tried("jar", MARCH, known)]);
    let learned = |(mean, sd)| numbers(mean, sd);
    let since = learned(after(known, class));
    let days = class_days(&Known::of(&lots), &since, MAY);
    let alone = pilot_days(&lots);
    let unit = alone[0].log / pilot.0;
    assert_eq!((days.len(), days[0].by, days[0].name.as_str()), (1, By::Class, "jar"));
    assert!(
        (days[0].log - unit * class.0).abs() < 1e-9
            && (days[0].log_sd - unit * class.1).abs() < 1e-9
    );
    // A class that taught nothing of its yeast says nothing; nor does one whose jar has no name.
    assert!(class_days(&Known::of(&lots), &learned(known), MAY).is_empty());
    assert!(class_days(&Known::default(), &since, MAY).is_empty());
}

/// An activity that is known to halve is told to have lost, and half is within the interval.
#[test]
fn a_jar_that_halved_is_told_to_have_lost_half() {
    let half = 0.5_f64.ln();
    let Ageing::Lost(left) =
        told(vec![lot_day(MARCH, 0.1, 0.12), lot_day(MAY, 0.1 + half, 0.12)])
    else {
        panic!("not told");
    };
    // By hand: u = 0.12 √2 = 0.1697; exp(ln 0.5 ± 1.96 u) = 0.358 and 0.697.
    assert!((left.best - 0.5).abs() < 1e-9, "{left:?}");
    assert!(
        (left.low - 0.358_5).abs() < 1e-3 && (left.high - 0.697_3).abs() < 1e-3,
        "{left:?}"
    );
}

#[test]
fn days_that_do_not_differ_are_not_told_as_ageing() {
    let same = told(vec![lot_day(MARCH, 0.05, 0.12), lot_day(MAY, -0.05, 0.12)]);
    assert!(
        matches!(same, Ageing::NotTold(left) if left.low < 1.0 && left.high > 1.0),
        "{same:?}"
    );
    // As much apart as in the story above, but hardly known.
    let vague = told(vec![lot_day(MARCH, 0.1, 0.5), lot_day(MAY, 0.1 + 0.5_f64.ln(), 0.5)]);
    assert!(matches!(vague, Ageing::NotTold(_)), "{vague:?}");
    // Many measurements of one date say nothing of time.
    let once = told(vec![lot_day(MARCH, 0.5, 0.1), lot_day(MARCH, -0.5, 0.1)]);
    assert_eq!(once, Ageing::OneDate);
    // Days that scatter widely about any line say less than each of them claims.
    let wild: Vec<LotDay> = [0.9, -0.9, 0.8, -0.9, 0.6, -0.9]
        .iter()
        .zip(1..)
        .map(|(log, month)| lot_day(date(2027, month, 1), *log, 0.1))
        .collect();
    assert!(matches!(told(wild), Ageing::NotTold(_)));
}

#[test]
fn one_pilot_that_was_typed_in_twice_is_one() {
    let day = || lot_day(MARCH, 0.1, 0.2);
    let lots = over_time(vec![day(), day(), lot_day(MAY, 0.0, 0.2)]);
    assert_eq!(lots[0].days.len(), 2);
}

/// Of jars that do not change, about 1 in 40 is told to have lost: three days each, normal numbers out of a
/// counter (Box and Muller).
#[test]
fn a_jar_that_does_not_change_is_hardly_ever_told_to_age() {
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    let mut even = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        ((state >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    };
    let mut normal = || (-2.0 * even().ln()).sqrt() * (core::f64::consts::TAU * even()).cos();
    let (jars, mut lost, mut gained) = (4000, 0, 0);
    for _ in 0..jars {
        let sds = [0.1, 0.2, 0.15];
        let dates = [MARCH, date(2027, 4, 6), MAY];
        let days = sds.iter().zip(dates).map(|(sd, date)| lot_day(date, sd * normal(), *sd));
        match told(days.collect()) {
            Ageing::Lost(_) => lost += 1,
            Ageing::Gained(_) => gained += 1,
            _ => {}
        }
    }
    // 2.5 % is 100 of 4000 at the most, for wide scatter only widens; three standard deviations of a count of
    // 100 are 30.
    assert!(lost < 130 && gained < 130, "{lost} lost, {gained} gained");
    assert!(lost > 20 && gained > 20, "{lost} lost, {gained} gained: is anything ever told?");
}

proptest! {
    /// Whatever the days, best guess and ends are numbers in their order, and all days later or another unit change
    /// nothing.
    #[test]
    fn what_is_told_is_a_number_and_does_not_hang_on_the_calendar(
        days in proptest::collection::vec((0_i64..2000, -2.0_f64..2.0, 0.01_f64..2.0), 2..8),
        later in 0_i64..3000,
    ) {
        let of = |shift: i64| {
            let day = |&(at, log, sd): &(i64, f64, f64)| {
                let date = MARCH.checked_add(jiff::Span::new().days(at + shift)).expect("a date");
                lot_day(date, log, sd)
            };
            told(days.iter().map(day).collect())
        };
        let left = |ageing: Ageing| match ageing {
            Ageing::OneDate => None,
            Ageing::NotTold(left) | Ageing::Lost(left) | Ageing::Gained(left) => Some(left),
        };
        let (now, then) = (left(of(0)), left(of(later)));
        prop_assert_eq!(now.is_some(), then.is_some());
        if let (Some(now), Some(then)) = (now, then) {
            prop_assert!(now.low <= now.best && now.best <= now.high, "{now:?}");
            prop_assert!(now.low >= 0.0 && !now.high.is_nan());
            prop_assert!((now.best.ln() - then.best.ln()).abs() < 1e-6);
        }
    }
}
