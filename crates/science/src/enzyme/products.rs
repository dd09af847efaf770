//! Enzyme products as sold: how strong, in what carrier, how dangerous as dust. Which there are
//! stands in [`super::shelf`].

use super::label::LabelUnit;
use super::shelf::PRODUCTS;
use crate::fact::Fact;
use crate::food::Allergen;
use crate::setup::{Composition, EnzymeDose, EnzymeKind, Grain, Portion};

/// By what a product is measured out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Measure {
    /// By the gram.
    Gram,
    /// By the millilitre.
    Milliliter,
    /// By the drop.
    Drop,
    /// By the tablet.
    Tablet,
}

impl Measure {
    /// The word for one of it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Milliliter => "mL",
            Self::Drop => "drop",
            Self::Tablet => "tablet",
        }
    }
}

/// A second enzyme in a product.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beside {
    /// What it does.
    pub kind: EnzymeKind,
    /// Label units of it in one measure.
    pub strength: Fact,
    /// In which unit.
    pub label: LabelUnit,
}

/// One kind of product on the shelf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Product {
    /// Key in a plan, such as `lactase-drops`.
    pub key: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// What it does, or does first of all.
    pub kind: EnzymeKind,
    /// By what it is measured out.
    pub measure: Measure,
    /// Label units in one measure, when the label does not say (with range and source).
    pub strength: Fact,
    /// In which unit the label speaks.
    pub label: LabelUnit,
    /// What else it does.
    pub beside: Option<Beside>,
    /// Mass of one measure (g).
    pub grams: f64,
    /// What the mass is made of besides enzyme.
    pub carrier: Composition,
    /// How unsure that is (1).
    pub carrier_sd: f64,
    /// The plant that raw starch in it comes from.
    pub grain: Option<Grain>,
    /// Major allergens that it is made from, or often carries traces of.
    pub traces: &'static [Allergen],
    /// Whether it is or makes a dust that must not be breathed (powders, crushed tablets).
    pub dust: bool,
}

/// The product of that key.
pub fn product(key: &str) -> Option<&'static Product> {
    PRODUCTS.iter().find(|product| product.key == key)
}

/// How unsure an activity is (1), as the standard deviation of a logarithm: the product's strength,
/// where the label does not say it, and what one label unit comes to in a bag.
fn activity_sd(strength: &Fact, label: LabelUnit) -> f64 {
    libm::hypot(strength.log_sd(), label.log_sd())
}

impl Product {
    /// Activity of one measure (µmol/min at the reference temperature).
    pub const fn units(&self) -> f64 {
        self.label.activity(self.strength.value)
    }

    /// How unsure that is when the label does not say (1), as the standard deviation of a logarithm.
    pub fn activity_sd(&self) -> f64 {
        activity_sd(&self.strength, self.label)
    }

    /// `amount` measures put straight into a bag: the first enzyme, with the carrier.
    pub fn dose(&self, amount: f64, dosing_sd: f64) -> EnzymeDose {
        EnzymeDose::fresh(
            self.kind,
            amount * self.units(),
            self.activity_sd(),
            dosing_sd,
            Some(self.portion(self.carrier, amount * self.grams, dosing_sd)),
        )
    }

    /// `taken_ml` of a stock solution that holds `amount` measures in `stock_ml`: the first enzyme,
    /// with the carrier.
    ///
    /// The carrier then is mostly water: it counts as liquid in the bag. A stock is thin enough
    /// to weigh one gram a millilitre.
    pub fn stock(
        &self,
        amount: f64,
        stock_ml: f64,
        taken_ml: f64,
        dosing_sd: f64,
    ) -> EnzymeDose {
        let grams = amount * self.grams;
        let share = taken_ml / stock_ml;
        let water = (stock_ml - grams).max(0.0);
        let all = grams + water;
        let mut composition = self.carrier;
        let in_stock = |part: f64| part * grams / all;
        composition.water = (composition.water * grams + 100.0 * water) / all;
        for sugar in composition.carbohydrates_mut() {
            *sugar = in_stock(*sugar);
        }
        composition.salt = in_stock(composition.salt);
        composition.acids = composition.acids.times(grams / all);
        composition.bicarbonate = in_stock(composition.bicarbonate);
        EnzymeDose::fresh(
            self.kind,
            share * amount * self.units(),
            self.activity_sd(),
            dosing_sd,
            Some(self.portion(composition, share * all, dosing_sd)),
        )
    }

    /// The second enzyme of that many measures, which came with the carrier of the first.
    pub fn beside(&self, amount: f64, dosing_sd: f64) -> Option<EnzymeDose> {
        self.beside.map(|Beside { kind, strength, label }| {
            let units = amount * label.activity(strength.value);
            EnzymeDose::fresh(kind, units, activity_sd(&strength, label), dosing_sd, None)
        })
    }

    fn portion(&self, composition: Composition, grams: f64, dosing_sd: f64) -> Portion {
        Portion {
            composition,
            grams,
            dosing_sd,
            content_sd: self.carrier_sd,
            grain: self.grain,
        }
    }
}
