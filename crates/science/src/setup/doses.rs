//! Yeast and enzymes, as much of them as goes into a bag.

use super::composition::Portion;
use crate::enzyme::stock::UNSHAKEN_SD;

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

impl YeastKind {
    /// All kinds.
    pub const ALL: [Self; 3] = [Self::ActiveDry, Self::Instant, Self::Compressed];
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
    /// Months that it was stored (30 days each), as far as they are not in the rates of fresh
    /// yeast: 0 for a pack well within its date.
    pub age_months: f64,
    /// Temperature at which it was stored (°C).
    pub stored_celsius: f64,
    /// Whether its pack stood open to air for that time.
    pub opened: bool,
}

/// Where yeast is kept if nobody says (°C): a cupboard.
const CUPBOARD_CELSIUS: f64 = 20.0;

impl YeastDose {
    /// So many grams out of a fresh pack, measured with a relative standard deviation from bag to
    /// bag.
    pub const fn fresh(kind: YeastKind, grams: f64, dosing_sd: f64) -> Self {
        Self {
            kind,
            grams,
            dosing_sd,
            age_months: 0.0,
            stored_celsius: CUPBOARD_CELSIUS,
            opened: false,
        }
    }
}

/// Kinds of enzyme that a teacher can buy for this practical.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum EnzymeKind {
    /// Cuts glucose from the ends of starch and dextrin.
    Glucoamylase,
    /// Fungal alpha-amylase: starch to dextrin and maltose.
    FungalAlphaAmylase,
    /// Bacterial alpha-amylase: starch to dextrin, heat-hardy; also stands for malt's.
    BacterialAlphaAmylase,
    /// Neutral (yeast-type) lactase: lactose to glucose and galactose.
    NeutralLactase,
    /// Acid (fungal) lactase, as in tablets.
    AcidLactase,
    /// Added invertase: sucrose to glucose and fructose, raffinose to melibiose and fructose.
    Invertase,
    /// Beta-amylase, as in malt: maltose from the ends of cooked starch and dextrin.
    BetaAmylase,
    /// Alpha-galactosidase: galactose off raffinose and its like.
    AlphaGalactosidase,
}

/// An amount of one enzyme in a bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnzymeDose {
    /// Which enzyme.
    pub kind: EnzymeKind,
    /// Activity of the dose as it was mixed (µmol of product per minute at the enzyme's reference
    /// temperature and with substrate in excess); what reaches the bag of an old or unshaken
    /// solution is less.
    pub units: f64,
    /// Relative standard deviation of the activity (1), common to all bags of the day: what the
    /// label leaves open.
    pub activity_sd: f64,
    /// Relative standard deviation from bag to bag (1): dropper, pipette, settling.
    pub dosing_sd: f64,
    /// What the powder or syrup carries along (often dextrose or maltodextrin).
    pub carrier: Option<Portion>,
    /// Minutes since its solution was mixed; 0 for a product used as it is.
    pub stock_age_min: f64,
    /// Whether its bottle was shaken before the dose was taken.
    pub shaken: bool,
}

impl EnzymeDose {
    /// The same dose out of a bottle that nobody shook: less of it, and less alike from bag to bag.
    pub fn unshaken(self) -> Self {
        let dosing_sd = libm::hypot(self.dosing_sd, UNSHAKEN_SD.value);
        Self { shaken: false, dosing_sd, ..self }
    }

    /// So many units (µmol/min), fresh and shaken, with the relative standard deviations of what
    /// the label leaves open and from bag to bag.
    pub const fn fresh(
        kind: EnzymeKind,
        units: f64,
        activity_sd: f64,
        dosing_sd: f64,
        carrier: Option<Portion>,
    ) -> Self {
        Self { kind, units, activity_sd, dosing_sd, carrier, stock_age_min: 0.0, shaken: true }
    }
}
