//! What one bag of each treatment takes.

use super::error::PrepError;
use super::item::Item;
use super::measure::Measure;
use crate::amount::Amount;
use crate::bench::{self, BenchError, ShelfEnzyme};
use crate::cupboard::Cupboard;
use crate::plan::{Day, Lies, Period, Plan, PlannedBag, Recipe, Treatment};
use barm_science::enzyme::products::Measure as By;
use barm_science::model::{Mixture, Parameters, state};
use barm_science::setup::Setup;
use std::collections::BTreeMap;

/// One thing that goes into a bag.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Dose {
    pub(super) item: Item,
    /// As the plan says it.
    pub(super) amount: Amount,
    pub(super) measure: Measure,
    /// Temperature as poured (°C), for water.
    pub(super) celsius: Option<f64>,
}

/// One bag of a treatment on one day.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Made {
    pub(super) doses: Vec<Dose>,
    pub(super) bag: String,
    pub(super) card: String,
    pub(super) lies: Lies,
    /// Temperature of the contents once all is in (°C).
    pub(super) start_celsius: f64,
}

/// What a bag of each treatment takes on each day.
pub(super) struct Doses<'a> {
    made: BTreeMap<(&'a str, &'a str), Made>,
}

impl<'a> Doses<'a> {
    /// Works out every treatment that the bag list names.
    pub(super) fn new(plan: &'a Plan) -> Result<Self, PrepError> {
        let mut made = BTreeMap::new();
        for bag in &plan.bags {
            let period = plan.period(&bag.period).ok_or_else(|| PrepError::NoPeriod {
                code: bag.code.clone(),
                period: bag.period.clone(),
            })?;
            let day = day(plan, period)?;
            let key = (day.name.as_str(), bag.treatment.as_str());
            if made.contains_key(&key) {
                continue;
            }
            let treatment = plan.treatment(&bag.treatment).ok_or_else(|| no_treatment(bag))?;
            made.insert(key, make(plan, treatment, day)?);
        }
        Ok(Self { made })
    }

    pub(super) fn of(
        &self,
        bag: &'a PlannedBag,
        period: &'a Period,
    ) -> Result<&Made, PrepError> {
        self.made
            .get(&(period.day.as_str(), bag.treatment.as_str()))
            .ok_or_else(|| no_treatment(bag))
    }
}

/// The day of a period.
pub(super) fn day<'a>(plan: &'a Plan, period: &Period) -> Result<&'a Day, PrepError> {
    plan.day(&period.day).ok_or_else(|| PrepError::NoDay {
        period: period.name.clone(),
        day: period.day.clone(),
    })
}

fn no_treatment(bag: &PlannedBag) -> PrepError {
    PrepError::NoTreatment { code: bag.code.clone(), treatment: bag.treatment.clone() }
}

fn make(plan: &Plan, treatment: &Treatment, day: &Day) -> Result<Made, PrepError> {
    let recipe = plan.recipe(treatment);
    let failed = |source| PrepError::Bench { treatment: treatment.name.clone(), source };
    let setup = bench::setup(plan, &recipe, day).map_err(failed)?;
    let mut doses = dry(plan, &recipe, &setup).map_err(failed)?;
    doses.extend(enzyme(&recipe).map_err(failed)?);
    doses.push(Dose {
        item: Item::Water,
        amount: recipe.water.clone(),
        measure: Measure::new(Item::Water.unit(), setup.water_ml),
        celsius: Some(recipe.water_celsius),
    });
    doses.retain(|dose| !dose.measure.is_none());
    Ok(Made {
        doses,
        bag: recipe.bag.written.trim().to_lowercase(),
        card: recipe.card.written.trim().to_lowercase(),
        lies: recipe.lies,
        start_celsius: start_celsius(&setup),
    })
}

/// Temperature of a bag's contents once water, dry things and film have shared their warmth (°C).
///
/// The bag model's own energy balance: what was poured brings its warmth, everything else that of
/// the room.
fn start_celsius(setup: &Setup) -> f64 {
    Mixture::new(setup, &Parameters::median()).start()[state::CELSIUS]
}

/// Yeast, food and what else goes in.
fn dry(plan: &Plan, recipe: &Recipe, setup: &Setup) -> Result<Vec<Dose>, BenchError> {
    let mut doses = Vec::new();
    if let Some(yeast) = &setup.yeast {
        let item = Item::Yeast(yeast.kind);
        doses.push(Dose {
            measure: Measure::new(item.unit(), yeast.grams),
            item,
            amount: recipe.yeast_amount.clone(),
            celsius: None,
        });
    }
    let main = recipe.food.iter().zip(&recipe.food_amount).map(|both| (both, "food"));
    let extras = recipe.extras.iter().map(|extra| ((&extra.item, &extra.amount), "also"));
    for (((name, amount), key), portion) in main.chain(extras).zip(&setup.foods) {
        let cupboard = Cupboard::with(&plan.label_foods);
        let id = cupboard.food(name).map_err(|missing| BenchError {
            key,
            problem: missing.to_string(),
            fix: missing.fix(),
        })?;
        let item = Item::Food(id);
        doses.push(Dose {
            measure: Measure::new(item.unit(), portion.grams),
            item,
            amount: amount.clone(),
            celsius: None,
        });
    }
    Ok(doses)
}

fn enzyme(recipe: &Recipe) -> Result<Option<Dose>, BenchError> {
    let (Some(name), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) else {
        return Ok(None);
    };
    let shelf = bench::enzyme(name, amount)?;
    let key = shelf.product.key;
    let item = if shelf.is_stock { Item::Solution(key) } else { Item::Enzyme(key) };
    let measured = if shelf.is_stock { shelf.ml(amount) } else { as_bought(shelf, amount) };
    // What the setup took as a dose can be measured.
    let measure = Measure::new(item.unit(), measured.unwrap_or(0.0));
    Ok(Some(Dose { item, amount: amount.clone(), measure, celsius: None }))
}

/// An amount of a product in the unit of its [`Item::Enzyme`]: g, mL or tablets.
pub(super) fn as_bought(shelf: ShelfEnzyme, amount: &Amount) -> Option<f64> {
    let measures = shelf.measures(amount)?;
    Some(match shelf.product.measure {
        By::Drop => measures * bench::tools::DROP_ML.value,
        By::Gram | By::Milliliter | By::Tablet => measures,
    })
}
