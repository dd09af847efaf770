//! What holds a bag back: which of its things would raise its gas most, if there were more of it.

use super::{OutlookError, setup};
use crate::plan::{Plan, Treatment};
use barm_science::model::nominal;
use barm_science::setup::{Composition, Portion, Setup};

/// How much more of a thing a bag is tried with, as a share (1).
pub const MORE: f64 = 0.25;

/// A gain that is worth naming (1): below it, a quarter more changes next to nothing (own rule).
const WORTH: f64 = 0.05;

/// Plain sugar with which a bag is tried, as a share of its yeast (1): what yeast uses up in about
/// a quarter of an hour (own rule).
const SUGAR_TO_YEAST: f64 = 0.1;

/// What holds a bag back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum HeldBackBy {
    /// There is no yeast in it.
    NoYeast,
    /// There is nothing in it that feeds yeast.
    NoFood,
    /// There is food in it, but yeast cannot take it in: starch without an enzyme, milk sugar.
    Locked,
    /// The enzyme frees sugar more slowly than yeast could use it.
    Enzyme,
    /// The food runs out before the last reading, or nearly.
    Food,
    /// There is sugar to spare: how much yeast there is, and how long it has, decide.
    Yeast,
}

/// What one treatment is limited by on the plan's first day, as far as the bag model tells.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// Name of the treatment.
    pub treatment: String,
    /// What holds it back.
    pub by: HeldBackBy,
    /// Gain in fermentation by the last reading from [`MORE`] of the food (1); nothing without
    /// food or yeast, and so for the others.
    pub more_food: Option<f64>,
    /// From [`MORE`] of the yeast.
    pub more_yeast: Option<f64>,
    /// From [`MORE`] of the enzyme.
    pub more_enzyme: Option<f64>,
    /// From [`MORE`] of the time.
    pub more_time: Option<f64>,
}

/// Finds what holds back a treatment: the bag model with its best guess of every parameter, run
/// again with more of one thing at a time, and compared by the ethanol made up to the last reading
/// that all periods reach. Ethanol counts what yeast has done; the first gas stays in the liquid.
///
/// # Errors
/// [`OutlookError`] says why the treatment cannot be followed.
pub fn limit(plan: &Plan, treatment: &Treatment) -> Result<Limit, OutlookError> {
    let setup = setup(plan, treatment)?;
    let last = plan.common_last_reading_min();
    if last == 0 {
        return Err(OutlookError::NoTime);
    }
    let made = |setup: &Setup, minute: u32| {
        let failed = |source| OutlookError::Setup { treatment: treatment.name.clone(), source };
        let course = nominal(setup, minute).map_err(failed)?;
        Ok(course.moments.last().map_or(0.0, |moment| moment.ethanol_g))
    };
    let none = |by| Limit {
        treatment: treatment.name.clone(),
        by,
        more_food: None,
        more_yeast: None,
        more_enzyme: None,
        more_time: None,
    };
    if setup.yeast.is_none() {
        return Ok(none(HeldBackBy::NoYeast));
    }
    let base = made(&setup, last)?;
    let gain = |ethanol: f64| if base > 0.0 { ethanol / base - 1.0 } else { 0.0 };
    let later = (f64::from(last) * (1.0 + MORE)).round() as u32;
    let more_time = gain(made(&setup, later)?);
    let more_yeast = gain(made(&with_yeast(&setup), last)?);
    let fed = setup.foods.iter().any(|food| feeds(&food.composition));
    if !fed {
        let by = HeldBackBy::NoFood;
        return Ok(Limit {
            more_yeast: Some(more_yeast),
            more_time: Some(more_time),
            ..none(by)
        });
    }
    let more_food = gain(made(&with_food(&setup), last)?);
    let mut more_enzyme = None;
    // An enzyme that does nothing here, such as lactase on starch, opens nothing.
    let mut at_work = None;
    if !setup.enzymes.is_empty() {
        more_enzyme = Some(gain(made(&with_enzyme(&setup), last)?));
        let without = Setup { enzymes: Vec::new(), ..setup.clone() };
        if gain(made(&without, last)?) < -WORTH {
            at_work = more_enzyme;
        }
    }
    let sugar = gain(made(&with_sugar(&setup), last)?);
    let closed = mostly_closed(&setup.foods);
    Ok(Limit {
        treatment: treatment.name.clone(),
        by: verdict(more_food, more_yeast, at_work, sugar, closed),
        more_food: Some(more_food),
        more_yeast: Some(more_yeast),
        more_enzyme,
        more_time: Some(more_time),
    })
}

/// Yeast that makes more of a little plain sugar than of company is hungry; then what keeps its food
/// from it decides. An enzyme counts here only if it is at work.
fn verdict(food: f64, yeast: f64, enzyme: Option<f64>, sugar: f64, closed: bool) -> HeldBackBy {
    let hungry = sugar >= WORTH && sugar > yeast;
    if !hungry {
        return HeldBackBy::Yeast;
    }
    match enzyme {
        Some(gain) if gain >= WORTH && gain >= food => HeldBackBy::Enzyme,
        None if closed => HeldBackBy::Locked,
        _ => HeldBackBy::Food,
    }
}

/// Whether most of the carbohydrate in the foods is of kinds that yeast cannot take in.
fn mostly_closed(foods: &[Portion]) -> bool {
    let grams = |kinds: fn(&Composition) -> f64| -> f64 {
        foods.iter().map(|food| kinds(&food.composition) * food.grams).sum()
    };
    let closed =
        grams(|of| of.raw_starch + of.cooked_starch + of.dextrin + of.lactose + of.galactose);
    let free = grams(|of| of.maltose + of.sucrose + of.glucose + of.fructose);
    closed > free
}

/// Whether a thing holds any carbohydrate that yeast could live on, closed up or free.
fn feeds(of: &Composition) -> bool {
    let sugars = of.maltose + of.sucrose + of.lactose + of.galactose + of.glucose + of.fructose;
    sugars + of.raw_starch + of.cooked_starch + of.dextrin > 0.0
}

fn with_food(setup: &Setup) -> Setup {
    let mut more = setup.clone();
    for food in more.foods.iter_mut().filter(|food| feeds(&food.composition)) {
        food.grams *= 1.0 + MORE;
    }
    more
}

fn with_yeast(setup: &Setup) -> Setup {
    let mut more = setup.clone();
    if let Some(yeast) = &mut more.yeast {
        yeast.grams *= 1.0 + MORE;
    }
    more
}

fn with_enzyme(setup: &Setup) -> Setup {
    let mut more = setup.clone();
    for enzyme in &mut more.enzymes {
        enzyme.units *= 1.0 + MORE;
    }
    more
}

fn with_sugar(setup: &Setup) -> Setup {
    let mut more = setup.clone();
    let yeast = setup.yeast.map_or(0.0, |yeast| yeast.grams);
    let composition = Composition { glucose: 100.0, ..Composition::default() };
    let grams = SUGAR_TO_YEAST * yeast;
    more.foods.push(Portion { composition, grams, ..Portion::default() });
    more
}

#[cfg(test)]
mod tests;
