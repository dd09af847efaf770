//! Grams and milliliters of what a recipe names.

use super::{BenchError, Ingredient, scatter, tools};
use crate::amount::{Amount, AmountKind};

/// The customary teaspoon (mL), 1/768 US gallon (NIST SP 811, 2008, appendix B.8).
const TEASPOON_ML: f64 = 4.928_921_593_75;

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
    let grams = match (amount.kind, per_ml) {
        (AmountKind::Mass, _) => amount.value,
        (AmountKind::Volume | AmountKind::Spoon, Some(per_ml)) => amount.value * per_ml,
        (AmountKind::Drops, Some(per_ml)) => amount.value * tools::DROP_ML.value * per_ml,
        // Sweetener packets are filled with one gram (food table).
        (AmountKind::Pieces, _) if food.name.contains("packet") => amount.value,
        _ => {
            return Err(BenchError {
                key,
                problem: format!(
                    "“{}” says nothing about the mass of {}",
                    amount.written, food.name
                ),
                fix: "weigh it and write grams, such as \"2 g\"".into(),
            });
        }
    };
    Ok((grams, scatter(amount.kind)))
}

/// Mass of yeast (g) and its relative scatter from bag to bag (1).
///
/// # Errors
/// [`BenchError`] if yeast cannot be measured that way.
pub fn yeast_grams(amount: &Amount) -> Result<(f64, f64), BenchError> {
    let grams = match amount.kind {
        AmountKind::Mass => amount.value,
        AmountKind::Volume | AmountKind::Spoon => {
            amount.value / TEASPOON_ML * tools::YEAST_SPOON.value
        }
        AmountKind::Pieces => amount.value * tools::YEAST_PACKET.value,
        AmountKind::Drops => {
            return Err(BenchError {
                key: "yeast_amount",
                problem: "yeast does not come in drops".into(),
                fix: "weigh it and write grams, such as \"2 g\"".into(),
            });
        }
    };
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
