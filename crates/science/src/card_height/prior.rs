//! What is known of a bag's curve before it is calibrated with a syringe.

use super::{CardCurve, CurvePosterior};
use crate::bag::{SIMULATION, full_height_mm, short_side_and_aspect, simulated_capacity_ml};
use crate::fact::Fact;
use crate::setup::{Bag, Card};

const fn simulated(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::derived(name, value, unit, SIMULATION)
}

const fn judged(name: &'static str, value: f64) -> Fact {
    Fact::derived(name, value, "1", JUDGED)
}

const JUDGED: &str = "judgement on lost zip strip, folded corners and film that cannot crumple \
     perfectly, beside the own membrane simulation (2109 runs)";

const EXPONENT_BASE: Fact = simulated("card_height.exponent.base", 1.74, "1");
const EXPONENT_COVER: Fact = simulated("card_height.exponent.cover", 0.68, "1");
const EXPONENT_ASPECT: Fact = simulated("card_height.exponent.aspect", -0.11, "1");
const EXPONENT_WEIGHT: Fact = simulated("card_height.exponent.weight", 0.22, "m2/kg");
const EXPONENT_SD: Fact = judged("card_height.exponent.sd", 0.15).within((0.15, 0.25));
const EXPONENT_SD_STEP: Fact = judged("card_height.exponent.sd_step", 0.05);

const DEAD_MOST: Fact = simulated("card_height.dead_share.most", 0.27, "1");
const DEAD_MARGIN: Fact = simulated("card_height.dead_share.margin", 13.0, "mm");
const DEAD_SCALE: Fact = simulated("card_height.dead_share.scale", 46.0, "mm");
const DEAD_DEPTH: Fact = simulated("card_height.dead_share.depth", 0.038, "1/mm");
const DEAD_WEIGHT: Fact = simulated("card_height.dead_share.weight", 0.19, "m2/kg");
const DEAD_SD: Fact = judged("card_height.dead_share.sd", 0.01).within((0.01, 0.08));
const DEAD_SD_MARGIN: Fact =
    Fact { unit: "1/mm", ..judged("card_height.dead_share.sd_margin", 0.000_83) };

const CARD_WEIGHT: Fact = simulated("card_height.card_weight", 0.19, "kg/m2");

/// Mean uncovered margin over which a card is blind to the first gas (mm).
pub const BLIND_MARGIN: Fact = simulated("card_height.blind_margin", 25.0, "mm");

/// Correlation of exponent and dead share over bags (1).
pub const CORRELATION: Fact = simulated("card_height.correlation", 0.35, "1");

/// Real capacity over simulated capacity (1).
pub const CAPACITY_FACTOR: Fact = judged("card_height.capacity_factor", 0.97)
    .within((0.97 - 1.645 * 0.04, 0.97 + 1.645 * 0.04));

/// Standard deviation of [`CAPACITY_FACTOR`] from bag to bag (1).
pub const CAPACITY_FACTOR_SD: Fact = judged("card_height.capacity_factor_sd", 0.04);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    EXPONENT_BASE,
    EXPONENT_COVER,
    EXPONENT_ASPECT,
    EXPONENT_WEIGHT,
    EXPONENT_SD,
    EXPONENT_SD_STEP,
    DEAD_MOST,
    DEAD_MARGIN,
    DEAD_SCALE,
    DEAD_DEPTH,
    DEAD_WEIGHT,
    DEAD_SD,
    DEAD_SD_MARGIN,
    CARD_WEIGHT,
    BLIND_MARGIN,
    CORRELATION,
    CAPACITY_FACTOR,
    CAPACITY_FACTOR_SD,
];

/// No simulated bag lies outside these; a draw is held inside.
const EXPONENTS: (f64, f64) = (1.2, 3.5);
/// See [`EXPONENTS`].
const DEAD_SHARES: (f64, f64) = (0.0, 0.6);

/// A bag's curve as far as it is known, beforehand or by a calibration.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePrior {
    /// The curve at the means of what is known.
    pub mean: CardCurve,
    /// Standard deviation of the exponent before any calibration (1).
    pub exponent_sd: f64,
    /// Standard deviation of the dead share before any calibration (1), cut at zero.
    pub dead_share_sd: f64,
    /// Capacity by the simulation, before [`CAPACITY_FACTOR`] (mL).
    simulated_ml: f64,
    /// The curve at the means of the prior, whatever a calibration found since.
    table: CardCurve,
    /// What a calibration left open.
    posterior: CurvePosterior,
}

