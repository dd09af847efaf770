//! Carbon dioxide in water and as a gas.

use crate::constants::GAS;
use crate::exponential::exp;
use crate::fact::Fact;
use crate::stoichiometry::WATER;
use crate::units::{Celsius, Pascal};
use crate::water;

const CARROLL: &str = "J. J. Carroll, J. D. Slupsky, A. E. Mather, The solubility of carbon \
     dioxide in water at low pressure, J. Phys. Chem. Ref. Data 20, 1201 (1991), abstract; \
     273 to 433 K, within 2 %";
const SPAN: &str = "R. Span, W. Wagner, A new equation of state for carbon dioxide, J. Phys. \
     Chem. Ref. Data 25, 1509 (1996); from memory";
const RUMPF: &str = "B. Rumpf, H. Nicolaisen, C. Öcal, G. Maurer, J. Solution Chem. 23, 431 \
     (1994), as in the IUPAC-NIST Solubility Database, system 62_172, against Carroll et al. 1991";

const fn carroll(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::sourced(name, value, unit, CARROLL)
}

/// Coefficients of ln(H/MPa) in powers of 1/T.
const HENRY: [Fact; 4] = [
    carroll("carbon_dioxide.henry.a0", -6.8346, "1"),
    carroll("carbon_dioxide.henry.a1", 1.2817e4, "K"),
    carroll("carbon_dioxide.henry.a2", -3.7668e6, "K2"),
    carroll("carbon_dioxide.henry.a3", 2.997e8, "K3"),
];

/// Setschenow constant of table salt at 25 °C (kg/mol, base 10).
pub const SALTING_25C: Fact = Fact::memory(
    "carbon_dioxide.salting_25c",
    0.10,
    "kg/mol",
    "common handbook value for carbon dioxide in sodium chloride, from memory",
)
.within((0.09, 0.11));

/// Setschenow constant of table salt at 40 °C (kg/mol, base 10).
pub const SALTING_40C: Fact =
    Fact::derived("carbon_dioxide.salting_40c", 0.087, "kg/mol", RUMPF).within((0.08, 0.095));

/// Setschenow constant of table salt at 60 °C (kg/mol, base 10).
pub const SALTING_60C: Fact =
    Fact::derived("carbon_dioxide.salting_60c", 0.075, "kg/mol", RUMPF).within((0.068, 0.082));

/// How many times as much as table salt sodium hydrogen carbonate lowers the solubility (1).
pub const BICARBONATE_OVER_SALT: Fact = Fact::memory(
    "carbon_dioxide.bicarbonate_over_salt",
    1.58,
    "1",
    "S. Weisenberger, A. Schumpe, AIChE J. 42, 298 (1996), at 25 °C: sodium 0.1143, chloride 0.0318,      hydrogen carbonate 0.0967, carbon dioxide -0.0172 L/mol, so 0.177 against 0.112, from memory",
)
.within((1.4, 1.8));

/// Critical temperature of carbon dioxide (K).
const CRITICAL_KELVIN: Fact =
    Fact::memory("carbon_dioxide.critical_temperature", 304.128, "K", SPAN);

/// Critical pressure of carbon dioxide (Pa).
const CRITICAL_PASCAL: Fact =
    Fact::memory("carbon_dioxide.critical_pressure", 7.3773e6, "Pa", SPAN);

/// Acentric factor of carbon dioxide (1).
const ACENTRIC: Fact = Fact::memory("carbon_dioxide.acentric_factor", 0.2239, "1", SPAN);

const TSONOPOULOS: &str = "C. Tsonopoulos, AIChE J. 20, 263 (1974); from memory, within 1 % of \
     Span and Wagner 1996 from 10 to 60 °C";

const fn virial(name: &'static str, value: f64) -> Fact {
    Fact::memory(name, value, "1", TSONOPOULOS)
}

/// Terms of f0 in Tc/T, its square, cube and eighth power, after the constant.
const F0: [Fact; 5] = [
    virial("carbon_dioxide.virial.f0_0", 0.1445),
    virial("carbon_dioxide.virial.f0_1", -0.330),
    virial("carbon_dioxide.virial.f0_2", -0.1385),
    virial("carbon_dioxide.virial.f0_3", -0.0121),
    virial("carbon_dioxide.virial.f0_8", -0.000_607),
];

/// Terms of f1 in the square, cube and eighth power of Tc/T, after the constant.
const F1: [Fact; 4] = [
    virial("carbon_dioxide.virial.f1_0", 0.0637),
    virial("carbon_dioxide.virial.f1_2", 0.331),
    virial("carbon_dioxide.virial.f1_3", -0.423),
    virial("carbon_dioxide.virial.f1_8", -0.008),
];

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    HENRY[0],
    HENRY[1],
    HENRY[2],
    HENRY[3],
    SALTING_25C,
    SALTING_40C,
    SALTING_60C,
    BICARBONATE_OVER_SALT,
    CRITICAL_KELVIN,
    CRITICAL_PASCAL,
    ACENTRIC,
    F0[0],
    F0[1],
    F0[2],
    F0[3],
    F0[4],
    F1[0],
    F1[1],
    F1[2],
    F1[3],
];

