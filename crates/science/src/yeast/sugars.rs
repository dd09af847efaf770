//! Which sugars yeast takes up, how fast, and what it burns when there is none.

use crate::fact::Fact;

/// Half-saturation of uptake by glucose (g/L).
pub const HALF_GLUCOSE: Fact = Fact::memory(
    "yeast.half_glucose",
    0.3,
    "g/L",
    "judgement beside R. K. Warren, G. A. Hill, D. G. Macdonald, Biotechnol. Prog. 6, 319 (1990): 0.245",
)
.within((0.1, 0.6));

/// Half-saturation of uptake by fructose over that by glucose (1).
pub const FRUCTOSE_HALF_RATIO: Fact = Fact::memory(
    "yeast.fructose_half_ratio",
    5.0,
    "1",
    "shared hexose carriers prefer glucose, from memory",
)
.within((2.0, 10.0));

/// Rate on fructose alone over rate on glucose alone (1).
pub const FRUCTOSE_RATE: Fact = Fact::derived(
    "yeast.fructose_rate",
    0.9,
    "1",
    "two undergraduate data pairs, 0.82 and 0.96; A. Zinnai et al., J. Biosci. Bioeng. 115, 43 \
     (2013): no significant difference at low ethanol",
)
.within((0.8, 1.0));

/// Rate on maltose, once induced, over rate on glucose (1).
pub const MALTOSE_RATE: Fact = Fact::memory(
    "yeast.maltose_rate",
    0.6,
    "1",
    "baking texts: a maltose phase after an induction gap; value from memory",
)
.within((0.3, 0.9));

/// Half-saturation of maltose uptake (g/L).
pub const HALF_MALTOSE: Fact = Fact::memory(
    "yeast.half_maltose",
    2.0,
    "g/L",
    "maltose permease, a few mmol/L, from memory",
)
.within((1.0, 5.0));

/// Rate on maltotriose, once induced, over rate on maltose (1).
pub const MALTOTRIOSE_RATE: Fact = Fact::memory(
    "yeast.maltotriose_rate",
    0.3,
    "1",
    "the slowest of wort's sugars, taken up last; value from memory",
)
.within((0.1, 0.6));

/// Rate on galactose, once all is made for it, over rate on glucose (1).
pub const GALACTOSE_RATE: Fact = Fact::memory(
    "yeast.galactose_rate",
    0.5,
    "1",
    "slower than glucose once induced; value from memory",
)
.within((0.3, 0.8));

/// Half-saturation of galactose uptake (g/L).
pub const HALF_GALACTOSE: Fact = Fact::memory(
    "yeast.half_galactose",
    0.5,
    "g/L",
    "galactose carrier, a few mmol/L, from memory",
)
.within((0.2, 1.0));

/// Time constant of maltose induction once glucose is low (min).
pub const MALTOSE_INDUCTION: Fact = Fact::memory(
    "yeast.maltose_induction",
    45.0,
    "min",
    "maltose phase 60 to 90 min into a dough, after a gap; value from memory",
)
.within((30.0, 90.0));

/// Storage carbohydrate that yeast burns by itself soon after wetting (g per g dry matter).
pub const RESERVE: Fact = Fact::memory(
    "yeast.reserve",
    0.04,
    "g/g",
    "trehalose and glycogen of dried yeast, the part used within the hour, from memory",
)
.within((0.02, 0.08));

/// Rate on full reserves over rate on glucose (1).
pub const RESERVE_RATE: Fact = Fact::memory(
    "yeast.reserve_rate",
    0.05,
    "1",
    "gas of yeast in plain water, 2 to 8 % of the sugar rate and falling over 30 min, \
     from memory",
)
.within((0.02, 0.08));

/// Reserves at which their rate is halved, as a share of the full ones (1).
pub const HALF_RESERVE: Fact = Fact::memory(
    "yeast.half_reserve",
    0.5,
    "1",
    "gas of yeast in plain water falls over half an hour; judgement",
)
.within((0.2, 1.0));

/// Activity of yeast's own invertase at 37 °C (µmol sucrose per minute and g dry matter).
pub const OWN_INVERTASE: Fact = Fact::memory(
    "yeast.own_invertase",
    1000.0,
    "umol/(min.g)",
    "4 g sucrose in 50 mL with 3 g dry yeast split within 5 to 10 min at 30 °C, from memory; \
     carried to 37 °C with 47 kJ/mol (I. W. Sizer, J. Gen. Physiol. 21, 695 (1938))",
)
.within((400.0, 2500.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    HALF_GLUCOSE,
    FRUCTOSE_HALF_RATIO,
    FRUCTOSE_RATE,
    MALTOSE_RATE,
    HALF_MALTOSE,
    MALTOTRIOSE_RATE,
    GALACTOSE_RATE,
    HALF_GALACTOSE,
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
    /// Share that is free (1): what maltose and reserves are let in by.
    pub idle: f64,
}

impl Uptake {
    /// Share of the carriers that glucose and fructose hold (1).
    pub fn busy(&self) -> f64 {
        self.glucose + self.fructose
    }
}

/// Shares of the common hexose carriers that glucose and fructose take (1).
///
/// ```text
/// θ = 1 + G/K + F/K_F      glucose (G/K)/θ, fructose (F/K_F)/θ, idle 1/θ
/// ```
///
/// G, F, K, K_F in g/L. Above 5 g/L the carriers are full and the rate no longer depends on sugar,
/// which is why twice the sugar does not mean twice the gas.
pub fn uptake(
    glucose_g_per_l: f64,
    fructose_g_per_l: f64,
    half_glucose: f64,
    half_fructose: f64,
) -> Uptake {
    let glucose = glucose_g_per_l.max(0.0) / half_glucose;
    let fructose = fructose_g_per_l.max(0.0) / half_fructose;
    let idle = 1.0 / (1.0 + glucose + fructose);
    Uptake { glucose: glucose * idle, fructose: fructose * idle, idle }
}

/// How full the carrier that maltose and maltotriose share is of the second (1).
///
/// ```text
/// M3 / (K (1 + M/K) + M3)      in g/L
/// ```
///
/// Maltose keeps it out while there is any: the order in which wort is eaten up.
pub fn maltotriose_full(maltotriose_g_per_l: f64, maltose_g_per_l: f64, half: f64) -> f64 {
    let maltotriose = maltotriose_g_per_l.max(0.0);
    maltotriose / (half + maltose_g_per_l.max(0.0) + maltotriose)
}
