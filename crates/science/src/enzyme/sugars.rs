//! Enzymes that split milk sugar and table sugar.

use super::starch::saturation;
use crate::fact::Fact;

const ESSEL: &str = "K. K. Essel, Y. D. Osei, Nat. Prod. Chem. Res. 2 (2014): 24 to 25 mmol/L; up \
     to 63 mmol/L in others";
const RECALLED: &str = "from memory";

/// Half-saturation of neutral lactase by milk sugar (mmol/L).
pub const NEUTRAL_HALF: Fact =
    Fact::memory("enzyme.neutral_lactase.half", 20.0, "mmol/L", RECALLED).within((15.0, 30.0));

/// Half-saturation of acid lactase by milk sugar (mmol/L).
pub const ACID_HALF: Fact =
    Fact::memory("enzyme.acid_lactase.half", 80.0, "mmol/L", RECALLED).within((50.0, 120.0));

/// Galactose that doubles the half-saturation of neutral lactase (mmol/L).
pub const NEUTRAL_GALACTOSE: Fact =
    Fact::memory("enzyme.neutral_lactase.galactose", 40.0, "mmol/L", RECALLED)
        .within((20.0, 60.0));

/// Galactose that doubles the half-saturation of acid lactase (mmol/L).
pub const ACID_GALACTOSE: Fact =
    Fact::memory("enzyme.acid_lactase.galactose", 25.0, "mmol/L", RECALLED).within((4.0, 50.0));

/// Half-saturation of invertase by table sugar (mmol/L).
pub const INVERTASE_HALF: Fact =
    Fact::sourced("enzyme.invertase.half", 25.0, "mmol/L", ESSEL).within((24.0, 63.0));

/// Facts of this module.
pub const FACTS: &[Fact] =
    &[NEUTRAL_HALF, ACID_HALF, NEUTRAL_GALACTOSE, ACID_GALACTOSE, INVERTASE_HALF];

/// How the two kinds of lactase differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lactase {
    /// Half-saturation by milk sugar (mmol/L).
    pub half: f64,
    /// Galactose that doubles it (mmol/L).
    pub galactose: f64,
}

/// Neutral (yeast-type) lactase, as in drops.
pub const NEUTRAL: Lactase =
    Lactase { half: NEUTRAL_HALF.value, galactose: NEUTRAL_GALACTOSE.value };

/// Acid (fungal) lactase, as in tablets.
pub const ACID: Lactase = Lactase { half: ACID_HALF.value, galactose: ACID_GALACTOSE.value };

impl Lactase {
    /// Share of the activity at work (1): Michaelis and Menten with galactose competing.
    ///
    /// ```text
    /// L / (K (1 + Ga/Ki) + L)      L, Ga in mmol/L
    /// ```
    ///
    /// `half` multiplies the half-saturation.
    pub fn at_work(&self, lactose: f64, galactose: f64, half: f64) -> f64 {
        saturation(lactose, half * self.half * (1.0 + galactose.max(0.0) / self.galactose))
    }
}

/// Share of invertase at work (1) at a concentration of table sugar (mmol/L), added or yeast's
/// own alike; `half` multiplies the half-saturation.
pub fn invertase_at_work(sucrose: f64, half: f64) -> f64 {
    saturation(sucrose, half * INVERTASE_HALF.value)
}
