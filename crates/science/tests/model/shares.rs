//! Shares of control: against closed forms, sum rules and plain differences.

use crate::bench::{grams, plain, served, yeast};
use barm_science::model::shares::{Control, Thing, shares};
use barm_science::model::{Parameters, run};
use barm_science::setup::{Setup, YeastKind};
use barm_science::units::Celsius;
use barm_science::yeast::waking::{awake_at_once, wake_min};

fn of(setup: &Setup, last: u32) -> Vec<Control> {
    shares(setup, &Parameters::median(), last).unwrap()
}

/// Starch with its enzyme: the enzyme's supply is what the yeast lives on.
fn starchy() -> Setup {
    let mut setup = plain(38.0);
    setup.foods = vec![grams("potato_flakes", 3.0)];
    setup.enzymes = vec![served("glucoamylase-powder")];
    setup
}

fn gas_at(setup: &Setup, minute: u32) -> f64 {
    let course = run(setup, &Parameters::median(), minute).unwrap();
    course.moments.last().unwrap().gas_ml
}

/// Makes a thing of a bag more by a factor.
type Scale = fn(&mut Setup, f64);

/// ∂ ln gas / ∂ ln thing by runs of their own with half a per cent more and less.
fn by_runs(setup: &Setup, minute: u32, scale: impl Fn(&mut Setup, f64)) -> f64 {
    let with = |factor: f64| {
        let mut setup = setup.clone();
        scale(&mut setup, factor);
        libm::log(gas_at(&setup, minute))
    };
    let nudge: f64 = 5e-3;
    (with(1.0 + nudge) - with(1.0 - nudge)) / (libm::log1p(nudge) - libm::log1p(-nudge))
}

fn scale_yeast(setup: &mut Setup, factor: f64) {
    setup.yeast.iter_mut().for_each(|yeast| yeast.grams *= factor);
}

fn scale_food(setup: &mut Setup, factor: f64) {
    setup.foods.iter_mut().for_each(|food| food.grams *= factor);
}

fn scale_enzyme(setup: &mut Setup, factor: f64) {
    setup.enzymes.iter_mut().for_each(|enzyme| enzyme.units *= factor);
}

/// Water, air and bag: with yeast, food and enzymes all that there is of a bag.
fn scale_rest(setup: &mut Setup, factor: f64) {
    setup.water_ml *= factor;
    setup.trapped_air_ml *= factor;
    setup.bag.width_mm *= factor;
    for carrier in setup.enzymes.iter_mut().filter_map(|enzyme| enzyme.carrier.as_mut()) {
        carrier.grams *= factor;
    }
}

#[test]
fn they_are_what_runs_with_a_little_more_and_less_say() {
    for setup in [plain(38.0), starchy()] {
        let minute = 25;
        let gas = of(&setup, minute).last().unwrap().gas;
        let checks: [(Thing, Scale); 3] = [
            (Thing::Yeast, scale_yeast),
            (Thing::Food, scale_food),
            (Thing::Enzyme, scale_enzyme),
        ];
        for (thing, scale) in checks {
            let plain = by_runs(&setup, minute, scale);
            let share = gas.of(thing);
            assert!((share - plain).abs() < 2e-3, "{thing:?}: {share} beside {plain}");
        }
    }
}

/// Euler's theorem: a bag of everything twice as much makes twice the gas, so the shares of all of
/// it add up to 1 (with water as warm as the room, for a wider bag does not cool alike).
#[test]
fn the_shares_of_all_there_is_of_a_bag_add_up_to_one() {
    let mut setup = starchy();
    setup.room_celsius = 34.0;
    setup.water_celsius = 34.0;
    for minute in [10, 20, 40] {
        let gas = of(&setup, minute).last().unwrap().gas;
        let own = gas.of(Thing::Yeast) + gas.of(Thing::Food) + gas.of(Thing::Enzyme);
        let rest = by_runs(&setup, minute, scale_rest);
        assert!((own + rest - 1.0).abs() < 5e-3, "{own} and {rest} at {minute} min");
    }
}

/// With sugar to spare and an even temperature the pace follows the awake share
/// a = 1 − (1 − a₀) exp(−t/τ), so that its share is ∂ ln a / ∂ ln(1/τ).
#[test]
fn waking_is_as_its_closed_form() {
    let mut setup = plain(30.0);
    setup.room_celsius = 30.0;
    setup.yeast = Some(yeast(YeastKind::ActiveDry, 1.0));
    setup.foods = vec![grams("dextrose_monohydrate", 4.0)];
    let start = 1.0 - awake_at_once(YeastKind::ActiveDry);
    let tau = wake_min(Celsius(30.0), YeastKind::ActiveDry);
    for control in of(&setup, 30).into_iter().skip(2) {
        let x = f64::from(control.minute) / tau;
        let asleep = start * libm::exp(-x);
        let expected = x * asleep / (1.0 - asleep);
        let share = control.pace.of(Thing::Waking);
        // The yeast's own warmth, its reserves and the sugar used up bend it a little.
        assert!((share - expected).abs() < 0.03, "{share} for {expected}: {control:?}");
    }
}

#[test]
fn with_sugar_to_spare_the_yeast_decides_and_is_busy() {
    let last = *of(&plain(38.0), 30).last().unwrap();
    assert!((last.pace.of(Thing::Yeast) - 1.0).abs() < 0.1, "{last:?}");
    assert!(last.pace.of(Thing::Food).abs() < 0.3, "sugar also weighs on the yeast: {last:?}");
    assert!(last.busy > 0.95, "{last:?}");
}

#[test]
fn an_enzyme_that_is_too_slow_decides_and_the_yeast_starves() {
    let last = *of(&starchy(), 40).last().unwrap();
    let (enzyme, yeast) = (last.pace.of(Thing::Enzyme), last.pace.of(Thing::Yeast));
    assert!(enzyme > 0.6 && enzyme > 2.0 * yeast.max(0.0), "{last:?}");
    assert!(last.busy < 0.5, "{last:?}");
}

#[test]
fn food_that_is_gone_decides_over_the_gas() {
    let mut setup = plain(38.0);
    setup.foods = vec![grams("sugar_white", 0.4)];
    let last = *of(&setup, 60).last().unwrap();
    assert!(last.gas.of(Thing::Food) > 0.5, "{last:?}");
    assert!(last.gas.of(Thing::Yeast) < 0.4, "{last:?}");
    assert!(last.busy < 0.3, "{last:?}");
}

#[test]
fn the_first_of_it_stays_in_the_liquid_and_no_yeast_makes_nothing() {
    let all = of(&plain(38.0), 30);
    assert!(all.iter().any(|one| one.dissolved > 0.5), "{all:?}");
    assert!(all.windows(2).skip(3).all(|pair| pair[1].dissolved <= pair[0].dissolved + 1e-9));
    let bare = Setup { yeast: None, ..plain(38.0) };
    for control in of(&bare, 10) {
        assert!(control.pace.of(Thing::Yeast).abs() < 1e-12);
        assert!(control.busy.abs() < 1e-12);
    }
}
