//! How fast yeast works at a temperature.

use crate::fact::Fact;
use crate::monotone::MonotoneCurve;
use crate::units::Celsius;

const BLEND: &str = "blend: optimum 40 °C in a short window (J. White, D. J. Munns, J. Inst. Brew. \
     57, 280 (1951)), 35 kJ/mol near 30 °C (M. Phisalaphong et al., Biochem. Eng. J. 28, 36 \
     (2006)), rising dough (upper bound at low temperature), Slator's quotients of 1906 (from \
     memory)";

const fn point(name: &'static str, value: f64) -> Fact {
    Fact::derived(name, value, "1", BLEND)
}

/// Temperatures of the table (°C).
const CELSIUS: [f64; 16] = [
    0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 38.0, 40.0, 42.0, 45.0, 48.0, 50.0, 55.0,
    60.0,
];

/// Rates over the rate at 30 °C.
const RATES: [Fact; 16] = [
    point("yeast.temperature.0c", 0.03),
    point("yeast.temperature.5c", 0.065),
    point("yeast.temperature.10c", 0.13),
    point("yeast.temperature.15c", 0.24),
    point("yeast.temperature.20c", 0.42),
    point("yeast.temperature.25c", 0.68),
    point("yeast.temperature.30c", 1.0),
    point("yeast.temperature.35c", 1.38),
    point("yeast.temperature.38c", 1.60),
    point("yeast.temperature.40c", 1.68),
    point("yeast.temperature.42c", 1.60),
    point("yeast.temperature.45c", 1.15),
    point("yeast.temperature.48c", 0.55),
    point("yeast.temperature.50c", 0.28),
    point("yeast.temperature.55c", 0.03),
    point("yeast.temperature.60c", 0.0),
];

/// Facts of this module.
pub const FACTS: &[Fact] = &RATES;

static CURVE: MonotoneCurve<16> = {
    let mut rates = [0.0; 16];
    let mut i = 0;
    while i < 16 {
        rates[i] = RATES[i].value;
        i += 1;
    }
    MonotoneCurve::new(CELSIUS, rates)
};

/// Rate of awake, living yeast over its rate at 30 °C (1).
///
/// The optimum near 40 °C is that of the first half hour; over longer runs it moves down, as
/// yeast dies the while, which the bag model follows by itself.
///
/// # Range
/// 0 to 60 °C; the end values outside.
/// # Source
/// Table of this module through a monotone cubic: White and Munns (1951), *J. Inst. Brew.* 57,
/// 280; Phisalaphong et al. (2006), *Biochem. Eng. J.* 28, 36; and others named in its facts.
pub fn response(temperature: Celsius) -> f64 {
    CURVE.at(temperature.0)
}
