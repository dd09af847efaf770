//! Volume of the wet gas in a bag.

use crate::constants::GAS;
use crate::fact::Fact;
use crate::units::{Celsius, Pascal};
use crate::water::vapour_pressure;

/// Largest share of the pressure that steam is given (1).
///
/// Near boiling the wet volume of any gas grows without bound; the model is held short of that.
pub const MOST_STEAM: Fact = Fact::derived(
    "gas.most_steam",
    0.95,
    "1",
    "bound chosen so that a bag near boiling keeps a finite volume",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[MOST_STEAM];

/// Pressure left for the dry gases in a bag whose gas is saturated with water, in pascal.
///
/// The bag's own overpressure is under 20 Pa and left out. Never less than a twentieth of the air
/// pressure, see [`MOST_STEAM`].
pub fn dry_pressure(temperature: Celsius, air: Pascal) -> Pascal {
    dry_beside(vapour_pressure(temperature), air)
}

/// The same where the pressure of the steam is known.
pub(crate) fn dry_beside(steam: Pascal, air: Pascal) -> Pascal {
    Pascal(air.0 - steam.0.min(MOST_STEAM.value * air.0))
}

/// Volume of gas saturated with water vapour, in millilitres.
///
/// ```text
/// V = n R T / (p − p_w(T))
/// ```
///
/// # Accuracy
/// Ideal gas: 0.4 to 0.6 % too large for carbon dioxide between 0 and 60 °C.
pub fn wet_volume_ml(dry_mol: f64, temperature: Celsius, air: Pascal) -> f64 {
    1e6 * dry_mol * GAS.value * temperature.liquid().kelvin().0
        / dry_pressure(temperature, air).0
}

/// Amount of dry gas in a wet volume, in moles: the inverse of [`wet_volume_ml`].
pub fn dry_mol(wet_ml: f64, temperature: Celsius, air: Pascal) -> f64 {
    1e-6 * wet_ml * dry_pressure(temperature, air).0
        / (GAS.value * temperature.liquid().kelvin().0)
}
