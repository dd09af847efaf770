//! A heaped spoon, so that a bag rises by more than its sisters.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Rates, What};

/// How much more it rises by (1; own judgement: a heaped spoon holds up to twice a level one).
const MORE: [f64; 4] = [1.4, 1.6, 1.8, 2.1];

pub(super) fn weigh(sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    for more in MORE {
        let rises: Vec<f64> = sound.rise.iter().map(|rise| more * rise).collect();
        let log = sound.log_with_rises(&rises);
        weighed.add(What::Heaped, rates.heaped / MORE.len() as f64, log);
    }
}
