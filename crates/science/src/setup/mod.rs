//! What stands on the bench: one bag, its card, what went in, and the room around it.
//!
//! These are plain inputs to the bag model. Every field whose value could be absurd is checked
//! once, by the forecast that takes them.

mod composition;
mod doses;

pub use composition::{Acids, Composition, Grain, Portion};
pub use doses::{EnzymeDose, EnzymeKind, YeastDose, YeastKind};

/// A flat zip bag, measured inside and up to the zip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bag {
    /// Inner width (mm).
    pub width_mm: f64,
    /// Inner height up to the zip (mm).
    pub height_mm: f64,
    /// Film thickness (µm).
    pub film_um: f64,
}

/// The card or sheet that lies on the bag and is read with the ruler.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Card {
    /// Long side (mm).
    pub length_mm: f64,
    /// Short side (mm).
    pub width_mm: f64,
    /// Mass (g).
    pub grams: f64,
}

/// How a bag lies while it works.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lying {
    /// Flat on the bench in room air.
    Bench,
    /// On a dry folded towel, with another over it.
    Towel,
    /// In a tray of warm water at this temperature (°C) at the zero reading.
    WarmTray {
        /// Temperature of the tray's water at the zero reading (°C).
        celsius: f64,
    },
}

/// Everything the bag model needs to know about one kind of bag on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct Setup {
    /// Water poured in (mL).
    pub water_ml: f64,
    /// Temperature of that water as poured (°C).
    pub water_celsius: f64,
    /// Standard deviation of the poured temperature from bag to bag (K).
    pub water_celsius_sd: f64,
    /// Relative standard deviation of the poured volume from bag to bag (1).
    pub water_dosing_sd: f64,
    /// Yeast, if any.
    pub yeast: Option<YeastDose>,
    /// Foods.
    pub foods: Vec<Portion>,
    /// Enzymes.
    pub enzymes: Vec<EnzymeDose>,
    /// The bag.
    pub bag: Bag,
    /// The card on it.
    pub card: Card,
    /// How it lies.
    pub lying: Lying,
    /// Room temperature (°C), also that of the dry things and the bag when the water goes in.
    pub room_celsius: f64,
    /// Air pressure at the bench (Pa).
    pub pressure_pa: f64,
    /// Air left in the bag after pressing it out (mL at room temperature).
    pub trapped_air_ml: f64,
    /// Minutes between wetting the yeast and the zero reading.
    pub wet_before_zero_min: f64,
}
