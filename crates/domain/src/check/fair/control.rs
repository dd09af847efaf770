//! Bags that show what happens without the thing under study.

use crate::bench;
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{Period, Plan, Recipe, Treatment, Variable};
use barm_science::enzyme::Product;
use barm_science::stoichiometry::hexose_in_all;

const CARRIER: &str = "powders are bulked with dextrose or maltodextrin, from memory";
const BLOCKS: &str = "NIST/SEMATECH e-Handbook of Statistical Methods, section 5.3.3.2";

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    if plan.questions.is_empty() {
        return Vec::new();
    }
    let all: Vec<(&Treatment, Recipe)> =
        plan.treatments().map(|(_, treatment)| (treatment, plan.recipe(treatment))).collect();
    let mut found = Vec::new();
    found.extend(yeast_alone(plan, &all));
    found.extend(enzyme_without_food(plan, &all));
    found.extend(food_without_yeast(plan, &all));
    found.extend(every_period(plan, &all));
    found
}

/// Whether a bag shows what yeast does by itself.
fn is_yeast_alone(recipe: &Recipe) -> bool {
    recipe.yeast.is_some()
        && recipe.food.is_none()
        && recipe.enzyme.is_none()
        && recipe.extras.is_empty()
}

fn yeast_alone(plan: &Plan, all: &[(&Treatment, Recipe)]) -> Option<Finding> {
    if all.iter().any(|(_, recipe)| is_yeast_alone(recipe)) {
        return None;
    }
    let fed = |variable| {
        use Variable::{Enzyme, EnzymeAmount, Food, FoodAmount};
        [Food, FoodAmount, Enzyme, EnzymeAmount].contains(&variable)
    };
    // A question about warmth is fair without it, but nobody sees how much the food gave.
    let needed =
        plan.questions.iter().any(|q| fed(q.variable) || q.crossed_with.is_some_and(fed));
    Some(
        Finding::new(
            if needed { Severity::Fault } else { Severity::Warning },
            "no-control",
            "No bag shows what yeast does with no food at all.",
            "Add a shared control with yeast and water, and no food.",
        )
        .at("control"),
    )
}

fn enzyme_without_food(plan: &Plan, all: &[(&Treatment, Recipe)]) -> Vec<Finding> {
    let product = |recipe: &Recipe| -> Option<&'static Product> {
        let amount = recipe.enzyme_amount.as_ref()?;
        bench::enzyme(recipe.enzyme.as_ref()?, amount).ok().map(|found| found.product)
    };
    let mut seen: Vec<&str> = Vec::new();
    let mut found = Vec::new();
    for (treatment, recipe) in all {
        let Some(enzyme) = product(recipe) else { continue };
        let sugar = hexose_in_all(&enzyme.carrier) > 0.0;
        if !sugar || recipe.yeast.is_none() || seen.contains(&enzyme.key) {
            continue;
        }
        seen.push(enzyme.key);
        let shown = all.iter().any(|(_, other)| {
            other.yeast.is_some()
                && other.food.is_none()
                && product(other).is_some_and(|p| p.key == enzyme.key)
        });
        if !shown {
            found.push(
                Finding::new(
                    Severity::Fault,
                    "no-enzyme-control",
                    format!(
                        "“{}” may hold sugar that feeds the yeast, and no bag shows how much.",
                        enzyme.name
                    ),
                    format!("Add a shared control with yeast, “{}” and no food.", enzyme.name),
                )
                .at(place::key(plan, treatment, "enzyme"))
                .says(CARRIER),
            );
        }
    }
    found
}

fn food_without_yeast(plan: &Plan, all: &[(&Treatment, Recipe)]) -> Option<Finding> {
    let fed = all.iter().find(|(_, recipe)| recipe.food.is_some() && recipe.yeast.is_some())?;
    let shown = all.iter().any(|(_, recipe)| recipe.yeast.is_none() && recipe.food.is_some());
    (!shown).then(|| {
        Finding::new(
            Severity::Warning,
            "no-yeastless-control",
            "No bag shows that food with no yeast makes no gas.",
            "Add a shared control with food and water, and no yeast.",
        )
        .at(place::treatment(plan, &fed.0.name))
    })
}

fn every_period(plan: &Plan, all: &[(&Treatment, Recipe)]) -> Vec<Finding> {
    let control = |name: &str| {
        plan.is_control(name)
            || all.iter().any(|(t, recipe)| t.name == name && is_yeast_alone(recipe))
    };
    let has_one = |period: &Period| {
        if plan.bags.is_empty() {
            // Without a bag list, shared controls stand in every period.
            plan.controls.iter().any(|control| control.per_period > 0)
        } else {
            plan.bags.iter().any(|bag| bag.period == period.name && control(&bag.treatment))
        }
    };
    // Where there is no control at all, that is said once and elsewhere.
    if !all.iter().any(|(treatment, _)| control(&treatment.name)) {
        return Vec::new();
    }
    let without = plan.periods.iter().enumerate().filter(|(_, period)| !has_one(period));
    without
        .map(|(p, period)| {
            Finding::new(
                Severity::Warning,
                "period-without-control",
                format!("Period “{}” has no control bag of its own.", period.name),
                "Put one control bag in each period: rooms, jars and hours differ.",
            )
            .at(format!("period[{p}]"))
            .says(BLOCKS)
        })
        .collect()
}
