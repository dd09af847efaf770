//! What must never change while a bag works.

use super::mixture::Mixture;
use super::rates::CARBON_PER_HEXOSE;
use super::state::{
    BYPRODUCT, CARBOHYDRATES, COOKED, DEXTRIN, DISSOLVED, ETHANOL, FRUCTOSE, GALACTOSE,
    GALACTOSIDES, GAS, GLUCOSE, MALTOTRIOSE, PERMEATED, RAW, State, WATER_USED,
};
use crate::stoichiometry::{
    CARBON_DIOXIDE, CO2_PER_HEXOSE, DISACCHARIDE, ETHANOL as ETHANOL_MASS, GLUCAN_UNIT, HEXOSE,
    TRISACCHARIDE, WATER,
};

/// Carbon in the bag and what went through its film, in mmol.
///
/// ```text
/// C = 6 Σ hexose units + dissolved + gas + permeated + 2 ethanol + by-products
/// ```
pub fn carbon(y: &State) -> f64 {
    let bound: f64 = CARBOHYDRATES.iter().map(|&i| y[i]).sum();
    CARBON_PER_HEXOSE * bound
        + y[DISSOLVED]
        + y[GAS]
        + y[PERMEATED]
        + 2.0 * y[ETHANOL]
        + y[BYPRODUCT]
}

/// Carbon dioxide in all its places, in mmol: dissolved, gas, permeated.
pub fn carbon_dioxide(y: &State) -> f64 {
    y[DISSOLVED] + y[GAS] + y[PERMEATED]
}

/// Mass of carbohydrate, in milligrams, each form with its own molar mass.
pub fn carbohydrate_mg(y: &State) -> f64 {
    CARBOHYDRATES
        .iter()
        .map(|&i| {
            let molar = match i {
                RAW | COOKED | DEXTRIN => GLUCAN_UNIT.value,
                GALACTOSE | GLUCOSE | FRUCTOSE => HEXOSE.value,
                MALTOTRIOSE | GALACTOSIDES => TRISACCHARIDE.value / 3.0,
                _ => 0.5 * DISACCHARIDE.value,
            };
            molar * y[i]
        })
        .sum()
}

impl Mixture {
    /// Mass of carbohydrate and of everything made from it, less the water that splitting took
    /// up, in milligrams. By-products weigh what the yields leave over of a hexose.
    pub fn mass_mg(&self, y: &State) -> f64 {
        let p = &self.parameters;
        let (co2, ethanol) =
            (CO2_PER_HEXOSE.value * p.co2_yield, CO2_PER_HEXOSE.value * p.ethanol_yield);
        let carbon_left = CARBON_PER_HEXOSE - co2 - 2.0 * ethanol;
        let mass_left =
            HEXOSE.value - co2 * CARBON_DIOXIDE.value - ethanol * ETHANOL_MASS.value;
        carbohydrate_mg(y) - WATER.value * y[WATER_USED]
            + CARBON_DIOXIDE.value * carbon_dioxide(y)
            + ETHANOL_MASS.value * y[ETHANOL]
            + mass_left / carbon_left * y[BYPRODUCT]
    }
}
