//! Air and weights against tables and sums by hand.

use crate::rows::{agrees, each};
use barm_science::permeation::{air_in_mol_per_m2_s, mol_per_m2_s};
use barm_science::units::{Celsius, Pascal};
use barm_science::weighing::{
    Around, air_kg_per_m3, difference_sd_g, gas_that_left, mass_g, shown_g, swelling_ml,
};

const SEA: Pascal = Pascal(101_325.0);

#[test]
fn air_is_as_heavy_as_in_the_tables() {
    each(include_str!("../rows/air_density.csv"), |row| {
        let (t, humidity) = (Celsius(row.number("t_degC")), row.number("humidity"));
        let what = format!("air at {} °C, humidity {humidity}", t.0);
        agrees(&what, air_kg_per_m3(t, SEA, humidity), row.number("value"), 1e-3);
    });
}

/// A. Picard et al., Revised formula for the density of moist air (CIPM-2007), Metrologia 45, 149 (2008),
/// from memory: 1.1992 kg/m³ at 20 °C, 101 325 Pa and half saturated. By hand from the ideal gas, dry:
/// 0.028 964 4 · 100 000/(8.314 463 · 298.15) = 1.16841 and 0.993 15 kg/m³ at 25 °C and 100 and 85 kPa.
#[test]
fn air_is_as_heavy_as_the_weighers_say() {
    agrees("half moist", air_kg_per_m3(Celsius(20.0), SEA, 0.5), 1.1992, 1e-3);
    let dry = |kilopascal: f64| air_kg_per_m3(Celsius(25.0), Pascal(1e3 * kilopascal), 0.0);
    agrees("100 kPa", dry(100.0), 1.168_41, 1e-5);
    agrees("85 kPa", dry(85.0), 0.993_15, 1e-5);
}

/// By hand, at 25 °C, 101 325 Pa and dry air of 1.1839 kg/m³: 400 mL of air weigh 0.4736 g, over
/// 1 − 1.1839/8000 = 0.999 852; so a sealed bag that has swollen by 400 mL seems 0.4736 g lighter.
#[test]
fn a_sealed_bag_seems_lighter_as_it_swells() {
    let air = air_kg_per_m3(Celsius(25.0), SEA, 0.0);
    agrees("air", air, 1.1839, 2e-4);
    agrees("sealed bag", shown_g(0.0, 400.0, air), -0.4736, 5e-4);
    agrees("and back", swelling_ml(-0.4736, 0.0, air), 400.0, 5e-4);
    for (mass, volume) in [(-0.7, -400.0), (0.0, 400.0), (-0.05, 120.0), (0.0, 0.0)] {
        let shown = shown_g(mass, volume, air);
        assert!((mass_g(shown, volume, air) - mass).abs() < 1e-12);
        assert!((swelling_ml(shown, mass, air) - volume).abs() < 1e-9);
    }
}

/// By hand: 400 mL of gas saturated at 25 °C (steam 3169.9 Pa) and 101 325 Pa hold
/// 4e-4 · 98 155/(8.314 463 · 298.15) = 0.015 838 mol of carbon dioxide, 0.6970 g, and 0.000 511 mol of
/// steam, 0.0092 g; over 20 g/L of ethanol (4664 times as much in the water: four sources) 0.0017 g.
#[test]
fn a_vented_bag_has_lost_what_its_gas_weighed() {
    let around = Around {
        bag: Celsius(25.0),
        room: Celsius(25.0),
        pressure: SEA,
        humidity: 0.4,
        ethanol_g_per_l: 20.0,
        step_g: 0.1,
    };
    let air = around.air_kg_per_m3();
    let flat = gas_that_left(50.0, 50.0 + shown_g(-0.7079, 0.0, air), 0.0, &around);
    agrees("gas", flat.wet_ml, 400.0, 2e-3);
    agrees("carbon dioxide", flat.carbon_dioxide_mol, 0.015_838, 2e-3);
    // u = 0.1 g √(2/12) = 0.0408 g, over 1.770 g/L.
    agrees("balance", difference_sd_g(0.1), 0.040_82, 1e-3);
    agrees("in millilitres", flat.sd_ml, 23.07, 5e-3);
    // Weighed swollen and weighed flat, the balance shows only the difference to air.
    let shown = shown_g(-0.7079, -400.0, air);
    assert!((-0.25..-0.22).contains(&shown), "{shown}");
    let swollen = gas_that_left(50.0, 50.0 + shown, -400.0, &around);
    agrees("either way", swollen.wet_ml, flat.wet_ml, 1e-9);
}

/// By hand: (0.2095 + 0.7808/4)/5.6 = 0.0723 of what carbon dioxide of the same pressure does.
#[test]
fn air_comes_in_far_more_slowly_than_carbon_dioxide_leaves() {
    let t = Celsius(25.0);
    let share = air_in_mol_per_m2_s(t, SEA, Pascal(0.0), 42.0) / mol_per_m2_s(t, SEA, 42.0);
    agrees("air over carbon dioxide", share, 0.0723, 2e-3);
    let none = air_in_mol_per_m2_s(t, SEA, SEA, 42.0);
    assert!(none.abs() < 1e-30, "{none}");
}
