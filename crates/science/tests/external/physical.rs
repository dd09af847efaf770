//! Laws against tables worked with reference programs.

use crate::rows::{agrees, each};
use barm_science::units::{Celsius, Pascal};
use barm_science::{air, carbon_dioxide, constants, gas, stoichiometry, water};

/// Each formula keeps its documented accuracy against IAPWS-95 and IAPWS-IF97.
#[test]
fn water_agrees_with_the_steam_tables() {
    each(include_str!("../rows/water.csv"), |row| {
        let t = Celsius(row.number("t_degC"));
        let what = format!("{} at {} °C", row.text("quantity"), t.0);
        let theirs = row.number("value");
        match row.text("quantity") {
            "p_sat" => {
                let within = if row.text("source").contains("IAPWS97") { 1e-7 } else { 1e-4 };
                agrees(&what, water::vapour_pressure(t).0, theirs, within);
            }
            "density_101325" => {
                agrees(&what, water::density_kg_per_m3(t), theirs, 3e-5);
            }
            "cp_101325" => {
                agrees(&what, water::heat_capacity_j_per_kg_k(t), theirs, 5e-4);
            }
            other => panic!("unknown quantity {other}"),
        }
    });
}

/// IAPWS G7-04 is another fit to much the same measurements; it lies 1 to 3 % below Carroll's.
#[test]
fn henry_constants_of_two_schools_agree() {
    each(include_str!("../rows/henry.csv"), |row| {
        let t = Celsius(row.number("t_degC"));
        let what = format!("{} at {} °C", row.text("quantity"), t.0);
        let ours = if row.text("quantity") == "kH_CO2" {
            1e3 / (stoichiometry::WATER.value * carbon_dioxide::mol_per_kg_pa(t))
        } else {
            carbon_dioxide::mol_per_l_pa(t) * constants::ATMOSPHERE.value
        };
        agrees(&what, ours, row.number("value"), 0.04);
    });
}

#[test]
fn carbon_dioxide_gas_agrees_with_span_and_wagner() {
    each(include_str!("../rows/co2.csv"), |row| {
        let t = Celsius(row.number("t_degC"));
        let what = format!("{} at {} °C", row.text("quantity"), t.0);
        if row.text("quantity") == "B_second_virial" {
            let ours = carbon_dioxide::second_virial_m3_per_mol(t);
            agrees(&what, ours, row.number("value"), 0.01);
        } else {
            let ours = carbon_dioxide::molar_volume_l(t, Pascal(row.number("p_Pa"))) / 1e3;
            agrees(&what, ours, row.number("value"), 1e-4);
        }
    });
}

/// Share of steam in saturated air. Real moist air holds 0.4 to 0.5 % more than Dalton's law
/// says (ASHRAE's enhancement factor), which the bag leaves out.
#[test]
fn wet_gas_holds_as_much_steam_as_moist_air() {
    each(include_str!("../rows/moist_air.csv"), |row| {
        let t = Celsius(row.number("t_degC"));
        let sea = Pascal(constants::ATMOSPHERE.value);
        let ours = 1.0 - gas::dry_pressure(t, sea).0 / sea.0;
        agrees(&format!("steam at {} °C", t.0), ours, row.number("value"), 0.006);
    });
}

#[test]
fn air_thins_as_in_the_standard_atmosphere() {
    each(include_str!("../rows/isa.csv"), |row| {
        let metres = row.number("altitude_m");
        let ours = air::pressure_at(metres).expect("inside the lowest layer").0;
        agrees(&format!("pressure at {metres} m"), ours, row.number("value"), 1e-9);
    });
    for metres in [-501.0, 11_001.0, f64::NAN, f64::INFINITY] {
        assert!(air::pressure_at(metres).is_err(), "{metres} m was taken");
    }
}

#[test]
fn molar_masses_are_those_of_the_tables() {
    each(include_str!("../rows/molar_mass.csv"), |row| {
        let ours = match row.text("formula") {
            "C12H22O11" => stoichiometry::DISACCHARIDE,
            "CO2" => stoichiometry::CARBON_DIOXIDE,
            "C2H6O" => stoichiometry::ETHANOL,
            "H2O" => stoichiometry::WATER,
            "C6H10O5" => stoichiometry::GLUCAN_UNIT,
            "C3H8O3" => stoichiometry::GLYCEROL,
            "NaHCO3" => stoichiometry::BICARBONATE,
            // Not part of any bag.
            _ => return,
        };
        agrees(ours.name, ours.value, row.number("value"), 2e-6);
    });
}

/// One sugar in, two ethanol and two carbon dioxide out; one glucan unit and a water in, one
/// hexose out: to rounding, since one decides the other.
#[test]
fn reactions_balance() {
    let hexose = stoichiometry::HEXOSE.value;
    let made = 2.0 * (stoichiometry::ETHANOL.value + stoichiometry::CARBON_DIOXIDE.value);
    agrees("fermentation", made, hexose, 1e-14);
    let split = stoichiometry::GLUCAN_UNIT.value + stoichiometry::WATER.value;
    agrees("splitting starch", split, hexose, 1e-14);
    let pair = stoichiometry::DISACCHARIDE.value + stoichiometry::WATER.value;
    agrees("splitting sucrose", pair, 2.0 * hexose, 1e-14);
}
