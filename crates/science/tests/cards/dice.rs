//! Chance of the tests' own, so that counts are the same on every machine.

/// Random numbers: splitmix64 (G. L. Steele, D. Lea, C. H. Flood 2014; constants from memory), and Box and
/// Muller for normal ones.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    /// Evenly from 0 to 1.
    pub(crate) fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Standard normal.
    pub(crate) fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.uniform()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.uniform()).cos()
    }
}
