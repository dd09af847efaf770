//! Warmth: what a lying bag loses, and what mixing, fermenting and leaving gas do to it.

use crate::bench;
use barm_science::bag::StandardBag;
use barm_science::cooling::{Cooling, Inside, steam_conductivity, upper_face, wet_share};
use barm_science::model::state::{CELSIUS, ETHANOL, GAS, PERMEATED};
use barm_science::model::{Parameters, nominal, run};
use barm_science::ode::System;
use barm_science::setup::{Bag, Lying, Setup, YeastKind};
use barm_science::units::Celsius;
use barm_science::water::vapour_pressure;

/// 50 mL of water hold 209 J/K.
const FIFTY_ML: (f64, f64) = (50.0, 209.0);

fn inside(celsius: f64, gas_ml: f64) -> Inside {
    Inside { celsius, gas_ml, steam_pa: vapour_pressure(Celsius(celsius)).0 }
}

fn time_constant(bag: &Bag, lying: Lying, gas_ml: f64) -> f64 {
    Cooling::new(bag, lying, 22.0, FIFTY_ML, 1.0, 1.0).time_constant_min(&inside(35.0, gas_ml))
}

/// Derived outside from 209 J/K, 8 to 12 W/(m²·K) and faces of which one or both are wet: a sandwich
/// bag 8 to 20 min on the bench, quart 4 to 13, gallon 2 to 6 (here up to 7: its pool covers half as
/// much again of the floor that was reckoned with); 30 to 60 min between towels (from memory).
#[test]
fn fifty_millilitres_cool_within_minutes() {
    for (bag, low, high) in [
        (StandardBag::Sandwich, 8.0, 20.0),
        (StandardBag::Quart, 4.0, 13.0),
        (StandardBag::Gallon, 2.0, 7.0),
    ] {
        for gas_ml in [10.0, 100.0, 400.0] {
            let minutes = time_constant(&bag.bag(), Lying::Bench, gas_ml);
            assert!((low..high).contains(&minutes), "{}: {minutes} min", bag.name());
            let towel = time_constant(&bag.bag(), Lying::Towel, gas_ml);
            assert!((towel / minutes - 3.5).abs() < 1e-9, "{}: {towel} min", bag.name());
        }
    }
    let minutes = time_constant(&StandardBag::Sandwich.bag(), Lying::Towel, 100.0);
    assert!((30.0..60.0).contains(&minutes), "{minutes} min between towels");
    // A fifth full, liquid and film: the middle of 8 to 20 by ratio.
    let film = 2.0 * 0.165 * 0.149 * 42e-6 * 920.0 * 2300.0;
    let sandwich = StandardBag::Sandwich.bag();
    let whole = Cooling::new(&sandwich, Lying::Bench, 22.0, (50.0, 209.0 + film), 1.0, 1.0);
    let minutes = whole.time_constant_min(&inside(35.0, 105.0));
    assert!((minutes / f64::sqrt(8.0 * 20.0) - 1.0).abs() < 0.02, "{minutes} min");
}

/// Column `wet_area_cm2` of an own simulation of lying bags under a card, 50 mL, over the area of the
/// face, at five fills of a sandwich bag (777 mL) and three of a quart bag (1295 mL).
#[test]
fn the_wet_floor_shrinks_as_a_bag_fills() {
    for (fill, share) in [
        (0.16, 0.89),
        (0.33, 0.89),
        (0.54, 0.82),
        (0.66, 0.76),
        (0.88, 0.58),
        (0.25, 0.89),
        (0.55, 0.78),
        (0.79, 0.64),
    ] {
        let ours = wet_share(fill);
        assert!((ours - share).abs() < 0.05, "fill {fill}: {ours} against {share}");
    }
}

/// Worked by hand. Steam at 35 °C: 5.63 kPa (IAPWS), 43.6 kJ/mol and 0.2 cm²/s make 0.0995 W/(m·K); at
/// 20 °C (2.34 kPa) 0.0482. Gas 10 mm deep then lets 5.5 + 0.1175 (1/0.010 + 1/0.012) = 27.0 W/(m²·K)
/// through, with 8 beyond it 6.17.
#[test]
fn steam_carries_more_heat_across_than_the_gas() {
    for (celsius, pascal, k) in [(35.0, 5629.0, 0.0995), (20.0, 2339.0, 0.0482)] {
        let ours = steam_conductivity(Celsius(celsius), pascal);
        assert!((ours / k - 1.0).abs() < 0.01, "{celsius} °C: {ours} against {k}");
    }
    assert!((upper_face(10.0, 0.1175) - 6.17).abs() < 0.02);
    assert!((upper_face(0.0, 0.1175) - 8.0).abs() < 1e-12, "the film lies on the liquid");
}

#[test]
fn a_fuller_bag_cools_slower_and_a_larger_one_faster() {
    let mut before = 0.0;
    for gas_ml in [0.0, 5.0, 50.0, 150.0, 300.0, 500.0, 650.0] {
        let minutes = time_constant(&StandardBag::Sandwich.bag(), Lying::Bench, gas_ml);
        assert!(minutes > before, "{gas_ml} mL: {minutes} min");
        before = minutes;
    }
    let mut before = f64::INFINITY;
    for bag in StandardBag::ALL {
        let minutes = time_constant(&bag.bag(), Lying::Bench, 100.0);
        assert!(minutes < before, "{}: {minutes} min", bag.name());
        before = minutes;
    }
}

