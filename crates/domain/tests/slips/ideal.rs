//! What could be told of leaks at all: a detector that knows the generator.
//!
//! It knows the class's law, activity and waking, what its treatment does, how heaped the group's
//! spoon was and how the group reads; of a bag it does not know the factor on its rise, its delay,
//! its zero and what the eye adds to each reading. It asks after each reading whether a leak that
//! is to be found began in one of the last two intervals, by the ratio of the two likelihoods
//! (J. Neyman & E. S. Pearson 1933): none that knows less can find more of them while it calls as
//! few clean bags.

use crate::class::{Day, INTERVAL, OWN_DELAY_MIN, OWN_LOG, Read, edge};
use crate::mishap::Spoiled;
use crate::school::{LAST, Made};
use barm_science::statistics::chance::Chance;

/// Bags that may have been made, and leaks that they may have had.
const BAGS: usize = 96;
const LEAKS: usize = 150;

/// A detector of leaks that lose more than so many millimeters between two readings.
pub(crate) struct Ideal {
    loses_mm: f64,
    bags: Vec<(f64, f64)>,
}

impl Ideal {
    pub(crate) fn new(loses_mm: f64, chance: &mut Chance) -> Self {
        let bag = |_| ((OWN_LOG * edge(chance)).exp(), OWN_DELAY_MIN * edge(chance));
        Self { loses_mm, bags: (0..BAGS).map(bag).collect() }
    }

    /// ln of the ratio after the reading at each place from the first on.
    pub(crate) fn ratios(
        &self,
        read: &Read,
        (day, made): (&Day, &Made),
        chance: &mut Chance,
    ) -> Vec<f64> {
        let mut minutes: Vec<(u32, f64)> =
            read.heights.iter().map(|(planned, minute, _)| (*planned, *minute)).collect();
        // What it would lose by the reading after the last one.
        let (planned, minute) = minutes[minutes.len() - 1];
        minutes.push((planned + INTERVAL, minute + f64::from(INTERVAL)));
        let curves: Vec<Vec<f64>> = self
            .bags
            .iter()
            .map(|(factor, delay)| {
                let own = (read.group.spoon * factor, *delay);
                let rise = |at: &(u32, f64)| day.rise(read.treatment, made, at.1, own);
                minutes.iter().map(rise).collect()
            })
            .collect();
        let written: Vec<f64> = read.heights.iter().map(|(_, _, mm)| *mm).collect();
        (1..written.len())
            .map(|last| {
                let written = &written[..=last];
                let score = |rises: &[f64]| read.group.log_likelihood(written, rises);
                let sound: Vec<f64> = curves.iter().map(|curve| score(curve)).collect();
                let mut leaks = Vec::new();
                for _ in 0..LEAKS {
                    let at = if last == 1 || chance.uniform() < 0.5 { last } else { last - 1 };
                    if f64::from(LAST) < minutes[at + 1].1 - 4.0 {
                        continue;
                    }
                    for curve in curves.iter().skip(chance.below(8)).step_by(8) {
                        let leak = Spoiled::leak(at, &minutes, curve, chance);
                        if leak.lost_mm <= self.loses_mm {
                            continue;
                        }
                        let rises: Vec<f64> =
                            (0..=last).map(|at| leak.leaky(at, &minutes, curve)).collect();
                        leaks.push(score(&rises));
                    }
                }
                mean(&leaks) - mean(&sound)
            })
            .collect()
    }
}

/// ln of the mean of e^x.
fn mean(logs: &[f64]) -> f64 {
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most == f64::NEG_INFINITY {
        return most;
    }
    let sum: f64 = logs.iter().map(|log| (log - most).exp()).sum();
    most + (sum / logs.len() as f64).ln()
}
