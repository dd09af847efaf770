//! What a breath-alcohol meter says about the liquid in a bag.
//!
//! The meter is made for breath at 34 °C. Over a bag it sees gas in equilibrium with the liquid at
//! the liquid's own temperature, and its gain is unknown: readings compare bags, they do not
//! measure them.

use crate::ethanol::{RATIO_SD, water_gas_ratio};
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

/// Standard deviation of the temperature of a bag's liquid as read through the film (K).
pub const CELSIUS_SD: Fact = Fact::memory(
    "meter.celsius_sd",
    1.0,
    "K",
    "school thermometer folded into the bag, common practice, no source",
)
.within((0.5, 2.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[LITRES_PER_PERCENT, USUAL_RANGE, GAIN_SD, EQUILIBRIUM, CELSIUS_SD];

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
    /// A ratio to a bag that shows no ethanol.
    #[error("the other bag shows no ethanol, so there is no ratio to it")]
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

/// Ethanol in the gas, in milligrams per litre, when the display shows so many percent.
///
/// ```text
/// c = R · 1000 mg / 210 L      R in % blood alcohol: g per 100 mL of blood, or per 210 L of breath
/// ```
pub const fn gas_mg_per_l(percent: f64) -> f64 {
    percent * 1e3 / LITRES_PER_PERCENT.value
}

/// Ethanol in the liquid, in grams per litre, whose equilibrium gas makes the display show so many
/// percent.
///
/// ```text
/// C = c · K(T) / 1000      K from ethanol::water_gas_ratio at the liquid's temperature
/// ```
pub fn liquid_g_per_l(percent: f64, liquid: Celsius) -> f64 {
    gas_mg_per_l(percent) * 1e-3 * water_gas_ratio(liquid)
}

/// Ethanol in a bag's liquid from one reading, with what the meter leaves open: its gain, the
/// temperature, and gas below equilibrium.
///
/// # Errors
/// [`MeterError::NotAReading`] and [`MeterError::AboveRange`].
pub fn estimate(
    percent: f64,
    range_percent: f64,
    liquid: Celsius,
) -> Result<MeterEstimate, MeterError> {
    let at_end = at_end_of_range(percent, range_percent)?;
    let g_per_l = liquid_g_per_l(percent, liquid);
    let thermal = thermal_sd(liquid);
    let sd = libm::hypot(libm::hypot(GAIN_SD.value, RATIO_SD.value), thermal);
    let spread = libm::exp(Z95 * sd);
    let lag = EQUILIBRIUM.range.map_or(EQUILIBRIUM.value, |(low, _)| low);
    Ok(MeterEstimate {
        g_per_l,
        low_g_per_l: g_per_l / spread,
        high_g_per_l: if at_end { f64::INFINITY } else { g_per_l * spread / lag },
        at_least: at_end,
    })
}

/// Ethanol in one bag's liquid over that in another's, both read on one meter: its gain drops out.
///
/// Each reading is given with the temperature of its own liquid; without that, a warm bag seems to
/// hold 6.6 % more for every degree.
///
/// # Errors
/// [`MeterError::EndOfRange`] if either reading stands at the end of the range,
/// [`MeterError::NothingToCompare`] if the other bag shows none, and those of [`estimate`].
pub fn compare(
    one: (f64, Celsius),
    other: (f64, Celsius),
    range_percent: f64,
) -> Result<Ratio, MeterError> {
    if at_end_of_range(one.0, range_percent)? || at_end_of_range(other.0, range_percent)? {
        return Err(MeterError::EndOfRange);
    }
    if other.0 <= 0.0 {
        return Err(MeterError::NothingToCompare);
    }
    let ratio = liquid_g_per_l(one.0, one.1) / liquid_g_per_l(other.0, other.1);
    // The range of the equilibrium factor is taken as its central 90 %.
    let lag =
        EQUILIBRIUM.range.map_or(0.0, |(low, high)| libm::log(high / low) / (2.0 * 1.645));
    let thermal = libm::hypot(thermal_sd(one.1), thermal_sd(other.1));
    let spread = libm::exp(Z95 * libm::hypot(thermal, lag * 2.0_f64.sqrt()));
    Ok(Ratio { ratio, low: ratio / spread, high: ratio * spread })
}

/// Relative standard deviation that the doubt about the liquid's temperature brings (1).
fn thermal_sd(liquid: Celsius) -> f64 {
    let warmer = Celsius(liquid.0 + CELSIUS_SD.value);
    libm::log(water_gas_ratio(liquid) / water_gas_ratio(warmer))
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
