//! A small seeded generator, equal on every machine. The seed is always an argument.

use super::distribution::normal;

/// Chance from a seed: xoshiro256++, filled by SplitMix64.
///
/// # Source
/// Blackman & Vigna (2021), "Scrambled linear pseudorandom number generators", *ACM Trans. Math.
/// Softw.* 47, 36, algorithm xoshiro256++ (placed in the public domain by its authors), state
/// filled by SplitMix64 (Steele, Lea & Flood 2014, *Proc. OOPSLA*, 453–472) as they advise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chance {
    state: [u64; 4],
}

impl Chance {
    /// Starts from `seed`; equal seeds give equal draws.
    pub fn from_seed(seed: u64) -> Self {
        let mut at = seed;
        let state = std::array::from_fn(|_| {
            at = at.wrapping_add(0x9e37_79b9_7f4a_7c15);
            let mut z = at;
            z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
            z ^ (z >> 31)
        });
        Self { state }
    }

    /// Starts from the four words of state themselves (not all zero), as published test rows do.
    pub fn from_state(state: [u64; 4]) -> Self {
        Self { state }
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        let s = &mut self.state;
        let out = s[0].wrapping_add(s[3]).rotate_left(23).wrapping_add(s[0]);
        let t = s[1] << 17;
        s[2] ^= s[0];
        s[3] ^= s[1];
        s[1] ^= s[2];
        s[0] ^= s[3];
        s[2] ^= t;
        s[3] = s[3].rotate_left(45);
        out
    }

    /// A number evenly spread over 0 to 1, both ends left out (1).
    pub fn uniform(&mut self) -> f64 {
        const STEP: f64 = 1.0 / (1_u64 << 52) as f64;
        let high = (self.bits() >> 12) as f64;
        (high + 0.5) * STEP
    }

    /// A standard normal number (1).
    pub fn normal(&mut self) -> f64 {
        normal::quantile(self.uniform())
    }

    /// A whole number from 0 to `count` − 1, all equally likely; 0 if `count` is 0.
    pub fn below(&mut self, count: usize) -> usize {
        let count = count.max(1) as u64;
        // Draws beyond the last full multiple of `count` would favor small numbers.
        let last = u64::MAX - u64::MAX % count;
        loop {
            let draw = self.bits();
            if draw < last {
                return usize::try_from(draw % count).unwrap_or(0);
            }
        }
    }
}
