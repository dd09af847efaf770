//! Foam that lifts the card from some reading on.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// How much foam may lift a card (mm; own judgement).
const LIFT_MM: [f64; 6] = [2.5, 4.0, 6.0, 8.0, 11.0, 15.0];

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let count = sound.count();
    let places = count - 1;
    for from in (1..count).filter(|from| !bag.heights[*from].sure) {
        for lift in LIFT_MM {
            let lifted = |at: usize| if at >= from { lift } else { 0.0 };
            let change: Vec<f64> = (0..count).map(lifted).collect();
            let prior = rates.foam / (places * LIFT_MM.len()) as f64;
            weighed.add(What::Foam { from }, prior, sound.log_with(&change));
        }
    }
}
