//! Single laws against single published or hand-worked numbers.

use crate::rows::agrees;
use barm_science::units::{Celsius, Pascal};
use barm_science::{
    bag, carbon_dioxide, card_height::CardCurve, constants, gas, permeation, ruler,
    stoichiometry, water,
};

const SEA: Pascal = Pascal(101_325.0);

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

/// Worked by hand from Kelvin temperatures and vapour pressures: 200 mL of wet gas at 40 °C
/// shrinks to 179 mL at 22 °C.
#[test]
fn a_cooling_bag_shrinks() {
    let mol = gas::dry_mol(200.0, Celsius(40.0), SEA);
    agrees("gas at 22 °C", gas::wet_volume_ml(mol, Celsius(22.0), SEA), 179.0, 0.01);
}

/// Span and Wagner (1996), Wagner and Pruß (2002) by CoolProp 8.0.0: litres of wet gas per mole
/// of carbon dioxide at 1 atm. The ideal gas of the bag model may be 0.7 % too large.
#[test]
fn the_ideal_wet_gas_is_nearly_the_real_one() {
    for (celsius, litres) in [(0.0, 22.3991), (25.0, 25.1282), (40.0, 27.5977), (60.0, 33.9197)]
    {
        let ours = gas::wet_volume_ml(1.0, Celsius(celsius), SEA) / 1e3;
        agrees(&format!("wet litres at {celsius} °C"), ours, litres, 0.007);
        let real = carbon_dioxide::wet_molar_volume_l(Celsius(celsius), SEA);
        agrees(&format!("real wet litres at {celsius} °C"), real, litres, 0.0005);
    }
}

/// Rumpf, Nicolaisen, Öcal, Maurer (1994), J. Solution Chem. 23, 431, point at 313.16 K in the
/// IUPAC-NIST Solubility Database, system 62_172: 0.0497 mol/kg of carbon dioxide under 0.467 MPa
/// (total) in 3.997 mol/kg of table salt.
#[test]
fn salt_drives_carbon_dioxide_out() {
    let t = Celsius(40.01);
    let own = 0.467e6 - water::vapour_pressure(t).0 * 0.87;
    let ours = carbon_dioxide::mol_per_kg_pa(t) * own * carbon_dioxide::salt_factor(3.997, t);
    agrees("carbon dioxide in brine", ours, 0.0497, 0.05);
    let half = carbon_dioxide::salt_factor(0.51, Celsius(25.0));
    assert!((half - 0.90).abs() < 0.015, "a quarter teaspoon of salt leaves {half}");
}

/// 8 % w/w sucrose solution weighs 1.0299 kg/L at 20 °C and 15 % weighs 1.0592 (sugar tables,
/// from memory).
#[test]
fn sugar_takes_up_room() {
    let eight = carbon_dioxide::sugar_factor(0.92 * 1.0299, Celsius(20.0));
    let fifteen = carbon_dioxide::sugar_factor(0.85 * 1.0592, Celsius(20.0));
    agrees("8 % sugar", eight, 0.95, 0.005);
    agrees("15 % sugar", fifteen, 0.90, 0.005);
}

/// Biosystems Engineering, table 11.2: 1200 to 3000 cm³·mil/(100 in²·day·atm), worked by hand for
/// one face of a sandwich bag of 38 to 45 µm film full of carbon dioxide at 25 °C: 11 to 32 mL/h,
/// measured at 0 °C and 1 atm as the table does.
#[test]
fn film_leaks_as_the_table_says() {
    let face = bag::face_m2(&bag::StandardBag::Sandwich.bag());
    let ml_per_h = |film_um: f64| {
        let mol_s = permeation::mol_per_m2_s(Celsius(25.0), SEA, film_um) * face;
        mol_s * 3600.0 * 1e3 * constants::STANDARD_MOLAR_VOLUME.value
    };
    let low = ml_per_h(45.0) * 1200.0 / permeation::PERMEABILITY.value;
    let high = ml_per_h(38.0) * 3000.0 / permeation::PERMEABILITY.value;
    agrees("least leak", low, 11.0, 0.05);
    agrees("most leak", high, 32.0, 0.05);
}

/// JCGM 100:2008, 4.3.7 and F.2.2.1 (clause numbers from memory): 0.289 mm a reading, 0.408 mm a
/// difference, 0.577 mm for a slant of ±1 mm, 0.71 mm together.
#[test]
fn a_ruler_leaves_seven_tenths_of_a_millimetre() {
    agrees("one reading", ruler::reading_sd_mm(1.0), 0.289, 0.002);
    agrees("difference", ruler::difference_sd_mm(1.0, 0.0), 0.408, 0.002);
    agrees("slant", ruler::difference_sd_mm(0.0, 1.0), 0.577, 0.002);
    agrees("together", ruler::usual_difference_sd_mm(), 0.707, 0.001);
    // Sixteenths of an inch.
    agrees("sixteenths", ruler::reading_sd_mm(25.4 / 16.0), 0.458, 0.002);
}

/// Worked by hand from the formula of the fitted family.
#[test]
fn the_family_of_curves_gives_the_worked_rows() {
    let sandwich = CardCurve {
        capacity_ml: 777.0,
        liquid_ml: 50.0,
        full_height_mm: 78.5,
        rest_height_mm: 2.1,
        exponent: 2.17,
        dead_share: 0.01,
    };
    let sheet = CardCurve { exponent: 2.35, dead_share: 0.0, ..sandwich };
    let quart = CardCurve {
        capacity_ml: 1315.0,
        full_height_mm: 93.6,
        rest_height_mm: 1.4,
        exponent: 2.13,
        dead_share: 0.064,
        ..sandwich
    };
    for (curve, gas_ml, rise_mm, slope) in [
        (sandwich, 150.0, 7.399, 18.15),
        (sandwich, 300.0, 16.337, 15.43),
        (sheet, 100.0, 4.663, 20.54),
        (quart, 300.0, 8.443, 24.54),
    ] {
        let ours = curve.rise_mm(gas_ml);
        assert!((ours - rise_mm).abs() < 6e-4, "{gas_ml} mL: rise {ours} against {rise_mm}");
        agrees("gas", curve.gas_ml(rise_mm), gas_ml, 1e-4);
        agrees("slope", curve.ml_per_mm(rise_mm), slope, 5e-4);
    }
}
