//! Where in the plan a treatment stands.

use crate::plan::{Plan, Treatment};

/// The place of a treatment or control, such as `question[0].treatment[2]`; the plan's own if it
/// is nowhere.
pub(super) fn treatment(plan: &Plan, name: &str) -> String {
    for (q, question) in plan.questions.iter().enumerate() {
        if let Some(t) = question.treatments.iter().position(|t| t.name == name) {
            return format!("question[{q}].treatment[{t}]");
        }
    }
    plan.controls
        .iter()
        .position(|control| control.treatment.name == name)
        .map_or_else(String::new, |c| format!("control[{c}]"))
}

/// The place of a key of a treatment's recipe: with the treatment where it is written there, else
/// in the base recipe.
pub(super) fn key(plan: &Plan, treatment: &Treatment, key: &str) -> String {
    let changed = &treatment.difference;
    let own = match key {
        "bag" => changed.bag.is_some(),
        "card" => changed.card.is_some(),
        "water" => changed.water.is_some(),
        "water_temperature" => changed.water_celsius.is_some(),
        "yeast" => changed.yeast.is_some(),
        "yeast_amount" => changed.yeast_amount.is_some(),
        "food" => changed.food.is_some(),
        "food_amount" => changed.food_amount.is_some(),
        "enzyme" => changed.enzyme.is_some(),
        "enzyme_amount" => changed.enzyme_amount.is_some(),
        "extra" => changed.extras.is_some(),
        "lies" => changed.lies.is_some(),
        _ => false,
    };
    if own {
        format!("{}.{key}", self::treatment(plan, &treatment.name))
    } else {
        format!("base.{key}")
    }
}
