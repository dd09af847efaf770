//! Numbers that look thrown but come out the same each time.

/// A small generator (G. L. Steele, D. Lea, C. H. Flood (2014), SplitMix64; constants from memory).
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn of(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x5851_F42D_4C95_7F2D)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 to `count` − 1.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }

    pub(crate) fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())]
    }

    /// So many different ones, in the order of the list.
    pub(crate) fn some<T: Copy>(&mut self, from: &[T], count: usize) -> Vec<T> {
        let mut left: Vec<usize> = (0..from.len()).collect();
        while left.len() > count {
            left.remove(self.below(left.len()));
        }
        left.into_iter().map(|i| from[i]).collect()
    }
}
