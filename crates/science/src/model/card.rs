//! The card on a bag, read above the bag's own zero.

use super::mixture::Mixture;
use super::parameters::Parameters;
use crate::bag::SIMULATION;
use crate::card_height::{self, CRUMPLE_GONE, CardCurve};
use crate::fact::Fact;
use crate::setup::Setup;

const fn simulated(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::derived(name, value, unit, SIMULATION)
}

/// Distance from the middle at which the next two were simulated (mm).
const OFF_CENTER: Fact = simulated("model.card.off_center", 27.0, "mm");
/// Growth of the exponent there (1); it goes with the square of the distance.
const OFF_CENTER_EXPONENT: Fact = simulated("model.card.off_center_exponent", 0.29, "1");
/// Growth of the dead share there (1).
const OFF_CENTER_DEAD: Fact = simulated("model.card.off_center_dead", 0.063, "1");

/// Facts of this file.
pub const FACTS: &[Fact] = &[OFF_CENTER, OFF_CENTER_EXPONENT, OFF_CENTER_DEAD];

/// A card on one bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CardOnBag {
    /// Its curve.
    pub curve: CardCurve,
    contents_ml: f64,
    crumple_mm: f64,
}

impl CardOnBag {
    /// The card of a setup on a bag with that mixture in it.
    pub fn new(setup: &Setup, mixture: &Mixture, parameters: &Parameters) -> Self {
        let prior = card_height::prior(&setup.bag, &setup.card, mixture.contents_ml());
        let mut curve =
            prior.curve(parameters.exponent, parameters.dead_share, parameters.capacity);
        let off = parameters.off_center_mm / OFF_CENTER.value;
        curve.exponent += OFF_CENTER_EXPONENT.value * off * off;
        curve.dead_share += OFF_CENTER_DEAD.value * off * off;
        Self { curve, contents_ml: mixture.contents_ml(), crumple_mm: parameters.crumple_mm }
    }

    /// Height of the card over its height with liquid only, in millimetres; crumples fade as the
    /// gas pulls them out.
    pub fn height_mm(&self, gas_with_air_ml: f64) -> f64 {
        let rise = self.curve.rise_mm(gas_with_air_ml);
        rise + self.crumple_mm * (1.0 - rise / CRUMPLE_GONE.value).max(0.0)
    }

    /// Liquid, solids and gas over the bag's own capacity (1).
    pub fn fill(&self, gas_with_air_ml: f64) -> f64 {
        (self.contents_ml + gas_with_air_ml) / self.curve.capacity_ml
    }

    /// Gas with the air at which the bag is filled to a share of its capacity, in millilitres.
    pub fn gas_at_fill_ml(&self, fill: f64) -> f64 {
        fill * self.curve.capacity_ml - self.contents_ml
    }
}
