//! From the recipe in words to what stands on the bench in grams, mL and °C.
//!
//! The one place where a plan's amounts become the inputs of the bag model, with the scatter that
//! a spoon, a jug or a thermometer brings.

mod both;
mod enzyme;
mod food;
pub mod tools;
mod weigh;

pub use both::{other_unit, yeast_per_tsp};
pub use enzyme::{ShelfEnzyme, enzyme};
pub use food::{Ingredient, ingredient};

pub use weigh::{TEASPOON_ML, food_grams, yeast_grams};

use crate::amount::{Amount, AmountKind};
use crate::plan::{Day, Lies, Place, Plan, Recipe};
use barm_science::air;
use barm_science::enzyme::malt;
use barm_science::setup::{EnzymeDose, Lying, Portion, Setup, YeastDose};

/// A part of a recipe that cannot be put on the bench.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{problem}")]
pub struct BenchError {
    /// Key of the recipe that is at fault, such as `food_amount`.
    pub key: &'static str,
    /// What is wrong.
    pub problem: String,
    /// What to write instead.
    pub fix: String,
}

/// What one bag of this recipe is on that day, by the spoon of a pilot where one was weighed.
///
/// # Errors
/// [`BenchError`] names the key of the recipe that cannot be weighed or measured out.
pub fn setup(plan: &Plan, recipe: &Recipe, day: &Day) -> Result<Setup, BenchError> {
    let mut foods = Vec::new();
    let mut enzymes = enzyme_doses(recipe)?;
    let mut take = |portion: Portion, is_malt: bool| {
        if is_malt {
            enzymes.extend(malt::enzymes(portion.grams, portion.dosing_sd));
        }
        foods.push(portion);
    };
    if let Some(food) = &recipe.food {
        let Some(amount) = &recipe.food_amount else {
            return Err(BenchError {
                key: "food_amount",
                problem: format!("there is no amount for the food “{food}”"),
                fix: "write how much, such as food_amount = \"2 g\"".into(),
            });
        };
        let (portion, is_malt) = portion(plan, food, amount, "food", "food_amount")?;
        take(portion, is_malt);
    }
    for extra in &recipe.extras {
        let (portion, is_malt) = portion(plan, &extra.item, &extra.amount, "also", "also")?;
        take(portion, is_malt);
    }
    let (water_ml, water_dosing_sd) = weigh::water(&recipe.water)?;
    let mut setup = Setup {
        water_ml,
        water_celsius: recipe.water_celsius,
        water_celsius_sd: tools::POURING_SD.value,
        water_dosing_sd,
        yeast: yeast(recipe)?,
        foods,
        enzymes,
        bag: recipe.bag.bag,
        card: recipe.card.card,
        lying: match recipe.lies {
            Lies::Bench => Lying::Bench,
            Lies::Towel => Lying::Towel,
            Lies::WarmTray(celsius) => Lying::WarmTray { celsius },
        },
        room_celsius: day.room_celsius,
        pressure_pa: pressure(day)?,
        trapped_air_ml: tools::TRAPPED_AIR.value,
        wet_before_zero_min: plan.timing.wet_before_zero_min,
    };
    plan.known.measure(&recipe.yeast_amount, &mut setup);
    Ok(setup)
}

/// Air pressure at the bench on that day (Pa).
///
/// # Errors
/// [`BenchError`] for an altitude that no school has.
pub fn pressure(day: &Day) -> Result<f64, BenchError> {
    match day.place {
        Place::Pressure(pascal) => Ok(pascal),
        Place::Altitude(metres) => {
            air::pressure_at(metres).map(|pressure| pressure.0).map_err(|error| BenchError {
                key: "altitude",
                problem: error.to_string(),
                fix: "write the school's altitude, such as altitude = \"1400 m\"".into(),
            })
        }
    }
}

/// A food in a bag, and whether it is malt.
fn portion(
    plan: &Plan,
    item: &str,
    amount: &Amount,
    item_key: &'static str,
    amount_key: &'static str,
) -> Result<(Portion, bool), BenchError> {
    let food = ingredient(plan, item, item_key)?;
    let (grams, dosing_sd) = food_grams(&food, amount, amount_key)?;
    let portion = Portion {
        composition: food.composition,
        grams,
        dosing_sd,
        content_sd: food.content_sd,
        grain: food.grain,
    };
    Ok((portion, food.is_malt))
}

fn yeast(recipe: &Recipe) -> Result<Option<YeastDose>, BenchError> {
    let Some(kind) = recipe.yeast else { return Ok(None) };
    let (grams, dosing_sd) = yeast_grams(kind, &recipe.yeast_amount)?;
    Ok(Some(YeastDose::fresh(kind, grams, dosing_sd)))
}

fn enzyme_doses(recipe: &Recipe) -> Result<Vec<EnzymeDose>, BenchError> {
    let Some(id) = &recipe.enzyme else { return Ok(Vec::new()) };
    let Some(amount) = &recipe.enzyme_amount else {
        return Err(BenchError {
            key: "enzyme_amount",
            problem: format!("there is no amount for the enzyme “{id}”"),
            fix: "write how much, such as enzyme_amount = \"2 mL\"".into(),
        });
    };
    enzyme(id, amount)?.doses(amount)
}

/// The scatter of an amount from bag to bag (1): spoon, syringe, balance or dropper.
pub(crate) const fn scatter(kind: AmountKind) -> f64 {
    match kind {
        AmountKind::Mass => tools::BALANCE_SD.value,
        AmountKind::Volume => tools::SYRINGE_SD.value,
        AmountKind::Spoon => tools::SPOON_SD.value,
        AmountKind::Drops => tools::DROP_SD.value,
        AmountKind::Pieces => tools::PIECE_SD.value,
    }
}
