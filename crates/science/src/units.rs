//! Temperatures and pressures as types, so that one is not passed for the other.
//!
//! Only quantities that are easily confused have a type of their own; everything else is an
//! `f64` whose name ends in its unit.

/// Kelvin of the freezing point of the Celsius scale (exact by definition of the scale).
pub const ZERO_CELSIUS_IN_KELVIN: f64 = 273.15;

/// A temperature in degrees Celsius.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Celsius(pub f64);

/// An absolute temperature in kelvin.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Kelvin(pub f64);

/// A pressure in pascal.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Pascal(pub f64);

impl Celsius {
    /// The same temperature in kelvin.
    pub const fn kelvin(self) -> Kelvin {
        Kelvin(self.0 + ZERO_CELSIUS_IN_KELVIN)
    }

    /// The nearest temperature at which water is liquid at sea level, 0 to 100 °C.
    ///
    /// The laws of this crate are used inside a differential equation, where a trial step may
    /// stray; they therefore hold their temperature inside this range rather than fail.
    /// Not-a-number stays not-a-number.
    pub const fn liquid(self) -> Self {
        Self(self.0.clamp(LIQUID_LOW, LIQUID_HIGH))
    }

    /// This temperature, if water is liquid there.
    ///
    /// # Errors
    /// [`NotLiquid`] below 0 °C, above 100 °C and for not-a-number.
    pub fn checked_liquid(self) -> Result<Self, NotLiquid> {
        if (LIQUID_LOW..=LIQUID_HIGH).contains(&self.0) {
            Ok(self)
        } else {
            Err(NotLiquid { celsius: self.0 })
        }
    }
}

impl Kelvin {
    /// The same temperature in degrees Celsius.
    pub const fn celsius(self) -> Celsius {
        Celsius(self.0 - ZERO_CELSIUS_IN_KELVIN)
    }
}

const LIQUID_LOW: f64 = 0.0;
const LIQUID_HIGH: f64 = 100.0;

/// A temperature at which water is not liquid, so that none of the laws here hold.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error(
    "{celsius} °C is outside 0 to 100 °C, where water is liquid; give the temperature in °C"
)]
pub struct NotLiquid {
    /// The temperature given (°C).
    pub celsius: f64,
}
