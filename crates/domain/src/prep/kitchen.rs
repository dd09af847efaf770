//! The same amount in cups and spoons.

use super::measure::{Measure, Unit};
use crate::bench::TEASPOON_ML;
use std::fmt;

/// An amount in level customary cups and spoons, to the nearest quarter of a teaspoon.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Kitchen {
    /// Quarters of a teaspoon on the whole.
    pub quarter_teaspoons: u64,
}

/// Quarter teaspoons in a tablespoon.
const TABLESPOON: u64 = 12;
/// Quarter teaspoons in a cup.
const CUP: u64 = 192;

impl Kitchen {
    /// That amount in spoons; `grams_per_tsp` is the mass of a level customary teaspoon (g), if
    /// it is known. Nothing for pieces, and nothing below the least spoon, an eighth of a teaspoon:
    /// such an amount is weighed.
    pub fn of(measure: Measure, grams_per_tsp: Option<f64>) -> Option<Self> {
        let per_tsp = match measure.unit() {
            Unit::Gram => grams_per_tsp?,
            Unit::Milliliter => TEASPOON_ML,
            Unit::Piece => return None,
        };
        let quarters = 4.0 * measure.value() / per_tsp;
        let whole = quarters.round();
        (whole >= 1.0 && whole.is_finite()).then_some(Self { quarter_teaspoons: whole as u64 })
    }

    /// Level teaspoons on the whole (1).
    pub fn teaspoons(self) -> f64 {
        self.quarter_teaspoons as f64 / 4.0
    }

    /// Whole cups, then whole tablespoons, then quarters of a teaspoon.
    pub const fn parts(self) -> (u64, u64, u64) {
        let rest = self.quarter_teaspoons % CUP;
        (self.quarter_teaspoons / CUP, rest / TABLESPOON, rest % TABLESPOON)
    }
}

impl fmt::Display for Kitchen {
    /// Such as `2 cups + 1 tbsp + 1 1/4 tsp`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (cups, tablespoons, quarters) = self.parts();
        let mut said = Vec::new();
        match cups {
            0 => {}
            1 => said.push("1 cup".to_owned()),
            more => said.push(format!("{more} cups")),
        }
        if tablespoons > 0 {
            said.push(format!("{tablespoons} tbsp"));
        }
        let part = ["", "1/4", "1/2", "3/4"][(quarters % 4) as usize];
        match (quarters / 4, part) {
            (0, "") => {}
            (0, part) => said.push(format!("{part} tsp")),
            (whole, "") => said.push(format!("{whole} tsp")),
            (whole, part) => said.push(format!("{whole} {part} tsp")),
        }
        f.write_str(&said.join(" + "))
    }
}
