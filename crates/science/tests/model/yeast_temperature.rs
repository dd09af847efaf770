//! Yeast and temperature, against what brewers, bakers and classes have seen.

use crate::bench;
use crate::yeast::{held, made};
use barm_science::bag::StandardBag;
use barm_science::model::state::{AWAKE, ETHANOL};
use barm_science::model::{Mixture, Parameters};
use barm_science::ode::System;
use barm_science::setup::{Composition, Portion, YeastKind};
use barm_science::units::Celsius;
use barm_science::yeast::loss::{SLOW_LOSS, slow_loss_per_min};
use barm_science::yeast::temperature::{TABLE, response};
use barm_science::yeast::waking::wake_min;

/// White and Munns (1951), J. Inst. Brew. 57, 280: fermentation rises steadily to 40 °C and falls
/// steeply after, 20 to 43 °C studied; Pyler (1988): dough rises to 40.5 °C.
#[test]
fn the_first_half_hour_is_fastest_near_40_degrees() {
    let setup = bench::plain(30.0);
    let mut best = (0.0, 0.0);
    let mut before = 0.0;
    for half in 40..=90 {
        let celsius = 0.5 * f64::from(half);
        let gas = made(&held(&setup, celsius, 30), 30);
        if celsius <= 38.0 {
            assert!(gas > before, "no steady rise at {celsius} °C");
        }
        if gas > best.1 {
            best = (celsius, gas);
        }
        before = gas;
    }
    assert!((39.0..=41.0).contains(&best.0), "fastest at {} °C", best.0);
    let hot = made(&held(&setup, 45.0, 30), 30);
    assert!(hot < 0.8 * best.1, "no steep fall: {hot} at 45 °C against {}", best.1);
}

/// Undergraduate class data (J. Introd. Biol. Investig.): gas roughly doubles from 15 to 30 °C in
/// tubes; low precision, so sign and size only. The rate itself may do more: Slator's quotients
/// (from memory) make it 3.4 to 4.5.
#[test]
fn warmth_speeds_yeast_by_about_what_classes_see() {
    let ratio = response(Celsius(30.0)) / response(Celsius(15.0));
    assert!((1.5..4.6).contains(&ratio), "30 over 15 °C: {ratio}");
}

/// Abstract on distiller's malt wort (not seen whole): the optimum is 40 °C over the first half
/// hour and 35 °C over two hours; ours within 3 K of it, with sugar to spare all the time.
#[test]
fn over_two_hours_a_cooler_bag_is_best() {
    let mut setup = bench::plain(30.0);
    setup.bag = StandardBag::Gallon.bag();
    setup.water_ml = 150.0;
    setup.foods = vec![bench::grams("sugar_white", 12.0)];
    let mut best = (0.0, 0.0);
    let mut before = 0.0;
    for half in 60..=84 {
        let celsius = 0.5 * f64::from(half);
        let gas = made(&held(&setup, celsius, 120), 120);
        assert!(
            gas < 120.0,
            "{gas} mmol of the 133 that 12 g can give: sugar was not to spare"
        );
        assert!(celsius > 36.0 || gas > before, "no more at {celsius} °C");
        if gas > best.1 {
            best = (celsius, gas);
        }
        before = gas;
    }
    assert!((32.0..=38.0).contains(&best.0), "most in two hours at {} °C", best.0);
}

/// The law of Schoolfield, Sharpe and Magnuson (1981) lies on the published blend of runs of half
/// an hour, once the loss of those runs is taken out: its mean over the half hour, weighted by what
/// is awake, worked out here by sums.
#[test]
fn the_response_is_the_blend_of_published_runs() {
    let mean_left = |celsius: f64| {
        let waking = wake_min(Celsius(celsius), YeastKind::ActiveDry);
        let loss = slow_loss_per_min(Celsius(celsius), SLOW_LOSS.value);
        let (mut left, mut all) = (0.0, 0.0);
        for step in 0..3000 {
            let minute = 0.01 * (f64::from(step) + 0.5);
            let awake = 1.0 - (-minute / waking).exp();
            all += awake;
            left += awake * (-loss * minute).exp();
        }
        left / all
    };
    let at_30 = mean_left(30.0);
    for (celsius, published) in TABLE {
        let expected = published.value * at_30 / mean_left(celsius);
        let off = (response(Celsius(celsius)) - expected).abs();
        let most = if (10.0..=48.0).contains(&celsius) { 0.02 } else { 0.04 };
        assert!(off < most, "{celsius} °C: {off} off {expected}");
    }
    assert!((response(Celsius(30.0)) - 1.0).abs() < 1e-15);
}

