//! What slows awake yeast down: strong solutions, its own ethanol, and a wrong acidity.

use crate::exponential::exp;
use crate::fact::Fact;
use crate::monotone::MonotoneCurve;

/// Concentration of dissolved particles at which the rate is halved (osmol/L).
pub const HALF_OSMOTIC: Fact = Fact::memory(
    "yeast.half_osmotic",
    1.2,
    "osm/L",
    "half rate at 18 to 30 % sugar (split by then, so 1.0 to 1.6 osm/L) and at 3 to 4 % \
         salt (1.0 to 1.4 osm/L), from memory",
)
.within((0.9, 1.6));

/// Steepness of the fall with dissolved particles (1).
pub const OSMOTIC_STEEPNESS: Fact = Fact::derived(
    "yeast.osmotic_steepness",
    3.0,
    "1",
    "rate flat from 0.5 to 10 % sugar (R. H. Hopkins, R. H. Roberts, Biochem. J. 29, \
         part CXI (1935)) against 1 % salt −10 %, 5 % salt −70 % (from memory)",
)
.within((2.3, 4.0));

/// Ethanol at which fermentation stops (g/L).
pub const ETHANOL_MOST: Fact = Fact::sourced(
    "yeast.ethanol_most",
    101.6,
    "g/L",
    "R. K. Warren, G. A. Hill, D. G. Macdonald, Biotechnol. Prog. 6, 319 (1990)",
)
.within((87.0, 115.0));

/// Exponent of ethanol inhibition (1).
pub const ETHANOL_EXPONENT: Fact = Fact::sourced(
    "yeast.ethanol_exponent",
    1.95,
    "1",
    "R. K. Warren, G. A. Hill, D. G. Macdonald, Biotechnol. Prog. 6, 319 (1990)",
);

const fn ph_fact(name: &'static str, value: f64) -> Fact {
    Fact::memory(
        name,
        value,
        "1",
        "flat from pH 4 to 6, falling above 7 and below 3.5, from memory",
    )
}

const PH: [f64; 9] = [2.0, 3.0, 3.5, 4.0, 6.0, 7.0, 8.0, 9.0, 10.0];
const PH_RATE: [Fact; 9] = [
    ph_fact("yeast.ph.2", 0.05),
    ph_fact("yeast.ph.3", 0.6),
    ph_fact("yeast.ph.3_5", 0.9),
    ph_fact("yeast.ph.4", 1.0),
    ph_fact("yeast.ph.6", 1.0),
    ph_fact("yeast.ph.7", 0.9),
    ph_fact("yeast.ph.8", 0.5),
    ph_fact("yeast.ph.9", 0.15),
    ph_fact("yeast.ph.10", 0.0),
];
static PH_CURVE: MonotoneCurve<9> = {
    let mut rates = [0.0; 9];
    let mut i = 0;
    while i < 9 {
        rates[i] = PH_RATE[i].value;
        i += 1;
    }
    MonotoneCurve::new(PH, rates)
};

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    HALF_OSMOTIC,
    OSMOTIC_STEEPNESS,
    ETHANOL_MOST,
    ETHANOL_EXPONENT,
    PH_RATE[0],
    PH_RATE[1],
    PH_RATE[2],
    PH_RATE[3],
    PH_RATE[4],
    PH_RATE[5],
    PH_RATE[6],
    PH_RATE[7],
    PH_RATE[8],
];

// A product instead of a power, since this stands in every rate.
const _: () = assert!(OSMOTIC_STEEPNESS.value == 3.0, "the law multiplies three times");

/// Factor on the rate from dissolved sugars and salts (1).
///
/// ```text
/// i = 1 / (1 + (c/c½)³)      c in osmol/L; a salt counts twice, ethanol and starch not at all
/// ```
///
/// One law serves sugar and salt: a spoon of sugar in 50 mL (0.5 osmol/L once split) costs 6 %,
/// a spoon of salt (4 osmol/L) stops the yeast.
///
/// # Source
/// Flat part: Hopkins and Roberts (1935), *Biochem. J.* 29, part CXI. Fall: from memory.
pub fn osmotic_factor(osmol_per_l: f64, half_osmol_per_l: f64) -> f64 {
    let share = osmol_per_l.max(0.0) / half_osmol_per_l;
    1.0 / (1.0 + share * share * share)
}

/// Factor on the rate from ethanol in the liquid (1).
///
/// ```text
/// i = 1 − (P/Pmax)^1.95      P in g/L, never below zero
/// ```
///
/// # Source
/// Warren, Hill and Macdonald (1990), *Biotechnol. Prog.* 6, 319.
pub fn ethanol_factor(grams_per_l: f64, most_grams_per_l: f64) -> f64 {
    let share = (grams_per_l.max(0.0) / most_grams_per_l).min(1.0);
    // A third of the time of a power; the logarithm of nothing gives nothing.
    1.0 - exp(ETHANOL_EXPONENT.value * libm::log(share))
}

/// Factor on the rate from acidity (1); all values from memory.
pub fn ph_factor(ph: f64) -> f64 {
    PH_CURVE.at(ph)
}
