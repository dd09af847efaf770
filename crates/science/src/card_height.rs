//! How high a card stands on a bag with so much gas in it, and back.
//!
//! The bag lies flat, a card lies on its middle, and gas lifts it. A small card on a large bag is
//! blind at first: gas gathers in the light margins around the card before it lifts the card.

use crate::bag::{SIMULATION, full_height_mm, short_side_and_aspect, simulated_capacity_ml};
use crate::fact::{Fact, Status};
use crate::setup::{Bag, Card};

const fn simulated(
    name: &'static str,
    value: f64,
    unit: &'static str,
    range: Option<(f64, f64)>,
) -> Fact {
    Fact { name, value, unit, range, status: Status::Derived, source: SIMULATION }
}

const JUDGED: &str = "judgement on lost zip strip, folded corners and film that cannot crumple \
     perfectly, beside the own membrane simulation (2109 runs)";

const EXPONENT_BASE: Fact = simulated("card_height.exponent.base", 1.85, "1", None);
const EXPONENT_COVER: Fact = simulated("card_height.exponent.cover", 0.55, "1", None);
const EXPONENT_ASPECT: Fact = simulated("card_height.exponent.aspect", -0.22, "1", None);
const EXPONENT_SD: Fact = simulated("card_height.exponent.sd", 0.15, "1", Some((0.15, 0.25)));
const DEAD_PER_MM: Fact = simulated("card_height.dead_share.per_mm", 0.0036, "1/mm", None);
const DEAD_PER_ML: Fact = simulated("card_height.dead_share.per_ml", -0.0015, "1/mL", None);
const DEAD_PER_G: Fact = simulated("card_height.dead_share.per_g", 0.027, "1/g", None);
const DEAD_SD: Fact = simulated("card_height.dead_share.sd", 0.01, "1", Some((0.01, 0.08)));
const DEAD_SD_PER_MM: Fact =
    simulated("card_height.dead_share.sd_per_mm", 0.000_83, "1/mm", None);

/// Mean uncovered margin over which a card is blind to the first gas (mm).
pub const BLIND_MARGIN: Fact = simulated("card_height.blind_margin", 25.0, "mm", None);

/// Correlation of exponent and dead share over bags (1).
pub const CORRELATION: Fact = simulated("card_height.correlation", 0.35, "1", None);

/// Real capacity over simulated capacity (1).
pub const CAPACITY_FACTOR: Fact = Fact {
    name: "card_height.capacity_factor",
    value: 0.97,
    unit: "1",
    range: Some((0.97 - 1.645 * 0.04, 0.97 + 1.645 * 0.04)),
    status: Status::Derived,
    source: JUDGED,
};

/// Standard deviation of [`CAPACITY_FACTOR`] (1).
pub const CAPACITY_FACTOR_SD: Fact = Fact {
    name: "card_height.capacity_factor_sd",
    value: 0.04,
    unit: "1",
    range: None,
    status: Status::Derived,
    source: JUDGED,
};

/// Standard deviation of a card's height about the family of curves (mm).
pub const MODEL_SD: Fact = simulated("card_height.model_sd", 0.5, "mm", Some((0.1, 1.3)));

/// Standard deviation of the offset of a crumpled bag, gone above 5 mm of rise (mm).
pub const CRUMPLE_SD: Fact = Fact {
    name: "card_height.crumple_sd",
    value: 1.0,
    unit: "mm",
    range: Some((0.5, 2.0)),
    status: Status::Derived,
    source: JUDGED,
};

/// Liquid and card for which the rule for the dead share was fitted (mL).
const FITTED_LIQUID_ML: f64 = 50.0;
/// See [`FITTED_LIQUID_ML`] (g).
const FITTED_CARD_G: f64 = 1.8;
/// The exponent of a covered, square, drum-tight bag is never far from two.
const EXPONENT_LOW: f64 = 1.2;
const EXPONENT_HIGH: f64 = 3.5;
const DEAD_HIGH: f64 = 0.6;

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    EXPONENT_BASE,
    EXPONENT_COVER,
    EXPONENT_ASPECT,
    EXPONENT_SD,
    DEAD_PER_MM,
    DEAD_PER_ML,
    DEAD_PER_G,
    DEAD_SD,
    DEAD_SD_PER_MM,
    BLIND_MARGIN,
    CORRELATION,
    CAPACITY_FACTOR,
    CAPACITY_FACTOR_SD,
    MODEL_SD,
    CRUMPLE_SD,
];

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

    /// Rise at which the bag is drum-tight, in millimetres.
    pub fn full_rise_mm(&self) -> f64 {
        self.full_height_mm - self.rest_height_mm
    }

    /// Rise of the card above its height with liquid only, in millimetres.
    ///
    /// Nothing below the dead share; the full rise from the drum-tight bag on.
    pub fn rise_mm(&self, gas_ml: f64) -> f64 {
        let left = (1.0 - gas_ml / self.room_ml()) / (1.0 - self.dead_share);
        self.full_rise_mm() * (1.0 - libm::pow(left.clamp(0.0, 1.0), 1.0 / self.exponent))
    }

    /// Gas that holds the card at a rise, in millilitres: the inverse of [`Self::rise_mm`].
    ///
    /// At no rise this is the gas that just does not lift the card, the most it can be.
    pub fn gas_ml(&self, rise_mm: f64) -> f64 {
        let left = (1.0 - rise_mm / self.full_rise_mm()).clamp(0.0, 1.0);
        self.room_ml() * (1.0 - (1.0 - self.dead_share) * libm::pow(left, self.exponent))
    }

    /// Gas that one millimetre more of rise stands for, in millilitres per millimetre.
    pub fn ml_per_mm(&self, rise_mm: f64) -> f64 {
        let left = (1.0 - rise_mm / self.full_rise_mm()).clamp(0.0, 1.0);
        self.room_ml()
            * (1.0 - self.dead_share)
            * (self.exponent / self.full_rise_mm())
            * libm::pow(left, self.exponent - 1.0)
    }
}

