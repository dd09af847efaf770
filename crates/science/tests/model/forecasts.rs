//! Forecasts: reproducible, comparable draw by draw, and honest about what they leave out.

use crate::bench;
use barm_science::bag::StandardBag;
use barm_science::forecast::{Forecast, Span, Streams, VENT_FILL, forecast};
use barm_science::model::course::{sample, tolerance};
use barm_science::model::state::{CELSIUS, ETHANOL, State};
use barm_science::model::{Mixture, Parameters, nominal};
use barm_science::setup::Setup;

fn of(setup: &Setup, day: u64, bag: u64) -> Forecast {
    forecast(setup, &Span::to(40), &Streams::alone(day, bag)).unwrap()
}

fn mean_and_sd(values: &[f64]) -> (f64, f64) {
    let n = values.len() as f64;
    let mean = values.iter().sum::<f64>() / n;
    let square = values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / (n - 1.0);
    (mean, square.sqrt())
}

#[test]
fn the_same_seeds_give_the_same_forecast_and_others_another() {
    let setup = bench::plain(40.0);
    assert_eq!(of(&setup, 7, 8), of(&setup, 7, 8));
    assert_ne!(of(&setup, 7, 8).gas_ml(), of(&setup, 7, 9).gas_ml());
    assert_ne!(of(&setup, 7, 8).gas_ml(), of(&setup, 6, 8).gas_ml());
}

#[test]
fn bands_are_in_order_and_start_from_zero() {
    let forecast = of(&bench::plain(40.0), 1, 2);
    assert!(forecast.rise_mm().minute(0).iter().all(|rise| rise.abs() < 1e-12));
    assert!(forecast.rise_mm().minute(41).is_empty());
    for band in
        [forecast.rise_mm().band(), forecast.gas_ml().band(), forecast.ethanol_g().band()]
    {
        assert_eq!(band.median.len(), 41);
        for minute in 1..=40 {
            assert!(band.low[minute] <= band.median[minute]);
            assert!(band.median[minute] <= band.high[minute]);
        }
        assert!(band.median[40] > band.median[20]);
    }
    let single = nominal(&bench::plain(40.0), 40).unwrap().moments[40];
    let median = forecast.gas_ml().band().median[40];
    assert!((median / single.gas_ml - 1.0).abs() < 0.15, "{median} against {}", single.gas_ml);
}

/// Bags of one day share their yeast: two of the same kind differ far less than two of two days.
#[test]
fn bags_of_one_day_can_be_subtracted_draw_by_draw() {
    let setup = bench::plain(40.0);
    let first = of(&setup, 1, 10);
    let at_end = |other: &Forecast| first.minus(other).unwrap().rise_mm().minute(40);
    let (mean, same_day) = mean_and_sd(&at_end(&of(&setup, 1, 11)));
    let (_, two_days) = mean_and_sd(&at_end(&of(&setup, 2, 11)));
    assert!(mean.abs() < 0.5, "twins differ by {mean} mm on average");
    assert!(same_day < 0.6 * two_days, "{same_day} mm within, {two_days} mm between days");
    assert!(same_day > 0.5, "twins are not the same bag: {same_day} mm");
}

/// Bags share their jug with a period and their hands with a group: the more two of them share, the
/// less they differ.
#[test]
fn bags_of_one_group_are_more_alike_than_those_of_two_and_of_two_periods() {
    let mut setup = bench::plain(30.0);
    // A poor thermometer, so that the jug shows beside the spoons.
    setup.water_celsius_sd = 4.0;
    let span = Span { draws: 1024, until_hours: 0.0, ..Span::to(25) };
    let bag = |period, group, bag| {
        let streams = Streams { day: 1, period, group, bag };
        forecast(&setup, &span, &streams).unwrap().gas_ml().minute(25)
    };
    let first = bag(1, 1, 1);
    let apart = |other: Vec<f64>| {
        let differences: Vec<f64> = first.iter().zip(&other).map(|(a, b)| a - b).collect();
        mean_and_sd(&differences).1
    };
    let (group, period, day) = (apart(bag(1, 1, 2)), apart(bag(1, 2, 3)), apart(bag(2, 3, 4)));
    // Each standard deviation is known to one part in 45.
    assert!(1.1 * group < period, "{group} mL in a group, {period} mL in a period");
    assert!(1.1 * period < day, "{period} mL in a period, {day} mL in a day");
}

