//! A bag that is unlike all others for no reason that is known here.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Rates, What};

/// So many times as far from its sisters as sound bags are (1; own judgement).
const TIMES: f64 = 4.0;

pub(super) fn weigh(sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let wide = sound.widened(TIMES);
    let format: f64 = sound.format.iter().sum();
    weighed.add(What::Strange, rates.strange, format + wide);
}
