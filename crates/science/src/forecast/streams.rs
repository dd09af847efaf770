//! Where chance comes from: numbers given by the caller.

use super::sobol::{Coordinate, DIMENSIONS};
use crate::prior::{Spread, fingerprint};
use crate::statistics::distribution::normal;

/// Seeds of one forecast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Streams {
    /// Seed of all that the bags of one day share. Give every forecast of the day the same one.
    pub day: u64,
    /// Seed of what the bags of one period share: its jug, the age of its solutions.
    pub period: u64,
    /// Seed of what the bags of one group share: how it fills a spoon.
    pub group: u64,
    /// Seed of what belongs to one bag. Give every treatment, and every replicate of it, its own.
    pub bag: u64,
}

/// Sets the streams of periods and of groups apart from others of the same number: digits of π.
const PERIOD: u64 = 0x243F_6A88_85A3_08D3;
const GROUP: u64 = 0x1319_8A2E_0370_7344;

impl Streams {
    /// A bag that is alone in its period and its group: nothing but the day is shared with others.
    pub const fn alone(day: u64, bag: u64) -> Self {
        Self { day, period: bag, group: bag, bag }
    }

    pub(super) const fn sources(&self, draws: usize) -> Sources {
        Sources {
            day: Source { seed: self.day, draws },
            // One number may be given for several levels; their streams must differ all the same.
            period: Source { seed: self.period ^ PERIOD, draws },
            group: Source { seed: self.group ^ GROUP, draws },
            bag: Source { seed: self.bag, draws },
        }
    }
}

/// A source of chance for each level.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sources {
    pub(super) day: Source,
    pub(super) period: Source,
    pub(super) group: Source,
    pub(super) bag: Source,
}

/// A small generator of pseudorandom numbers, the same on every machine.
///
/// # Source
/// G. L. Steele, D. Lea, C. H. Flood (2014), "Fast splittable pseudorandom number generators",
/// *OOPSLA '14*, SplitMix64; constants from memory.
#[derive(Debug, Clone)]
pub(super) struct SplitMix(pub(super) u64);

