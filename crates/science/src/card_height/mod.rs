//! How high a card stands on a bag with so much gas in it, and back.
//!
//! The bag lies flat, a card lies on its middle, and gas lifts it. A small card on a large bag is
//! blind at first: gas gathers in the light margins around the card before it lifts the card.

mod calibration;
mod pairs;
mod posterior;
mod prior;
mod reading;

pub use calibration::{CALIBRATION_FACTS, CalibrationError, HEIGHT_FACTS, Injected, calibrate};
pub use pairs::{best_card, fit_together, largest_bag};
pub use posterior::CurvePosterior;
pub use prior::{
    BLIND_MARGIN, CAPACITY_FACTOR, CAPACITY_FACTOR_SD, CORRELATION, CurvePrior, FACTS,
    blind_pair, covered_share, mean_margin_mm, prior,
};
pub use reading::{
    CRUMPLE_GONE, CRUMPLE_SD, GasEstimate, MODEL_SD, READING_FACTS, gas_from_rise, height_sd_mm,
};

use crate::bag::SIMULATION;
use crate::exponential::exp;
use crate::model::validity::{Beyond, Law};

/// Where the family of curves is known.
pub static FAMILY: Law = Law {
    name: "card_height.family",
    quantity: "gas as a share of the room for it",
    unit: "",
    holds: (0.0, 0.93),
    outside: "carried on, and held where the bag is drum-tight",
    source: SIMULATION,
};

/// Rise of a card against gas for one bag: one member of the fitted family.
///
/// ```text
/// r = R (1 − ((1 − x)/(1 − x0))^(1/n))          for x > x0, else 0
/// g = (V − L) (1 − (1 − x0) (1 − r/R)^n)
/// ```
///
/// r rise (mm), g gas (mL, the trapped air included), V capacity, L liquid, R full height less
/// height at rest, x = g/(V − L), n exponent, x0 dead share.
///
/// # Accuracy
/// 0.1 to 1 % of full height, that is 0.1 to 1.3 mm root mean square, over the simulated bags.
/// # Source
/// [`SIMULATION`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CardCurve {
    /// Capacity V of the bag (mL).
    pub capacity_ml: f64,
    /// Liquid L in it (mL).
    pub liquid_ml: f64,
    /// Height of the drum-tight bag (mm).
    pub full_height_mm: f64,
    /// Height of the card with liquid only (mm).
    pub rest_height_mm: f64,
    /// Exponent n (1).
    pub exponent: f64,
    /// Share x0 of the room for gas that fills before the card lifts (1).
    pub dead_share: f64,
}

impl CardCurve {
    /// Gas at which the bag is drum-tight, in millilitres.
    pub fn room_ml(&self) -> f64 {
        self.capacity_ml - self.liquid_ml
    }

    /// Where the curve is beyond [`FAMILY`] with so much gas at a minute, the trapped air included.
    pub fn beyond(&self, gas_ml: f64, minute: f64) -> Option<Beyond> {
        FAMILY.mark(gas_ml / self.room_ml(), minute)
    }

    /// Gas that fills before the card lifts, in millilitres.
    pub fn dead_ml(&self) -> f64 {
        self.dead_share * self.room_ml()
    }

    /// Rise at which the bag is drum-tight, in millimetres.
    pub fn full_rise_mm(&self) -> f64 {
        self.full_height_mm - self.rest_height_mm
    }

    /// Rise of the card above its height with liquid only, in millimetres.
    ///
    /// Nothing up to the dead share; the full rise from the drum-tight bag on.
    pub fn rise_mm(&self, gas_ml: f64) -> f64 {
        let left = (1.0 - gas_ml / self.room_ml()) / (1.0 - self.dead_share);
        // A power, in a third of its time: this is asked for every minute of every draw.
        let power = exp(libm::log(left.clamp(0.0, 1.0)) / self.exponent);
        self.full_rise_mm() * (1.0 - power)
    }

    /// Gas that holds the card at a rise, in millilitres: the inverse of [`Self::rise_mm`].
    ///
    /// At no rise this is [`Self::dead_ml`], the most gas that does not lift the card.
    pub fn gas_ml(&self, rise_mm: f64) -> f64 {
        let left = self.left(rise_mm);
        self.room_ml() * (1.0 - (1.0 - self.dead_share) * libm::pow(left, self.exponent))
    }

    /// Gas that one millimetre more of rise stands for, in millilitres per millimetre.
    pub fn ml_per_mm(&self, rise_mm: f64) -> f64 {
        let steepness = self.room_ml() * (1.0 - self.dead_share) * self.exponent;
        steepness / self.full_rise_mm() * libm::pow(self.left(rise_mm), self.exponent - 1.0)
    }

    /// Share of the full rise that is still to come (1).
    fn left(&self, rise_mm: f64) -> f64 {
        (1.0 - rise_mm / self.full_rise_mm()).clamp(0.0, 1.0)
    }
}
