//! Gases that go through the film itself: carbon dioxide out, air in.

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

/// Permeability of carbon dioxide over that of oxygen (1).
pub const OVER_OXYGEN: Fact = Fact::sourced(
    "permeation.over_oxygen",
    5.6,
    "1",
    "A. L. Moyls et al., Trans. ASAE (1998): 5.3 to 5.9 in polyethylene",
)
.within((5.3, 5.9));

/// Permeability of oxygen over that of nitrogen (1).
pub const OXYGEN_OVER_NITROGEN: Fact = Fact::memory(
    "permeation.oxygen_over_nitrogen",
    4.0,
    "1",
    "nitrogen passes polyethylene at about a quarter of the rate of oxygen, from memory",
)
.within((3.0, 5.0));

const OXYGEN_IN_AIR: Fact = Fact::sourced(
    "permeation.oxygen_in_air",
    0.2095,
    "1",
    "U.S. Standard Atmosphere 1976, NOAA-S/T 76-1562, table 3",
);
const NITROGEN_IN_AIR: Fact = Fact::sourced(
    "permeation.nitrogen_in_air",
    0.7808,
    "1",
    "U.S. Standard Atmosphere 1976, NOAA-S/T 76-1562, table 3",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    PERMEABILITY,
    ACTIVATION,
    OVER_OXYGEN,
    OXYGEN_OVER_NITROGEN,
    OXYGEN_IN_AIR,
    NITROGEN_IN_AIR,
];

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
/// Air going the other way ([`air_in_mol_per_m2_s`]) is 7 % of what a bag full of carbon dioxide lets
/// out: left out of the hour's bag, worth a look overnight. Film of no thickness lets everything
/// through and is the caller's mistake.
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

/// Air that comes in through one square metre of film, in mol per second; `air_inside` is what air
/// there is inside already, at its partial pressure.
///
/// ```text
/// J = J_CO2(1 Pa) · (x_O2/5.6 + x_N2/(5.6 · 4)) · (p − p_inside)      x shares in air
/// ```
///
/// Oxygen and nitrogen are taken together, with the shares of the air outside, and steam is left out.
///
/// # Source
/// Ratios of permeability: Moyls et al. (1998), *Trans. ASAE*; of nitrogen from memory.
pub fn air_in_mol_per_m2_s(
    temperature: Celsius,
    air_outside: Pascal,
    air_inside: Pascal,
    film_um: f64,
) -> f64 {
    let nitrogen = NITROGEN_IN_AIR.value / OXYGEN_OVER_NITROGEN.value;
    let slower = (OXYGEN_IN_AIR.value + nitrogen) / OVER_OXYGEN.value;
    slower * mol_per_m2_s(temperature, Pascal(air_outside.0 - air_inside.0), film_um)
}
