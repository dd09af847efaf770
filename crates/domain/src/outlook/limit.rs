//! What holds a bag back: which of its things would raise its gas most, if there were more of it.

mod along;

pub use along::Stretch;

use super::{OutlookError, setup};
use crate::plan::{Plan, Treatment};
use along::{Larder, along, dissolved_to, in_all};
use barm_science::model::run;
use barm_science::model::shares::shares;
use barm_science::prior::Typical;
use barm_science::setup::{Composition, Portion, Setup};

/// How much more of a thing a bag is tried with, as a share (1).
pub const MORE: f64 = 0.25;

/// What holds a bag back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum HeldBackBy {
    /// The yeast is not awake yet.
    Waking,
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
    /// What holds back all its gas by the last reading.
    pub by: HeldBackBy,
    /// What holds it back from the zero reading to the last one, stretch by stretch.
    pub along: Vec<Stretch>,
    /// Minute up to which most of the gas made is still in the liquid; 0 if it is not so at any
    /// reading.
    pub dissolved_to_min: u32,
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

/// Finds what holds back a treatment: the bag model with its best guess of every parameter, by the
/// lots in use where a pilot tried them. What
/// holds it back at each minute follows from its shares of control; what a quarter more would gain
/// is found by running it again with that, and comparing the ethanol made up to the last reading
/// that all periods reach. Ethanol counts what yeast has done; the first gas stays in the liquid.
///
/// # Errors
/// [`OutlookError`] says why the treatment cannot be followed.
pub fn limit(plan: &Plan, treatment: &Treatment) -> Result<Limit, OutlookError> {
    let Typical { setup, parameters } = plan.known.prior().typical(&setup(plan, treatment)?);
    let last = plan.common_last_reading_min();
    if last == 0 {
        return Err(OutlookError::NoTime);
    }
    let failed = |source| OutlookError::Setup { treatment: treatment.name.clone(), source };
    let made = |setup: &Setup, minute: u32| {
        let course = run(setup, &parameters, minute).map_err(failed)?;
        Ok(course.moments.last().map_or(0.0, |moment| moment.ethanol_g))
    };
    let none = Limit {
        treatment: treatment.name.clone(),
        by: HeldBackBy::NoYeast,
        along: Vec::new(),
        dissolved_to_min: 0,
        more_food: None,
        more_yeast: None,
        more_enzyme: None,
        more_time: None,
    };
    if setup.yeast.is_none() {
        return Ok(none);
    }
    let controls = shares(&setup, &parameters, last).map_err(failed)?;
    let larder = Larder {
        fed: setup.foods.iter().any(|food| feeds(&food.composition)),
        closed: mostly_closed(&setup.foods),
    };
    let base = made(&setup, last)?;
    let gain = |ethanol: f64| if base > 0.0 { ethanol / base - 1.0 } else { 0.0 };
    let more_of = |more: &dyn Fn(&Setup) -> Setup| Ok(gain(made(&more(&setup), last)?));
    let later = (f64::from(last) * (1.0 + MORE)).round() as u32;
    Ok(Limit {
        by: in_all(&controls, larder),
        along: along(&controls, larder),
        dissolved_to_min: dissolved_to(&controls),
        more_food: larder.fed.then(|| more_of(&with_food)).transpose()?,
        more_yeast: Some(more_of(&with_yeast)?),
        more_enzyme: (larder.fed && !setup.enzymes.is_empty())
            .then(|| more_of(&with_enzyme))
            .transpose()?,
        more_time: Some(gain(made(&setup, later)?)),
        ..none
    })
}

/// Whether most of the carbohydrate in the foods is of kinds that yeast cannot take in.
fn mostly_closed(foods: &[Portion]) -> bool {
    let grams = |kinds: fn(&Composition) -> f64| -> f64 {
        foods.iter().map(|food| kinds(&food.composition) * food.grams).sum()
    };
    let closed = grams(|of| {
        of.raw_starch
            + of.cooked_starch
            + of.dextrin
            + of.lactose
            + of.galactose
            + of.galactosides
    });
    let free = grams(|of| of.maltose + of.sucrose + of.glucose + of.fructose);
    closed > free
}

/// Whether a thing holds any carbohydrate that yeast could live on, closed up or free.
fn feeds(of: &Composition) -> bool {
    of.carbohydrates().iter().any(|part| *part > 0.0)
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

#[cfg(test)]
mod tests;
