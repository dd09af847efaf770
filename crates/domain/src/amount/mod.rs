//! Amounts as people write them: `1/4 tsp`, `2.5 g`, `105 °F`, `3 x 5 in`, `3 min 30 s`.
//!
//! This is the one place where written quantities are read. US customary and metric units mix
//! freely; the customary teaspoon (4.929 mL) and the labelling teaspoon (5 mL, `1 label tsp`) are
//! told apart. Whatever can be read in two ways is refused with both ways named.

mod dimension;
mod error;
mod measures;
mod number;
mod quantity;
pub mod show;
mod units;

pub use dimension::{Dimension, Wanted};
pub use error::AmountError;
pub use measures::{
    Size, altitude_meters, celsius, dollars, millimeters, minutes, pascals, share, size,
};
pub use quantity::{Quantity, number};
pub use units::TEASPOON_ML;

/// What kind of amount was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum AmountKind {
    /// Weighed; `value` in g.
    Mass,
    /// Measured with a jug, cylinder, syringe or pipette; `value` in mL.
    Volume,
    /// Level spoons or cups in customary (1 tsp = 4.929 mL) or labelling (1 tsp = 5 mL)
    /// measure; `value` in mL.
    Spoon,
    /// Drops; `value` is the count.
    Drops,
    /// Packets, tablets or other pieces; `value` is the count.
    Pieces,
}

/// An amount: what was written, and what it means.
#[derive(Debug, Clone, PartialEq)]
pub struct Amount {
    /// As the person wrote it, such as `1/4 tsp`.
    pub written: String,
    /// What kind of amount it is.
    pub kind: AmountKind,
    /// The value in the unit that `kind` names.
    pub value: f64,
}

impl Amount {
    /// Reads an amount of something that goes into a bag or a pack: mass, volume, level spoons,
    /// drops or pieces.
    ///
    /// # Errors
    /// [`AmountError`] says what is wrong and what to write instead.
    pub fn parse(text: &str) -> Result<Self, AmountError> {
        let wanted = Wanted::AMOUNT;
        let quantity = Quantity::parse(text, wanted)?;
        let written = text.trim().to_owned();
        let kind = match quantity.dimension {
            Dimension::Mass => AmountKind::Mass,
            Dimension::Volume => AmountKind::Volume,
            Dimension::Spoon => AmountKind::Spoon,
            Dimension::Drops => AmountKind::Drops,
            Dimension::Pieces => AmountKind::Pieces,
            other => {
                return Err(AmountError::WrongKind { text: written, is: other.name(), wanted });
            }
        };
        if quantity.value < 0.0 {
            return Err(AmountError::Negative { text: written });
        }
        Ok(Self { written, kind, value: quantity.value })
    }
}
