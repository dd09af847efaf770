//! Chance from a seed, the same on every machine.

/// A small generator of pseudorandom numbers.
///
/// # Source
/// G. L. Steele, D. Lea, C. H. Flood (2014), "Fast splittable pseudorandom number generators",
/// *OOPSLA '14*, SplitMix64; constants from memory.
#[derive(Debug, Clone)]
pub(super) struct Chance(u64);

impl Chance {
    /// A stream of its own for each name (FNV-1a, G. Fowler, L. C. Noll, P. Vo; constants from
    /// memory).
    pub(super) fn of(seed: u64, name: &str) -> Self {
        let mut own = Self(seed_of(seed, name));
        // The first numbers of neighboring seeds are neighbors' no more after one step.
        own.next();
        own
    }

    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 up to, and never, 1.
    pub(super) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Whether something with this chance (1) happens.
    pub(super) fn happens(&mut self, chance: f64) -> bool {
        self.share() < chance
    }

    /// Evenly between two numbers.
    pub(super) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// One of so many, from 0.
    pub(super) fn below(&mut self, count: usize) -> usize {
        (self.share() * count as f64) as usize
    }

    /// A standard normal number: twelve even ones less six are near enough for a ruler.
    pub(super) fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.share()).sum::<f64>() - 6.0
    }

    /// 128 random bits.
    pub(super) fn bits(&mut self) -> u128 {
        u128::from(self.next()) << 64 | u128::from(self.next())
    }
}

/// One number of a seed and a name.
pub(crate) fn seed_of(seed: u64, name: &str) -> u64 {
    let bytes = seed.to_le_bytes().into_iter().chain(name.bytes());
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}
