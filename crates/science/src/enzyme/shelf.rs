//! What enzymes are on sale.

use super::label::LabelUnit;
use super::malt;
use super::products::{Measure, Product};
use crate::fact::Fact;
use crate::food::Allergen;
use crate::setup::{Composition, EnzymeKind, Grain};

/// Home-brew powders are bulked with dextrose or maltodextrin; which one is anyone's guess.
const BULKED: Composition =
    Composition { water: 5.0, glucose: 40.0, dextrin: 50.0, ..Composition::NONE };

const SHELF: &str = "usual strength on the shelf, from memory; go by the label when it says";

const fn strength(name: &'static str, value: f64, range: (f64, f64)) -> Fact {
    Fact::memory(name, value, "[arb'U]", SHELF).within(range)
}

/// All products, without the names of makers.
pub const PRODUCTS: &[Product] = &[
    Product {
        key: "lactase-drops",
        name: "lactase drops",
        kind: EnzymeKind::NeutralLactase,
        measure: Measure::Drop,
        strength: strength("enzyme.product.lactase_drops", 220.0, (70.0, 700.0)),
        label: LabelUnit::NeutralLactase,
        beside: None,
        grams: 0.045,
        // The rest is glycerol, which baker's yeast does not ferment.
        carrier: Composition { water: 45.0, ..Composition::NONE },
        carrier_sd: 0.1,
        grain: None,
        traces: &[],
        dust: false,
    },
    Product {
        key: "lactase-tablet",
        name: "lactase tablet",
        kind: EnzymeKind::AcidLactase,
        measure: Measure::Tablet,
        strength: strength("enzyme.product.lactase_tablet", 6000.0, (3000.0, 9000.0)),
        label: LabelUnit::FccLactase,
        beside: None,
        grams: 0.6,
        carrier: Composition { water: 5.0, glucose: 15.0, ..Composition::NONE },
        carrier_sd: 0.6,
        grain: None,
        traces: &[],
        dust: true,
    },
    Product {
        key: "glucoamylase-powder",
        name: "glucoamylase powder",
        kind: EnzymeKind::Glucoamylase,
        measure: Measure::Gram,
        strength: strength("enzyme.product.glucoamylase_powder", 250.0, (100.0, 400.0)),
        label: LabelUnit::Amyloglucosidase,
        beside: None,
        grams: 1.0,
        carrier: BULKED,
        carrier_sd: 0.3,
        grain: None,
        traces: &[],
        dust: true,
    },
    Product {
        key: "glucoamylase-liquid",
        name: "glucoamylase liquid",
        kind: EnzymeKind::Glucoamylase,
        measure: Measure::Milliliter,
        strength: strength("enzyme.product.glucoamylase_liquid", 300.0, (100.0, 400.0)),
        label: LabelUnit::Amyloglucosidase,
        beside: None,
        grams: 1.15,
        carrier: Composition { water: 50.0, glucose: 10.0, ..Composition::NONE },
        carrier_sd: 0.6,
        grain: None,
        traces: &[],
        dust: false,
    },
    Product {
        key: "amylase-powder",
        name: "amylase powder (fungal)",
        kind: EnzymeKind::FungalAlphaAmylase,
        measure: Measure::Gram,
        strength: strength("enzyme.product.amylase_powder", 1000.0, (400.0, 2000.0)),
        label: LabelUnit::Dextrinizing,
        beside: None,
        grams: 1.0,
        carrier: BULKED,
        carrier_sd: 0.3,
        grain: None,
        traces: &[],
        dust: true,
    },
    Product {
        key: "bacterial-amylase",
        name: "bacterial amylase powder",
        kind: EnzymeKind::BacterialAlphaAmylase,
        measure: Measure::Gram,
        strength: strength("enzyme.product.bacterial_amylase", 1000.0, (200.0, 4000.0)),
        label: LabelUnit::Dextrinizing,
        beside: None,
        grams: 1.0,
        carrier: BULKED,
        carrier_sd: 0.3,
        grain: None,
        traces: &[],
        dust: true,
    },
    Product {
        key: "invertase-liquid",
        name: "invertase liquid",
        kind: EnzymeKind::Invertase,
        measure: Measure::Milliliter,
        strength: strength("enzyme.product.invertase_liquid", 2000.0, (500.0, 6000.0)),
        label: LabelUnit::Sumner,
        beside: None,
        grams: 1.15,
        carrier: Composition { water: 45.0, ..Composition::NONE },
        carrier_sd: 0.1,
        grain: None,
        traces: &[],
        dust: false,
    },
    Product {
        key: "diastatic-malt",
        name: "diastatic malt powder",
        kind: EnzymeKind::BetaAmylase,
        measure: Measure::Gram,
        strength: malt::DIASTATIC_POWER,
        label: LabelUnit::Lintner,
        beside: Some(malt::DEXTRINIZING),
        grams: 1.0,
        // Malted barley let down with wheat flour, often with dextrose.
        carrier: Composition {
            water: 8.0,
            raw_starch: 60.0,
            cooked_starch: 5.0,
            sucrose: 1.0,
            maltose: 1.0,
            glucose: 4.0,
            ..Composition::NONE
        },
        carrier_sd: 0.2,
        grain: Some(Grain::Barley),
        traces: &[Allergen::Wheat],
        dust: true,
    },
    Product {
        key: "alpha-galactosidase-tablet",
        name: "alpha-galactosidase tablet",
        kind: EnzymeKind::AlphaGalactosidase,
        measure: Measure::Tablet,
        strength: strength("enzyme.product.alpha_galactosidase_tablet", 400.0, (150.0, 1200.0)),
        label: LabelUnit::Galactosidase,
        beside: None,
        grams: 0.5,
        carrier: Composition { water: 5.0, glucose: 10.0, ..Composition::NONE },
        carrier_sd: 0.6,
        grain: None,
        traces: &[],
        dust: true,
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
    PRODUCTS[8].strength,
];
