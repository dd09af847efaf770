//! A bag whose clock began late or early.

use super::grid::delayed;
use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// Minutes by which a clock may be late (min; own judgement).
const LATE_MIN: [f64; 5] = [1.5, 2.5, 3.5, 5.0, 7.0];

/// Minutes by which it may be early.
const EARLY_MIN: [f64; 3] = [1.5, 3.0, 5.0];

/// Share of late clocks whose zero was read in time and only typed late (1; own judgement).
const TYPED_LATE: f64 = 0.5;

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    // What the treatment rises by beside the median of its forecast, minute by minute.
    let moved = |late: f64, from_zero: bool| -> Vec<f64> {
        let places = sound.minutes.iter().zip(&sound.rise).enumerate();
        places
            .map(|(at, (minute, rise))| {
                if at == 0 {
                    return 0.0;
                }
                let median = bag.course.median_mm(*minute);
                let shifted = if from_zero {
                    bag.course.median_mm(minute + late)
                } else {
                    delayed(&bag.course, *minute, -late)
                };
                let factor = if median > 0.2 { rise / median } else { 1.0 };
                shifted * factor
            })
            .collect()
    };
    let versions = (LATE_MIN.len() + EARLY_MIN.len()) as f64;
    for late in LATE_MIN {
        for (from_zero, share) in [(true, TYPED_LATE), (false, 1.0 - TYPED_LATE)] {
            let log = sound.log_with_rises(&moved(late, from_zero));
            weighed.add(What::Start, rates.start * share / versions, log);
        }
    }
    for early in EARLY_MIN {
        let log = sound.log_with_rises(&moved(-early, false));
        weighed.add(What::Start, rates.start / versions, log);
    }
}
