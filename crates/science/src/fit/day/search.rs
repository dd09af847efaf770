//! The search for the day that its readings speak for most.

use super::block::Block;
use super::curves::{Kind, Slopes};
use super::effects::Level;
use super::learned::DayFit;
use super::{BagSeen, DayError};
use crate::fit::{Problem, least_squares_near};
use crate::forecast::SetupError;
use crate::prior::{Key, Learned, Of, Prior};
use crate::ruler::{DIVISION, PARALLAX, reading_sd_mm};
use core::ops::Range;
use std::collections::BTreeMap;

/// Rounds in which the scatter of the bags is worked out anew where the search has come to.
const ROUNDS: usize = 4;
/// A search ends where the next step would gain less than this of the sum of squares (1): far below
/// one standard deviation of any number.
const ENOUGH: f64 = 1e-6;
/// A change of every number by less than this ends them (standard deviations of the prior).
const STILL: f64 = 0.02;

/// Finds what a day's readings say.
///
/// # Errors
/// [`DayError`] for readings or bags that cannot be.
pub fn fit_day(bags: &[BagSeen], prior: &Prior) -> Result<DayFit, DayError> {
    let day = Day::new(bags, prior)?;
    let mut at = vec![0.0; day.keys.len()];
    let mut noise = 1.0;
    let mut found = day.round(&at, noise)?;
    for _ in 1..ROUNDS {
        let still = at.iter().zip(&found.at).all(|(a, b)| (a - b).abs() < STILL);
        let more = found.noise(noise);
        if still && more < noise * (1.0 + STILL) {
            break;
        }
        noise = more;
        at.clone_from(&found.at);
        found = day.round(&at, noise)?;
    }
    day.told(&found, noise)
}

/// A day to be fitted.
struct Day<'a> {
    bags: &'a [BagSeen],
    prior: &'a Prior,
    kinds: Vec<Kind>,
    /// Kind of each bag, and places of its readings in the kind's minutes.
    of: Vec<(usize, Vec<usize>)>,
    /// Bags in the order of period and group, each with the place of its first reading.
    order: Vec<(usize, usize)>,
    /// The day's numbers.
    keys: Vec<Key>,
    readings: Vec<f64>,
}

/// Where a round has come to.
struct Found {
    at: Vec<f64>,
    covariance: Vec<Vec<f64>>,
    /// Sum of squares of the readings, in the noise that was assumed.
    chi_square: f64,
    freedom: f64,
}

impl Found {
    /// The noise that the scatter speaks for, if it is more than was assumed.
    fn noise(&self, assumed: f64) -> f64 {
        if self.freedom < 1.0 {
            return assumed;
        }
        assumed * (self.chi_square / self.freedom).sqrt().max(1.0)
    }
}

impl<'a> Day<'a> {
    fn new(bags: &'a [BagSeen], prior: &'a Prior) -> Result<Self, DayError> {
        let mut same: Vec<(usize, Vec<usize>)> = Vec::new();
        let order = in_order(bags);
        for place in &order {
            let (place, bag) = (*place, &bags[*place]);
            for &(minute, rise_mm) in &bag.readings {
                if !(minute > 0.0 && minute.is_finite() && rise_mm.is_finite()) {
                    return Err(DayError::Reading { bag: place, minute, rise_mm });
                }
            }
            crate::forecast::possible(&bag.setup)?;
            match same.iter_mut().find(|(first, _)| bags[*first].setup == bag.setup) {
                Some((_, all)) => all.push(place),
                None => same.push((place, vec![place])),
            }
        }
        let mut kinds = Vec::new();
        let mut of = vec![(0, Vec::new()); bags.len()];
        for (first, places) in same {
            let all = places.iter().flat_map(|place| &bags[*place].readings);
            let mut minutes: Vec<f64> = all.map(|(minute, _)| *minute).collect();
            minutes.sort_by(f64::total_cmp);
            minutes.dedup();
            let kind = Kind::new(bags[first].setup.clone(), minutes, prior);
            for place in places {
                let readings = bags[place].readings.iter();
                let own = readings.filter_map(|(minute, _)| kind.minute(*minute)).collect();
                of[place] = (kinds.len(), own);
            }
            kinds.push(kind);
        }
        let keys = number_the_day(&mut kinds);
        let mut readings = Vec::new();
        let order = order.into_iter().map(|place| {
            let first = readings.len();
            readings.extend(bags[place].readings.iter().map(|(_, rise)| *rise));
            (place, first)
        });
        let order = order.collect();
        if readings.is_empty() {
            return Err(DayError::NoReadings);
        }
        Ok(Self { bags, prior, kinds, of, order, keys, readings })
    }

