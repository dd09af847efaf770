//! Malt: flour of sprouted barley, which brings its own enzymes into every bag.

use super::label::LabelUnit;
use super::products::Beside;
use crate::fact::Fact;
use crate::setup::{EnzymeDose, EnzymeKind};

/// Diastatic power of malt flour as bakers buy it (°L), most of it beta-amylase.
pub const DIASTATIC_POWER: Fact = Fact::memory(
    "enzyme.product.malt_diastatic_power",
    40.0,
    "[arb'U]/g",
    "°L; bakers' flours 20 to 60, pale brewers' malt 100 to 125 (trade, from memory); go by the \
     label when it says",
)
.within((20.0, 80.0));

/// Alpha-amylase of the same flour (DU/g).
pub const DEXTRINIZING_UNITS: Fact = Fact::memory(
    "enzyme.product.malt_dextrinizing_units",
    15.0,
    "[arb'U]/g",
    "DU/g; pale brewers' malt 30 to 50 (trade, from memory), bakers' flours are let down",
)
.within((7.0, 40.0));

/// The alpha-amylase of a gram of malt flour. It bears heat as the bacterial one does, within what
/// is known of either, and shares its place.
pub const DEXTRINIZING: Beside = Beside {
    kind: EnzymeKind::BacterialAlphaAmylase,
    strength: DEXTRINIZING_UNITS,
    label: LabelUnit::MaltDextrinizing,
};

/// Facts of this module.
pub const FACTS: &[Fact] = &[DIASTATIC_POWER, DEXTRINIZING_UNITS];

/// The enzymes in so many grams of malt flour, measured with a relative standard deviation from bag
/// to bag. The flour itself is a food.
pub fn enzymes(grams: f64, dosing_sd: f64) -> [EnzymeDose; 2] {
    let of = |kind, strength: &Fact, label: LabelUnit| {
        let units = grams * label.activity(strength.value);
        let unsure = libm::hypot(strength.log_sd(), label.log_sd());
        EnzymeDose::fresh(kind, units, unsure, dosing_sd, None)
    };
    [
        of(EnzymeKind::BetaAmylase, &DIASTATIC_POWER, LabelUnit::Lintner),
        of(DEXTRINIZING.kind, &DEXTRINIZING.strength, DEXTRINIZING.label),
    ]
}