impl CurvePrior {
    /// The curve at three independent standard normal deviates: of the exponent, of the dead share
    /// (which follows the exponent with [`CORRELATION`]) and of the capacity factor; after a
    /// calibration, of what that left open of them.
    pub fn curve(&self, exponent: f64, dead_share: f64, capacity: f64) -> CardCurve {
        self.at(self.posterior.deviates([exponent, dead_share, capacity]))
    }

    /// The same bag and card with what a calibration left open, in place of all that was known before.
    pub fn known(&self, posterior: CurvePosterior) -> Self {
        Self { mean: self.at(posterior.mean), posterior, ..*self }
    }

    /// What a calibration left open of this bag.
    pub const fn posterior(&self) -> CurvePosterior {
        self.posterior
    }

    fn at(&self, [exponent, dead_share, capacity]: [f64; 3]) -> CardCurve {
        let own = (1.0 - CORRELATION.value * CORRELATION.value).sqrt();
        let dead_share = CORRELATION.value * exponent + own * dead_share;
        let factor = CAPACITY_FACTOR.value + CAPACITY_FACTOR_SD.value * capacity;
        let exponent = self.table.exponent + self.exponent_sd * exponent;
        let dead_share = self.table.dead_share + self.dead_share_sd * dead_share;
        CardCurve {
            capacity_ml: with_room(self.simulated_ml * factor, self.table.liquid_ml),
            exponent: exponent.clamp(EXPONENTS.0, EXPONENTS.1),
            dead_share: dead_share.clamp(DEAD_SHARES.0, DEAD_SHARES.1),
            ..self.table
        }
    }
}

/// What is known beforehand of how a card rises on a bag with so much liquid in it.
///
/// ```text
/// n  = 1.74 + 0.68 √c − 0.11 (a − 1) + 0.22 (q − 0.19)
/// x0 = 0.27 (1 − exp(−(m − 13)/46)) − 0.038 d + 0.19 (q − 0.19),  at least 0, and 0 for m < 13
/// ```
///
/// c covered share of the bag, a long over short side, m mean uncovered margin (mm), d liquid
/// over the area of the bag (mm), q mass of the card over its area (kg/m²). The spread of n and
/// x0 grows with the margin; it is a judgement on creases, stiffness and liquid.
///
/// # Accuracy
/// Within 0.95 mm root mean square of every simulated card and sheet up to 93 % full.
/// # Source
/// [`SIMULATION`].
pub fn prior(bag: &Bag, card: &Card, liquid_ml: f64) -> CurvePrior {
    let (_, aspect) = short_side_and_aspect(bag);
    let margin = mean_margin_mm(bag, card);
    let heavier = 1e3 * card.grams / (card.length_mm * card.width_mm) - CARD_WEIGHT.value;
    let depth_mm = 1e3 * liquid_ml / (bag.width_mm * bag.height_mm);
    let exponent = EXPONENT_BASE.value
        + EXPONENT_COVER.value * covered_share(bag, card).sqrt()
        + EXPONENT_ASPECT.value * (aspect - 1.0)
        + EXPONENT_WEIGHT.value * heavier;
    let beyond = margin - DEAD_MARGIN.value;
    let dead_share = if beyond > 0.0 {
        DEAD_MOST.value * (1.0 - libm::exp(-beyond / DEAD_SCALE.value))
            - DEAD_DEPTH.value * depth_mm
            + DEAD_WEIGHT.value * heavier
    } else {
        0.0
    };
    let wider = (aspect - 1.0)
        + ((margin - 15.0) / 12.0).clamp(0.0, 1.0)
        + ((margin - 45.0) / 40.0).clamp(0.0, 1.0);
    let simulated_ml = simulated_capacity_ml(bag);
    let table = CardCurve {
        capacity_ml: with_room(CAPACITY_FACTOR.value * simulated_ml, liquid_ml),
        liquid_ml,
        full_height_mm: full_height_mm(bag).max(depth_mm + 1.0),
        rest_height_mm: depth_mm,
        exponent: exponent.clamp(EXPONENTS.0, EXPONENTS.1),
        dead_share: dead_share.clamp(DEAD_SHARES.0, DEAD_SHARES.1),
    };
    CurvePrior {
        mean: table,
        exponent_sd: EXPONENT_SD.value + EXPONENT_SD_STEP.value * wider,
        dead_share_sd: DEAD_SD.value + DEAD_SD_MARGIN.value * margin,
        simulated_ml,
        table,
        posterior: CurvePosterior::NOTHING_MEASURED,
    }
}

/// A capacity that leaves at least some room over the liquid, so that no curve divides by zero.
fn with_room(capacity_ml: f64, liquid_ml: f64) -> f64 {
    capacity_ml.max(1.02 * liquid_ml + 1.0)
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
