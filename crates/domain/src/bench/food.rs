//! What a food of the plan is made of.

use super::BenchError;
use crate::nearest::{nearest, plain};
use crate::plan::Plan;
use barm_science::food;
use barm_science::setup::Composition;

/// A food, built in or described from its label.
#[derive(Debug, Clone, PartialEq)]
pub struct Ingredient {
    /// Name for people.
    pub name: String,
    /// What it is made of.
    pub composition: Composition,
    /// Mass of a level customary teaspoon (g), if known.
    pub grams_per_tsp: Option<f64>,
    /// How unsure its carbohydrate is from pack to pack (1).
    pub content_sd: f64,
    /// Major allergens it is made from, as on the label.
    pub allergens: Vec<String>,
    /// Major allergens it often carries traces of.
    pub traces: Vec<String>,
}

/// The food of that id or name: label foods of the plan first, then the built-in table.
///
/// # Errors
/// [`BenchError`] under `key` if there is no such food.
pub fn ingredient(
    plan: &Plan,
    name: &str,
    key: &'static str,
) -> Result<Ingredient, BenchError> {
    let wanted = plain(name);
    if let Some(own) = plan.label_foods.iter().find(|own| plain(&own.name) == wanted) {
        return Ok(Ingredient {
            name: own.name.clone(),
            composition: own.composition,
            grams_per_tsp: own.grams_per_tsp,
            content_sd: own.content_sd,
            allergens: own.allergens.clone(),
            traces: Vec::new(),
        });
    }
    if let Some(found) = food::find(name) {
        let names =
            |list: &[food::Allergen]| list.iter().map(|a| a.name().to_owned()).collect();
        return Ok(Ingredient {
            name: found.name.to_owned(),
            composition: found.composition,
            grams_per_tsp: found.grams_per_tsp,
            content_sd: found.content_sd,
            allergens: names(found.allergens),
            traces: names(found.traces),
        });
    }
    let known = food::all().iter().map(|food| food.name);
    let fix = match nearest(name, known) {
        Some(meant) => format!("did you mean “{meant}”?"),
        None => "write a built-in food, or describe yours under [[label_food]]".into(),
    };
    Err(BenchError { key, problem: format!("there is no food called “{name}”"), fix })
}
