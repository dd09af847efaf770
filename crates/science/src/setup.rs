//! What stands on the bench: one bag, its card, what went in, and the room around it.
//!
//! These are plain inputs to the bag model. Every field whose value could be absurd is checked
//! once, by the forecast that takes them.

/// Carbohydrates and other parts of a food, in grams per 100 g of the food as used.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Composition {
    /// Water (g per 100 g).
    pub water: f64,
    /// Starch in raw granules (g per 100 g).
    pub raw_starch: f64,
    /// Gelatinized (cooked) or mechanically damaged starch (g per 100 g).
    pub cooked_starch: f64,
    /// Dextrins and other glucose chains of three units or more (g per 100 g).
    pub dextrin: f64,
    /// Maltose (g per 100 g).
    pub maltose: f64,
    /// Sucrose (g per 100 g).
    pub sucrose: f64,
    /// Lactose (g per 100 g).
    pub lactose: f64,
    /// Galactose (g per 100 g).
    pub galactose: f64,
    /// Glucose (g per 100 g).
    pub glucose: f64,
    /// Fructose (g per 100 g).
    pub fructose: f64,
    /// Table salt equivalent (g NaCl per 100 g).
    pub salt: f64,
    /// Titratable acid (mol of H⁺ per 100 g).
    pub acid: f64,
    /// Bicarbonate, as in baking soda (mol per 100 g).
    pub bicarbonate: f64,
}

/// An amount of one food or carrier in a bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Portion {
    /// What it is made of.
    pub composition: Composition,
    /// Mass (g) as planned.
    pub grams: f64,
    /// Relative standard deviation of that mass from bag to bag (1), such as 0.10 for a level spoon.
    pub dosing_sd: f64,
    /// Relative standard deviation of the carbohydrate content itself (1), common to all bags of
    /// the day: what a label or a food table leaves open.
    pub content_sd: f64,
}

/// Kinds of baker's yeast as bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum YeastKind {
    /// Active dry yeast: coarse, wants warm water to wake.
    ActiveDry,
    /// Instant dry yeast: fine, wakes fast.
    Instant,
    /// Compressed (fresh) yeast: about 30 % dry matter, awake.
    Compressed,
}

/// An amount of yeast in a bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct YeastDose {
    /// Kind as bought.
    pub kind: YeastKind,
    /// Mass of the product (g) as planned.
    pub grams: f64,
    /// Relative standard deviation of that mass from bag to bag (1).
    pub dosing_sd: f64,
}

/// Kinds of enzyme that a teacher can buy for this practical.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum EnzymeKind {
    /// Cuts glucose from the ends of starch and dextrin.
    Glucoamylase,
    /// Fungal alpha-amylase: starch to dextrin and maltose.
    FungalAlphaAmylase,
    /// Bacterial alpha-amylase: starch to dextrin, heat-hardy.
    BacterialAlphaAmylase,
    /// Neutral (yeast-type) lactase: lactose to glucose and galactose.
    NeutralLactase,
    /// Acid (fungal) lactase, as in tablets.
    AcidLactase,
    /// Added invertase: sucrose to glucose and fructose.
    Invertase,
}

/// An amount of one enzyme in a bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnzymeDose {
    /// Which enzyme.
    pub kind: EnzymeKind,
    /// Activity put into the bag (µmol of product per minute at the enzyme's reference
    /// temperature and with substrate in excess).
    pub units: f64,
    /// Relative standard deviation of the activity (1), common to all bags of the day: what the
    /// label leaves open.
    pub activity_sd: f64,
    /// Relative standard deviation from bag to bag (1): dropper, pipette, settling.
    pub dosing_sd: f64,
    /// What the powder or syrup carries along (often dextrose or maltodextrin).
    pub carrier: Option<Portion>,
}

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
