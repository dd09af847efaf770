//! Enzyme products as sold, without names: how strong, in what carrier, how dangerous as dust.

use super::label::LabelUnit;
use crate::fact::Fact;
use crate::setup::{Composition, EnzymeDose, EnzymeKind, Portion};

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

/// One kind of product on the shelf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Product {
    /// Key in a plan, such as `lactase-drops`.
    pub key: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// What it does.
    pub kind: EnzymeKind,
    /// By what it is measured out.
    pub measure: Measure,
    /// Label units in one measure, when the label does not say (with range and source).
    pub strength: Fact,
    /// In which unit the label speaks.
    pub label: LabelUnit,
    /// Relative standard deviation of the activity when the label does not say (1), as that of
    /// a logarithm.
    pub activity_sd: f64,
    /// Mass of one measure (g).
    pub grams: f64,
    /// What the mass is made of besides enzyme.
    pub carrier: Composition,
    /// How unsure that is (1).
    pub carrier_sd: f64,
    /// Whether it is or makes a dust that must not be breathed (powders, crushed tablets).
    pub dust: bool,
}

/// Home-brew powders are bulked with dextrose or maltodextrin; which one is anyone's guess.
const BULKED: Composition =
    Composition { water: 5.0, glucose: 40.0, dextrin: 50.0, ..Composition::NONE };

const SHELF: &str = "usual strength on the shelf, from memory; go by the label when it says";

const fn strength(name: &'static str, value: f64, range: (f64, f64)) -> Fact {
    Fact::memory(name, value, "[arb'U]", SHELF).within(range)
}

/// All products.
pub const PRODUCTS: &[Product] = &[
    Product {
        key: "lactase-drops",
        name: "lactase drops",
        kind: EnzymeKind::NeutralLactase,
        measure: Measure::Drop,
        strength: strength("enzyme.product.lactase_drops", 220.0, (70.0, 700.0)),
        label: LabelUnit::NeutralLactase,
        activity_sd: 0.8,
        grams: 0.045,
        // The rest is glycerol, which baker's yeast does not ferment.
        carrier: Composition { water: 45.0, ..Composition::NONE },
        carrier_sd: 0.1,
        dust: false,
    },
    Product {
        key: "lactase-tablet",
        name: "lactase tablet",
        kind: EnzymeKind::AcidLactase,
        measure: Measure::Tablet,
        strength: strength("enzyme.product.lactase_tablet", 6000.0, (3000.0, 9000.0)),
        label: LabelUnit::FccLactase,
        activity_sd: 0.6,
        grams: 0.6,
        carrier: Composition { water: 5.0, glucose: 15.0, ..Composition::NONE },
        carrier_sd: 0.6,
        dust: true,
    },
    Product {
        key: "glucoamylase-powder",
        name: "glucoamylase powder",
        kind: EnzymeKind::Glucoamylase,
        measure: Measure::Gram,
        strength: strength("enzyme.product.glucoamylase_powder", 250.0, (100.0, 400.0)),
        label: LabelUnit::Amyloglucosidase,
        activity_sd: 0.8,
        grams: 1.0,
        carrier: BULKED,
        carrier_sd: 0.3,
        dust: true,
    },
    Product {
        key: "glucoamylase-liquid",
        name: "glucoamylase liquid",
        kind: EnzymeKind::Glucoamylase,
        measure: Measure::Milliliter,
        strength: strength("enzyme.product.glucoamylase_liquid", 300.0, (100.0, 400.0)),
        label: LabelUnit::Amyloglucosidase,
        activity_sd: 0.8,
        grams: 1.15,
        carrier: Composition { water: 50.0, glucose: 10.0, ..Composition::NONE },
        carrier_sd: 0.6,
        dust: false,
    },
    Product {
        key: "amylase-powder",
        name: "amylase powder (fungal)",
        kind: EnzymeKind::FungalAlphaAmylase,
        measure: Measure::Gram,
        strength: strength("enzyme.product.amylase_powder", 1000.0, (400.0, 2000.0)),
        label: LabelUnit::Dextrinizing,
        activity_sd: 0.7,
        grams: 1.0,
        carrier: BULKED,
        carrier_sd: 0.3,
        dust: true,
    },
    Product {
        key: "bacterial-amylase",
        name: "bacterial amylase powder",
        kind: EnzymeKind::BacterialAlphaAmylase,
        measure: Measure::Gram,
        strength: strength("enzyme.product.bacterial_amylase", 1000.0, (200.0, 4000.0)),
        label: LabelUnit::Dextrinizing,
        activity_sd: 1.0,
        grams: 1.0,
        carrier: BULKED,
        carrier_sd: 0.3,
        dust: true,
    },
    Product {
        key: "invertase-liquid",
        name: "invertase liquid",
        kind: EnzymeKind::Invertase,
        measure: Measure::Milliliter,
        strength: strength("enzyme.product.invertase_liquid", 2000.0, (500.0, 6000.0)),
        label: LabelUnit::Sumner,
        activity_sd: 0.8,
        grams: 1.15,
        carrier: Composition { water: 45.0, ..Composition::NONE },
        carrier_sd: 0.1,
        dust: false,
    },
];

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    PRODUCTS[0].strength,
    PRODUCTS[1].strength,
    PRODUCTS[2].strength,
    PRODUCTS[3].strength,
    PRODUCTS[4].strength,
    PRODUCTS[5].strength,
    PRODUCTS[6].strength,
];

/// The product of that key.
pub fn product(key: &str) -> Option<&'static Product> {
    PRODUCTS.iter().find(|product| product.key == key)
}

impl Product {
    /// Activity of one measure (µmol/min at the reference temperature).
    pub const fn units(&self) -> f64 {
        self.strength.value * self.label.micromoles_per_min().value
    }

    /// `amount` measures put straight into a bag.
    pub fn dose(&self, amount: f64, dosing_sd: f64) -> EnzymeDose {
        EnzymeDose::fresh(
            self.kind,
            amount * self.units(),
            self.activity_sd,
            dosing_sd,
            Some(Portion {
                composition: self.carrier,
                grams: amount * self.grams,
                dosing_sd,
                content_sd: self.carrier_sd,
                grain: None,
            }),
        )
    }

    /// `taken_ml` of a stock solution that holds `amount` measures in `stock_ml`.
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
            self.activity_sd,
            dosing_sd,
            Some(Portion {
                composition,
                grams: share * all,
                dosing_sd,
                content_sd: self.carrier_sd,
                grain: None,
            }),
        )
    }
}
