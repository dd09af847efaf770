//! What a breath-alcohol meter says about the liquid in a bag.
//!
//! The meter is made for breath at 34 °C. Over a bag it sees gas in equilibrium with the liquid at
//! the liquid's own temperature, and its gain is unknown: readings compare bags, they do not
//! measure them. Never is it a test of a person.

mod chain;
mod compare;
mod dilution;
mod drift;
mod reading;
mod standards;

pub use chain::{CHAIN_FACTS, Liquid, gas_mg_per_l, liquid_g_per_l, percent_over};
pub use compare::{COMPARE_FACTS, Corrections, Outcome, compare_sets};
pub use dilution::{DILUTION_FACTS, Sample, taken_share};
pub use drift::{Blank, DRIFT_FACTS, DRIFT_SD, PUSH_SD, STEP, Zero};
pub use reading::{Corrected, Meter, Reading};
pub use standards::{MeterPosterior, STANDARD_FACTS, Standard, ZERO_SD, checked};

use crate::fact::Fact;
use crate::units::Celsius;

/// Litres of breath that hold as much ethanol as 100 mL of blood, by convention (L).
pub const LITRES_PER_PERCENT: Fact = Fact::sourced(
    "meter.litres_per_percent",
    210.0,
    "L",
    "blood-breath ratio of 2100:1 by convention: 0.08 % means 0.08 g in 210 L of breath; \
         R. Q. Thompson, The thermodynamics of drunk driving, J. Chem. Educ. 74 (1997), first page",
);

/// Highest reading of a usual handheld meter (%).
pub const USUAL_RANGE: Fact =
    Fact::memory("meter.range", 0.40, "%", "many handheld meters stop at 0.40 %, from memory")
        .within((0.20, 0.50));

/// Standard deviation of the natural logarithm of a meter's gain (1): about a factor of two.
pub const GAIN_SD: Fact = Fact::memory(
    "meter.gain_sd",
    0.42,
    "1",
    "gain and zero known to a factor of two before a check with ethanol of known strength, \
         from memory",
);

/// Ethanol in a bag's gas over what equilibrium would give (1).
pub const EQUILIBRIUM: Fact = Fact::memory(
    "meter.equilibrium",
    0.85,
    "1",
    "air left in the bag and cool film lower the gas below equilibrium, from memory",
)
.within((0.7, 1.0));

/// Ethanol that reaches the sensor over what left the bag (1).
pub const SAMPLING: Fact = Fact::memory(
    "meter.sampling",
    0.9,
    "1",
    "ethanol that stays on syringe, tube and damp walls, from memory",
)
.within((0.8, 1.0));

/// Standard deviation of the temperature of a bag's liquid as read through the film (K).
pub const CELSIUS_SD: Fact = Fact::memory(
    "meter.celsius_sd",
    1.0,
    "K",
    "school thermometer folded into the bag, common practice, no source",
)
.within((0.5, 2.0));

/// Facts of this module.
pub const FACTS: &[Fact] =
    &[LITRES_PER_PERCENT, USUAL_RANGE, GAIN_SD, EQUILIBRIUM, SAMPLING, CELSIUS_SD];

/// What has to stand beside every number from a meter.
pub const RELATIVE_ONLY: &str = "relative reading: it compares the bags of one class on one \
     meter, and says nothing about any person";

/// Two-sided 95 % of a normal distribution.
const Z95: f64 = 1.96;