/// Quotients for ten kelvin between 20 and 30 °C: 1.6 by the 35 kJ/mol of Phisalaphong et al.
/// (2006), 2.25 by Slator (1906, from memory), 2.8 as classes see it from 22 to 37 °C.
#[test]
fn ten_kelvin_do_what_was_published() {
    let quotient = response(Celsius(30.0)) / response(Celsius(20.0));
    assert!((1.6..=2.8).contains(&quotient), "{quotient}");
}

/// Hours to the same rise by temperature and yeast, from a public table of dough (hours rounded;
/// growth included, so that it is an upper bound on what one cell does).
#[test]
fn no_steeper_than_dough() {
    let rows: Vec<[f64; 3]> = include_str!("../rows/dough_rise.csv")
        .lines()
        .skip(1)
        .map(|line| {
            let mut numbers = line.split(',').map(|number| number.parse().unwrap());
            std::array::from_fn(|_| numbers.next().unwrap())
        })
        .collect();
    let mut compared = 0;
    for [low, yeast, slow] in &rows {
        let warmer = |row: &&[f64; 3]| row[0] > *low && (row[1] - yeast).abs() < 1e-9;
        for [high, _, fast] in rows.iter().filter(warmer) {
            let most = (slow + 0.5) / (fast - 0.5);
            let ours = response(Celsius(*high)) / response(Celsius(*low));
            assert!(ours < most, "{low} to {high} °C: {ours} times, dough at most {most}");
            compared += 1;
        }
    }
    assert!(compared > 60, "only {compared} pairs");
}

/// Rate of ethanol when all yeast is awake (mmol/min), at 30 °C with glucose at so many percent.
fn first_rate(glucose_percent: f64, yeast_g: f64) -> f64 {
    let mut setup = bench::plain(30.0);
    setup.yeast = Some(bench::yeast(YeastKind::Instant, yeast_g));
    let composition = Composition { glucose: 100.0, ..Composition::NONE };
    let grams = 0.01 * glucose_percent * setup.water_ml;
    setup.foods = vec![Portion { composition, grams, ..Portion::default() }];
    let mixture = Mixture::new(&setup, &Parameters::median()).held_at(30.0);
    let mut start = *mixture.start();
    start[AWAKE] = 1.0;
    mixture.rates(0.0, &start)[ETHANOL]
}

/// Hopkins and Roberts (1935), Biochem. J. 29, part CXI: the rate is flat from 0.5 to 10 % glucose
/// and goes with the amount of yeast.
#[test]
fn the_first_rate_is_flat_in_sugar_and_goes_with_yeast() {
    let rates = [0.5, 1.0, 2.0, 4.0, 7.0, 10.0].map(|percent| first_rate(percent, 1.0));
    let most = rates.into_iter().fold(0.0, f64::max);
    let least = rates.into_iter().fold(f64::INFINITY, f64::min);
    assert!(most / least < 1.10, "sugar makes it {least} to {most} mmol/min");
    for yeast_g in [0.5, 2.0, 4.0] {
        let ratio = first_rate(4.0, yeast_g) / (yeast_g * first_rate(4.0, 1.0));
        assert!((0.98..1.02).contains(&ratio), "{yeast_g} g of yeast: {ratio} of its share");
    }
}

/// By hand from 177.7 kJ/mol (Phisalaphong et al. 2006): 21372 K · (1/313.15 − 1/318.15) is 1.0726,
/// whose exponential is 2.923.
#[test]
fn the_slow_loss_rises_as_its_energy_says() {
    let loss = |celsius: f64| slow_loss_per_min(Celsius(celsius), 0.006);
    assert!((loss(40.0) - 0.006).abs() < 1e-12);
    assert!((loss(45.0) / loss(40.0) - 2.923).abs() < 1e-3, "{}", loss(45.0) / loss(40.0));
}