#[test]
fn a_difference_is_readable_when_it_should_be() {
    let sugar = of(&bench::plain(40.0), 1, 1);
    let mut setup = bench::plain(40.0);
    setup.foods.clear();
    let none = of(&setup, 1, 2);
    let apart = sugar.minus(&none).unwrap();
    let minute = apart.readable_at_min(3.0).unwrap();
    let medians = apart.band().median;
    assert!(medians[minute as usize] >= 3.0 && medians[minute as usize - 1] < 3.0);
    let chance = apart.chance_readable(3.0);
    assert!(chance > 0.8, "sugar shows in {chance} of the draws");
    let turned = none.minus(&sugar).unwrap();
    assert_eq!(turned.readable_at_min(3.0), Some(minute), "down counts as much as up");
    let nothing = none.minus(&none).unwrap();
    assert_eq!(nothing.readable_at_min(3.0), None);
    assert!(nothing.chance_readable(3.0) < 1e-9);
    let short = forecast(&setup, &Span::to(30), &Streams::alone(1, 2)).unwrap();
    assert!(sugar.minus(&short).is_err(), "two lengths cannot be subtracted");
}

/// The vent minute is where a fortieth of the draws is full, and it comes sooner in smaller bags.
#[test]
fn vent_minutes_follow_their_definition() {
    let mut setup = bench::plain(40.0);
    let sandwich = of(&setup, 1, 1);
    let vent = sandwich.vent_by_min().unwrap();
    let full = sandwich.full_at_min().iter().flatten().filter(|&&m| m <= vent).count();
    assert_eq!(full, 512 / 40 + 1);
    setup.bag = StandardBag::Snack.bag();
    let snack = of(&setup, 1, 1);
    assert!(snack.vent_by_min().unwrap() < vent);
    assert!(snack.peak_fill() > VENT_FILL && snack.peak_fill() > sandwich.peak_fill());
    setup.yeast = None;
    let inert = of(&setup, 1, 1);
    assert_eq!(inert.vent_by_min(), None);
    assert!(inert.full_at_min().iter().all(Option::is_none));
}

/// A bag that reads past its last minute is followed on: what is full at 24 h must not depend on
/// where the readings end.
#[test]
fn the_time_of_filling_does_not_depend_on_the_last_reading() {
    let mut setup = bench::plain(30.0);
    setup.foods = vec![bench::grams("potato_flakes", 3.0)];
    setup.enzymes = vec![bench::served("glucoamylase-powder")];
    let streams = Streams::alone(5, 6);
    let span = |last_minute| Span { draws: 64, ..Span::to(last_minute) };
    let short = forecast(&setup, &span(20), &streams).unwrap();
    let long = forecast(&setup, &span(600), &streams).unwrap();
    for (a, b) in short.full_at_min().iter().zip(long.full_at_min()) {
        match (a, b) {
            (Some(a), Some(b)) => assert!((a / b - 1.0).abs() < 0.01, "{a} and {b} min"),
            (None, None) => {}
            other => panic!("{other:?}"),
        }
    }
    assert!(long.full_at_min().iter().flatten().count() > 5, "the case is an empty one");
}

/// The bound by which most bags are spared the long run is one: no bag ever holds more.
#[test]
fn no_bag_ever_holds_more_than_the_bound() {
    for (name, setup) in bench::every_food_and_enzyme() {
        let mixture = Mixture::new(&setup, &Parameters::median());
        let bound = mixture.most_gas_ml(mixture.start(), 0.0);
        sample(&mixture, 0.0, 1440, &tolerance(1e-4), |minute, y| {
            let gas = mixture.gas_with_air_ml(y);
            assert!(gas <= bound, "{name}, minute {minute}: {gas} over {bound} mL");
        })
        .unwrap();
    }
}

