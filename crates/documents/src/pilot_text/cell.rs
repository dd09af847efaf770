//! One value in a cell, with its own unit or that of its column.

use crate::readings::quoted::quoted;
use barm_domain::amount::{
    Amount, AmountError, Dimension, Quantity, Wanted, celsius, millimeters, minutes, number,
    share,
};

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A count or a letter, which nobody needs.
    Label,
    /// Minutes.
    Minute,
    /// Height of a card (mm).
    Height,
    /// Air (mL).
    Air,
    /// Temperature (°C).
    Celsius,
    /// Mass (g).
    Mass,
    /// Strength of a liquid (% by volume).
    Strength,
    /// What a meter shows (%).
    Meter,
    /// An amount of yeast or food.
    Amount,
    /// An amount of water (mL).
    Water,
}

/// What is wrong with a cell, and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Odd {
    pub(super) what: String,
    pub(super) fix: String,
}

impl Kind {
    /// The unit of a number without one; nothing where there are two that people use.
    const fn usual(self) -> Option<&'static str> {
        match self {
            Self::Minute => Some("min"),
            Self::Height => Some("mm"),
            Self::Air | Self::Water => Some("mL"),
            Self::Mass => Some("g"),
            Self::Strength | Self::Meter => Some("%"),
            Self::Label | Self::Celsius | Self::Amount => None,
        }
    }

    /// From where to where a value may lie, and its unit.
    const fn limits(self) -> (f64, f64, &'static str) {
        match self {
            Self::Label | Self::Amount => (0.0, f64::MAX, ""),
            Self::Minute => (0.0, 240.0, "min"),
            Self::Height => (0.0, 250.0, "mm"),
            Self::Air => (0.0, 10_000.0, "mL"),
            Self::Celsius => (-5.0, 100.0, "°C"),
            Self::Mass => (0.3, 20.0, "g"),
            Self::Strength => (0.0, 10.0, "%"),
            Self::Meter => (0.0, 1.0, "%"),
            Self::Water => (1.0, 5_000.0, "mL"),
        }
    }

    /// Reads a cell. A number alone has the unit of its column, or else the usual one.
    pub(super) fn read(self, cell: &str, column: Option<&str>) -> Result<f64, Odd> {
        let cell = cell.trim();
        let written = match (number(cell), column.or_else(|| self.usual())) {
            (Ok(_), Some(unit)) => format!("{cell} {unit}"),
            _ => cell.to_owned(),
        };
        let value = match self {
            Self::Minute => minutes(&written),
            Self::Height => millimeters(&written),
            Self::Celsius => celsius(&written),
            Self::Strength | Self::Meter => share(&written).map(|share| 100.0 * share),
            Self::Mass => measured(&written, MASS),
            Self::Air | Self::Water => measured(&written, VOLUME),
            Self::Amount | Self::Label => number(&written),
        };
        let value = value.map_err(|error| odd(cell, &error))?;
        let (low, high, unit) = self.limits();
        if (low..=high).contains(&value) {
            return Ok(tidy(value));
        }
        Err(Odd {
            what: format!("{} lies outside {low} to {high} {unit}", quoted(cell)),
            fix: "look at the unit and the decimal point".into(),
        })
    }
}

/// A value without the last bits that a unit costs: 0.5 % is 0.5.
fn tidy(value: f64) -> f64 {
    (value * 1e9).round() / 1e9
}

/// A mass in a cell.
const MASS: Wanted =
    Wanted { name: "a mass", example: "3.2 g", dimensions: &[Dimension::Mass] };
/// A volume in a cell.
const VOLUME: Wanted = Wanted {
    name: "a volume",
    example: "50 mL",
    dimensions: &[Dimension::Volume, Dimension::Spoon],
};

/// A quantity of one of the dimensions that are wanted.
fn measured(written: &str, wanted: Wanted) -> Result<f64, AmountError> {
    let quantity = Quantity::parse(written, wanted)?;
    if wanted.dimensions.contains(&quantity.dimension) {
        return Ok(quantity.value);
    }
    let is = quantity.dimension.name();
    Err(AmountError::WrongKind { text: written.to_owned(), is, wanted })
}

/// Reads an amount with its unit, such as `1/4 tsp` or `0.5 g`.
pub(super) fn amount(cell: &str, column: Option<&str>) -> Result<Amount, Odd> {
    let cell = cell.trim();
    let written = match (number(cell), column) {
        (Ok(_), Some(unit)) => format!("{cell} {unit}"),
        _ => cell.to_owned(),
    };
    Amount::parse(&written).map_err(|error| odd(cell, &error))
}

fn odd(cell: &str, error: &AmountError) -> Odd {
    let what = format!("{}: {}", quoted(cell), error.what());
    Odd { what, fix: error.fix() }
}
