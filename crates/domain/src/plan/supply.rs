//! Materials, label foods and equipment.

use crate::amount::Amount;
use barm_science::food::label::NutritionLabel;
use barm_science::setup::Composition;

/// A pack that can be bought.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// Food id, label-food name, enzyme product key, or one of `yeast`, `bags`, `cards`,
    /// `labels`, `cups`, `spoons`.
    pub item: String,
    /// What one pack holds.
    pub pack: Amount,
    /// Price of one pack in the plan's currency; `None` if not known.
    pub price: Option<f64>,
    /// What is in the cupboard already.
    pub in_stock: Option<Amount>,
}

/// A food that the teacher describes from its nutrition label.
#[derive(Debug, Clone, PartialEq)]
pub struct LabelFood {
    /// Name, unique among foods.
    pub name: String,
    /// Mass of a level customary teaspoon (g), if it was weighed.
    pub grams_per_tsp: Option<f64>,
    /// What stands on the label.
    pub label: NutritionLabel,
    /// What it is made of, as far as the label tells.
    pub composition: Composition,
    /// Relative standard deviation of the carbohydrate that the label leaves open (1).
    pub content_sd: f64,
    /// Allergens named on the label.
    pub allergens: Vec<String>,
}

/// How many of each tool there are for one class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Equipment {
    /// Thermometers.
    pub thermometers: Option<u32>,
    /// Breath-alcohol meters.
    pub meters: Option<u32>,
    /// Rulers.
    pub rulers: Option<u32>,
    /// Kettles.
    pub kettles: Option<u32>,
    /// Balances.
    pub balances: Option<u32>,
    /// Goggles.
    pub goggles: Option<u32>,
}
