//! On which scale an uncertain number is spread.

/// How a deviate changes a number whose best guess is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Transform {
    /// Never below zero: a factor, e to the power of the deviate.
    Log,
    /// May be negative: the deviate is added.
    Plain,
    /// As [`Self::Plain`], and kept between two ends.
    Between(f64, f64),
    /// A distance each way in a plane: deviates of two directions, added as legs of a right angle.
    Distance,
}

impl Transform {
    /// How many independent deviates it takes at one level.
    pub const fn deviates(self) -> u64 {
        match self {
            Self::Distance => 2,
            Self::Log | Self::Plain | Self::Between(..) => 1,
        }
    }

    /// `value` moved by a deviate `z` times `sd`.
    pub fn moved(self, value: f64, sd: f64, z: f64) -> f64 {
        match self {
            Self::Log => value * libm::exp(sd * z),
            Self::Plain => value + sd * z,
            Self::Between(low, high) => (value + sd * z).clamp(low, high),
            Self::Distance => libm::hypot(value, sd * z),
        }
    }
}
