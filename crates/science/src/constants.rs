//! Constants of nature and convention that several laws share.

use crate::fact::{Fact, Status};

const CODATA: &str = "E. Tiesinga et al., CODATA recommended values of the fundamental physical \
     constants: 2018, Rev. Mod. Phys. 93, 025010 (2021)";

/// Molar gas constant (J/(mol·K)), exact since the 2019 revision of the SI.
pub const GAS: Fact = Fact {
    name: "constants.gas",
    value: 8.314_462_618,
    unit: "J/(mol.K)",
    range: None,
    status: Status::Sourced,
    source: CODATA,
};

/// Standard atmosphere (Pa), exact by definition.
pub const ATMOSPHERE: Fact = Fact {
    name: "constants.atmosphere",
    value: 101_325.0,
    unit: "Pa",
    range: None,
    status: Status::Sourced,
    source: "10th General Conference on Weights and Measures (1954), Resolution 4",
};

/// Molar volume of an ideal gas at 273.15 K and one standard atmosphere (L/mol).
pub const STANDARD_MOLAR_VOLUME: Fact = Fact {
    name: "constants.standard_molar_volume",
    value: 1e3 * GAS.value * crate::units::ZERO_CELSIUS_IN_KELVIN / ATMOSPHERE.value,
    unit: "L/mol",
    range: None,
    status: Status::Derived,
    source: "gas constant times 273.15 K over one standard atmosphere",
};

/// Facts of this module.
pub const FACTS: &[Fact] = &[GAS, ATMOSPHERE, STANDARD_MOLAR_VOLUME];
