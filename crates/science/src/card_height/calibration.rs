//! A bag's own curve, from known volumes put in with a syringe.

mod heights;
mod moments;

use super::posterior::square;
use super::{CurvePosterior, CurvePrior};
use crate::cholesky::lower_triangle;
use crate::fact::Fact;
use crate::fit::{Problem, least_squares};
use crate::ruler::Ruler;
pub use heights::HEIGHT_FACTS;
use heights::{above_zero_mm, root};
use thiserror::Error;

/// Heights whose scatter is known beforehand for as many as this: so many have to lie wide before
/// all are trusted less (1).
const SCATTER_KNOWN: Fact = Fact::derived(
    "card_height.scatter_known",
    4.0,
    "1",
    "judgement: reading and model errors are known about as well as four heights would show",
);

/// Facts of this file.
pub const CALIBRATION_FACTS: &[Fact] = &[SCATTER_KNOWN];

/// A volume of air in the bag, and how high it holds the card.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Injected {
    /// All air put in so far (mL).
    pub gas_ml: f64,
    /// Rise of the card above its height with liquid only (mm).
    pub rise_mm: f64,
}

/// Why nothing can be learned from a calibration.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum CalibrationError {
    /// Nothing was measured.
    #[error("a calibration needs at least one volume with its height")]
    Nothing,
    /// A volume that is none, or that this bag cannot hold.
    #[error(
        "{gas_ml} mL cannot be put into this bag, which holds at most {most_ml:.0} mL of gas"
    )]
    Volume {
        /// What was given (mL).
        gas_ml: f64,
        /// The most that the bag can hold (mL).
        most_ml: f64,
    },
    /// A rise that is none, or higher than the bag.
    #[error(
        "the card cannot stand {rise_mm} mm higher on this bag, which reaches {most_mm:.0} mm when it \
         is tight; heights are in millimetres above the card's height before the first air"
    )]
    Rise {
        /// What was given (mm).
        rise_mm: f64,
        /// The most that the bag can reach (mm).
        most_mm: f64,
    },
}

/// What is known of a bag's curve once its card was read over known volumes. A later calibration goes
/// on from the posterior of an earlier one.
///
/// ```text
/// rise_i = r(g_i; u) + e_i      u ~ N(0, I)      e ~ N(0, C)
/// C_ij   = z² + s² a_i a_j + m² exp(−((x_i − x_j)/ℓ)²/2) + b_i b_j + c_i c_j + [i = j] (d² − z² + t² a_i²)
/// ```
///
/// r the rise by the family's curve at the deviates u, over that of the air in the bag at the zero reading
/// (`trapped_air_ml`); z one reading and d a difference of two (`ruler`); s the scale and t a stroke of
/// the syringe, a = g dr/dg; m [`MODEL_SD`](super::MODEL_SD), by which the family misses a bag: not at each
/// height anew but over a stretch ℓ of the room x for gas; b what the trapped air may be off; c crumples.
///
/// The most likely u is found by least squares; mean and covariance of u are then summed up over a
/// grid around it, since a dead share cut at zero is not normal. Where heights lie about the curve
/// more widely than C says, C is widened: by (k + Σ)/(k + ν), Σ their sum of squares, ν their degrees
/// of freedom, k = 4 as if that many others had lain as expected.
///
/// # Source
/// Maximum a posteriori; the misfit as a Gaussian process: M. C. Kennedy & A. O'Hagan, J. R. Stat. Soc.
/// B 63, 425–464 (2001); the widening is that of R. T. Birge, Phys. Rev. 40, 207–227 (1932), held back
/// by what is known; all from memory.
/// # Errors
/// [`CalibrationError`] for no point, or for one that this bag cannot show.
pub fn calibrate(
    prior: &CurvePrior,
    points: &[Injected],
    ruler: Ruler,
    trapped_air_ml: f64,
) -> Result<CurvePosterior, CalibrationError> {
    let air_ml = trapped_air_ml;
    check(prior, points, air_ml)?;
    let mut bag = Bag { prior, points, air_ml, root: root(&prior.mean, points, ruler, air_ml) };
    let mut found = bag.best();
    // What a doubt of the volume does to a height depends on the curve, which is what is looked for.
    for _ in 0..PASSES {
        let [exponent, dead_share, capacity] = found.deviates;
        bag.root = root(&prior.curve(exponent, dead_share, capacity), points, ruler, air_ml);
        found = bag.best();
    }
    let wider = found.widening(points.len());
    if wider > 1.0 {
        bag.root.iter_mut().flatten().for_each(|entry| *entry *= wider);
        found = bag.best();
    }
    Ok(prior.posterior().narrowed(&bag.moments(&found)))
}

