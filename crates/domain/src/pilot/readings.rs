//! What was measured in a pilot: any part of it.

use crate::amount::Amount;
use jiff::civil::Date;

/// A part of a pilot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Part {
    /// Level teaspoons of yeast on a balance.
    Spoons,
    /// A bag of plain water that cools.
    Dummy,
    /// A card over known volumes of air.
    Syringe,
    /// Bags with yeast.
    Bags,
    /// The meter over ethanol of known strength.
    Meter,
}

impl Part {
    /// All parts, in the order in which they are done.
    pub const ALL: [Self; 5] =
        [Self::Spoons, Self::Dummy, Self::Syringe, Self::Bags, Self::Meter];

    /// The word for it in files.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Spoons => "spoons",
            Self::Dummy => "cooling",
            Self::Syringe => "syringe",
            Self::Bags => "bags",
            Self::Meter => "meter",
        }
    }

    /// What was done, in a few words.
    pub const fn says(self) -> &'static str {
        match self {
            Self::Spoons => "weighed spoons",
            Self::Dummy => "the bag of plain water that cooled",
            Self::Syringe => "air from the syringe",
            Self::Bags => "bags with yeast",
            Self::Meter => "the meter over ethanol",
        }
    }
}

/// Something that was read, with the line on which it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen<T> {
    /// What was read.
    pub value: T,
    /// Line of the file, from 1; 0 if it came from elsewhere.
    pub line: u64,
}

/// Height of a card at a minute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Height {
    /// Minutes after the bag's zero reading.
    pub minute: f64,
    /// Height of the card above the bench (mm).
    pub height_mm: f64,
}

/// Heights of one bag's card.
#[derive(Debug, Clone, PartialEq)]
pub struct BagHeights {
    /// Letter of the bag in the protocol.
    pub bag: String,
    /// What was read, that of minute 0 among it.
    pub heights: Vec<Seen<Height>>,
}

/// What really went into a bag, as far as it was written down.
#[derive(Debug, Clone, PartialEq)]
pub struct Made {
    /// Letter of the bag.
    pub bag: String,
    /// Line of the file, from 1; 0 if it came from elsewhere.
    pub line: u64,
    /// Yeast.
    pub yeast: Option<Amount>,
    /// Food.
    pub food: Option<Amount>,
    /// Water.
    pub water: Option<Amount>,
    /// Water as poured (°C).
    pub water_celsius: Option<f64>,
    /// Water of the tray at the zero reading (°C).
    pub tray_celsius: Option<f64>,
}

/// Height of the card over air from a syringe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Volume {
    /// All air put in so far (mL); 0 for the zero reading.
    pub air_ml: f64,
    /// Height of the card above the bench (mm).
    pub height_mm: f64,
}

/// Temperature of the bag of plain water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Temperature {
    /// Minutes after it was filled.
    pub minute: f64,
    /// Temperature of its water (°C).
    pub celsius: f64,
}

/// Mass of a level teaspoon.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weight {
    /// Mass (g).
    pub grams: f64,
}

/// What the meter showed over a liquid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shown {
    /// Ethanol in the liquid (% by volume).
    pub strength: f64,
    /// Temperature of the liquid (°C), if it was measured; else that of the room.
    pub celsius: Option<f64>,
    /// What the display showed (%).
    pub percent: f64,
}

/// What the things that were tried are called: words of the teacher's own.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LotNames {
    /// The jar or brick of yeast.
    pub yeast: Option<String>,
    /// The box of bags.
    pub bags: Option<String>,
    /// The bottle or jar of the enzymes.
    pub enzymes: Option<String>,
    /// The meter.
    pub meter: Option<String>,
}

/// What was measured in a pilot.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PilotReadings {
    /// When, if it was written down.
    pub date: Option<Date>,
    /// Room temperature (°C), if it was measured.
    pub room_celsius: Option<f64>,
    /// What the things that were tried are called.
    pub lots: LotNames,
    /// Level teaspoons.
    pub spoons: Vec<Seen<Weight>>,
    /// The bag of plain water.
    pub dummy: Vec<Seen<Temperature>>,
    /// Air from the syringe.
    pub syringe: Vec<Seen<Volume>>,
    /// What went into bags.
    pub made: Vec<Made>,
    /// Bags with yeast.
    pub bags: Vec<BagHeights>,
    /// The meter.
    pub meter: Vec<Seen<Shown>>,
}

impl PilotReadings {
    /// The parts of which there is something.
    pub fn parts(&self) -> Vec<Part> {
        let there = |part: &Part| match part {
            Part::Spoons => !self.spoons.is_empty(),
            Part::Dummy => !self.dummy.is_empty(),
            Part::Syringe => !self.syringe.is_empty(),
            Part::Bags => !self.bags.is_empty(),
            Part::Meter => !self.meter.is_empty(),
        };
        Part::ALL.into_iter().filter(there).collect()
    }
}