/// The tolerance of a forecast's draws is far below what a ruler shows: half a millilitre is a
/// thirtieth of a millimetre here.
#[test]
fn draws_are_worked_out_finely_enough() {
    for (name, mut setup) in bench::every_food_and_enzyme() {
        setup.wet_before_zero_min = 2.0;
        let mixture = Mixture::new(&setup, &Parameters::median());
        let mut fine = Vec::new();
        let all =
            |y: &State| [mixture.gas_with_air_ml(y), 1e-3 * 46.068 * y[ETHANOL], y[CELSIUS]];
        sample(&mixture, 2.0, 60, &tolerance(1e-9), |_, y| fine.push(all(y))).unwrap();
        sample(&mixture, 2.0, 60, &tolerance(1e-4), |minute, y| {
            let (ours, best) = (all(y), fine[minute as usize]);
            for (i, allowed) in [0.5, 1e-3, 0.02].into_iter().enumerate() {
                let off = (ours[i] - best[i]).abs();
                assert!(off < allowed, "{name}, minute {minute}: value {i} off by {off:e}");
            }
        })
        .unwrap();
    }
}

/// Ethanol by way of gas: intervals said to hold 95 % hold the ethanol of bags of other days, less
/// the 99 % sampling error of the bags asked and of the draws that answer; and they are worth
/// having.
#[test]
fn ethanol_from_gas_holds_what_it_says() {
    let mut flakes = bench::plain(40.0);
    flakes.foods = vec![bench::grams("potato_flakes", 2.5)];
    flakes.enzymes = vec![bench::served("glucoamylase-powder")];
    for setup in [bench::plain(40.0), bench::plain(25.0), flakes] {
        for minute in [15, 40] {
            let (mut held, mut asked, mut answering) = (0.0, 0.0, 0.0);
            for day in 1..=4 {
                let (known, other) = (of(&setup, day, 1), of(&setup, 99 + day, 98));
                let gases = other.gas_ml().minute(minute);
                for (gas, ethanol) in gases.iter().zip(other.ethanol_g().minute(minute)) {
                    let answer = known.ethanol_from_gas(*gas, minute).unwrap();
                    assert!(answer.low_grams <= answer.grams);
                    assert!(answer.grams <= answer.high_grams);
                    if (answer.low_grams..=answer.high_grams).contains(&ethanol) {
                        held += 1.0;
                    }
                }
                asked += gases.len() as f64;
                answering += gases.len() as f64 / 4.0;
                let typical = known.gas_ml().band().median[minute as usize];
                let answer = known.ethanol_from_gas(typical, minute).unwrap();
                let (_, blind) = mean_and_sd(&known.ethanol_g().minute(minute));
                let width = (answer.high_grams - answer.low_grams) / 3.92;
                assert!(width < 0.5 * blind, "gas tells nothing: {width} against {blind} g");
            }
            let error: f64 = 0.95 * 0.05 * (1.0 / asked + 1.0 / answering);
            let bar = 0.95 - 2.326 * error.sqrt();
            assert!(held / asked > bar, "minute {minute}: {} held, {bar} wanted", held / asked);
        }
    }
}

#[test]
fn ethanol_is_not_made_up_where_there_is_no_answer() {
    let known = of(&bench::plain(40.0), 1, 1);
    assert!(known.ethanol_from_gas(f64::NAN, 40).is_none());
    assert!(known.ethanol_from_gas(100.0, 41).is_none());
    let most = known.gas_ml().minute(40).into_iter().fold(0.0, f64::max);
    let beyond = known.ethanol_from_gas(1.5 * most, 40).unwrap();
    let at_most = known.ethanol_from_gas(most, 40).unwrap();
    assert!(beyond.grams > at_most.grams, "more gas, more ethanol");
}
