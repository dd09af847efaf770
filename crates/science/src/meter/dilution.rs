//! Gas that was thinned before the meter saw it, and gas that was taken away.

use super::MeterError;
use crate::ethanol::water_gas_ratio;
use crate::fact::Fact;
use crate::units::Celsius;

/// Relative standard deviation of a volume drawn with a syringe (1).
const DRAWN_SD: Fact = Fact::memory(
    "meter.drawn_sd",
    0.03,
    "1",
    "plastic syringe: scale within 4 % (ISO 7886-1, from memory) and a plunger read by eye; judgement",
)
.within((0.02, 0.06));

/// Facts of this file.
pub const DILUTION_FACTS: &[Fact] = &[DRAWN_SD];

/// What was held to the meter: gas of the bag, thinned with clean air.
///
/// Air that was in the bag from the beginning does not count here. It is no dilution once gas and
/// liquid are in equilibrium, for the liquid gives off ethanol until there is as much of it in a litre of
/// gas, whatever else the gas is; how far from equilibrium a bag may be is
/// [`EQUILIBRIUM`](super::EQUILIBRIUM).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Gas from the bag (mL).
    pub gas_ml: f64,
    /// Clean air added to it (mL).
    pub air_ml: f64,
}

impl Sample {
    /// Gas as it came from the bag.
    pub const UNTHINNED: Self = Self { gas_ml: 1.0, air_ml: 0.0 };

    /// How many times as much ethanol there was in a litre of the bag's gas (1).
    ///
    /// ```text
    /// f = (V_gas + V_air)/V_gas
    /// ```
    ///
    /// # Errors
    /// [`MeterError::NotASample`] without gas, or for volumes that are none.
    pub fn factor(&self) -> Result<f64, MeterError> {
        let Self { gas_ml, air_ml } = *self;
        let possible =
            gas_ml > 0.0 && gas_ml.is_finite() && air_ml >= 0.0 && air_ml.is_finite();
        if !possible {
            return Err(MeterError::NotASample { gas_ml, air_ml });
        }
        Ok((gas_ml + air_ml) / gas_ml)
    }

    /// Relative standard deviation of the factor (1): both volumes are drawn; none of it without air.
    pub(super) fn log_sd(&self) -> f64 {
        let air = self.air_ml / (self.gas_ml + self.air_ml);
        air * DRAWN_SD.value * core::f64::consts::SQRT_2
    }
}

/// Share of a bag's ethanol that leaves with so much gas (1): a sample costs next to nothing.
///
/// ```text
/// s = V_gas/(V_liquid K(T))      0.1 % for 240 mL over 50 mL at 25 °C
/// ```
pub fn taken_share(gas_ml: f64, liquid_ml: f64, liquid: Celsius) -> f64 {
    gas_ml / (liquid_ml * water_gas_ratio(liquid))
}
