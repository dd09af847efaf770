//! A bag without living yeast.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Rates, What};

/// What is left of its rise (1).
const LEFT: [f64; 3] = [0.0, 0.07, 0.15];

pub(super) fn weigh(sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    for left in LEFT {
        let rises: Vec<f64> = sound.rise.iter().map(|rise| left * rise).collect();
        let log = sound.log_with_rises(&rises);
        weighed.add(What::Dead, rates.dead / LEFT.len() as f64, log);
    }
}
