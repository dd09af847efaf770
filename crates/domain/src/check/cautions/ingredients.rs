//! The foods of a plan, with what they are made of.

use super::choices::Made;
use super::enzymes::EnzymeUsed;
use crate::bench::{Ingredient, ingredient};
use crate::finding::Field;
use crate::plan::{Plan, Variable};
use barm_science::food::Allergen;

/// A food that goes into a bag or is bought.
pub(super) struct FoodUsed {
    pub food: Ingredient,
    /// Whether it goes into a bag.
    pub in_bag: bool,
    pub at: Field,
}

/// Every food in a bag or on the shopping list, each once, and what enzyme products carry that may make
/// somebody ill; names that no food has are left out.
pub(super) fn foods(plan: &Plan, made: &[Made<'_>], enzymes: &[EnzymeUsed]) -> Vec<FoodUsed> {
    let mut found: Vec<FoodUsed> = Vec::new();
    let mut add = |name: &str, in_bag: bool, at: Field| {
        if let Ok(food) = ingredient(plan, name, "food")
            && found.iter().all(|known| known.food.name != food.name)
        {
            found.push(FoodUsed { food, in_bag, at });
        }
    };
    for made in made {
        if let Some(food) = &made.recipe.food {
            add(food, true, made.at(Variable::Food));
        }
        for (e, extra) in made.recipe.extras.iter().enumerate() {
            let Field(list) = made.at(Variable::Extra);
            add(&extra.item, true, Field(format!("{list}[{e}].item")));
        }
    }
    for (m, material) in plan.materials.iter().enumerate() {
        add(&material.item, false, Field(format!("material[{m}].item")));
    }
    found.extend(carriers(enzymes));
    found
}

/// Enzyme products whose carrier is or may hold an allergen, as flour let down with malt.
fn carriers(enzymes: &[EnzymeUsed]) -> impl Iterator<Item = FoodUsed> {
    let with_some = enzymes.iter().filter(|enzyme| !enzyme.product.traces.is_empty());
    with_some.map(|enzyme| {
        let product = enzyme.product;
        let food = Ingredient {
            name: product.name.to_owned(),
            kind: None,
            composition: product.carrier,
            grams_per_tsp: None,
            grams_per_piece: None,
            content_sd: product.carrier_sd,
            grain: product.grain,
            is_malt: false,
            allergens: Vec::new(),
            traces: product.traces.iter().map(|a| a.name().to_owned()).collect(),
        };
        FoodUsed { food, in_bag: enzyme.in_bag, at: enzyme.at.clone() }
    })
}

impl FoodUsed {
    /// Whether it is made from that allergen, by the table or by its label.
    pub(super) fn is_made_from(&self, allergen: Allergen) -> bool {
        names(&self.food.allergens, allergen)
    }

    /// Whether it is made from that allergen or often carries traces of it.
    pub(super) fn may_hold(&self, allergen: Allergen) -> bool {
        self.is_made_from(allergen) || names(&self.food.traces, allergen)
    }
}

fn names(list: &[String], allergen: Allergen) -> bool {
    list.iter().any(|name| Allergen::named(name) == Some(allergen))
}
