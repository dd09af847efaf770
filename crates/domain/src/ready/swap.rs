//! One food for another in the whole plan, as when the nurse says so. No reason is kept.

use super::larder::OFFERED;
use crate::amount::Amount;
use crate::cupboard::{Cupboard, NotInCupboard, spoken};
use crate::plan::{Material, Plan, Treatment};

/// Why one food cannot stand in for another.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SwapError {
    /// A name is not in the cupboard.
    #[error(transparent)]
    Cupboard(#[from] NotInCupboard),
    /// The plan does not use it.
    #[error("this plan uses no {food}")]
    NotUsed {
        /// What it is called.
        food: String,
    },
    /// A treatment would be there twice.
    #[error("“{treatment}” is in the plan already; take one of the two out first")]
    There {
        /// Its name.
        treatment: String,
    },
}

/// Foods that a plan puts into bags: id and what it is called, each once.
pub fn foods_of(plan: &Plan) -> Vec<(String, String)> {
    let recipes = plan.treatments().map(|(_, treatment)| plan.recipe(treatment));
    let mut foods: Vec<(String, String)> = Vec::new();
    for id in recipes.filter_map(|recipe| recipe.food) {
        if foods.iter().all(|(known, _)| *known != id) {
            let called = spoken(&id).to_owned();
            foods.push((id, called));
        }
    }
    foods
}

/// The plan with another food wherever one stands: recipes, names, bag list and shopping. Codes of
/// bags stay, amounts too. Packs of the first food leave the shopping list, and a usual pack of the
/// second comes in where it has none.
///
/// # Errors
/// [`SwapError`] if a food is not known or not used, or if two treatments would be alike.
pub fn swap(plan: &Plan, from: &str, to: &str) -> Result<Plan, SwapError> {
    let cupboard = Cupboard::with(&plan.label_foods);
    let (from, to) = (cupboard.food(from)?, cupboard.food(to)?);
    if foods_of(plan).iter().all(|(id, _)| *id != from) {
        return Err(SwapError::NotUsed { food: spoken(&from).to_owned() });
    }
    let mut new = plan.clone();
    let changed = |food: &mut Option<String>| {
        if food.as_deref() == Some(from.as_str()) {
            *food = Some(to.clone());
        }
    };
    changed(&mut new.base.food);
    for treatment in treatments(&mut new) {
        if let Some(food) = &mut treatment.difference.food {
            changed(food);
        }
    }
    rename(&mut new, spoken(&from), spoken(&to))?;
    new.materials.retain(|material| material.item != from);
    let pack =
        OFFERED.iter().find(|one| one.id == to).and_then(|one| Amount::parse(one.pack).ok());
    if let Some(pack) = pack.filter(|_| new.materials.iter().all(|m| m.item != to)) {
        new.materials.push(Material { item: to, pack, price: None, in_stock: None });
    }
    Ok(new)
}

fn treatments(plan: &mut Plan) -> impl Iterator<Item = &mut Treatment> {
    let own = plan.questions.iter_mut().flat_map(|question| &mut question.treatments);
    own.chain(plan.controls.iter_mut().map(|control| &mut control.treatment))
}

/// Gives every treatment that is named after one food the name of the other, wherever it is named.
fn rename(plan: &mut Plan, from: &str, to: &str) -> Result<(), SwapError> {
    let names: Vec<String> = plan.treatments().map(|(_, t)| t.name.clone()).collect();
    for name in &names {
        let renamed = said_instead(name, from, to);
        if *name != renamed && names.contains(&renamed) {
            return Err(SwapError::There { treatment: renamed });
        }
    }
    let anew = |name: &mut String| *name = said_instead(name, from, to);
    for treatment in treatments(plan) {
        anew(&mut treatment.name);
        treatment.beside.iter_mut().for_each(anew);
    }
    for question in &mut plan.questions {
        question.reference.iter_mut().for_each(anew);
        question.uses.iter_mut().for_each(anew);
    }
    plan.bags.iter_mut().for_each(|bag| anew(&mut bag.treatment));
    Ok(())
}

/// A name with one word said in place of another, with a capital where the first had one.
fn said_instead(name: &str, from: &str, to: &str) -> String {
    let capital = |word: &str| {
        let mut letters = word.chars();
        letters.next().map_or_else(String::new, |c| c.to_uppercase().chain(letters).collect())
    };
    name.replace(&capital(from), &capital(to)).replace(from, to)
}
