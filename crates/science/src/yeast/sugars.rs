//! Which sugars yeast takes up, how fast, and what it burns when there is none.

use crate::fact::{Fact, Status};

const fn fact(
    name: &'static str,
    value: f64,
    unit: &'static str,
    range: (f64, f64),
    status: Status,
    source: &'static str,
) -> Fact {
    Fact { name, value, unit, range: Some(range), status, source }
}

/// Half-saturation of uptake by glucose (g/L).
pub const HALF_GLUCOSE: Fact = fact(
    "yeast.half_glucose",
    0.3,
    "g/L",
    (0.1, 0.6),
    Status::Sourced,
    "R. K. Warren, G. A. Hill, D. G. Macdonald, Biotechnol. Prog. 6, 319 (1990): 0.245",
);

/// Half-saturation of uptake by fructose over that by glucose (1).
pub const FRUCTOSE_HALF_RATIO: Fact = fact(
    "yeast.fructose_half_ratio",
    5.0,
    "1",
    (2.0, 10.0),
    Status::Memory,
    "shared hexose carriers prefer glucose, from memory",
);

/// Rate on fructose alone over rate on glucose alone (1).
pub const FRUCTOSE_RATE: Fact = fact(
    "yeast.fructose_rate",
    0.9,
    "1",
    (0.8, 1.0),
    Status::Derived,
    "two undergraduate data pairs, 0.82 and 0.96; A. Zinnai et al., J. Biosci. Bioeng. 115, 43 \
     (2013): no significant difference at low ethanol",
);

/// Rate on maltose, once induced, over rate on glucose (1).
pub const MALTOSE_RATE: Fact = fact(
    "yeast.maltose_rate",
    0.6,
    "1",
    (0.3, 0.9),
    Status::Memory,
    "baking texts: a maltose phase after an induction gap; value from memory",
);

/// Half-saturation of maltose uptake (g/L).
pub const HALF_MALTOSE: Fact = fact(
    "yeast.half_maltose",
    2.0,
    "g/L",
    (1.0, 5.0),
    Status::Memory,
    "maltose permease, a few mmol/L, from memory",
);

/// Time constant of maltose induction once glucose is low (min).
pub const MALTOSE_INDUCTION: Fact = fact(
    "yeast.maltose_induction",
    45.0,
    "min",
    (30.0, 90.0),
    Status::Memory,
    "maltose phase 60 to 90 min into a dough, after a gap; value from memory",
);

/// Storage carbohydrate that yeast burns by itself soon after wetting (g per g dry matter).
pub const RESERVE: Fact = fact(
    "yeast.reserve",
    0.04,
    "g/g",
    (0.02, 0.08),
    Status::Memory,
    "trehalose and glycogen of dried yeast, the part used within the hour, from memory",
);

/// Rate on full reserves over rate on glucose (1).
pub const RESERVE_RATE: Fact = fact(
    "yeast.reserve_rate",
    0.05,
    "1",
    (0.02, 0.08),
    Status::Memory,
    "gas of yeast in plain water, 2 to 8 % of the sugar rate and falling over 30 min, from memory",
);

/// Reserves at which their rate is halved, as a share of the full ones (1).
pub const HALF_RESERVE: Fact = fact(
    "yeast.half_reserve",
    0.5,
    "1",
    (0.2, 1.0),
    Status::Memory,
    "gas of yeast in plain water falls over half an hour; judgement",
);

/// Activity of yeast's own invertase at 37 °C (µmol sucrose per minute and g dry matter).
pub const OWN_INVERTASE: Fact = fact(
    "yeast.own_invertase",
    1000.0,
    "umol/(min.g)",
    (400.0, 2500.0),
    Status::Memory,
    "4 g sucrose in 50 mL with 3 g dry yeast split within 5 to 10 min at 30 °C, from memory; \
     carried to 37 °C with 47 kJ/mol (I. W. Sizer, J. Gen. Physiol. 21, 695 (1938))",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    HALF_GLUCOSE,
    FRUCTOSE_HALF_RATIO,
    FRUCTOSE_RATE,
    MALTOSE_RATE,
    HALF_MALTOSE,
    MALTOSE_INDUCTION,
    RESERVE,
    RESERVE_RATE,
    HALF_RESERVE,
    OWN_INVERTASE,
];

/// How busy the hexose carriers are with each sugar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uptake {
    /// Share of the carriers taken by glucose (1).
    pub glucose: f64,
    /// Share taken by fructose (1).
    pub fructose: f64,
}

impl Uptake {
    /// Share of the carriers that are free (1): what maltose and reserves are let in by.
    pub fn idle(&self) -> f64 {
        1.0 - self.glucose - self.fructose
    }
}

/// Shares of the common hexose carriers that glucose and fructose take (1).
///
/// ```text
/// θ = 1 + G/K + F/(5 K)      glucose (G/K)/θ, fructose (F/5K)/θ
/// ```
///
/// G, F, K in g/L. Above 5 g/L the carriers are full and the rate no longer depends on sugar,
/// which is why twice the sugar does not mean twice the gas.
pub fn uptake(glucose_g_per_l: f64, fructose_g_per_l: f64, half_g_per_l: f64) -> Uptake {
    let glucose = glucose_g_per_l.max(0.0) / half_g_per_l;
    let fructose = fructose_g_per_l.max(0.0) / (FRUCTOSE_HALF_RATIO.value * half_g_per_l);
    let theta = 1.0 + glucose + fructose;
    Uptake { glucose: glucose / theta, fructose: fructose / theta }
}
