//! Water that kills yeast within minutes: a start, with warm air, and then nothing more.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// Minutes in which the yeast dies (min; own judgement).
const DIES_IN_MIN: [f64; 4] = [1.5, 3.0, 5.0, 8.0];

/// How far warm air lifts the card (mm; own judgement).
const PUFF_MM: [f64; 3] = [0.0, 1.0, 2.5];

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    for dies in DIES_IN_MIN {
        // What is made in each minute goes down with what lives.
        let mut made = 0.0;
        let mut rises = vec![0.0];
        for (minutes, rise) in sound.minutes.windows(2).zip(sound.rise.windows(2)) {
            let (from, to) = (minutes[0], minutes[1]);
            let gain = rise[1] - rise[0];
            let lives = |minute: f64| libm::exp(-minute / dies);
            let span = (to - from).max(1e-9);
            made += gain * dies / span * (lives(from) - lives(to));
            rises.push(made);
        }
        for puff in PUFF_MM {
            let with_air = rises.iter().zip(&bag.heights).map(|(rise, height)| {
                // The air cools within a quarter of an hour or so.
                let minute = height.minute;
                let warm = (1.0 - libm::exp(-minute)) * libm::exp(-minute / 12.0);
                rise + puff * warm
            });
            let with_air: Vec<f64> = with_air.collect();
            let log = sound.log_with_rises(&with_air);
            let versions = (DIES_IN_MIN.len() * PUFF_MM.len()) as f64;
            weighed.add(What::Hot, rates.hot / versions, log);
        }
    }
}
