//! What goes into one bag and how it lies.

use crate::amount::Amount;
use barm_science::setup::{Bag, Card, YeastKind};

/// A bag by its trade name or by its measured size.
#[derive(Debug, Clone, PartialEq)]
pub struct BagChoice {
    /// As written: `snack`, `sandwich`, `quart`, `gallon`, or a size such as `165 x 83 mm`.
    pub written: String,
    /// Its inner size and film.
    pub bag: Bag,
}

/// A card by its size.
#[derive(Debug, Clone, PartialEq)]
pub struct CardChoice {
    /// As written, such as `3 x 5 in`.
    pub written: String,
    /// Its size and mass.
    pub card: Card,
}

/// How the bag lies while it works.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lies {
    /// Flat on the bench.
    Bench,
    /// Between dry towels.
    Towel,
    /// In a tray of warm water (°C at the zero reading).
    WarmTray(f64),
}

/// Something else in the bag, such as salt, vinegar or baking soda.
#[derive(Debug, Clone, PartialEq)]
pub struct Extra {
    /// A food id or the name of a label food.
    pub item: String,
    /// How much.
    pub amount: Amount,
}

/// Everything that goes into a bag.
#[derive(Debug, Clone, PartialEq)]
pub struct Recipe {
    /// The bag.
    pub bag: BagChoice,
    /// The card on it.
    pub card: CardChoice,
    /// Water.
    pub water: Amount,
    /// Temperature of the water as poured (°C).
    pub water_celsius: f64,
    /// Yeast kind; `None` for a bag without yeast.
    pub yeast: Option<YeastKind>,
    /// How much yeast.
    pub yeast_amount: Amount,
    /// Food id or name of a label food; `None` for a bag without food.
    pub food: Option<String>,
    /// How much food.
    pub food_amount: Option<Amount>,
    /// Enzyme product key; `None` for a bag without enzyme.
    pub enzyme: Option<String>,
    /// How much enzyme.
    pub enzyme_amount: Option<Amount>,
    /// What else goes in.
    pub extras: Vec<Extra>,
    /// How the bag lies while it works.
    pub lies: Lies,
}

/// When things happen within a period.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timing {
    /// Minutes between readings.
    pub interval_min: f64,
    /// Minutes from the bell to the zero reading: roles, measuring, mixing, sealing.
    pub mixing_min: f64,
    /// Minutes for venting and clearing before the closing bell.
    pub clearing_min: f64,
    /// Minutes between wetting the yeast and the zero reading.
    pub wet_before_zero_min: f64,
}
