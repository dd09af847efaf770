//! In what two recipes differ.

use crate::amount::{Amount, AmountKind};
use crate::bench;
use crate::plan::{Extra, Lies, Plan, Recipe, Variable};
use barm_science::setup::YeastKind;
use barm_science::stoichiometry::{hexose_at_once, hexose_in_all};
use std::collections::BTreeSet;

/// Two amounts of one thing are the same within this share (1).
const SAME: f64 = 0.02;
/// Two masses or sugars of unlike foods are the same within this share (1).
const ALIKE: f64 = 0.05;
/// Two temperatures are the same within this (K).
const SAME_KELVIN: f64 = 0.5;
/// A tray is as warm as the water within this (K).
const TRAY_KELVIN: f64 = 2.0;

/// The variables in which two recipes differ.
///
/// How much food there is counts as changed with the food itself unless the two weigh the same,
/// hold the same sugar or starch, or fill the same spoon (which has a finding of its own).
pub fn changes(plan: &Plan, one: &Recipe, other: &Recipe) -> BTreeSet<Variable> {
    let mut changed = BTreeSet::new();
    let mut note = |is: bool, variable: Variable| {
        if is {
            changed.insert(variable);
        }
    };
    note(one.food != other.food, Variable::Food);
    note(food_amount(plan, one, other), Variable::FoodAmount);
    note(one.enzyme != other.enzyme, Variable::Enzyme);
    note(enzyme_amount(one, other), Variable::EnzymeAmount);
    note(one.yeast != other.yeast, Variable::Yeast);
    note(yeast_amount(one, other), Variable::YeastAmount);
    note(unlike(one.water.value, other.water.value, SAME), Variable::Water);
    note(unlike_extras(&one.extras, &other.extras), Variable::Extra);
    note(one.bag.bag != other.bag.bag, Variable::Bag);
    note(one.card.card != other.card.card, Variable::Card);
    let warmer = (one.water_celsius - other.water_celsius).abs() > SAME_KELVIN;
    note(warmer, Variable::WaterTemperature);
    // A tray that is as warm as the water belongs to the water's temperature.
    let follows = warmer && in_its_tray(one) && in_its_tray(other);
    note(one.lies != other.lies && !follows, Variable::Lies);
    changed
}

/// The same, seen by a question about `variable`: none of something counts as an amount of it.
pub fn changes_for(
    plan: &Plan,
    variable: Variable,
    one: &Recipe,
    other: &Recipe,
) -> BTreeSet<Variable> {
    let mut changed = changes(plan, one, other);
    let (kind, none) = match variable {
        Variable::FoodAmount => (Variable::Food, one.food.is_none() || other.food.is_none()),
        Variable::EnzymeAmount => {
            (Variable::Enzyme, one.enzyme.is_none() || other.enzyme.is_none())
        }
        Variable::YeastAmount => {
            (Variable::Yeast, one.yeast.is_none() || other.yeast.is_none())
        }
        _ => return changed,
    };
    if none && changed.remove(&kind) {
        changed.insert(variable);
    }
    changed
}

fn unlike(one: f64, other: f64, share: f64) -> bool {
    (one - other).abs() > share * one.abs().max(other.abs())
}

fn in_its_tray(recipe: &Recipe) -> bool {
    matches!(recipe.lies, Lies::WarmTray(celsius)
        if (celsius - recipe.water_celsius).abs() <= TRAY_KELVIN)
}

fn food_amount(plan: &Plan, one: &Recipe, other: &Recipe) -> bool {
    let (Some(food), Some(second)) = (&one.food, &other.food) else { return false };
    let (Some(amount), Some(second_amount)) = (&one.food_amount, &other.food_amount) else {
        return false;
    };
    let weighed = |food: &str, amount: &Amount| {
        let found = bench::ingredient(plan, food, "food").ok()?;
        let (grams, _) = bench::food_grams(&found, amount, "food_amount").ok()?;
        Some((grams, found.composition))
    };
    let (Some((grams, of)), Some((second_grams, second_of))) =
        (weighed(food, amount), weighed(second, second_amount))
    else {
        // What cannot be weighed is said elsewhere.
        return amount.kind == second_amount.kind && unlike_amounts(amount, second_amount);
    };
    if food == second {
        return unlike(grams, second_grams, SAME);
    }
    if same_spoon(amount, second_amount) {
        return false;
    }
    let parts = [
        (grams, second_grams),
        (grams * hexose_at_once(&of), second_grams * hexose_at_once(&second_of)),
        (grams * hexose_in_all(&of), second_grams * hexose_in_all(&second_of)),
    ];
    parts.into_iter().all(|(first, second)| unlike(first, second, ALIKE))
}

/// Whether two amounts fill the same spoon.
pub(super) fn same_spoon(one: &Amount, other: &Amount) -> bool {
    one.kind == AmountKind::Spoon
        && other.kind == AmountKind::Spoon
        && !unlike(one.value, other.value, SAME)
}

fn enzyme_amount(one: &Recipe, other: &Recipe) -> bool {
    // Units of one enzyme say nothing about another.
    if one.enzyme != other.enzyme {
        return false;
    }
    let (Some(name), Some(amount), Some(second)) =
        (&one.enzyme, &one.enzyme_amount, &other.enzyme_amount)
    else {
        return false;
    };
    let measures =
        |amount: &Amount| bench::enzyme(name, amount).ok().and_then(|e| e.measures(amount));
    match (measures(amount), measures(second)) {
        (Some(first), Some(second)) => unlike(first, second, SAME),
        _ => unlike_amounts(amount, second),
    }
}

fn yeast_amount(one: &Recipe, other: &Recipe) -> bool {
    let (Some(kind), Some(second)) = (one.yeast, other.yeast) else { return false };
    // Fresh yeast is mostly water: equal yeast is not equal mass.
    let fresh = [kind, second].contains(&YeastKind::Compressed);
    if kind != second && fresh {
        return false;
    }
    let grams = |kind, amount| bench::yeast_grams(kind, amount).map(|(grams, _)| grams).ok();
    match (grams(kind, &one.yeast_amount), grams(second, &other.yeast_amount)) {
        (Some(first), Some(second)) => unlike(first, second, SAME),
        _ => unlike_amounts(&one.yeast_amount, &other.yeast_amount),
    }
}

fn unlike_amounts(one: &Amount, other: &Amount) -> bool {
    one.kind != other.kind || unlike(one.value, other.value, SAME)
}

fn unlike_extras(one: &[Extra], other: &[Extra]) -> bool {
    let held = |extra: &Extra, list: &[Extra]| {
        list.iter().any(|e| e.item == extra.item && !unlike_amounts(&e.amount, &extra.amount))
    };
    one.len() != other.len() || one.iter().any(|extra| !held(extra, other))
}
