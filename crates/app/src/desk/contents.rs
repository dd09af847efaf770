//! What a group puts into a bag before the water, the same on its screen and on its card.

use barm_documents::catalog::Catalog;
use barm_domain::amount::Amount;
use barm_domain::bench::{enzyme, ingredient, other_unit, yeast_per_tsp};
use barm_domain::plan::{Plan, Recipe};

/// Something that goes in before the water.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Dry {
    /// Yeast.
    Yeast,
    /// A solution that the teacher made of the enzyme product of that key.
    Solution(&'static str),
    /// Anything else, as the plan names it.
    Named(String),
}

impl Dry {
    /// An enzyme in that amount: powder in milliliters is a solution of it.
    pub(crate) fn enzyme(name: &str, amount: &Amount) -> Self {
        match enzyme(name, amount) {
            Ok(shelf) if shelf.is_stock => Self::Solution(shelf.product.key),
            _ => Self::Named(name.to_owned()),
        }
    }

    /// What it is called in a language.
    pub(crate) fn name(&self, words: &Catalog) -> String {
        match self {
            Self::Yeast => words.cupboard("yeast"),
            Self::Solution(product) => words.solution(product),
            Self::Named(id) => words.cupboard(id),
        }
    }
}

/// How much of what.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Content {
    /// How much.
    pub(crate) amount: Amount,
    /// The same in the other kind of unit, if there is one.
    pub(crate) other: Option<String>,
    /// Of what.
    pub(crate) thing: Dry,
}

/// What a recipe puts into a bag: yeast, food, enzyme, then all else.
pub(crate) fn contents(plan: &Plan, recipe: &Recipe) -> Vec<Content> {
    let mut all = Vec::new();
    let mut add = |amount: &Amount, thing: Dry, grams_per_tsp: Option<f64>| {
        if amount.value > 0.0 {
            let other = other_unit(amount, grams_per_tsp);
            all.push(Content { amount: amount.clone(), other, thing });
        }
    };
    let spoon = |food: &str| ingredient(plan, food, "food").ok()?.grams_per_tsp;
    if let Some(kind) = recipe.yeast {
        add(&recipe.yeast_amount, Dry::Yeast, yeast_per_tsp(kind));
    }
    if let (Some(food), Some(amount)) = (&recipe.food, &recipe.food_amount) {
        add(amount, Dry::Named(food.clone()), spoon(food));
    }
    if let (Some(name), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) {
        add(amount, Dry::enzyme(name, amount), None);
    }
    for extra in &recipe.extras {
        add(&extra.amount, Dry::Named(extra.item.clone()), spoon(&extra.item));
    }
    all
}
