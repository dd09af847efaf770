//! An enzyme that was not shaken, so that little of it got into the bag.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// What is left of the rise (1; own judgement).
const LEFT: [f64; 4] = [0.25, 0.4, 0.55, 0.7];

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    if !bag.enzyme {
        return;
    }
    for left in LEFT {
        let rises: Vec<f64> = sound.rise.iter().map(|rise| left * rise).collect();
        let log = sound.log_with_rises(&rises);
        weighed.add(What::Unshaken, rates.unshaken / LEFT.len() as f64, log);
    }
}
