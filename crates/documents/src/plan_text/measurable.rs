//! Checks that what goes into a bag is complete and can be measured out.

use super::mistake::Wrong;
use super::notes::Notes;
use barm_domain::bench::{BenchError, enzyme, food_grams, ingredient, yeast_grams};
use barm_domain::plan::{Difference, Plan, Recipe};

/// Notes every recipe that nobody could put together.
pub(super) fn check(plan: &Plan, notes: &mut Notes<'_>) {
    let own = plan.questions.iter().enumerate().flat_map(|(q, question)| {
        let treatments = question.treatments.iter().enumerate();
        treatments
            .map(move |(t, treatment)| (format!("question[{q}].treatment[{t}]"), treatment))
    });
    let shared = plan.controls.iter().enumerate();
    let shared = shared.map(|(c, control)| (format!("control[{c}]"), &control.treatment));
    let base = &plan.base;
    let of_base = Difference {
        yeast: Some(base.yeast),
        yeast_amount: Some(base.yeast_amount.clone()),
        food: Some(base.food.clone()),
        food_amount: base.food_amount.clone(),
        enzyme: Some(base.enzyme.clone()),
        enzyme_amount: base.enzyme_amount.clone(),
        extras: Some(base.extras.clone()),
        ..Difference::default()
    };
    measure(plan, "base", base, &of_base, notes);
    for (path, treatment) in own.chain(shared) {
        let recipe = plan.recipe(treatment);
        complete(&path, &recipe, &treatment.difference, notes);
        measure(plan, &path, &recipe, &treatment.difference, notes);
    }
}

/// Whether a mistake in this field has been noted, here or in the base recipe.
fn noted(notes: &Notes<'_>, path: &str, key: &str) -> bool {
    [path, "base"].iter().any(|table| notes.has(&format!("{table}.{key}")))
}

/// An ingredient needs an amount, and an amount an ingredient.
fn complete(path: &str, recipe: &Recipe, changed: &Difference, notes: &mut Notes<'_>) {
    let needs =
        |what, is_in: bool, has_amount: bool, written: bool| (what, is_in, has_amount, written);
    let has_yeast = recipe.yeast_amount.value > 0.0;
    for (what, is_in, has_amount, written) in [
        needs(
            "food",
            recipe.food.is_some(),
            recipe.food_amount.is_some(),
            changed.food_amount.is_some(),
        ),
        needs(
            "enzyme",
            recipe.enzyme.is_some(),
            recipe.enzyme_amount.is_some(),
            changed.enzyme_amount.is_some(),
        ),
        needs("yeast", recipe.yeast.is_some(), has_yeast, changed.yeast_amount.is_some()),
    ] {
        let amount = format!("{what}_amount");
        if is_in && !has_amount && !noted(notes, path, &amount) {
            let fix = format!("write {amount}, here or under [base]");
            let wrong = Wrong::new(format!("nobody knows how much {what}"), fix);
            notes.wrong(format!("{path}.{what}"), wrong);
        } else if !is_in && written && !noted(notes, path, what) {
            let fix = format!("name the {what}, or take {amount} out");
            let wrong = Wrong::new(format!("an amount without any {what}"), fix);
            notes.wrong(format!("{path}.{amount}"), wrong);
        }
    }
}

/// What cannot be weighed or measured out as it is written, as far as this table says it.
fn measure(
    plan: &Plan,
    path: &str,
    recipe: &Recipe,
    changed: &Difference,
    notes: &mut Notes<'_>,
) {
    let mut refuse = |field: String, error: BenchError| {
        notes.wrong(format!("{path}.{field}"), Wrong::new(error.problem, error.fix));
    };
    if let (Some(food), Some(amount)) = (&recipe.food, &recipe.food_amount)
        && (changed.food.is_some() || changed.food_amount.is_some())
        && let Err(error) = ingredient(plan, food, "food")
            .and_then(|food| food_grams(&food, amount, "food_amount"))
    {
        refuse("food_amount".into(), error);
    }
    if let Some(kind) = recipe.yeast
        && (changed.yeast.is_some() || changed.yeast_amount.is_some())
        && let Err(error) = yeast_grams(kind, &recipe.yeast_amount)
    {
        refuse("yeast_amount".into(), error);
    }
    if let (Some(name), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount)
        && (changed.enzyme.is_some() || changed.enzyme_amount.is_some())
        && let Err(error) = enzyme(name, amount).and_then(|enzyme| enzyme.dose(amount))
    {
        refuse("enzyme_amount".into(), error);
    }
    for (index, extra) in changed.extras.iter().flatten().enumerate() {
        // An item that is not known has been noted already.
        if let Ok(item) = ingredient(plan, &extra.item, "item")
            && let Err(error) = food_grams(&item, &extra.amount, "amount")
        {
            refuse(format!("extra[{index}].amount"), error);
        }
    }
}
