//! How far heights over known volumes may lie off a bag's curve, and how far together.

use super::Injected;
use crate::card_height::CardCurve;
use crate::card_height::posterior::lower_triangle;
use crate::card_height::reading::{CRUMPLE_SD, MODEL_SD, crumpled};
use crate::fact::Fact;
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

/// L with L Lᵀ = C, for the heights over known volumes (mm).
pub(super) fn root(curve: &CardCurve, points: &[Injected], ruler: Ruler) -> Vec<Vec<f64>> {
    let square = |value: f64| value * value;
    let zero = square(ruler.reading_sd_mm());
    let (share, along): (Vec<f64>, Vec<f64>) = points
        .iter()
        .map(|point| {
            // As far as the volume may be off, up and down: near the tight bag the slope runs away.
            let far = 0.03 * point.gas_ml;
            let change = curve.rise_mm(point.gas_ml + far) - curve.rise_mm(point.gas_ml - far);
            (point.gas_ml / curve.room_ml(), change / 0.06)
        })
        .unzip();
    let folds: Vec<f64> =
        points.iter().map(|point| crumpled(curve.rise_mm(point.gas_ml))).collect();
    let entry = |i: usize, j: usize| {
        let apart = (share[i] - share[j]) / MISFIT_REACH.value;
        let together = zero
            + square(SYRINGE_SCALE_SD.value) * along[i] * along[j]
            + square(MODEL_SD.value) * libm::exp(-0.5 * square(apart))
            + square(CRUMPLE_SD.value) * folds[i] * folds[j];
        if i != j {
            return together;
        }
        together + square(ruler.difference_sd_mm()) - zero
            + square(SYRINGE_STROKE_SD.value * along[i])
    };
    let rows = 0..points.len();
    lower_triangle(
        &rows.clone().map(|i| rows.clone().map(|j| entry(i, j)).collect()).collect::<Vec<_>>(),
    )
}
