//! The lines of a label, checked against each other and turned into a composition.

use super::{
    Declared, LabelError, LabelStarch, NaturalSugar, NutritionLabel, SERVINGS_G, STEP,
};
use crate::food::DAMAGED_FLOUR;
use crate::setup::Composition;
use crate::stoichiometry::SALT_PER_SODIUM;

/// The lines in grams a serving, made consistent.
pub(super) struct Lines {
    pub(super) sugars: f64,
    pub(super) added: f64,
    pub(super) starch: f64,
    fat: f64,
    protein: f64,
    salt: f64,
    carbohydrate: f64,
}

impl Lines {
    pub(super) fn checked(label: &NutritionLabel) -> Result<Self, LabelError> {
        let serving_g = label.serving_g;
        if !(SERVINGS_G.0..=SERVINGS_G.1).contains(&serving_g) {
            return Err(LabelError::Serving { serving_g });
        }
        let grams = |line, value| plausible(line, value, serving_g, "g");
        let read = |line, declared: Declared| grams(line, declared.grams());
        let none = Declared::Grams(0.0);
        let carbohydrate = read("total carbohydrate", label.carbohydrate)?;
        let fiber = read("fiber", label.fiber)?;
        let sugars = read("total sugars", label.sugars)?;
        let added = read("added sugars", label.added_sugars.unwrap_or(none))?;
        let alcohols = read("sugar alcohols", label.sugar_alcohols.unwrap_or(none))?;
        let fat = grams("fat", label.fat_g.unwrap_or(0.0))?;
        let protein = grams("protein", label.protein_g.unwrap_or(0.0))?;
        let sodium_mg = label.sodium_mg.unwrap_or(0.0);
        let sodium_mg = plausible("sodium", sodium_mg, 1e3 * serving_g, "mg")?;
        let salt = 1e-3 * sodium_mg * SALT_PER_SODIUM;

        within("added sugars", added, "total sugars", sugars, 1.0)?;
        within("total sugars", sugars, "total carbohydrate", carbohydrate, 1.0)?;
        let parts = fiber + sugars + alcohols;
        within("fiber and sugars", parts, "total carbohydrate", carbohydrate, 2.0)?;
        let all = carbohydrate + fat + protein + salt;
        within("carbohydrate, fat and protein", all, "the serving", serving_g, 1.5)?;
        Ok(Self {
            sugars: sugars.min(carbohydrate),
            added: added.min(sugars).min(carbohydrate),
            starch: (carbohydrate - parts).max(0.0),
            fat,
            protein,
            salt,
            carbohydrate,
        })
    }

    pub(super) fn composition(&self, label: &NutritionLabel) -> Composition {
        // A small serving whose lines are all rounded up may add up to more than itself.
        let all = self.carbohydrate + self.fat + self.protein + self.salt;
        let per_100_g = 100.0 / label.serving_g.max(all);
        let known = label.fat_g.is_some() && label.protein_g.is_some();
        let water = if known { (label.serving_g - all).max(0.0) } else { 0.0 };
        let mut food = Composition {
            water: water * per_100_g,
            sucrose: self.added * per_100_g,
            salt: self.salt * per_100_g,
            ..Composition::default()
        };
        let starch = self.starch * per_100_g;
        match label.starch {
            LabelStarch::Raw => {
                food.cooked_starch = starch * DAMAGED_FLOUR.value;
                food.raw_starch = starch - food.cooked_starch;
            }
            LabelStarch::Cooked => food.cooked_starch = starch,
            LabelStarch::Dextrin => food.dextrin = starch,
        }
        let natural = (self.sugars - self.added) * per_100_g;
        match label.natural_sugar {
            NaturalSugar::Unknown => {
                food.sucrose += 0.5 * natural;
                food.glucose = 0.25 * natural;
                food.fructose = 0.25 * natural;
            }
            NaturalSugar::Sucrose => food.sucrose += natural,
            NaturalSugar::Fruit => {
                food.glucose = 0.5 * natural;
                food.fructose = 0.5 * natural;
            }
            NaturalSugar::Milk => food.lactose = natural,
            NaturalSugar::Malt => food.maltose = natural,
            NaturalSugar::Dextrose => food.glucose = natural,
        }
        food
    }
}

/// Refuses what is less than nothing or no number; whether it is too much is asked of all lines together.
fn plausible(
    line: &'static str,
    value: f64,
    most: f64,
    unit: &'static str,
) -> Result<f64, LabelError> {
    if value >= 0.0 && value.is_finite() {
        Ok(value)
    } else {
        Err(LabelError::Line { line, value, most, unit })
    }
}

/// Refuses a part that exceeds its whole by more than rounding can do.
fn within(
    part: &'static str,
    part_g: f64,
    whole: &'static str,
    whole_g: f64,
    slack_g: f64,
) -> Result<(), LabelError> {
    if part_g <= whole_g + slack_g * STEP.value {
        return Ok(());
    }
    Err(LabelError::PartExceedsWhole { part, part_g, whole, whole_g })
}
