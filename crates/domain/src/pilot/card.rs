//! What the syringe says of bags and cards.

use super::fault::{PilotFault, is_zero};
use super::linear::root;
use super::numbers::{Told, through, told};
use super::readings::{Seen, Volume};
use super::syringe::Syringe;
use crate::bench::tools::TRAPPED_AIR;
use crate::plan::Bag;
use barm_science::bag::StandardBag;
use barm_science::card_height::{
    CalibrationError, CurvePosterior, CurvePrior, Injected, calibrate, prior,
};
use barm_science::prior::{Key, Learned, Of, Spread, standard};
use barm_science::ruler::Ruler;

/// The three numbers of a bag's curve, in the order of its deviates.
pub(super) const CURVE: [&str; 3] = ["exponent", "dead-share", "capacity"];

/// Their names for bags of one size.
fn names(bag: &Bag) -> [String; 3] {
    CURVE.map(|name| Key::new(name, Of::Bags(StandardBag::nearest(bag))).to_string())
}

/// How the numbers of a curve divide over a box and its bags.
fn of_one_box() -> Spread {
    let row = standard().into_iter().find(|row| row.name == CURVE[0]);
    row.map_or(Spread::day(1.0), |row| row.spread)
}

/// What is known of the curve of one bag out of the box.
pub(super) fn curve(syringe: &Syringe, numbers: &Learned) -> CurvePrior {
    let spread = of_one_box();
    let names = names(&syringe.bag.bag);
    let names = names.each_ref().map(String::as_str);
    let known = through(numbers, &names, spread.day, spread.bag);
    let table = prior(&syringe.bag.bag, &syringe.card.card, syringe.water_ml);
    match root(&known.covariance) {
        Some(lower) => table.known(CurvePosterior {
            mean: core::array::from_fn(|at| known.mean[at]),
            root: core::array::from_fn(|i| core::array::from_fn(|j| lower[i][j])),
        }),
        None => table,
    }
}

/// Numbers of the box once one bag's card was read over known volumes of air.
pub(super) fn injected(
    before: &Learned,
    syringe: &Syringe,
    readings: &[Seen<Volume>],
) -> Result<Learned, PilotFault> {
    let zeros = readings.iter().filter(|one| is_zero(one.value.air_ml));
    let zeros: Vec<f64> = zeros.map(|one| one.value.height_mm).collect();
    let zero = zeros.iter().sum::<f64>() / zeros.len().max(1) as f64;
    let points: Vec<Injected> = readings
        .iter()
        .filter(|one| !is_zero(one.value.air_ml))
        .map(|one| Injected { gas_ml: one.value.air_ml, rise_mm: one.value.height_mm - zero })
        .collect();
    let known = curve(syringe, before);
    let found = calibrate(&known, &points, Ruler::USUAL, TRAPPED_AIR.value)
        .map_err(|error| fault(&error, readings, zero))?;
    let spread = of_one_box();
    let entry = |i: usize, j: usize| -> f64 {
        (0..3).map(|at| found.root[i][at] * found.root[j][at]).sum()
    };
    let covariance = (0..3).map(|i| (0..3).map(|j| entry(i, j)).collect()).collect();
    let seen = Told { mean: found.mean.to_vec(), covariance, own: spread.bag };
    let names = names(&syringe.bag.bag);
    let names = names.each_ref().map(String::as_str);
    Ok(told(before, &names, spread.day, &seen))
}

fn fault(error: &CalibrationError, readings: &[Seen<Volume>], zero: f64) -> PilotFault {
    let line = |is: &dyn Fn(&Volume) -> bool| {
        readings.iter().find(|one| is(&one.value)).map_or(0, |one| one.line)
    };
    let line = match error {
        CalibrationError::Volume { gas_ml, .. } => {
            line(&|one| (one.air_ml - gas_ml).abs() < 1e-9)
        }
        CalibrationError::Rise { rise_mm, .. } => {
            line(&|one| (one.height_mm - zero - rise_mm).abs() < 1e-9)
        }
        _ => 0,
    };
    PilotFault::new(line, error.to_string(), "look at the unit and the decimal point")
}

/// Gas under the card at that rise, and its standard deviation (mL), for one bag out of the box.
pub(super) fn gas_at(syringe: &Syringe, numbers: &Learned, rise_mm: f64) -> (f64, f64) {
    let curve = curve(syringe, numbers);
    let gas =
        |deviates: [f64; 3]| curve.curve(deviates[0], deviates[1], deviates[2]).gas_ml(rise_mm);
    let slope = |at: usize| {
        let one = |z: f64| {
            let mut deviates = [0.0; 3];
            deviates[at] = z;
            gas(deviates)
        };
        0.5 * (one(1.0) - one(-1.0))
    };
    let variance: f64 = (0..3).map(|at| slope(at) * slope(at)).sum();
    (gas([0.0; 3]), variance.sqrt())
}

/// A rise at which a card is usually read (mm): that of the middle volume.
pub(super) fn usual_rise_mm(syringe: &Syringe) -> f64 {
    let middle = syringe.volumes_ml[syringe.volumes_ml.len() / 2];
    let curve = prior(&syringe.bag.bag, &syringe.card.card, syringe.water_ml).mean;
    curve.rise_mm(middle).round().max(1.0)
}