/// A reading that says nothing.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum MeterError {
    /// Not a number, or below zero.
    #[error("{percent} is not a meter reading; write what the display shows, such as 0.12")]
    NotAReading {
        /// What was given (%).
        percent: f64,
    },
    /// The reading lies above what the meter can show.
    #[error(
        "a reading of {percent} % is above this meter's range of {range_percent} %; look at the \
         decimal point"
    )]
    AboveRange {
        /// What was given (%).
        percent: f64,
        /// Highest reading of the meter (%).
        range_percent: f64,
    },
    /// Two readings cannot be compared because one stands at the end of the range.
    #[error(
        "a meter at the end of its range says only \"at least\"; thin the gas with air or sample \
         earlier"
    )]
    EndOfRange,
    /// A sample that is none.
    #[error(
        "{gas_ml} mL of gas with {air_ml} mL of air is no sample; write how much gas of the bag was drawn \
         and how much clean air was added"
    )]
    NotASample {
        /// Gas (mL).
        gas_ml: f64,
        /// Air (mL).
        air_ml: f64,
    },
    /// Nothing to check a meter with.
    #[error(
        "a check of the meter needs at least one liquid of known strength; plain water counts"
    )]
    NoStandard,
    /// A strength that no standard has.
    #[error("a standard of {g_per_l} g/L of ethanol lies outside 0 to 80 g/L (10 % by volume)")]
    Strength {
        /// What was given (g/L).
        g_per_l: f64,
    },
    /// A temperature that no standard has.
    #[error("a standard at {celsius} °C lies outside 0 to 60 °C")]
    Warmth {
        /// What was given (°C).
        celsius: f64,
    },
    /// A ratio with a bag that shows no ethanol.
    #[error("one of the bags shows no ethanol, so there is no ratio")]
    NothingToCompare,
}

/// Ethanol in a bag's liquid as far as a meter tells.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterEstimate {
    /// Ethanol in the liquid if the meter is right and the gas in equilibrium (g/L).
    pub g_per_l: f64,
    /// Lower end of the 95 % interval (g/L).
    pub low_g_per_l: f64,
    /// Upper end of the 95 % interval (g/L); without bound at the end of the range.
    pub high_g_per_l: f64,
    /// The meter stood at the end of its range: there is at least so much.
    pub at_least: bool,
}

/// How much more ethanol one bag's liquid holds than another's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ratio {
    /// Best value (1).
    pub ratio: f64,
    /// Lower end of the 95 % interval (1).
    pub low: f64,
    /// Upper end of the 95 % interval (1).
    pub high: f64,
}

/// [`Meter::estimate`] of one reading of unthinned gas over water on a usual meter that nobody has checked
/// and that shows 0.00 of clean air.
///
/// # Errors
/// [`MeterError::NotAReading`] and [`MeterError::AboveRange`].
pub fn estimate(
    percent: f64,
    range_percent: f64,
    liquid: Celsius,
) -> Result<MeterEstimate, MeterError> {
    Meter { range_percent, ..Meter::usual() }.estimate(&plain(percent, liquid))
}

/// Ethanol in one bag's liquid over that in another's, both read on one usual meter: its gain drops out.
///
/// Each reading is given with the temperature of its own liquid; without that, a warm bag seems to
/// hold 6.6 % more for every degree.
///
/// # Errors
/// [`MeterError::EndOfRange`] if either reading stands at the end of the range,
/// [`MeterError::NothingToCompare`] if either shows none, and those of [`estimate`].
pub fn compare(
    one: (f64, Celsius),
    other: (f64, Celsius),
    range_percent: f64,
) -> Result<Ratio, MeterError> {
    let meter = Meter { range_percent, ..Meter::usual() };
    let corrected = |(percent, liquid)| meter.corrected(&plain(percent, liquid));
    match compare_sets(&[corrected(one)?], &[corrected(other)?], None) {
        Outcome::Ratio(found) => Ok(found.ratio),
        Outcome::AtLeast(_) | Outcome::AtMost(_) | Outcome::BothAtTheEnd => {
            Err(MeterError::EndOfRange)
        }
        Outcome::OnlyTheFirst | Outcome::OnlyTheOthers | Outcome::Partly | Outcome::None => {
            Err(MeterError::NothingToCompare)
        }
    }
}

fn plain(percent: f64, liquid: Celsius) -> Reading {
    Reading { percent, turn: None, liquid: Liquid::water(liquid), sample: Sample::UNTHINNED }
}

fn at_end_of_range(percent: f64, range_percent: f64) -> Result<bool, MeterError> {
    if !(percent >= 0.0 && percent.is_finite()) {
        return Err(MeterError::NotAReading { percent });
    }
    // Displays show two or three decimals; half a step of the coarser kind.
    let half_step = 0.005;
    if percent > range_percent + half_step {
        return Err(MeterError::AboveRange { percent, range_percent });
    }
    Ok(percent > range_percent - 1e-9)
}
