//! The foods of a plan, with what they are made of.

use super::choices::Made;
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

/// Every food in a bag or on the shopping list, each once; names that no food has are left out.
pub(super) fn foods(plan: &Plan, made: &[Made<'_>]) -> Vec<FoodUsed> {
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
    found
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