impl SplitMix {
    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Uniform inside (0, 1), never an end.
    fn inside(&mut self) -> f64 {
        ((self.next() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Uniform from 0 to `count` − 1; off even by less than one part in 2⁴⁰.
    fn below(&mut self, count: usize) -> usize {
        ((u128::from(self.next()) * count as u128) >> 64) as usize
    }
}

impl Sources {
    /// Deviates of one quantity over its levels, added up by the parts of `spread`. All levels but
    /// the bag know it as `common`, the bag as `own`.
    pub(super) fn deviates(
        &self,
        spread: &Spread,
        name: &str,
        common: u64,
        own: u64,
    ) -> Vec<f64> {
        let mut sum = vec![0.0; self.day.draws];
        for (source, part, of) in [
            (&self.day, spread.day, common),
            (&self.period, spread.period, common),
            (&self.group, spread.group, common),
            (&self.bag, spread.bag, own),
        ] {
            if part > 0.0 {
                for (all, z) in sum.iter_mut().zip(source.deviates(name, of)) {
                    *all += part * z;
                }
            }
        }
        sum
    }
}

/// One seed with its number of draws.
#[derive(Debug, Clone, Copy)]
pub(super) struct Source {
    pub(super) seed: u64,
    pub(super) draws: usize,
}

impl Source {
    /// Standard normal deviates of one named quantity, one for each draw, spread evenly: each of
    /// as many equally likely bins holds exactly one.
    ///
    /// # Source
    /// M. D. McKay, R. J. Beckman, W. J. Conover (1979), "A comparison of three methods for
    /// selecting values of input variables", *Technometrics* 21, 239-245 (Latin hypercube).
    pub(super) fn deviates(&self, name: &str, of: u64) -> Vec<f64> {
        let mut random = self.random(name, of);
        let bins = shuffled(self.draws, &mut random);
        let width = 1.0 / self.draws as f64;
        bins.into_iter()
            .map(|bin| normal::quantile((bin as f64 + random.inside()) * width))
            .collect()
    }

    /// Standard normal deviates of one named quantity that are even together with those of all
    /// other dimensions of this source; as [`Self::deviates`] for a dimension that there is not.
    ///
    /// Every source deals the points in an order of its own. Without that, one dimension of two
    /// sources would be alike or opposite digit by digit, however each is scrambled.
    pub(super) fn evenly(&self, dimension: usize, name: &str, of: u64) -> Vec<f64> {
        if dimension >= DIMENSIONS {
            return self.deviates(name, of);
        }
        let mut random = self.random(name, of);
        let coordinate = Coordinate::scrambled(dimension, &mut random);
        let points: Vec<f64> = coordinate.values(self.draws).map(normal::quantile).collect();
        let order = shuffled(self.draws, &mut self.random("order of points", 0));
        order.into_iter().map(|point| points[point]).collect()
    }

    /// The stream of one named quantity.
    fn random(&self, name: &str, of: u64) -> SplitMix {
        let numbers = [self.seed, of].into_iter().flat_map(u64::to_le_bytes);
        SplitMix(fingerprint(numbers.chain(name.bytes())))
    }
}

/// The numbers from 0 to `count` − 1 in a random order.
///
/// # Source
/// R. Durstenfeld (1964), "Algorithm 235: Random permutation", *Commun. ACM* 7, 420.
fn shuffled(count: usize, random: &mut SplitMix) -> Vec<usize> {
    let mut all: Vec<usize> = (0..count).collect();
    for i in (1..count).rev() {
        all.swap(i, random.below(i + 1));
    }
    all
}

#[cfg(test)]
mod tests {
    use super::{DIMENSIONS, Source, SplitMix, fingerprint};
    use crate::statistics::distribution::normal;

    /// First outputs of SplitMix64 from seed 0, and the FNV-1a vectors of the empty string and of
    /// "foobar", as printed in many places; from memory.
    #[test]
    fn generator_and_hash_give_their_published_numbers() {
        let mut random = SplitMix(0);
        assert_eq!(random.next(), 0xE220_A839_7B1D_CDAF);
        assert_eq!(random.next(), 0x6E78_9E6A_A1B9_65F4);
        assert_eq!(random.next(), 0x06C4_5D18_8009_454F);
        assert_eq!(fingerprint([]), 0xCBF2_9CE4_8422_2325);
        assert_eq!(fingerprint("foobar".bytes()), 0x8594_4171_F739_67E8);
    }

    #[test]
    fn every_bin_holds_one_draw_and_columns_are_unrelated() {
        let source = Source { seed: 5, draws: 400 };
        let column = source.deviates("one", 0);
        let mut bins: Vec<usize> =
            column.iter().map(|&z| (normal::cdf(z) * 400.0).floor() as usize).collect();
        bins.sort_unstable();
        assert_eq!(bins, (0..400).collect::<Vec<_>>());
        for other in [source.deviates("two", 0), source.deviates("one", 1)] {
            let sum: f64 = column.iter().zip(&other).map(|(a, b)| a * b).sum();
            // Four standard errors of a correlation of 400 unrelated pairs.
            assert!((sum / 400.0).abs() < 4.0 / 20.0, "correlation {}", sum / 400.0);
        }
        assert_eq!(column, source.deviates("one", 0));
    }

    fn correlation(one: &[f64], other: &[f64]) -> f64 {
        let sum: f64 = one.iter().zip(other).map(|(a, b)| a * b).sum();
        sum / one.len() as f64
    }

    /// Two days, or two dimensions of a day, must not go together. Scrambling alone would make the
    /// first digits of a dimension agree in all draws of two days, or in none.
    #[test]
    fn points_of_two_days_and_of_two_dimensions_are_unrelated() {
        for seed in 0..20 {
            let day = Source { seed, draws: 512 };
            let other = Source { seed: seed + 100, draws: 512 };
            let column = day.evenly(2, "wake", 0);
            assert_eq!(column, day.evenly(2, "wake", 0));
            // Four standard errors of a correlation of 512 unrelated pairs.
            let most = 4.0 / 512_f64.sqrt();
            for unrelated in [other.evenly(2, "wake", 0), day.evenly(3, "heat", 0)] {
                let found = correlation(&column, &unrelated);
                assert!(found.abs() < most, "correlation {found}");
                let agree = column.iter().zip(&unrelated).filter(|(a, b)| *a * *b > 0.0);
                let agree = agree.count() as f64 / 512.0;
                assert!((agree - 0.5).abs() < 0.5 * most, "signs agree in {agree}");
            }
        }
    }

    /// A rehearsal draws once, and it must be chance, not the middle: mean and variance of 5,000
    /// single draws lie within four standard errors of a standard normal's.
    #[test]
    fn a_single_draw_is_a_normal_number() {
        let all: Vec<f64> =
            (0..5000).map(|seed| Source { seed, draws: 1 }.evenly(0, "vigor", 1)[0]).collect();
        let mean = all.iter().sum::<f64>() / 5000.0;
        let square = correlation(&all, &all);
        assert!(mean.abs() < 4.0 / 5000_f64.sqrt(), "mean {mean}");
        assert!((square - 1.0).abs() < 4.0 * (2.0 / 5000_f64).sqrt(), "variance {square}");
    }

    #[test]
    fn any_number_of_draws_will_do() {
        for draws in [1, 3, 32, 500, 512, 100_000] {
            for dimension in [0, 47, DIMENSIONS, 1000] {
                let column = Source { seed: 3, draws }.evenly(dimension, "wake", 0);
                assert_eq!(column.len(), draws);
                assert!(column.iter().all(|z| z.abs() < 7.0), "{draws} of {dimension}");
            }
        }
    }
}
