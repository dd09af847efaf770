//! Carbon dioxide that gets out through the film itself.

use crate::constants::{ATMOSPHERE, GAS, STANDARD_MOLAR_VOLUME};
use crate::fact::Fact;
use crate::units::{Celsius, Pascal};

/// Carbon dioxide permeability of low-density polyethylene at 25 °C, in the unit of the trade:
/// cm³ (at 0 °C, 1 atm) · mil per 100 in², day and atmosphere.
pub const PERMEABILITY: Fact = Fact::derived(
    "permeation.ldpe_carbon_dioxide",
    1900.0,
    "cm3.[mil_i]/(100.[in_i]2.d.atm)",
    "geometric mean of the range in Biosystems Engineering, chapter on food package \
         engineering, table 11.2: 1200 to 3000",
)
.within((1200.0, 3000.0));

/// Activation energy of carbon dioxide permeation in polyethylene (kJ/mol).
pub const ACTIVATION: Fact = Fact::sourced(
    "permeation.activation",
    32.5,
    "kJ/mol",
    "A. L. Moyls et al., Trans. ASAE (1998), 7.77 kcal/mol from 0 to 23 °C; Polymer \
         International 30, 109 (1993), 35 to 37 kJ/mol",
)
.within((32.5, 37.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[PERMEABILITY, ACTIVATION];

const METRE_PER_MIL: f64 = 25.4e-6;
const M2_PER_100_IN2: f64 = 100.0 * 0.0254 * 0.0254;
const SECONDS_PER_DAY: f64 = 86_400.0;
const REFERENCE_KELVIN: f64 = 298.15;

/// Carbon dioxide that passes through one square metre of film, in mol per second.
///
/// Times the area of one face of the bag: the other lies under the liquid or on the bench.
///
/// ```text
/// J = P(25 °C) · exp(−E/R (1/T − 1/298.15)) · p / d      d film thickness, p carbon dioxide inside
/// ```
///
/// Air going the other way, about a fifth of it, is left out: the bag starts with little air and
/// nitrogen is slow. Film of no thickness lets everything through and is the caller's mistake.
///
/// # Source
/// Permeability from *Biosystems Engineering*, table 11.2; activation energy from Moyls et al.
/// (1998), *Trans. ASAE*.
pub fn mol_per_m2_s(temperature: Celsius, carbon_dioxide: Pascal, film_um: f64) -> f64 {
    let trade_unit = 1e-3 / STANDARD_MOLAR_VOLUME.value * METRE_PER_MIL
        / (M2_PER_100_IN2 * SECONDS_PER_DAY * ATMOSPHERE.value);
    let colder = 1.0 / temperature.liquid().kelvin().0 - 1.0 / REFERENCE_KELVIN;
    let warmth = libm::exp(-1e3 * ACTIVATION.value / GAS.value * colder);
    PERMEABILITY.value * trade_unit * warmth * carbon_dioxide.0 / (film_um * 1e-6)
}