    /// Finds the numbers with the scatter as it is at `at`.
    fn round(&self, at: &[f64], noise: f64) -> Result<Found, DayError> {
        let own = |kind: &Kind| kind.places.len()..kind.effects.len();
        let blocks = self.blocks(&self.slopes_at(at, own)?, noise);
        let search = Search { day: self, blocks };
        let found = least_squares_near(&search, at, ENOUGH).map_err(|_| DayError::Lost)?;
        let covariance = found.unscaled_covariance.ok_or(DayError::Lost)?;
        let from_prior: f64 = found.parameters.iter().map(|z| z * z).sum();
        let kept: f64 = (0..covariance.len()).map(|i| covariance[i][i]).sum();
        Ok(Found {
            chi_square: found.residual_ss - from_prior,
            freedom: self.readings.len() as f64 - (self.keys.len() as f64 - kept),
            at: found.parameters,
            covariance,
        })
    }

    fn slopes_at(
        &self,
        at: &[f64],
        which: impl Fn(&Kind) -> Range<usize>,
    ) -> Result<Vec<Slopes>, SetupError> {
        self.kinds.iter().map(|kind| kind.slopes(self.prior, at, which(kind))).collect()
    }

    /// Writes values of kinds at the readings of their bags.
    fn spread<'v>(&self, of_kind: impl Fn(usize) -> Option<&'v [f64]>, out: &mut [f64]) {
        for (place, first) in &self.order {
            let (kind, minutes) = &self.of[*place];
            let own = &mut out[*first..*first + minutes.len()];
            match of_kind(*kind) {
                Some(values) => {
                    own.iter_mut()
                        .zip(minutes)
                        .for_each(|(out, minute)| *out = values[*minute]);
                }
                None => own.fill(0.0),
            }
        }
    }

    /// How the readings of each period scatter together.
    fn blocks(&self, slopes: &[Slopes], noise: f64) -> Vec<Block> {
        let by_period =
            self.order.chunk_by(|a, b| self.bags[a.0].period == self.bags[b.0].period);
        by_period.map(|bags| self.block(bags, slopes, noise)).collect()
    }

    fn block(&self, bags: &[(usize, usize)], slopes: &[Slopes], noise: f64) -> Block {
        let first = bags.first().map_or(0, |(_, first)| *first);
        let count: usize = bags.iter().map(|(place, _)| self.of[*place].1.len()).sum();
        let rounding = reading_sd_mm(DIVISION.value);
        let slant = PARALLAX.value * PARALLAX.value / 3.0;
        let own = vec![noise * noise * (rounding * rounding + slant); count];
        // What belongs together: the level, whose it is there (a bag goes by its first reading), and
        // what it is.
        let mut joint: BTreeMap<(Level, usize, Key), Vec<f64>> = BTreeMap::new();
        for (place, own_first) in bags {
            let (kind, minutes) = &self.of[*place];
            let at = own_first - first;
            let bag = &self.bags[*place];
            // The zero reading is rounded once for all.
            let zero = joint
                .entry((Level::Bag, *own_first, Key::new("zero reading", Of::All)))
                .or_insert_with(|| vec![0.0; count]);
            zero[at..at + minutes.len()].fill(noise * rounding);
            let kind = (&self.kinds[*kind], &slopes[*kind]);
            let own = &kind.0.effects[kind.0.places.len()..];
            for (effect, slope) in own.iter().zip(kind.1) {
                let whose = match effect.level {
                    Level::Day | Level::Period => 0,
                    Level::Group => bag.group as usize,
                    Level::Bag => *own_first,
                };
                let key = (effect.level, whose, effect.key);
                let column = joint.entry(key).or_insert_with(|| vec![0.0; count]);
                for (out, minute) in column[at..].iter_mut().zip(minutes) {
                    *out += noise * slope[*minute];
                }
            }
        }
        let joint: Vec<Vec<f64>> = joint.into_values().collect();
        Block::new(first, &own, &joint)
    }

    fn told(&self, found: &Found, noise: f64) -> Result<DayFit, DayError> {
        let rises = self.kinds.iter().map(|kind| kind.rises(self.prior, &found.at));
        let rises: Vec<Vec<f64>> = rises.collect::<Result<_, _>>()?;
        let own = |(kind, minutes): &(usize, Vec<usize>)| {
            minutes.iter().map(|minute| rises[*kind][*minute]).collect()
        };
        Ok(DayFit {
            learned: Learned {
                names: self.keys.iter().map(Key::to_string).collect(),
                means: found.at.clone(),
                covariance: found.covariance.clone(),
            },
            chi_square: found.chi_square,
            freedom: found.freedom,
            noise,
            expected_mm: self.of.iter().map(own).collect(),
        })
    }
}

