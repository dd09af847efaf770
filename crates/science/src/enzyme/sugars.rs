//! Enzymes that split milk sugar, table sugar, and raffinose and its like.

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

const GASCON: &str = "external invertase of yeast: 26 mmol/L sucrose, 150 mmol/L raffinose (S. \
     Gascón, N. P. Neumann, J. O. Lampen, J. Biol. Chem. 243, 1573 (1968)), from memory";

/// Half-saturation of invertase by raffinose (mmol/L).
pub const INVERTASE_HALF_RAFFINOSE: Fact =
    Fact::memory("enzyme.invertase.half_raffinose", 150.0, "mmol/L", GASCON)
        .within((90.0, 250.0));

/// Rate of invertase on raffinose over that on table sugar (1), both in excess.
pub const INVERTASE_ON_RAFFINOSE: Fact =
    Fact::memory("enzyme.invertase.on_raffinose", 0.2, "1", RECALLED).within((0.1, 0.35));

/// Half-saturation of alpha-galactosidase by raffinose or melibiose (mmol/L).
pub const GALACTOSIDASE_HALF: Fact = Fact::memory(
    "enzyme.alpha_galactosidase.half",
    20.0,
    "mmol/L",
    "some tens of times that of the assay's substrate (0.42 mmol/L, Chun, Lee 1988, as reported), \
     from memory",
)
.within((5.0, 60.0));

/// Galactose that doubles the half-saturation of alpha-galactosidase (mmol/L).
pub const GALACTOSIDASE_GALACTOSE: Fact = Fact::memory(
    "enzyme.alpha_galactosidase.galactose",
    64.0,
    "mmol/L",
    "a mold's enzyme, as reported (A. ficuum), from memory",
)
.within((10.0, 100.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    NEUTRAL_HALF,
    ACID_HALF,
    NEUTRAL_GALACTOSE,
    ACID_GALACTOSE,
    INVERTASE_HALF,
    INVERTASE_HALF_RAFFINOSE,
    INVERTASE_ON_RAFFINOSE,
    GALACTOSIDASE_HALF,
    GALACTOSIDASE_GALACTOSE,
];

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

/// Shares of invertase at work (1) on table sugar and on raffinose (mmol/L), added or yeast's own
/// alike; `half` multiplies the half-saturations.
///
/// ```text
/// θ = 1 + S/K + R/Kr      table sugar (S/K)/θ, raffinose 0.2 (R/Kr)/θ
/// ```
///
/// It takes the fructose off raffinose and leaves melibiose: a third of raffinose is what baker's
/// yeast ferments (textbook, from memory).
pub fn invertase_at_work(sucrose: f64, raffinose: f64, half: f64) -> (f64, f64) {
    if raffinose <= 0.0 {
        return (saturation(sucrose, half * INVERTASE_HALF.value), 0.0);
    }
    let sucrose = sucrose.max(0.0) / (half * INVERTASE_HALF.value);
    let raffinose = raffinose / (half * INVERTASE_HALF_RAFFINOSE.value);
    let theta = 1.0 + sucrose + raffinose;
    (sucrose / theta, INVERTASE_ON_RAFFINOSE.value * raffinose / theta)
}

/// Share of alpha-galactosidase at work (1) on raffinose and melibiose together (mmol/L), with
/// galactose (mmol/L) competing; `half` multiplies the half-saturation. Each is split in proportion to
/// what there is of it.
///
/// ```text
/// R / (K (1 + Ga/Ki) + R)
/// ```
pub fn galactosidase_at_work(galactosides: f64, galactose: f64, half: f64) -> f64 {
    let crowded = 1.0 + galactose.max(0.0) / GALACTOSIDASE_GALACTOSE.value;
    saturation(galactosides, half * GALACTOSIDASE_HALF.value * crowded)
}
