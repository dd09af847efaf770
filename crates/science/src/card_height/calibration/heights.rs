//! How far heights over known volumes may lie off a bag's curve, and how far together.

use super::Injected;
use crate::card_height::CardCurve;
use crate::card_height::reading::{CRUMPLE_SD, MODEL_SD, crumpled};
use crate::cholesky::lower_triangle;
use crate::fact::Fact;
use crate::prior::AIR_LOG_SD;
use crate::ruler::Ruler;

const SYRINGE_SCALE_SD: Fact = Fact::memory(
    "card_height.syringe_scale_sd",
    0.023,
    "1",
    "graduated capacity of a plastic syringe within 4 % of what is expelled, ISO 7886-1 table 1, from \
     memory; limits ±p give p/√3",
)
.within((0.01, 0.04));

const SYRINGE_STROKE_SD: Fact = Fact::memory(
    "card_height.syringe_stroke_sd",
    0.02,
    "1",
    "plunger read to half a division, dead volume, a leak at the zip; judgement",
)
.within((0.01, 0.05));

/// Distance along the curve over which the family misses a bag in the same sense, as a share of the
/// room for gas (1).
const MISFIT_REACH: Fact = Fact::derived(
    "card_height.misfit_reach",
    0.15,
    "1",
    "misfits of the family fitted to 84 curves up to 80 % full change sign after 0.1 to 0.15; own \
     membrane simulation (2109 runs)",
)
.within((0.08, 0.25));

/// Facts of this file.
pub const HEIGHT_FACTS: &[Fact] = &[SYRINGE_SCALE_SD, SYRINGE_STROKE_SD, MISFIT_REACH];

/// Rise over the zero reading (mm), at which there was `air_ml` in the bag already.
pub(super) fn above_zero_mm(curve: &CardCurve, gas_ml: f64, air_ml: f64) -> f64 {
    curve.rise_mm(gas_ml + air_ml) - curve.rise_mm(air_ml)
}

/// L with L Lᵀ = C, for the heights over known volumes (mm).
pub(super) fn root(
    curve: &CardCurve,
    points: &[Injected],
    ruler: Ruler,
    air_ml: f64,
) -> Vec<Vec<f64>> {
    let zero = square(ruler.reading_sd_mm());
    let own = square(ruler.difference_sd_mm().max(FINEST_MM)) - zero;
    let each: Vec<Doubts> =
        points.iter().map(|point| Doubts::of(curve, point.gas_ml, air_ml)).collect();
    let entry = |i: usize, j: usize| {
        let (one, other) = (&each[i], &each[j]);
        let apart = (one.share - other.share) / MISFIT_REACH.value;
        let together = zero
            + square(SYRINGE_SCALE_SD.value) * one.along * other.along
            + one.air * other.air
            + square(MODEL_SD.value) * libm::exp(-0.5 * square(apart))
            + square(CRUMPLE_SD.value) * one.folds * other.folds;
        if i != j {
            return together;
        }
        together + own + square(SYRINGE_STROKE_SD.value * one.along)
    };
    let row = |i: usize| (0..points.len()).map(|j| entry(i, j)).collect::<Vec<f64>>();
    lower_triangle(&(0..points.len()).map(row).collect::<Vec<_>>())
}

/// No ruler tells a difference of heights more finely (mm).
const FINEST_MM: f64 = 0.1;

/// What moves a height over a known volume.
struct Doubts {
    /// Share of the room for gas that is filled (1).
    share: f64,
    /// Change with the logarithm of the volume put in (mm).
    along: f64,
    /// Change by one standard deviation of the air that was there before (mm).
    air: f64,
    /// Share of its crumples that the bag still has (1).
    folds: f64,
}

impl Doubts {
    fn of(curve: &CardCurve, gas_ml: f64, air_ml: f64) -> Self {
        // As far as a volume may be off, up and down: near the tight bag the slope runs away.
        let far = 0.03;
        let put = |factor: f64| above_zero_mm(curve, factor * gas_ml, air_ml);
        let left =
            |sds: f64| above_zero_mm(curve, gas_ml, air_ml * libm::exp(AIR_LOG_SD.value * sds));
        Self {
            share: gas_ml / curve.room_ml(),
            along: (put(1.0 + far) - put(1.0 - far)) / (2.0 * far),
            air: 0.5 * (left(1.0) - left(-1.0)),
            folds: crumpled(put(1.0)),
        }
    }
}

fn square(value: f64) -> f64 {
    value * value
}
