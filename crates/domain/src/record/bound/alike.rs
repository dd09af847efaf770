//! Whether two recipes make the same bag.

use crate::amount::Amount;
use crate::plan::{Difference, Recipe};

/// Whether they put the same into the same bag, however it is written. An amount of something that
/// does not go in says nothing.
pub(super) fn alike(a: &Recipe, b: &Recipe) -> bool {
    let amount = |a: &Amount, b: &Amount| (a.kind, a.value) == (b.kind, b.value);
    let of = |thing: bool, a: &Option<Amount>, b: &Option<Amount>| {
        !thing
            || match (a, b) {
                (Some(a), Some(b)) => amount(a, b),
                (a, b) => a.is_none() && b.is_none(),
            }
    };
    let extras = a.extras.len() == b.extras.len()
        && a.extras
            .iter()
            .zip(&b.extras)
            .all(|(a, b)| a.item == b.item && amount(&a.amount, &b.amount));
    a.bag.bag == b.bag.bag
        && a.card.card == b.card.card
        && amount(&a.water, &b.water)
        && (a.water_celsius - b.water_celsius).abs() < 1e-9
        && a.yeast == b.yeast
        && (a.yeast.is_none() || amount(&a.yeast_amount, &b.yeast_amount))
        && a.food == b.food
        && of(a.food.is_some(), &a.food_amount, &b.food_amount)
        && a.enzyme == b.enzyme
        && of(a.enzyme.is_some(), &a.enzyme_amount, &b.enzyme_amount)
        && extras
        && a.lies == b.lies
}

/// What makes `recipe` out of `base`, and no more.
pub(super) fn difference(base: &Recipe, recipe: &Recipe) -> Difference {
    fn changed<T: Clone + PartialEq>(from: &T, to: &T) -> Option<T> {
        (from != to).then(|| to.clone())
    }
    // No amount cannot be said, and need not be: then nothing of it goes in.
    fn amount(from: &Option<Amount>, to: &Option<Amount>) -> Option<Amount> {
        to.clone().filter(|_| from != to)
    }
    Difference {
        bag: changed(&base.bag, &recipe.bag),
        card: changed(&base.card, &recipe.card),
        water: changed(&base.water, &recipe.water),
        water_celsius: changed(&base.water_celsius, &recipe.water_celsius),
        yeast: changed(&base.yeast, &recipe.yeast),
        yeast_amount: changed(&base.yeast_amount, &recipe.yeast_amount),
        food: changed(&base.food, &recipe.food),
        food_amount: amount(&base.food_amount, &recipe.food_amount),
        enzyme: changed(&base.enzyme, &recipe.enzyme),
        enzyme_amount: amount(&base.enzyme_amount, &recipe.enzyme_amount),
        extras: changed(&base.extras, &recipe.extras),
        lies: changed(&base.lies, &recipe.lies),
    }
}