/// What is known of a bag's curve before it is calibrated with a syringe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePrior {
    /// The curve at the means.
    pub mean: CardCurve,
    /// Standard deviation of the exponent (1).
    pub exponent_sd: f64,
    /// Standard deviation of the dead share (1), cut at zero.
    pub dead_share_sd: f64,
    /// Capacity by the simulation, before [`CAPACITY_FACTOR`] (mL).
    simulated_ml: f64,
}

impl CurvePrior {
    /// The curve at three standard normal deviates: of the exponent, of the dead share (which
    /// follows the exponent with [`CORRELATION`]) and of the capacity factor.
    pub fn curve(&self, exponent: f64, dead_share: f64, capacity: f64) -> CardCurve {
        let own = (1.0 - CORRELATION.value * CORRELATION.value).sqrt();
        let dead_share = CORRELATION.value * exponent + own * dead_share;
        let factor = CAPACITY_FACTOR.value + CAPACITY_FACTOR_SD.value * capacity;
        CardCurve {
            // Never less than the liquid itself with some room over.
            capacity_ml: (self.simulated_ml * factor).max(1.02 * self.mean.liquid_ml + 1.0),
            exponent: (self.mean.exponent + self.exponent_sd * exponent)
                .clamp(EXPONENT_LOW, EXPONENT_HIGH),
            dead_share: (self.mean.dead_share + self.dead_share_sd * dead_share)
                .clamp(0.0, DEAD_HIGH),
            ..self.mean
        }
    }
}

/// What is known beforehand of how a card rises on a bag with so much liquid in it.
///
/// ```text
/// n  = 1.85 + 0.55 √c − 0.22 (a − 1)
/// x0 = max(0, 0.0036 (m − 25) − 0.0015 (L − 50) + 0.027 (card − 1.8))
/// ```
///
/// c covered share of the bag, a long over short side, m mean uncovered margin (mm), L liquid
/// (mL), card in grams; the last two terms count only for cards that leave a margin over 25 mm.
///
/// # Source
/// [`SIMULATION`].
pub fn prior(bag: &Bag, card: &Card, liquid_ml: f64) -> CurvePrior {
    let (_, aspect) = short_side_and_aspect(bag);
    let margin = mean_margin_mm(bag, card);
    let exponent = EXPONENT_BASE.value
        + EXPONENT_COVER.value * covered_share(bag, card).sqrt()
        + EXPONENT_ASPECT.value * (aspect - 1.0);
    let dead = if blind_pair(bag, card) {
        DEAD_PER_MM.value * (margin - BLIND_MARGIN.value)
            + DEAD_PER_ML.value * (liquid_ml - FITTED_LIQUID_ML)
            + DEAD_PER_G.value * (card.grams - FITTED_CARD_G)
    } else {
        0.0
    };
    let simulated_ml = simulated_capacity_ml(bag);
    let wider = 0.05
        * ((aspect - 1.0)
            + ((margin - 15.0) / 12.0).clamp(0.0, 1.0)
            + ((margin - 45.0) / 40.0).clamp(0.0, 1.0));
    CurvePrior {
        mean: CardCurve {
            capacity_ml: CAPACITY_FACTOR.value * simulated_ml,
            liquid_ml,
            full_height_mm: full_height_mm(bag),
            rest_height_mm: 1e3 * liquid_ml / (bag.width_mm * bag.height_mm),
            exponent: exponent.clamp(EXPONENT_LOW, EXPONENT_HIGH),
            dead_share: dead.clamp(0.0, DEAD_HIGH),
        },
        exponent_sd: EXPONENT_SD.value + wider,
        dead_share_sd: DEAD_SD.value + DEAD_SD_PER_MM.value * margin,
        simulated_ml,
    }
}

/// Share of the bag's face that the card covers (1), at most 1.
pub fn covered_share(bag: &Bag, card: &Card) -> f64 {
    let (long, short) = covered_sides_mm(bag, card);
    long * short / (bag.width_mm * bag.height_mm)
}

/// Mean margin that the card leaves uncovered, in millimetres, with long side along long side.
pub fn mean_margin_mm(bag: &Bag, card: &Card) -> f64 {
    let (long, short) = covered_sides_mm(bag, card);
    (bag.width_mm + bag.height_mm - long - short) / 4.0
}

fn covered_sides_mm(bag: &Bag, card: &Card) -> (f64, f64) {
    let long = card.length_mm.max(card.width_mm).min(bag.width_mm.max(bag.height_mm));
    let short = card.length_mm.min(card.width_mm).min(bag.width_mm.min(bag.height_mm));
    (long, short)
}

/// Whether this card on this bag shows nothing of the first gas: a mean margin over
/// [`BLIND_MARGIN`].
///
/// An index card (76 by 127 mm) on a gallon bag needs nearly a litre before it moves.
pub fn blind_pair(bag: &Bag, card: &Card) -> bool {
    mean_margin_mm(bag, card) > BLIND_MARGIN.value
}
