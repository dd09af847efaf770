//! A teaspoon of one food is not as much as a teaspoon of another.

use super::change::same_spoon;
use crate::bench::{food_grams, ingredient};
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Question, Recipe, Treatment, Variable};

/// Masses of two foods in one spoon may differ by this share before it matters (1): as much as
/// level spoons differ among themselves.
const SPOON_SCATTER: f64 = 0.10;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    plan.questions.iter().filter_map(|question| question_of_foods(plan, question)).collect()
}

/// The widest pair of a question, once.
fn question_of_foods(plan: &Plan, question: &Question) -> Option<Finding> {
    if question.variable != Variable::Food && question.crossed_with != Some(Variable::Food) {
        return None;
    }
    let spooned: Vec<(&Treatment, Recipe, f64)> = plan
        .answering(question)
        .into_iter()
        .filter_map(|treatment| {
            let recipe = plan.recipe(treatment);
            let grams = grams(plan, &recipe)?;
            Some((treatment, recipe, grams))
        })
        .collect();
    let mut widest: Option<(&Treatment, &Treatment, f64, f64)> = None;
    for (one, recipe, grams) in &spooned {
        for (other, second, less) in &spooned {
            let alike = match (&recipe.food_amount, &second.food_amount) {
                (Some(amount), Some(second)) => same_spoon(amount, second),
                _ => false,
            };
            let apart = *grams > less * (1.0 + SPOON_SCATTER);
            let wider = widest.is_none_or(|(.., most, least)| grams / less > most / least);
            if alike && apart && recipe.food != second.food && wider {
                widest = Some((one, other, *grams, *less));
            }
        }
    }
    let (heavy, light, most, least) = widest?;
    let (name, other) = (&heavy.name, &light.name);
    let finding = Finding::new(
        Severity::Warning,
        "spoons-hide-mass",
        format!(
            "The same spoon holds {most:.1} g for “{name}” and {least:.1} g for “{other}”, so the mass changes too."
        ),
        "Weigh each food, and use the same number of grams.",
    );
    Some(finding.at(place::key(plan, heavy, "food_amount")))
}

fn grams(plan: &Plan, recipe: &Recipe) -> Option<f64> {
    let food = ingredient(plan, recipe.food.as_ref()?, "food").ok()?;
    let (grams, _) = food_grams(&food, recipe.food_amount.as_ref()?, "food_amount").ok()?;
    (grams > 0.0).then_some(grams)
}
