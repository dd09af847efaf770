//! Heights written in another unit.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, Unit, What};

/// Share of slips that are one reading alone; the others go on for some readings (own judgement).
const ONE_ALONE: f64 = 0.7;

/// No card on a wet bag is lower (mm), and none higher than so many times its full height (1): a
/// number that would mean such a height was not meant so (own rule).
const LOWEST_MM: f64 = 0.5;
const HIGHEST: f64 = 1.3;

/// Runs of readings in a unit: any from one place to another.
pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let count = sound.count();
    let format: f64 = sound.format.iter().sum();
    for unit in Unit::ALL {
        for from in 0..count {
            let mut heights = sound.written.clone();
            let mut more = vec![0.0; count];
            let mut log = format;
            for to in from..count {
                let number = sound.written[to];
                let can_be =
                    (LOWEST_MM..=HIGHEST * bag.full_mm).contains(&(number * unit.factor()));
                let Some((density, variance)) =
                    unit.written(number).filter(|_| can_be && !bag.heights[to].sure)
                else {
                    break;
                };
                heights[to] = number * unit.factor();
                more[to] = variance;
                log += libm::log(density) - sound.format[to];
                // A run that goes on to the end may go on still.
                let run = if from == to { ONE_ALONE } else { 0.0 };
                let to_end = if to + 1 == count { 1.0 - ONE_ALONE } else { 0.0 };
                let between = if from < to && to + 1 < count { 0.02 } else { 0.0 };
                let prior = rates.unit * unit.share() * (run + to_end + between);
                let log = log + sound.log_density(&heights, &more, &sound.all());
                weighed.add(What::Unit { from, to, unit }, prior, log);
            }
        }
    }
}
