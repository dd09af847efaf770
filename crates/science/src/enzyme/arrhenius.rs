//! The law by which warmth speeds a reaction up.

use crate::constants::GAS;
use crate::units::Celsius;

/// Law of Arrhenius, ready to be asked often: exp(level − slope/Θ), Θ in kelvin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Arrhenius {
    /// Activation energy over the gas constant (K).
    slope: f64,
    /// Slope over the temperature at which the factor is one (1).
    level: f64,
}

impl Arrhenius {
    /// That of an activation energy (kJ/mol), one at a temperature (°C).
    pub(super) const fn new(activation_kj: f64, one_at: f64) -> Self {
        let slope = 1e3 * activation_kj / GAS.value;
        Self { slope, level: slope / Celsius(one_at).kelvin().0 }
    }

    /// The factor (1) at one over an absolute temperature (1/K).
    pub(super) fn at(self, per_kelvin: f64) -> f64 {
        libm::exp(self.level - self.slope * per_kelvin)
    }
}

/// One over the absolute temperature of a liquid (1/K).
pub(super) fn per_kelvin(temperature: Celsius) -> f64 {
    1.0 / temperature.liquid().kelvin().0
}
