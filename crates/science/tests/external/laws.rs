//! Single laws against published numbers.

use barm_science::units::{Celsius, Pascal};
use barm_science::{bag, carbon_dioxide, gas, stoichiometry, water};

const SEA: Pascal = Pascal(101_325.0);

/// Fails unless `ours` lies within the relative tolerance of `theirs`.
#[track_caller]
fn agrees(what: &str, ours: f64, theirs: f64, within: f64) {
    let off = ours / theirs - 1.0;
    assert!(off.abs() <= within, "{what}: {ours} against {theirs}, off by {off:+.5}");
}

/// Carroll, Slupsky, Mather (1991), J. Phys. Chem. Ref. Data 20, 1201, worked outside this
/// repository into mol/(L·atm).
#[test]
fn carbon_dioxide_dissolves_as_carroll_says() {
    for (celsius, per_l_atm) in
        [(10.0, 0.05375), (25.0, 0.03462), (40.0, 0.02417), (60.0, 0.01667)]
    {
        let ours = carbon_dioxide::mol_per_l_pa(Celsius(celsius)) * SEA.0;
        agrees(&format!("solubility at {celsius} °C"), ours, per_l_atm, 0.005);
    }
    agrees("Ostwald coefficient at 20 °C", carbon_dioxide::ostwald(Celsius(20.0)), 0.955, 0.01);
    let wet = gas::dry_pressure(Celsius(25.0), SEA).0;
    let in_50_ml = carbon_dioxide::mol_per_l_pa(Celsius(25.0)) * wet * 0.050 * 1e3;
    agrees("mmol in 50 mL under wet gas at 25 °C", in_50_ml, 1.677, 0.01);
}

/// IAPWS-95 by CoolProp 8.0.0.
#[test]
fn steam_presses_as_the_steam_tables_say() {
    for (celsius, kilopascal) in [(25.0, 3.170), (40.0, 7.385), (60.0, 19.946)] {
        let ours = water::vapour_pressure(Celsius(celsius)).0 / 1e3;
        agrees(&format!("vapour pressure at {celsius} °C"), ours, kilopascal, 0.002);
    }
}

/// Span and Wagner (1996) by CoolProp 8.0.0.
#[test]
fn carbon_dioxide_takes_the_room_of_a_real_gas() {
    let dry = carbon_dioxide::molar_volume_l(Celsius(25.0), SEA);
    agrees("dry molar volume at 25 °C", dry, 24.342, 0.001);
    let wet = carbon_dioxide::wet_molar_volume_l(Celsius(35.0), SEA);
    agrees("wet molar volume at 35 °C", wet, 26.652, 0.002);
}

/// Reaction equation and molar masses (chemicals 1.5.2).
#[test]
fn a_teaspoon_of_sugar_gives_well_over_a_litre() {
    let hexose = 4.2 * stoichiometry::HEXOSE_PER_DISACCHARIDE;
    let mol = hexose * stoichiometry::CO2_MOL_PER_G_HEXOSE;
    agrees("mmol from 4.2 g sucrose", 1e3 * mol, 49.1, 0.005);
    let dry_ml = 1e3 * mol * carbon_dioxide::molar_volume_l(Celsius(25.0), SEA);
    agrees("dry mL at 25 °C", dry_ml, 1195.0, 0.005);
    assert!((stoichiometry::HEXOSE_PER_STARCH - 1.1111).abs() < 5e-5);
}

/// Robin (2004), Mathematics Today, June, 104-107.
#[test]
fn a_sandwich_bag_holds_robins_volume() {
    let sandwich = bag::StandardBag::Sandwich.bag();
    agrees("sandwich bag", bag::robin_capacity_ml(&sandwich), 733.0, 0.005);
}
