//! Constants of nature and convention that several laws share.

use crate::fact::Fact;

const CODATA: &str = "E. Tiesinga et al., CODATA recommended values of the fundamental physical \
     constants: 2018, Rev. Mod. Phys. 93, 025010 (2021)";

/// Molar gas constant (J/(mol·K)), exact since the 2019 revision of the SI.
pub const GAS: Fact = Fact::sourced("constants.gas", 8.314_462_618, "J/(mol.K)", CODATA);

/// Standard atmosphere (Pa), exact by definition.
pub const ATMOSPHERE: Fact = Fact::sourced(
    "constants.atmosphere",
    101_325.0,
    "Pa",
    "10th General Conference on Weights and Measures (1954), Resolution 4",
);

/// Molar volume of an ideal gas at 273.15 K and one standard atmosphere (L/mol).
pub const STANDARD_MOLAR_VOLUME: Fact = Fact::derived(
    "constants.standard_molar_volume",
    1e3 * GAS.value * crate::units::ZERO_CELSIUS_IN_KELVIN / ATMOSPHERE.value,
    "L/mol",
    "gas constant times 273.15 K over one standard atmosphere",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[GAS, ATMOSPHERE, STANDARD_MOLAR_VOLUME];
