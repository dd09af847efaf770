//! The two faces of a lying bag: a wet floor that shrinks as the bag fills, and an upper face that
//! lies over a layer of wet gas.

use crate::constants::GAS;
use crate::fact::Fact;
use crate::units::Celsius;

/// Heat that leaves the upper face of a bag to room air, by convection and radiation (W/(m²·K)).
pub const TO_AIR: Fact = Fact::derived(
    "cooling.to_air",
    8.0,
    "W/(m2.K)",
    "free convection and radiation of a warm flat face in still air, 8 to 12; the lower end, since a \
     card lies on it",
)
.within((7.0, 12.0));

/// Heat that passes from the wet floor of a bag into the bench, for each square metre that is wet
/// (W/(m²·K)).
pub const TO_BENCH: Fact = Fact::derived(
    "cooling.to_bench",
    5.5,
    "W/(m2.K)",
    "makes the time constant of 50 mL in a sandwich bag a fifth full 12.5 min, in the middle (by \
     ratio) of 8 to 20 min",
)
.within((3.0, 15.0));

/// Share of the floor that is wet in a bag with little gas in it (1).
pub const WET_FLOOR: Fact = Fact::derived(
    "cooling.wet_floor",
    0.90,
    "1",
    "own membrane simulation of lying bags, 40 to 60 mL; within 0.05 for sandwich and quart bags, \
     0.1 for snack and gallon bags",
)
.within((0.8, 0.95));

/// By how much the wet share of the floor falls until the bag is drum-tight (1).
pub const WET_FLOOR_LOSS: Fact = Fact::derived(
    "cooling.wet_floor_loss",
    0.43,
    "1",
    "own membrane simulation of lying bags, 40 to 60 mL; see cooling.wet_floor",
)
.within((0.35, 0.5));

/// Heat that liquid and film send each other across the gas by radiation (W/(m²·K)).
pub const ACROSS_BY_RADIATION: Fact = Fact::derived(
    "cooling.across_by_radiation",
    5.5,
    "W/(m2.K)",
    "4 sigma T^3 at 300 K (6.1) times 0.9 for wet surfaces of emissivity 0.95",
)
.within((5.0, 6.0));

/// Conductivity of the gas in a bag (W/(m·K)).
pub const GAS_CONDUCTIVITY: Fact = Fact::memory(
    "cooling.gas_conductivity",
    0.018,
    "W/(m.K)",
    "carbon dioxide 0.017 at 30 °C, air 0.026, from memory",
)
.within((0.017, 0.026));

/// Diffusivity of steam in the gas of a bag (m²/s).
pub const STEAM_DIFFUSIVITY: Fact = Fact::memory(
    "cooling.steam_diffusivity",
    2.0e-5,
    "m2/s",
    "F. A. Schwertz, J. E. Brow, J. Chem. Phys. 19, 640 (1951): 0.20 cm2/s for water in carbon \
     dioxide at 34 °C, from memory; 0.26 in air",
)
.within((1.8e-5, 2.6e-5));

/// Heat of vaporization of water around 35 °C (kJ/mol).
pub const VAPORIZATION: Fact = Fact::memory(
    "cooling.vaporization",
    43.6,
    "kJ/mol",
    "2.42 MJ/kg at 35 °C, steam tables, from memory",
);

/// Depth of gas beyond which it turns over and lets through no less (mm).
pub const TURNING_DEPTH: Fact = Fact::derived(
    "cooling.turning_depth",
    12.0,
    "mm",
    "S. Globe, D. Dropkin, J. Heat Transfer 81, 24 (1959), Nu = 0.069 Ra^(1/3) Pr^0.074 (from memory), \
     carbon dioxide over a surface 5 K warmer",
)
.within((8.0, 20.0));

const PER_GAS: f64 = 1.0 / GAS.value;
const PER_TURNING_METRE: f64 = 1e3 / TURNING_DEPTH.value;

/// Share of a bag's floor that is wet (1), at a fill of liquid and gas over capacity.
///
/// ```text
/// w = 0.90 − 0.43 f²      f from 0 to 1, held beyond
/// ```
///
/// # Source
/// Fitted to an own membrane simulation of bags with 40 to 60 mL, fills of 0.15 to 0.97; see
/// [`WET_FLOOR`] for how closely.
pub fn wet_share(fill: f64) -> f64 {
    let fill = fill.clamp(0.0, 1.0);
    WET_FLOOR.value - WET_FLOOR_LOSS.value * fill * fill
}

/// Conductivity that steam adds to a layer of gas (W/(m·K)): it evaporates from the warm liquid and
/// condenses under the cool film.
///
/// ```text
/// k = D L d(p_w/RT)/dT = D L (p_w/RT) (L/RT − 1)/T
/// ```
///
/// 0.04 at 20 °C, 0.10 at 35 °C: more than the gas itself conducts. Taken at the liquid's own
/// temperature and steam pressure (Pa), which makes it a little too large; the flow that steam
/// drags along (Stefan), which would make it larger, is left out.
///
/// # Source
/// Fick's law and Clausius and Clapeyron's; diffusivity from memory.
pub fn steam_conductivity(temperature: Celsius, steam_pa: f64) -> f64 {
    let kelvin = temperature.liquid().kelvin().0;
    let per_kelvin = 1.0 / kelvin;
    let per_rt = per_kelvin * PER_GAS;
    let latent = 1e3 * VAPORIZATION.value;
    STEAM_DIFFUSIVITY.value * latent * steam_pa * per_rt * (latent * per_rt - 1.0) * per_kelvin
}

/// Heat that leaves through the upper face of a bag with a layer of gas `depth_mm` deep on average,
/// `conductivity` its own and its steam's together (W/(m²·K)).
///
/// ```text
/// 1/U = 1/h_air + 1/(h_r + k (1/δ + 1/δ_c))
/// ```
///
/// Without gas the film lies on the liquid, and only the air outside counts.
pub fn upper_face(depth_mm: f64, conductivity: f64) -> f64 {
    // Both multiplied by δ, so that no gas at all is no division by zero.
    let metres = 1e-3 * depth_mm.max(0.0);
    let deep = ACROSS_BY_RADIATION.value + PER_TURNING_METRE * conductivity;
    let across = conductivity + deep * metres;
    TO_AIR.value * across / (across + TO_AIR.value * metres)
}