/// Times that the doubt of the heights is worked out anew from the curve they lead to.
const PASSES: usize = 3;

fn check(prior: &CurvePrior, points: &[Injected], air_ml: f64) -> Result<(), CalibrationError> {
    if points.is_empty() {
        return Err(CalibrationError::Nothing);
    }
    let widest = prior.curve(0.0, 0.0, 3.0);
    let (most_ml, most_mm) = (widest.room_ml() - air_ml, widest.full_rise_mm() + 10.0);
    for Injected { gas_ml, rise_mm } in points.iter().copied() {
        if !(0.0..=most_ml).contains(&gas_ml) {
            return Err(CalibrationError::Volume { gas_ml, most_ml });
        }
        if !(-10.0..=most_mm).contains(&rise_mm) {
            return Err(CalibrationError::Rise { rise_mm, most_mm });
        }
    }
    Ok(())
}

/// A bag under calibration: three independent deviates, to be found.
struct Bag<'a> {
    prior: &'a CurvePrior,
    points: &'a [Injected],
    /// Air in the bag at the zero reading (mL).
    air_ml: f64,
    /// Of the covariance of the heights.
    root: Vec<Vec<f64>>,
}

impl Problem for Bag<'_> {
    fn count(&self) -> usize {
        self.points.len() + 3
    }

    fn residuals(&self, deviates: &[f64], out: &mut [f64]) {
        let curve = self.prior.curve(deviates[0], deviates[1], deviates[2]);
        for (at, (point, row)) in self.points.iter().zip(&self.root).enumerate() {
            let known: f64 = (0..at).map(|before| row[before] * out[before]).sum();
            out[at] =
                (point.rise_mm - above_zero_mm(&curve, point.gas_ml, self.air_ml) - known)
                    / row[at];
        }
        // Before any reading they are standard normal.
        for (out, deviate) in out.iter_mut().skip(self.points.len()).zip(deviates) {
            *out = -deviate;
        }
    }
}

/// The most likely deviates.
struct Found {
    deviates: [f64; 3],
    /// Of their covariance by the curvature there.
    triangle: [[f64; 3]; 3],
    /// Sum of squares of the heights about the curve, in units of their variance.
    heights_ss: f64,
}

impl Found {
    /// By how much standard deviations of heights are to be widened (1), if more than 1.
    fn widening(&self, heights: usize) -> f64 {
        let open: f64 = self.triangle.iter().flatten().map(|entry| entry * entry).sum();
        let freedom = heights as f64 - (3.0 - open);
        libm::sqrt(
            (SCATTER_KNOWN.value + self.heights_ss) / (SCATTER_KNOWN.value + freedom.max(0.0)),
        )
    }
}

impl Bag<'_> {
    fn best(&self) -> Found {
        let mut deviates = [0.0; 3];
        let mut triangle = CurvePosterior::NOTHING_MEASURED.root;
        // Three rows are there whatever was measured, and every deviate has a curve.
        if let Ok(fit) = least_squares(self, &[0.0; 3]) {
            deviates = core::array::from_fn(|at| fit.parameters[at]);
            triangle =
                fit.unscaled_covariance.map_or(triangle, |rows| square(&lower_triangle(&rows)));
        }
        let mut off = vec![0.0; self.count()];
        self.residuals(&deviates, &mut off);
        let heights_ss = off[..self.points.len()].iter().map(|r| r * r).sum();
        Found { deviates, triangle, heights_ss }
    }

    /// What is known of the deviates, about what was found.
    fn moments(&self, found: &Found) -> CurvePosterior {
        let mut off = vec![0.0; self.count()];
        moments::around(
            CurvePosterior { mean: found.deviates, root: found.triangle },
            |deviates| {
                self.residuals(&deviates, &mut off);
                off.iter().map(|r| r * r).sum()
            },
        )
    }
}
