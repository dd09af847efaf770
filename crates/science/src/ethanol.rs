//! Ethanol between water and the gas over it.

use crate::constants::GAS;
use crate::fact::Fact;
use crate::units::Celsius;

const SANDER: &str = "R. Sander, Compilation of Henry's law constants, Atmos. Chem. Phys. 15, 4399 \
     (2015), ethanol: Sander et al. 2011 (1.9, 6400 K) and Warneck 2006 (1.9, 6300 K)";
const DUBOWSKI: &str = "equation named in OIML R 126 (1998) after K. M. Dubowski; constants from a \
     secondary restatement and from memory";
const WELLS: &str = "A. E. Wells, Breathalyzer tests with the equilibrator and the effect of room \
     temperature, Can. Soc. Forensic Sci. J. 14, 1 (1981), abstract";

/// Henry constant of ethanol at 25 °C (mol/(m³·Pa)).
const HENRY_25C: Fact =
    Fact::sourced("ethanol.henry_25c", 1.9, "mol/(m3.Pa)", SANDER).within((1.7, 2.3));
const HENRY_SLOPE_LOW: Fact = Fact::sourced("ethanol.henry_slope.low", 6300.0, "K", SANDER);
const HENRY_SLOPE_HIGH: Fact = Fact::sourced("ethanol.henry_slope.high", 6400.0, "K", SANDER);
const DUBOWSKI_A: Fact = Fact::sourced("ethanol.dubowski.a", 0.041_45e-3, "1", DUBOWSKI);
const DUBOWSKI_B: Fact = Fact::sourced("ethanol.dubowski.b", 0.065_83, "1/Cel", DUBOWSKI);
const WELLS_A: Fact = Fact::sourced("ethanol.wells.a", 3.26e-5, "1", WELLS);
const WELLS_B: Fact = Fact::sourced("ethanol.wells.b", 0.0840, "1/Cel", WELLS);
const WELLS_C: Fact = Fact::sourced("ethanol.wells.c", -0.000_318, "1/Cel2", WELLS);

/// Relative standard deviation of [`water_gas_ratio`] between its four sources (1).
pub const RATIO_SD: Fact = Fact::derived(
    "ethanol.water_gas_ratio_sd",
    0.02,
    "1",
    "spread of Sander, Dubowski and Wells between 15 and 45 °C",
)
.within((0.005, 0.04));

/// Density of ethanol at 20 °C (g/mL).
pub const DENSITY_20C: Fact = Fact::memory(
    "ethanol.density_20c",
    0.789_3,
    "g/mL",
    "handbook value at 20 °C, from memory; Schroeder et al. 2014 by CoolProp 8.0.0 agrees to 0.1 %",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    HENRY_25C,
    HENRY_SLOPE_LOW,
    HENRY_SLOPE_HIGH,
    DUBOWSKI_A,
    DUBOWSKI_B,
    WELLS_A,
    WELLS_B,
    WELLS_C,
    RATIO_SD,
    DENSITY_20C,
];

const REFERENCE_KELVIN: f64 = 298.15;

/// Ethanol in a litre of water over ethanol in a litre of the gas above it, at equilibrium (1).
///
/// Falls by 6.6 % with every degree, so that equal readings over a cool and a warm bag do not
/// mean equal liquids.
///
/// ```text
/// K = mean of  H(T) R T (Sander, with 6300 K and with 6400 K),
///              1 / (0.04145·10⁻³ exp(0.06583 t)) (Dubowski),
///              1 / (3.26·10⁻⁵ exp(0.0840 t − 0.000318 t²)) (Wells)
/// ```
///
/// Holds its temperature within 0 to 100 °C.
///
/// # Accuracy
/// The four lie within 3 % of each other between 20 and 40 °C. Sugar raises the gas by about the
/// room it takes (5 % at 8 % sugar), which is left out.
/// # Source
/// Sander (2015), *Atmos. Chem. Phys.* 15, 4399; OIML R 126 (1998); Wells (1981), *Can. Soc.
/// Forensic Sci. J.* 14, 1.
pub fn water_gas_ratio(temperature: Celsius) -> f64 {
    let t = temperature.liquid().0;
    let kelvin = temperature.liquid().kelvin().0;
    let colder = 1.0 / kelvin - 1.0 / REFERENCE_KELVIN;
    let sander =
        |slope: Fact| HENRY_25C.value * libm::exp(slope.value * colder) * GAS.value * kelvin;
    let dubowski = libm::exp(-DUBOWSKI_B.value * t) / DUBOWSKI_A.value;
    let wells = libm::exp(-(WELLS_B.value + WELLS_C.value * t) * t) / WELLS_A.value;
    (sander(HENRY_SLOPE_LOW) + sander(HENRY_SLOPE_HIGH) + dubowski + wells) / 4.0
}

/// Alcohol by volume, in percent, of a dilute liquid with so many grams of ethanol a litre.
pub const fn percent_by_volume(g_per_l: f64) -> f64 {
    g_per_l / (10.0 * DENSITY_20C.value)
}
