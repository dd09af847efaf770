//! From a bag's rise to the gas in it and the ethanol that went with it.

use super::Measured;
use crate::outlook::Treated;
use barm_science::card_height::{gas_from_rise, prior};
use barm_science::model::validity::Beyond;
use barm_science::model::{Mixture, Parameters};
use barm_science::ruler;

/// Gas and ethanol of one bag, 95 %.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contents {
    /// Wet gas made, without the trapped air, at the bag's temperature and the local pressure
    /// (mL).
    pub gas_ml: Measured,
    /// Ethanol in the whole bag (g), where a forecast reaches that minute: an estimate, and never
    /// a test of a person.
    pub ethanol_g: Option<Measured>,
    /// Where the bag was so full that the card's curve is not known there.
    pub beyond: Option<Beyond>,
}

/// What a rise at a minute tells of a bag's contents.
///
/// The ends of the gas interval are taken through the forecast's draws, and what the draws
/// themselves leave open is added to them in quadrature.
///
/// # Source
/// JCGM 100:2008 (GUM), 5.1.2, for independent sources; clause from memory.
pub(super) fn contents(treated: &Treated, minute: f64, rise_mm: f64) -> Contents {
    let setup = &treated.setup;
    let liquid_ml = Mixture::new(setup, &Parameters::median()).contents_ml();
    let curve = prior(&setup.bag, &setup.card, liquid_ml).known(treated.curve);
    let doubt = ruler::usual_difference_sd_mm();
    let gas = gas_from_rise(&curve, rise_mm, doubt, setup.trapped_air_ml);
    Contents {
        gas_ml: Measured { value: gas.ml, low: gas.low_ml, high: gas.high_ml },
        beyond: curve.mean.beyond(gas.ml + setup.trapped_air_ml, minute),
        ethanol_g: ethanol(treated, minute, gas.ml, (gas.low_ml, gas.high_ml)),
    }
}

fn ethanol(
    treated: &Treated,
    minute: f64,
    gas_ml: f64,
    (low_ml, high_ml): (f64, f64),
) -> Option<Measured> {
    // A reading a little late still belongs to the last minute of the forecast.
    const LATE_MIN: f64 = 5.0;
    let last = treated.forecast.last_minute();
    if !(0.0..=f64::from(last) + LATE_MIN).contains(&minute) {
        return None;
    }
    let minute = (minute.round() as u32).min(last);
    if treated.setup.yeast.is_none() {
        // Whatever lifted the card, no yeast made it.
        return Some(Measured { value: 0.0, low: 0.0, high: 0.0 });
    }
    let of = |gas| treated.forecast.ethanol_from_gas(gas, minute);
    let (middle, low, high) = (of(gas_ml)?, of(low_ml)?, of(high_ml)?);
    let down = libm::hypot(middle.grams - middle.low_grams, middle.grams - low.grams);
    let up = libm::hypot(middle.high_grams - middle.grams, high.grams - middle.grams);
    let value = middle.grams;
    Some(Measured { value, low: (value - down).max(0.0), high: value + up })
}
