//! How the readings of a day scatter together.

use super::block::Block;
use super::curves::Seen;
use super::effects::Level;
use super::gathered::Day;
use super::unlike::Distance;
use crate::prior::{Key, Of};
use crate::ruler::{DIVISION, PARALLAX, reading_sd_mm};
use core::ops::Range;
use std::collections::BTreeMap;

/// What separates readings, period by period.
pub(super) struct Scatter {
    periods: Vec<Period>,
}

/// What separates the readings of one period.
struct Period {
    first: usize,
    /// Its bags: their places in what was given, and their readings, counted from `first`.
    bags: Vec<(usize, Range<usize>)>,
    /// Variance of each reading alone (mm²).
    own: f64,
    /// Columns b of which b bᵀ adds to the covariance (mm), of all that bags share.
    shared: Vec<Vec<f64>>,
    /// The same that one bag has alone, bag by bag.
    alone: Vec<Vec<Vec<f64>>>,
}

impl Scatter {
    /// The scatter of a day whose bags look like this.
    pub(super) fn new(day: &Day, seen: &[Seen]) -> Self {
        let periods = day.order.chunk_by(|a, b| day.bags[a.0].period == day.bags[b.0].period);
        Self { periods: periods.map(|bags| Period::new(day, bags, seen)).collect() }
    }

    /// The blocks of the day's covariance, with what one bag has alone over that bag's weight.
    pub(super) fn blocks(&self, noise: f64, weights: &[f64]) -> Vec<Block> {
        self.periods.iter().map(|period| period.block(noise, weights)).collect()
    }

    /// How far each bag's readings lie off, bag by bag as they were given.
    pub(super) fn distances(&self, day: &Day, off_mm: &[f64]) -> Vec<Distance> {
        let mut all = vec![Distance::default(); day.bags.len()];
        for period in &self.periods {
            for (at, (place, rows)) in period.bags.iter().enumerate() {
                let joint: Vec<Vec<f64>> = period
                    .shared
                    .iter()
                    .map(|column| column[rows.clone()].to_vec())
                    .chain(period.alone[at].iter().cloned())
                    .collect();
                let block = Block::new(0, &vec![period.own; rows.len()], &joint);
                let of_all = period.first + rows.start..period.first + rows.end;
                let mut off = off_mm[of_all.clone()].to_vec();
                // A leak takes of a rise the more, the longer it goes on.
                let minutes = day.minutes(*place);
                let rises = day.readings[of_all].iter().zip(&off).map(|(read, off)| read - off);
                let mut leak: Vec<f64> =
                    rises.zip(minutes).map(|(rise, minute)| -rise * minute).collect();
                block.whiten(&mut off);
                block.whiten(&mut leak);
                let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum();
                all[*place] = Distance {
                    readings: rows.len(),
                    square: product(&off, &off),
                    along: product(&off, &leak),
                    leak: product(&leak, &leak),
                };
            }
        }
        all
    }
}

impl Period {
    fn new(day: &Day, bags: &[(usize, usize)], seen: &[Seen]) -> Self {
        let first = bags.first().map_or(0, |(_, first)| *first);
        let rows = |bag: &(usize, usize)| {
            let rows = day.rows(*bag);
            rows.start - first..rows.end - first
        };
        let count = bags.last().map_or(0, |last| rows(last).end);
        let rounding = reading_sd_mm(DIVISION.value);
        let slant = PARALLAX.value * PARALLAX.value / 3.0;
        // What belongs together: the level, whose it is there, and what it is.
        let mut shared: BTreeMap<(Level, u32, Key), Vec<f64>> = BTreeMap::new();
        let mut alone = Vec::new();
        for bag in bags {
            let (kind, minutes) = &day.of[bag.0];
            let of_day = day.kinds[*kind].places.len();
            let effects = &day.kinds[*kind].effects[of_day..];
            // The zero reading is rounded once for all.
            let zero = Key::new("zero reading", Of::All);
            let mut own = BTreeMap::from([(zero, vec![rounding; minutes.len()])]);
            for (effect, slope) in effects.iter().zip(&seen[*kind].slopes[of_day..]) {
                let add = |out: &mut [f64]| {
                    for (out, minute) in out.iter_mut().zip(minutes) {
                        *out += slope[*minute];
                    }
                };
                let whose = match effect.level {
                    Level::Day | Level::Period => 0,
                    Level::Group => day.bags[bag.0].group,
                    Level::Bag => {
                        add(own.entry(effect.key).or_insert_with(|| vec![0.0; minutes.len()]));
                        continue;
                    }
                };
                let key = (effect.level, whose, effect.key);
                let column = shared.entry(key).or_insert_with(|| vec![0.0; count]);
                add(&mut column[rows(bag)]);
            }
            alone.push(own.into_values().collect());
        }
        Self {
            first,
            bags: bags.iter().map(|bag| (bag.0, rows(bag))).collect(),
            own: rounding * rounding + slant,
            shared: shared.into_values().collect(),
            alone,
        }
    }

    fn block(&self, noise: f64, weights: &[f64]) -> Block {
        let count = self.bags.last().map_or(0, |(_, rows)| rows.end);
        let mut own = vec![0.0; count];
        let scaled = |column: &Vec<f64>| column.iter().map(|value| noise * value).collect();
        let mut joint: Vec<Vec<f64>> = self.shared.iter().map(scaled).collect();
        for ((place, rows), columns) in self.bags.iter().zip(&self.alone) {
            let larger = noise / weights[*place].sqrt();
            own[rows.clone()].fill(larger * larger * self.own);
            for column in columns {
                let mut wide = vec![0.0; count];
                for (out, value) in wide[rows.clone()].iter_mut().zip(column) {
                    *out = larger * value;
                }
                joint.push(wide);
            }
        }
        Block::new(self.first, &own, &joint)
    }
}
