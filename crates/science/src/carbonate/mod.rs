//! How acid a bag's liquid is, and how much carbon dioxide hides in it as bicarbonate and carbonate.
//!
//! Near pH 5, where a yeast bag with sugar sits, there is next to none. Baking soda turns the
//! liquid into a sponge that takes up forty times as much, and an acid wrings it out. Explained in
//! `docs/science/liquid.md`.

mod acids;
mod activity;
mod balance;
mod constants;

pub use acids::{
    ACETIC_PKA, Acid, CITRIC_PKA, LACTIC_PKA, MALIC_PKA, TITRATION_END, cations_and_total,
};
pub use activity::{DEBYE_HUECKEL, MOST_IONIC, activity_log10};
pub use balance::{
    BUFFER_OF_FOOD, BUFFER_OF_YEAST, FOOD_BUFFER_PH, Liquid, Solutes, Speciation, YEAST_PH,
};
pub use constants::{carbon_over_carbon_dioxide, pk1, pk2, pkw};

use crate::exponential::exp;
use crate::fact::Fact;
use constants::{FIRST, SECOND, WATER};

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    FIRST[0],
    FIRST[1],
    FIRST[2],
    FIRST[3],
    FIRST[4],
    SECOND[0],
    SECOND[1],
    SECOND[2],
    SECOND[3],
    SECOND[4],
    WATER[0],
    WATER[1],
    WATER[2],
    ACETIC_PKA,
    MALIC_PKA[0],
    MALIC_PKA[1],
    CITRIC_PKA[0],
    CITRIC_PKA[1],
    CITRIC_PKA[2],
    LACTIC_PKA,
    TITRATION_END,
    DEBYE_HUECKEL,
    MOST_IONIC,
    BUFFER_OF_YEAST,
    YEAST_PH,
    BUFFER_OF_FOOD,
    FOOD_BUFFER_PH,
];

fn power_of_ten(exponent: f64) -> f64 {
    exp(std::f64::consts::LN_10 * exponent)
}
