//! Where chance comes from: numbers given by the caller.

use crate::statistics::distribution::normal;

/// Seeds of one forecast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Streams {
    /// Seed of all that the bags of one day share. Give every forecast of the day the same one.
    pub day: u64,
    /// Seed of what belongs to one bag. Give every treatment, and every replicate of it, its own.
    pub bag: u64,
}

/// A small generator of pseudorandom numbers, the same on every machine.
///
/// # Source
/// G. L. Steele, D. Lea, C. H. Flood (2014), "Fast splittable pseudorandom number generators",
/// *OOPSLA '14*, SplitMix64; constants from memory.
#[derive(Debug, Clone)]
struct SplitMix(u64);

impl SplitMix {
    fn next(&mut self) -> u64 {
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

/// Makes one number of many, so that every named quantity has a stream of its own.
///
/// # Source
/// FNV-1a of G. Fowler, L. C. Noll, K.-P. Vo, from memory.
pub(super) fn fingerprint(parts: impl IntoIterator<Item = u64>) -> u64 {
    parts.into_iter().flat_map(u64::to_le_bytes).fold(0xCBF2_9CE4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01B3)
    })
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
        let name = name.bytes().map(u64::from);
        let mut random = SplitMix(fingerprint(name.chain([self.seed, of])));
        let mut bins: Vec<usize> = (0..self.draws).collect();
        for i in (1..bins.len()).rev() {
            bins.swap(i, random.below(i + 1));
        }
        let width = 1.0 / self.draws as f64;
        bins.into_iter()
            .map(|bin| normal::quantile((bin as f64 + random.inside()) * width))
            .collect()
    }
}
