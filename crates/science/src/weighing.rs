//! What a balance says of a bag that swells and leaks: the air that it pushes aside carries it.

use crate::air::MOLAR_MASS;
use crate::constants::GAS;
use crate::ethanol::water_gas_ratio;
use crate::fact::Fact;
use crate::gas::{dry_mol, dry_pressure, wet_volume_ml};
use crate::stoichiometry::{CARBON_DIOXIDE, WATER};
use crate::units::{Celsius, Pascal};
use crate::water::vapour_pressure;

/// Density of the weights that a balance is set by (kg/m³).
pub const WEIGHTS: Fact = Fact::memory(
    "weighing.weights",
    8000.0,
    "kg/m3",
    "conventional mass is that of steel of this density: OIML D 28 (2004), from memory",
);

/// Step of a school balance (g).
pub const STEP: Fact = Fact::memory(
    "weighing.step",
    0.1,
    "g",
    "pocket and school balances show 0.1 g, some 0.01 g; common practice, no source",
)
.within((0.01, 0.1));

/// Facts of this module.
pub const FACTS: &[Fact] = &[WEIGHTS, STEP];

/// Density of moist air, in kilograms per cubic metre; `humidity` from 0 (dry) to 1 (saturated).
///
/// ```text
/// ρ = ((p − φ p_w) M_air + φ p_w M_water) / (R T)
/// ```
///
/// # Accuracy
/// Ideal gas: within 0.1 % of ASHRAE RP-1485 between 10 and 60 °C.
pub fn air_kg_per_m3(temperature: Celsius, pressure: Pascal, humidity: f64) -> f64 {
    let steam = humidity * vapour_pressure(temperature).0.min(pressure.0);
    let moles = GAS.value * temperature.liquid().kelvin().0;
    ((pressure.0 - steam) * MOLAR_MASS.value + steam * 1e-3 * WATER.value) / moles
}

/// Change of what a balance shows, in grams, when a bag's mass changes by so many grams and its volume
/// by so many millilitres, both upwards.
///
/// A sealed bag that makes 400 mL at sea level seems half a gram lighter, though nothing has left it.
///
/// ```text
/// Δshown = (Δm − ρ_air ΔV) / (1 − ρ_air/ρ_weights)
/// ```
///
/// # Source
/// Archimedes; the weights after OIML D 28 (2004), from memory.
pub fn shown_g(mass_g: f64, volume_ml: f64, air_kg_per_m3: f64) -> f64 {
    (mass_g - 1e-3 * air_kg_per_m3 * volume_ml) / carried(air_kg_per_m3)
}

/// Change of a bag's mass, in grams, from the change that a balance shows and that of its volume: the
/// inverse of [`shown_g`].
pub fn mass_g(shown_g: f64, volume_ml: f64, air_kg_per_m3: f64) -> f64 {
    shown_g * carried(air_kg_per_m3) + 1e-3 * air_kg_per_m3 * volume_ml
}

/// Swelling of a sealed bag, in millilitres, from the change that a balance shows and that of its mass:
/// [`shown_g`] solved for the volume. The mass changes by what went through the film
/// ([`crate::permeation`]), 0 for a quick look.
pub fn swelling_ml(shown_g: f64, mass_g: f64, air_kg_per_m3: f64) -> f64 {
    (mass_g - shown_g * carried(air_kg_per_m3)) / (1e-3 * air_kg_per_m3)
}

fn carried(air_kg_per_m3: f64) -> f64 {
    1.0 - air_kg_per_m3 / WEIGHTS.value
}

/// Standard uncertainty of the difference of two weighings, in grams: 0.041 g for steps of 0.1 g.
///
/// ```text
/// u = d √(2/12)
/// ```
///
/// # Source
/// JCGM 100:2008 (GUM), F.2.2.1; clause number from memory.
pub fn difference_sd_g(step_g: f64) -> f64 {
    step_g / 6.0_f64.sqrt()
}

/// Gas that left a bag, from its weight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasByWeight {
    /// Carbon dioxide (mol).
    pub carbon_dioxide_mol: f64,
    /// Wet gas at the bag's temperature and the local pressure (mL).
    pub wet_ml: f64,
    /// Standard uncertainty of the wet gas (mL): of the balance alone.
    pub sd_ml: f64,
}

/// What left a bag that was weighed flat when sealed, and again vented and pressed flat, in grams upwards
/// from `before_g` to `after_g`; `volume_ml` is what it has swollen by between the two weighings, 0 if it
/// was pressed as flat again.
///
/// The gas leaves wet and takes ethanol along. What remains in both cases, some millilitres of air at
/// first and of gas at the end, is taken as equally heavy: 10 mL make 6 mg.
///
/// ```text
/// n = m / (M_CO2 + M_w p_w/(p − p_w) + V_m C/K(T))      V_m = R T/(p − p_w)
/// ```
///
/// C ethanol in the liquid (g/L), K its ratio between water and gas.
pub fn gas_that_left(
    before_g: f64,
    after_g: f64,
    volume_ml: f64,
    around: &Around,
) -> GasByWeight {
    let lost_g = -mass_g(after_g - before_g, volume_ml, around.air_kg_per_m3());
    let per_mol = gas_g_per_mol(around);
    let mol = lost_g / per_mol;
    let ml_per_mol = wet_volume_ml(1.0, around.bag, around.pressure);
    GasByWeight {
        carbon_dioxide_mol: mol,
        wet_ml: mol * ml_per_mol,
        sd_ml: difference_sd_g(around.step_g) / per_mol * ml_per_mol,
    }
}

/// Where and with what a bag is weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Around {
    /// Temperature of the bag's gas.
    pub bag: Celsius,
    /// Temperature of the room.
    pub room: Celsius,
    /// Air pressure.
    pub pressure: Pascal,
    /// Relative humidity of the room (1).
    pub humidity: f64,
    /// Ethanol in the bag's liquid (g/L).
    pub ethanol_g_per_l: f64,
    /// Step of the balance (g).
    pub step_g: f64,
}

impl Around {
    /// Density of the room's air (kg/m³).
    pub fn air_kg_per_m3(&self) -> f64 {
        air_kg_per_m3(self.room, self.pressure, self.humidity)
    }
}

/// Mass of wet gas with its ethanol for each mole of carbon dioxide in it (g/mol).
fn gas_g_per_mol(around: &Around) -> f64 {
    let dry = dry_pressure(around.bag, around.pressure).0;
    let steam = (around.pressure.0 - dry) / dry;
    let litres = 1.0 / dry_mol(1e3, around.bag, around.pressure);
    let ethanol = litres * around.ethanol_g_per_l / water_gas_ratio(around.bag);
    CARBON_DIOXIDE.value + WATER.value * steam + ethanol
}
