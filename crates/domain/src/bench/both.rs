//! The same amount in the other kind of unit, for those who have spoons and for those who have a
//! balance.

use super::tools;
use crate::amount::show::{Kitchen, spoons};
use crate::amount::{Amount, AmountKind, TEASPOON_ML};
use barm_science::setup::YeastKind;

/// What a measure in the other kind of unit may be off by (1); own rule: less than a heaped spoon is.
const CLOSE: f64 = 0.15;
/// What a spoon that is not level may be off by (1); own rule: a third more or less can be seen.
const NEAR: f64 = 0.35;

/// An amount in the other kind of unit: level spoons and cups for what is weighed or comes in mL,
/// grams or mL for what comes in spoons. `grams_per_tsp` is the mass of a level customary teaspoon
/// (g). Where no level spoon comes close, `almost` or `over` stands before the nearest. Nothing for
/// drops and pieces, and nothing where no spoons come near.
pub fn other_unit(amount: &Amount, grams_per_tsp: Option<f64>) -> Option<String> {
    match amount.kind {
        AmountKind::Mass => in_spoons(amount.value / grams_per_tsp? * TEASPOON_ML),
        AmountKind::Volume => in_spoons(amount.value),
        AmountKind::Spoon => {
            let (value, unit) = match grams_per_tsp {
                Some(grams) => (amount.value / TEASPOON_ML * grams, "g"),
                None => (amount.value, "mL"),
            };
            let digits = usize::from(value < 10.0);
            Some(format!("{value:.digits$} {unit}"))
        }
        AmountKind::Drops | AmountKind::Pieces => None,
    }
}

/// Mass of a level customary teaspoon of a yeast (g); nothing for one that comes in cakes.
pub fn yeast_per_tsp(kind: YeastKind) -> Option<f64> {
    (kind != YeastKind::Compressed).then_some(tools::YEAST_SPOON.value)
}

/// One measure where one comes near, else several that make it up.
fn in_spoons(ml: f64) -> Option<String> {
    const ONE: f64 = 0.05;
    let one = spoons(ml).filter(|near| near.off.abs() <= ONE).map(|near| near.text);
    one.or_else(|| several(ml))
}

/// Spoons of 1/2, 1/4 and 1/8 teaspoon up to one; above that what [`Kitchen`] says.
fn several(ml: f64) -> Option<String> {
    let wanted = ml / TEASPOON_ML;
    let eighths = (8.0 * wanted).round();
    if !(1.0..8.0).contains(&eighths) {
        let kitchen = Kitchen::of_milliliters(ml)?;
        let close = (kitchen.teaspoons() / wanted - 1.0).abs() <= CLOSE;
        return close.then(|| kitchen.to_string());
    }
    let off = eighths / 8.0 / wanted - 1.0;
    if off.abs() > NEAR {
        return None;
    }
    let eighths = eighths as u32;
    let parts = [(4, "1/2 tsp"), (2, "1/4 tsp"), (1, "1/8 tsp")];
    let taken: Vec<&str> =
        parts.iter().filter(|(of, _)| eighths & of != 0).map(|(_, name)| *name).collect();
    let level = taken.join(" + ");
    Some(match off {
        CLOSE.. => format!("almost {level}"),
        off if off < -CLOSE => format!("over {level}"),
        _ => level,
    })
}