/// 100 W/(m²·K) from below and some 8 above: the bag follows the tray, which itself cools with 90 min
/// from 40 °C in a room of 22 °C, and stays a kelvin or two under it.
#[test]
fn a_bag_in_a_tray_follows_the_tray() {
    let mut setup = bench::plain(22.0);
    setup.yeast = None;
    setup.lying = Lying::WarmTray { celsius: 40.0 };
    let moments = nominal(&setup, 90).unwrap().moments;
    for minute in [20, 60, 90] {
        let tray = 22.0 + 18.0 * (-f64::from(minute) / 90.0_f64).exp();
        let under = tray - moments[minute as usize].celsius;
        assert!((0.0..2.0).contains(&under), "minute {minute}: {under} K under the tray");
    }
}

/// Without any loss, what fermenting gives and leaving gas takes is what warms the bag. The hexose is
/// counted by the ethanol made of it.
#[test]
fn heat_is_neither_lost_nor_made() {
    let kept = Parameters { heat_loss: 0.0, ..Parameters::median() };
    for celsius in [30.0, 38.0] {
        let mut setup = bench::plain(celsius);
        setup.yeast = Some(bench::yeast(YeastKind::Instant, 3.1));
        let j_per_k = fixed(&setup, "j_per_k");
        let moments = run(&setup, &kept, 60).unwrap().moments;
        let (first, last) = (&moments[0].state, &moments[60].state);
        let since = |place: usize| last[place] - first[place];
        let hexose = since(ETHANOL) / (2.0 * kept.ethanol_yield);
        let own = 142.0 * hexose - 20.3 * (since(GAS) + since(PERMEATED));
        let off = j_per_k * since(CELSIUS) / own - 1.0;
        assert!(own > 300.0 && off.abs() < 1e-6, "{own} J, off by {off:e}");
    }
}

/// Glucose to ethanol and carbon dioxide gas gives 101 kJ/mol by heats of formation (-1262.2, -288.3,
/// -393.5 kJ/mol, from memory), and about 100 was measured: 40 mmol of gas from full yield would warm
/// 209 J/K by 9.7 K.
#[test]
fn fermenting_to_gas_gives_a_hundred_kilojoules() {
    let p = Parameters::median();
    let as_gas = p.own_heat - 2.0 * 20.3;
    assert!((as_gas - (2.0 * (288.3 + 393.5) - 1262.2)).abs() < 1.0, "{as_gas} kJ/mol");
    assert!((20.0 * as_gas / 209.0 - 9.7).abs() < 0.1);
}

fn fixed(setup: &Setup, name: &str) -> f64 {
    let bag = barm_science::model::Mixture::new(setup, &Parameters::median());
    let found = bag.fixed().into_iter().find(|(own, _)| *own == name);
    found.map(|(_, value)| value).expect("a number of the bag")
}

/// Handbook heats of solution, from memory: sucrose 5.4, glucose monohydrate 20.9, sodium chloride 3.9,
/// sodium hydrogen carbonate 18.7 kJ/mol; all in crystals. Syrup is dissolved already.
#[test]
fn crystals_cool_the_water_that_dissolves_them() {
    for (id, grams, joules) in [
        ("sugar_white", 4.2, 4.2 / 342.3 * 5400.0),
        ("dextrose_monohydrate", 4.2, 4.2 / 198.2 * 20_900.0),
        ("salt", 3.0, 3.0 / 58.44 * 3900.0),
        ("baking_soda", 1.0, 1.0 / 84.01 * 18_700.0),
        ("maple_syrup", 5.0, 0.0),
        ("honey", 5.0, 0.0),
        ("apple_juice", 20.0, 0.0),
    ] {
        let mut setup = bench::plain(22.0);
        setup.yeast = None;
        setup.foods = vec![bench::grams(id, grams)];
        let j_per_k = fixed(&setup, "j_per_k");
        let cooled = 22.0 - nominal(&setup, 1).unwrap().moments[0].celsius;
        let off = cooled * j_per_k - joules;
        assert!(off.abs() < 0.05 * joules + 0.01, "{id}: {cooled} K, off by {off} J");
    }
}

/// The rate of change at the start is what the law says, worked out once more by hand.
#[test]
fn the_rate_of_cooling_is_that_of_both_faces() {
    let mut setup = bench::plain(40.0);
    setup.yeast = None;
    setup.foods.clear();
    setup.trapped_air_ml = 100.0;
    let bag = barm_science::model::Mixture::new(&setup, &Parameters::median());
    let y = bag.start();
    let kelvin = y[CELSIUS] + 273.15;
    let steam = vapour_pressure(Celsius(y[CELSIUS])).0;
    // 100 mL of air of the room, wet and warmed.
    let gas_ml = 100.0 * kelvin / 295.15 * 101_325.0 / (101_325.0 - steam);
    let face = 0.165 * 0.149;
    let k = 0.018 + steam_conductivity(Celsius(y[CELSIUS]), steam);
    let upper = 1.0 / (1.0 / 8.0 + 1.0 / (5.5 + k * (1e6 * face / gas_ml + 1000.0 / 12.0)));
    let fill =
        (gas_ml + bag.contents_ml()) / barm_science::bag::simulated_capacity_ml(&setup.bag);
    let watts = face * (upper + 5.5 * (0.9 - 0.43 * fill * fill)) * (y[CELSIUS] - 22.0);
    let off = bag.rates(0.0, y)[CELSIUS] * fixed(&setup, "j_per_k") / (-60.0 * watts) - 1.0;
    assert!(off.abs() < 1e-9, "off by {off:e}");
}
