//! Grams and milliliters of what a recipe names.

use super::{BenchError, Ingredient, scatter, tools};
use crate::amount::{Amount, AmountKind};
use barm_science::setup::YeastKind;

pub use crate::amount::TEASPOON_ML;

/// Mass (g) of that amount of a food, and its relative scatter from bag to bag (1).
///
/// # Errors
/// [`BenchError`] under `key` if the amount is not one that the food can be measured by.
pub fn food_grams(
    food: &Ingredient,
    amount: &Amount,
    key: &'static str,
) -> Result<(f64, f64), BenchError> {
    let per_ml = food.grams_per_tsp.map(|grams| grams / TEASPOON_ML);
    let each = match amount.kind {
        AmountKind::Mass => Some(1.0),
        AmountKind::Volume | AmountKind::Spoon => per_ml,
        AmountKind::Drops => per_ml.map(|per_ml| tools::DROP_ML.value * per_ml),
        AmountKind::Pieces => food.grams_per_piece,
    };
    let grams = each.map(|each| amount.value * each).ok_or_else(|| BenchError {
        key,
        problem: format!("“{}” says nothing about the mass of {}", amount.written, food.name),
        fix: "weigh it and write grams, such as \"2 g\"".into(),
    })?;
    Ok((grams, scatter(amount.kind)))
}

/// Mass of yeast (g) and its relative scatter from bag to bag (1).
///
/// # Errors
/// [`BenchError`] if yeast cannot be measured that way.
pub fn yeast_grams(kind: YeastKind, amount: &Amount) -> Result<(f64, f64), BenchError> {
    let dry = kind != YeastKind::Compressed;
    let each = match amount.kind {
        AmountKind::Mass => Some(1.0),
        AmountKind::Volume | AmountKind::Spoon => {
            dry.then_some(tools::YEAST_SPOON.value / TEASPOON_ML)
        }
        AmountKind::Pieces if dry => Some(tools::YEAST_PACKET.value),
        AmountKind::Pieces => Some(tools::YEAST_CAKE.value),
        AmountKind::Drops => None,
    };
    let grams = each.map(|each| amount.value * each).ok_or_else(|| BenchError {
        key: "yeast_amount",
        problem: format!("“{}” says nothing about the mass of this yeast", amount.written),
        fix: "weigh it and write grams, such as \"2 g\"".into(),
    })?;
    Ok((grams, scatter(amount.kind)))
}

/// Volume of water (mL) and its relative scatter from bag to bag (1).
pub(super) fn water(amount: &Amount) -> Result<(f64, f64), BenchError> {
    let sd = tools::WATER_SD.value;
    match amount.kind {
        // A gram of water is a milliliter, within half a percent up to 40 °C.
        AmountKind::Mass | AmountKind::Volume => Ok((amount.value, sd)),
        AmountKind::Spoon => Ok((amount.value, tools::SYRINGE_SD.value)),
        AmountKind::Drops | AmountKind::Pieces => Err(BenchError {
            key: "water",
            problem: format!("“{}” is not an amount of water", amount.written),
            fix: "write milliliters or cups, such as \"40 mL\"".into(),
        }),
    }
}
