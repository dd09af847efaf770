//! A whole class that is low: yeast or water.

use super::level::Level;
use super::{Followed, Rates, marks};

/// What the bags of a period say of their class as a whole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassLow {
    /// Probability that yeast or water is wrong for all of them (1).
    pub probability: f64,
}

/// How likely it is that yeast or water is wrong for all bags of a period.
pub fn class_low(bags: &[Followed], rates: &Rates) -> ClassLow {
    ClassLow { probability: Level::of(bags, &marks::variances(bags), rates).is_low() }
}