/// Places of bags by period, group, what went in and what was read: the same sums are then done in the
/// same order, in whatever order the bags come.
fn in_order(bags: &[BagSeen]) -> Vec<usize> {
    let mut all: Vec<_> = bags
        .iter()
        .enumerate()
        .map(|(place, bag)| {
            let told = format!("{:?} {:?}", bag.setup, bag.readings);
            (bag.period, bag.group, told, place)
        })
        .collect();
    all.sort();
    all.into_iter().map(|(.., place)| place).collect()
}

/// Gives every number of the day a place, the same for all kinds that have it.
fn number_the_day(kinds: &mut [Kind]) -> Vec<Key> {
    let mut keys: Vec<Key> = Vec::new();
    for kind in kinds {
        let own: Vec<Key> = kind.of_the_day().map(|effect| effect.key).collect();
        kind.places = own
            .into_iter()
            .map(|key| {
                keys.iter().position(|one| *one == key).unwrap_or_else(|| {
                    keys.push(key);
                    keys.len() - 1
                })
            })
            .collect();
    }
    keys
}

/// Readings made independent, and the prior of each number as one more of them.
struct Search<'a> {
    day: &'a Day<'a>,
    blocks: Vec<Block>,
}

impl Search<'_> {
    fn whiten(&self, values: &mut [f64]) {
        for block in &self.blocks {
            block.whiten(values);
        }
    }
}

impl Problem for Search<'_> {
    fn count(&self) -> usize {
        self.day.readings.len() + self.day.keys.len()
    }

    fn residuals(&self, at: &[f64], out: &mut [f64]) {
        let day = self.day;
        let (seen, priors) = out.split_at_mut(day.readings.len());
        let rises: Result<Vec<Vec<f64>>, _> =
            day.kinds.iter().map(|kind| kind.rises(day.prior, at)).collect();
        let Ok(rises) = rises else {
            seen.fill(f64::NAN);
            return;
        };
        day.spread(|kind| Some(&rises[kind]), seen);
        for (value, reading) in seen.iter_mut().zip(&day.readings) {
            *value = reading - *value;
        }
        self.whiten(seen);
        for (prior, z) in priors.iter_mut().zip(at) {
            *prior = -z;
        }
    }

    fn slopes(&self, at: &[f64]) -> Vec<Vec<f64>> {
        let day = self.day;
        let count = day.readings.len();
        let mut columns = vec![vec![0.0; self.count()]; day.keys.len()];
        for (number, column) in columns.iter_mut().enumerate() {
            column[count + number] = 1.0;
        }
        let of_the_day = |kind: &Kind| 0..kind.places.len();
        let Ok(slopes) = day.slopes_at(at, of_the_day) else { return columns };
        for (number, column) in columns.iter_mut().enumerate() {
            let of_kind = |kind: usize| {
                let at = day.kinds[kind].places.iter().position(|place| *place == number)?;
                Some(slopes[kind][at].as_slice())
            };
            let seen = &mut column[..count];
            day.spread(of_kind, seen);
            self.whiten(seen);
        }
        columns
    }
}
