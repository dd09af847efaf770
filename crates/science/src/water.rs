//! Liquid water and its vapour at the pressure of the bench.

use crate::fact::Fact;
use crate::units::{Celsius, Pascal};

const IF97: &str = "IAPWS R7-97(2012), Industrial Formulation 1997, table 34 and equation 30";
const KELL: &str = "G. S. Kell, Density, thermal expansivity, and compressibility of liquid water \
     from 0 to 150 °C, J. Chem. Eng. Data 20, 97 (1975), equation 16; from memory, checked \
     against IAPWS-95 to 0.002 %";
const IAPWS95: &str = "W. Wagner, A. Pruß, The IAPWS formulation 1995, J. Phys. Chem. Ref. Data \
     31, 387 (2002), worked at 101325 Pa with CoolProp 8.0.0";

const fn vapour_fact(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::sourced(name, value, unit, IF97)
}

const fn density_fact(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::memory(name, value, unit, KELL)
}

const fn heat_fact(name: &'static str, value: f64) -> Fact {
    Fact::derived(name, value, "J/(kg.K)", IAPWS95)
}

const N: [Fact; 10] = [
    vapour_fact("water.vapour.n1", 1_167.052_145_276_7, "1"),
    vapour_fact("water.vapour.n2", -724_213.167_032_06, "1"),
    vapour_fact("water.vapour.n3", -17.073_846_940_092, "1"),
    vapour_fact("water.vapour.n4", 12_020.824_702_47, "1"),
    vapour_fact("water.vapour.n5", -3_232_555.032_233_3, "1"),
    vapour_fact("water.vapour.n6", 14.915_108_613_53, "1"),
    vapour_fact("water.vapour.n7", -4_823.265_736_159_1, "1"),
    vapour_fact("water.vapour.n8", 405_113.405_420_57, "1"),
    vapour_fact("water.vapour.n9", -0.238_555_575_678_49, "1"),
    vapour_fact("water.vapour.n10", 650.175_348_447_98, "K"),
];

const KELL_TOP: [Fact; 6] = [
    density_fact("water.density.a0", 999.839_52, "kg/m3"),
    density_fact("water.density.a1", 16.945_176, "kg/(m3.K)"),
    density_fact("water.density.a2", -7.987_040_1e-3, "kg/(m3.K2)"),
    density_fact("water.density.a3", -46.170_461e-6, "kg/(m3.K3)"),
    density_fact("water.density.a4", 105.563_02e-9, "kg/(m3.K4)"),
    density_fact("water.density.a5", -280.542_53e-12, "kg/(m3.K5)"),
];
const KELL_BELOW: Fact = density_fact("water.density.b1", 16.879_85e-3, "1/K");

/// Heat capacity at 0, 10, … 100 °C.
const HEAT: [Fact; 11] = [
    heat_fact("water.heat_capacity.0c", 4219.4),
    heat_fact("water.heat_capacity.10c", 4195.2),
    heat_fact("water.heat_capacity.20c", 4184.1),
    heat_fact("water.heat_capacity.30c", 4179.8),
    heat_fact("water.heat_capacity.40c", 4179.4),
    heat_fact("water.heat_capacity.50c", 4181.3),
    heat_fact("water.heat_capacity.60c", 4185.0),
    heat_fact("water.heat_capacity.70c", 4190.1),
    heat_fact("water.heat_capacity.80c", 4196.8),
    heat_fact("water.heat_capacity.90c", 4205.2),
    heat_fact("water.heat_capacity.100c", 4215.7),
];
const HEAT_STEP_KELVIN: f64 = 10.0;

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    N[0],
    N[1],
    N[2],
    N[3],
    N[4],
    N[5],
    N[6],
    N[7],
    N[8],
    N[9],
    KELL_TOP[0],
    KELL_TOP[1],
    KELL_TOP[2],
    KELL_TOP[3],
    KELL_TOP[4],
    KELL_TOP[5],
    KELL_BELOW,
    HEAT[0],
    HEAT[1],
    HEAT[2],
    HEAT[3],
    HEAT[4],
    HEAT[5],
    HEAT[6],
    HEAT[7],
    HEAT[8],
    HEAT[9],
    HEAT[10],
];

/// Saturation pressure of water vapour over liquid water, in pascal.
///
/// Gas over a warm yeast mixture is wet, so this share of the pressure in the bag is steam and
/// must be taken off before counting carbon dioxide: 3 % at 25 °C, 7 % at 40 °C.
///
/// ```text
/// ϑ = T + n9 / (T − n10)                       T in K
/// A = ϑ² + n1 ϑ + n2,  B = n3 ϑ² + n4 ϑ + n5,  C = n6 ϑ² + n7 ϑ + n8
/// p = ( 2 C / (−B + √(B² − 4 A C)) )⁴          p in MPa
/// ```
///
/// Holds its temperature within 0 to 100 °C ([`Celsius::liquid`]).
///
/// # Source
/// IAPWS R7-97(2012), equation 30; within 0.01 % of IAPWS-95 there.
pub fn vapour_pressure(temperature: Celsius) -> Pascal {
    let kelvin = temperature.liquid().kelvin().0;
    let n = |i: usize| N[i - 1].value;
    let theta = kelvin + n(9) / (kelvin - n(10));
    let a = (theta + n(1)) * theta + n(2);
    let b = (n(3) * theta + n(4)) * theta + n(5);
    let c = (n(6) * theta + n(7)) * theta + n(8);
    let fourth_root = 2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt());
    let square = fourth_root * fourth_root;
    Pascal(1e6 * square * square)
}

/// Density of pure water at the pressure of the air, in kilograms per cubic metre (grams per
/// litre).
///
/// ```text
/// ρ = (a0 + a1 t + … + a5 t⁵) / (1 + b1 t)     t in °C
/// ```
///
/// Holds its temperature within 0 to 100 °C.
///
/// # Source
/// Kell (1975), *J. Chem. Eng. Data* 20, 97, equation 16; within 0.003 % of IAPWS-95.
pub fn density_kg_per_m3(temperature: Celsius) -> f64 {
    let t = temperature.liquid().0;
    let top = KELL_TOP.iter().rev().fold(0.0, |sum, term| sum * t + term.value);
    top / (1.0 + KELL_BELOW.value * t)
}

/// Specific heat capacity of pure water at the pressure of the air, in J/(kg·K).
///
/// Straight lines between values 10 K apart, within 0.05 % of IAPWS-95. Holds its temperature
/// within 0 to 100 °C.
///
/// # Source
/// Wagner and Pruß (2002), *J. Phys. Chem. Ref. Data* 31, 387.
pub fn heat_capacity_j_per_kg_k(temperature: Celsius) -> f64 {
    let place = temperature.liquid().0 / HEAT_STEP_KELVIN;
    // Not-a-number lands on the first interval and comes out as not-a-number again.
    let below = (place as usize).min(HEAT.len() - 2);
    let share = place - below as f64;
    HEAT[below].value * (1.0 - share) + HEAT[below + 1].value * share
}
