//! What a food of the plan is made of.

use super::BenchError;
use crate::cupboard::Cupboard;
use crate::plan::Plan;
use barm_science::food::{self, Allergen, FoodKind};
use barm_science::setup::{Composition, Grain};

/// Id of the food whose enzymes are alive.
const MALT: &str = "barley_malt_flour";

/// A food, built in or described from its label.
#[derive(Debug, Clone, PartialEq)]
pub struct Ingredient {
    /// Name for people.
    pub name: String,
    /// What it comes as; not known of a label food.
    pub kind: Option<FoodKind>,
    /// What it is made of.
    pub composition: Composition,
    /// Mass of a level customary teaspoon (g), if known.
    pub grams_per_tsp: Option<f64>,
    /// Mass of one packet or cake (g), where it is sold so.
    pub grams_per_piece: Option<f64>,
    /// How unsure its carbohydrate is from pack to pack (1).
    pub content_sd: f64,
    /// The plant that its raw starch comes from, where that is known.
    pub grain: Option<Grain>,
    /// Whether it is malt, which brings enzymes of its own.
    pub is_malt: bool,
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
    let cupboard = Cupboard::with(&plan.label_foods);
    let id = cupboard.food(name).map_err(|missing| BenchError {
        key,
        problem: missing.to_string(),
        fix: missing.fix(),
    })?;
    if let Some(own) = cupboard.label_food(&id) {
        return Ok(Ingredient {
            name: own.name.clone(),
            kind: None,
            composition: own.composition,
            grams_per_tsp: own.grams_per_tsp,
            grams_per_piece: None,
            content_sd: own.content_sd,
            grain: None,
            is_malt: false,
            allergens: own.allergens.clone(),
            traces: Vec::new(),
        });
    }
    let found = food::by_id(&id).ok_or_else(|| BenchError {
        key,
        problem: format!("there is no food called “{name}”"),
        fix: "write a built-in food, or describe yours under [[label_food]]".into(),
    })?;
    let names = |list: &[Allergen]| list.iter().map(|a| a.name().to_owned()).collect();
    Ok(Ingredient {
        name: found.name.to_owned(),
        kind: Some(found.kind),
        composition: found.composition,
        grams_per_tsp: found.grams_per_tsp,
        grams_per_piece: found.grams_per_piece,
        content_sd: found.content_sd,
        grain: found.grain,
        is_malt: found.id == MALT,
        allergens: names(found.allergens),
        traces: names(found.traces),
    })
}