/// Dissolved carbon dioxide in equilibrium with its gas, in mol per kilogram of water and pascal
/// of carbon dioxide.
///
/// Multiply by the kilograms of *water* in the bag (not of liquid) and by the partial pressure:
/// that also accounts for sugar, which lowers solubility by the room it takes. Salt comes on top,
/// see [`salt_factor`].
///
/// ```text
/// ln(H/MPa) = −6.8346 + 1.2817·10⁴/T − 3.7668·10⁶/T² + 2.997·10⁸/T³      x = p / H
/// ```
///
/// Holds its temperature within 0 to 100 °C; the equation is given for 273 to 433 K.
///
/// # Accuracy
/// Within 4 % of three other published equations from 10 to 50 °C.
/// # Source
/// Carroll, Slupsky and Mather (1991), *J. Phys. Chem. Ref. Data* 20, 1201.
pub fn mol_per_kg_pa(temperature: Celsius) -> f64 {
    let per_kelvin = 1.0 / temperature.liquid().kelvin().0;
    let ln_mpa = HENRY.iter().rev().fold(0.0, |sum, term| sum * per_kelvin + term.value);
    1e-6 * 1e3 / (WATER.value * libm::exp(ln_mpa))
}

/// Dissolved carbon dioxide in pure water, in mol per litre of water and pascal of carbon dioxide.
///
/// [`mol_per_kg_pa`] times the density of water.
pub fn mol_per_l_pa(temperature: Celsius) -> f64 {
    mol_per_kg_pa(temperature) * 1e-3 * water::density_kg_per_m3(temperature)
}

/// Millilitres of carbon dioxide, measured at its own temperature and pressure, that one
/// millilitre of pure water dissolves (Ostwald coefficient, 1).
pub fn ostwald(temperature: Celsius) -> f64 {
    1e3 * mol_per_l_pa(temperature) * GAS.value * temperature.liquid().kelvin().0
}

/// What is left of the solubility when table salt is dissolved too, as a factor (1).
///
/// ```text
/// factor = 10^(−k m)      m in mol NaCl per kg water, k from 0.10 (25 °C) to 0.075 (60 °C)
/// ```
///
/// Other salts count as so much table salt, see [`BICARBONATE_OVER_SALT`].
///
/// k runs in straight lines between its three temperatures and stays at the end values outside.
///
/// # Source
/// Setschenow's rule with constants from Rumpf et al. (1994), *J. Solution Chem.* 23, 431.
pub fn salt_factor(mol_per_kg_water: f64, temperature: Celsius) -> f64 {
    if mol_per_kg_water <= 0.0 {
        return 1.0;
    }
    let t = temperature.0.clamp(25.0, 60.0);
    let k = if t < 40.0 {
        SALTING_25C.value + (SALTING_40C.value - SALTING_25C.value) * (t - 25.0) / 15.0
    } else {
        SALTING_40C.value + (SALTING_60C.value - SALTING_40C.value) * (t - 40.0) / 20.0
    };
    exp(-std::f64::consts::LN_10 * k * mol_per_kg_water)
}

/// What is left of the solubility per litre when sugar takes up room, as a factor (1).
///
/// ```text
/// factor = kg water in a litre of solution / density of pure water in kg/L
/// ```
///
/// Only for liquids given by the litre; [`mol_per_kg_pa`] needs no such factor.
pub fn sugar_factor(kg_water_per_l: f64, temperature: Celsius) -> f64 {
    kg_water_per_l / (1e-3 * water::density_kg_per_m3(temperature))
}

/// Second virial coefficient of carbon dioxide, in cubic metres per mole.
///
/// ```text
/// B pc / (R Tc) = f0(Tr) + ω f1(Tr)
/// ```
///
/// # Source
/// C. Tsonopoulos (1974), *AIChE J.* 20, 263, from memory; within 1 % of Span and Wagner (1996)
/// from 10 to 60 °C.
pub fn second_virial_m3_per_mol(temperature: Celsius) -> f64 {
    let r = CRITICAL_KELVIN.value / temperature.liquid().kelvin().0;
    let r2 = r * r;
    let r3 = r2 * r;
    let r8 = r3 * r3 * r2;
    let [c, c1, c2, c3, c8] = F0.map(|term| term.value);
    let f0 = c + c1 * r + c2 * r2 + c3 * r3 + c8 * r8;
    let [c, c2, c3, c8] = F1.map(|term| term.value);
    let f1 = c + c2 * r2 + c3 * r3 + c8 * r8;
    (f0 + ACENTRIC.value * f1) * GAS.value * CRITICAL_KELVIN.value / CRITICAL_PASCAL.value
}

/// Volume of one mole of dry carbon dioxide as a real gas, in litres.
///
/// ```text
/// V = R T / p + B(T)
/// ```
pub fn molar_volume_l(temperature: Celsius, pressure: Pascal) -> f64 {
    let ideal = GAS.value * temperature.liquid().kelvin().0 / pressure.0;
    1e3 * (ideal + second_virial_m3_per_mol(temperature))
}

/// Volume of water-saturated gas that holds one mole of carbon dioxide, as a real gas, in litres.
pub fn wet_molar_volume_l(temperature: Celsius, air: Pascal) -> f64 {
    let dry = crate::gas::dry_pressure(temperature, air);
    molar_volume_l(temperature, air) * air.0 / dry.0
}
