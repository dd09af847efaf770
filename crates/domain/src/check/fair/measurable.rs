//! Something to read: gas to be made, and a card that shows it.

use crate::bench::ingredient;
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{CardChoice, Plan, Recipe};
use barm_science::bag::StandardBag;
use barm_science::card_height::{best_card, blind_pair, largest_bag};
use barm_science::setup::Card;

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
                way_out(&recipe),
            )
            .at(place::key(plan, treatment, "card"))
            .says("own membrane simulation of bag and card, not yet compared with a measured bag"),
        );
    }
    found
}

/// Cards that are sold cut, or are a page or half of one; smallest first.
const CARDS: [&str; 6] =
    ["3 x 5 in", "4 x 6 in", "5 x 8 in", "5.5 x 8.5 in", "8 x 10 in", "8.5 x 11 in"];

/// A card for this bag, and a bag for this card, where there is one.
fn way_out(recipe: &Recipe) -> String {
    let cards: Vec<CardChoice> =
        CARDS.iter().filter_map(|size| CardChoice::parse(size).ok()).collect();
    let sizes: Vec<Card> = cards.iter().map(|choice| choice.card).collect();
    let card = best_card(&recipe.bag.bag, &sizes, recipe.water.value)
        .map(|at| cards[at].written.clone());
    let bag = largest_bag(&recipe.card.card, &StandardBag::ALL.map(StandardBag::bag))
        .map(|at| StandardBag::ALL[at].name());
    match (card, bag) {
        (Some(card), Some(bag)) => {
            format!("Take a card of {card} for this bag, or a {bag} bag under this card.")
        }
        (Some(card), None) => format!("Take a card of {card} for this bag."),
        (None, Some(bag)) => format!("Take a {bag} bag under this card."),
        (None, None) => "Take a smaller bag, or a card that covers most of the bag.".into(),
    }
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
