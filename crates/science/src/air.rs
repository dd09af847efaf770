//! Pressure of the air at an altitude.

use crate::constants::ATMOSPHERE;
use crate::fact::Fact;
use crate::units::Pascal;

const STANDARD: &str = "U.S. Standard Atmosphere 1976, NOAA-S/T 76-1562 (NOAA, NASA, USAF, 1976), \
     table 2 and equation 33a";

/// Temperature of the standard atmosphere at sea level (K).
pub const SEA_LEVEL_KELVIN: Fact =
    Fact::sourced("air.sea_level_temperature", 288.15, "K", STANDARD);

/// Fall of temperature with height in the lowest layer (K/m).
pub const LAPSE: Fact = Fact::sourced("air.lapse", 0.0065, "K/m", STANDARD);

/// Standard acceleration of free fall (m/s²).
pub const GRAVITY: Fact = Fact::sourced("air.gravity", 9.806_65, "m/s2", STANDARD);

/// Molar mass of dry air (kg/mol).
pub const MOLAR_MASS: Fact = Fact::sourced("air.molar_mass", 0.028_964_4, "kg/mol", STANDARD);

/// The gas constant that the standard atmosphere itself uses (J/(mol·K)).
pub const GAS_1976: Fact = Fact::sourced("air.gas_1976", 8.314_32, "J/(mol.K)", STANDARD);

/// How far the pressure of one day may lie from the standard atmosphere, as a relative standard
/// deviation (1).
pub const WEATHER_SD: Fact = Fact::memory(
    "air.weather_sd",
    0.01,
    "1",
    "day-to-day swing of sea-level pressure of about 10 hPa, from memory",
)
.within((0.005, 0.02));

/// Facts of this module.
pub const FACTS: &[Fact] =
    &[SEA_LEVEL_KELVIN, LAPSE, GRAVITY, MOLAR_MASS, GAS_1976, WEATHER_SD];

const LOWEST_M: f64 = -500.0;
const HIGHEST_M: f64 = 11_000.0;

/// An altitude at which no class is held.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("an altitude of {metres} m lies outside -500 to 11000 m; give metres above sea level")]
pub struct AltitudeError {
    /// The altitude given (m).
    pub metres: f64,
}

/// Air pressure of the standard atmosphere at an altitude, in pascal.
///
/// A bag at 1400 m holds a fifth more gas than one at the coast for the same sugar, and its gas
/// dissolves less.
///
/// ```text
/// p = p0 · (1 − L h / T0)^(g M / (R L))      h in m above sea level (geopotential)
/// ```
///
/// The height on a map differs from geopotential height by less than 0.05 % up to 3000 m.
///
/// # Source
/// U.S. Standard Atmosphere 1976, NOAA-S/T 76-1562, equation 33a.
/// # Errors
/// [`AltitudeError`] outside −500 to 11 000 m.
pub fn pressure_at(metres: f64) -> Result<Pascal, AltitudeError> {
    if !(LOWEST_M..=HIGHEST_M).contains(&metres) {
        return Err(AltitudeError { metres });
    }
    let exponent = GRAVITY.value * MOLAR_MASS.value / (GAS_1976.value * LAPSE.value);
    let warmth = 1.0 - LAPSE.value * metres / SEA_LEVEL_KELVIN.value;
    Ok(Pascal(ATMOSPHERE.value * libm::pow(warmth, exponent)))
}
