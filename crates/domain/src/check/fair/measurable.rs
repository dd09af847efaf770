//! Something to read: gas to be made, and a card that shows it.

use crate::bench::ingredient;
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Recipe};
use barm_science::card_height::blind_pair;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found: Vec<Finding> = plan
        .questions
        .iter()
        .enumerate()
        .filter_map(|(q, question)| {
            let answering = plan.answering(question);
            let gas =
                answering.iter().any(|treatment| makes_gas(plan, &plan.recipe(treatment)));
            (!answering.is_empty() && !gas).then(|| {
                Finding::new(
                    Severity::Fault,
                    "no-gas",
                    "No bag here can make gas, so no card will rise.",
                    "Put yeast in the bags.",
                )
                .at(format!("question[{q}]"))
            })
        })
        .collect();
    let blind = plan.treatments().find(|(_, treatment)| {
        let recipe = plan.recipe(treatment);
        blind_pair(&recipe.bag.bag, &recipe.card.card)
    });
    if let Some((_, treatment)) = blind {
        let recipe = plan.recipe(treatment);
        found.push(
            Finding::new(
                Severity::Fault,
                "blind-card",
                format!(
                    "The {} card is too small for the {} bag: the gas goes round it at first and does not lift it.",
                    recipe.card.written, recipe.bag.written
                ),
                "Take a smaller bag, or a card that covers most of the bag.",
            )
            .at(place::key(plan, treatment, "card"))
            .says("own membrane simulation of bag and card, not yet compared with a measured bag"),
        );
    }
    found
}

/// Whether a recipe can make gas at all: yeast, or soda.
fn makes_gas(plan: &Plan, recipe: &Recipe) -> bool {
    let soda = |item: &str| {
        ingredient(plan, item, "food").is_ok_and(|food| food.composition.bicarbonate > 0.0)
    };
    recipe.yeast.is_some()
        || recipe.food.as_deref().is_some_and(soda)
        || recipe.extras.iter().any(|extra| soda(&extra.item))
}
