//! Amounts that add up without any error: whole millionths of a gram, a milliliter or a piece.

use std::fmt;

/// What an amount is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Unit {
    /// Grams.
    Gram,
    /// Milliliters.
    Milliliter,
    /// Pieces: bags, cards, tablets.
    Piece,
}

/// Parts of a unit in which amounts are kept: a microgram, a nanoliter.
const PARTS: u128 = 1_000_000;

/// An amount, exact to a millionth of its unit, so that the sum of all trays is the total whatever
/// the order in which it is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Measure {
    unit: Unit,
    millionths: u128,
}

/// What is kept beyond the need, as a share of it, in millionths.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spare(u128);

impl Spare {
    /// A share such as 0.1 for a tenth; nothing for what is negative, no number or above ten.
    pub fn of(share: f64) -> Option<Self> {
        (0.0..=10.0).contains(&share).then(|| Self((share * PARTS as f64).round() as u128))
    }
}

impl Measure {
    /// Nothing of it.
    pub const fn none(unit: Unit) -> Self {
        Self { unit, millionths: 0 }
    }

    /// The millionth nearest to `value` (in `unit`); nothing for what is negative or no number.
    pub fn new(unit: Unit, value: f64) -> Self {
        Self { unit, millionths: (value * PARTS as f64).round() as u128 }
    }

    /// So many pieces.
    pub fn pieces(count: u32) -> Self {
        Self { unit: Unit::Piece, millionths: u128::from(count) * PARTS }
    }

    /// What it is counted in.
    pub const fn unit(self) -> Unit {
        self.unit
    }

    /// The amount in [`Self::unit`].
    pub fn value(self) -> f64 {
        self.millionths as f64 / PARTS as f64
    }

    /// Millionths of the unit: micrograms, nanoliters.
    pub const fn millionths(self) -> u128 {
        self.millionths
    }

    /// Whether there is nothing of it.
    pub const fn is_none(self) -> bool {
        self.millionths == 0
    }

    /// Both together; they must be counted in the same unit.
    #[must_use]
    pub const fn plus(self, other: Self) -> Self {
        Self { unit: self.unit, millionths: self.millionths.saturating_add(other.millionths) }
    }

    /// What is left when `other` is taken off; nothing if that is more.
    #[must_use]
    pub const fn less(self, other: Self) -> Self {
        Self { unit: self.unit, millionths: self.millionths.saturating_sub(other.millionths) }
    }

    /// So many of it.
    #[must_use]
    pub fn times(self, count: u64) -> Self {
        Self { unit: self.unit, millionths: self.millionths.saturating_mul(u128::from(count)) }
    }

    /// The spare that belongs to it, rounded up: to whole pieces, or to a millionth.
    #[must_use]
    pub const fn spare(self, spare: Spare) -> Self {
        let millionths = self.millionths.saturating_mul(spare.0).div_ceil(PARTS);
        let exact = Self { unit: self.unit, millionths };
        match self.unit {
            Unit::Piece => exact.up_to(1),
            Unit::Gram | Unit::Milliliter => exact,
        }
    }

    /// The next multiple of `step` whole units, never less than it is.
    #[must_use]
    pub const fn up_to(self, step: u32) -> Self {
        let step = step as u128 * PARTS;
        if step == 0 {
            return self;
        }
        let millionths = self.millionths.div_ceil(step).saturating_mul(step);
        Self { unit: self.unit, millionths }
    }

    /// A volume that a school's jug or cylinder has a mark for, never less: steps of 10 mL up to
    /// 100 mL, of 25 mL up to 250 mL, of 50 mL above (common practice, no source).
    #[must_use]
    pub const fn up_to_a_mark(self) -> Self {
        self.up_to(if self.millionths <= 100 * PARTS {
            10
        } else if self.millionths <= 250 * PARTS {
            25
        } else {
            50
        })
    }
}

impl fmt::Display for Measure {
    /// Rounded up to what a classroom measures, such as `428 g`, `8.25 L` or `138`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (name, large) = match self.unit {
            Unit::Gram => (" g", " kg"),
            Unit::Milliliter => (" mL", " L"),
            Unit::Piece => {
                return write!(f, "{}", self.millionths.div_ceil(PARTS));
            }
        };
        let (unit, decimals, name) = if self.millionths < PARTS {
            (PARTS, 2, name)
        } else if self.millionths < 10 * PARTS {
            (PARTS, 1, name)
        } else if self.millionths <= 999 * PARTS {
            (PARTS, 0, name)
        } else if self.millionths < 10_000 * PARTS {
            (1000 * PARTS, 2, large)
        } else {
            (1000 * PARTS, 1, large)
        };
        let tens = 10_u128.pow(decimals);
        let steps = self.millionths.div_ceil(unit / tens);
        let (whole, part) = (steps / tens, steps % tens);
        if part == 0 {
            return write!(f, "{whole}{name}");
        }
        let part = format!("{part:0width$}", width = decimals as usize);
        write!(f, "{whole}.{}{name}", part.trim_end_matches('0'))
    }
}
