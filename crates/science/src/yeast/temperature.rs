//! How fast yeast works at a temperature.

use crate::constants::GAS;
use crate::fact::Fact;
use crate::units::Celsius;
use std::sync::LazyLock;

const BLEND: &str = "blend: optimum 40 °C in a short window (J. White, D. J. Munns, J. Inst. Brew. \
     57, 280 (1951)), 35 kJ/mol near 30 °C (M. Phisalaphong et al., Biochem. Eng. J. 28, 36 \
     (2006)), rising dough (upper bound at low temperature), Slator's quotients of 1906 (from \
     memory)";

const fn point(name: &'static str, value: f64) -> Fact {
    Fact::derived(name, value, "1", BLEND)
}

/// Gas of a run of 30 minutes at a temperature (°C) over that of one at 30 °C, as published work
/// blends into it: what [`response`] is fitted to.
pub const TABLE: [(f64, Fact); 16] = [
    (0.0, point("yeast.temperature.0c", 0.03)),
    (5.0, point("yeast.temperature.5c", 0.065)),
    (10.0, point("yeast.temperature.10c", 0.13)),
    (15.0, point("yeast.temperature.15c", 0.24)),
    (20.0, point("yeast.temperature.20c", 0.42)),
    (25.0, point("yeast.temperature.25c", 0.68)),
    (30.0, point("yeast.temperature.30c", 1.0)),
    (35.0, point("yeast.temperature.35c", 1.38)),
    (38.0, point("yeast.temperature.38c", 1.60)),
    (40.0, point("yeast.temperature.40c", 1.68)),
    (42.0, point("yeast.temperature.42c", 1.60)),
    (45.0, point("yeast.temperature.45c", 1.15)),
    (48.0, point("yeast.temperature.48c", 0.55)),
    (50.0, point("yeast.temperature.50c", 0.28)),
    (55.0, point("yeast.temperature.55c", 0.03)),
    (60.0, point("yeast.temperature.60c", 0.0)),
];

const FIT: &str = "law of R. M. Schoolfield, P. J. H. Sharpe, C. E. Magnuson, J. Theor. Biol. 88, \
     719 (1981), least squares on yeast.temperature over its own mean loss in 30 min: 0.018 off \
     at most from 10 to 48 °C, 0.036 from 0 to 60";

const fn fitted(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::derived(name, value, unit, FIT)
}

/// Activation energy in the middle range (kJ/mol).
const ENERGY: Fact = fitted("yeast.response.activation", 50.4, "kJ/mol");
/// Temperature at which half of it is stopped by heat (°C), and its steepness (kJ/mol).
const HOT_HALF: Fact = fitted("yeast.response.hot_half", 45.28, "Cel");
const HOT_ENERGY: Fact = fitted("yeast.response.hot_energy", 318.0, "kJ/mol");
/// Temperature at which half of it is stopped by cold (°C), and its steepness (kJ/mol).
const COLD_HALF: Fact = fitted("yeast.response.cold_half", 9.24, "Cel");
const COLD_ENERGY: Fact = fitted("yeast.response.cold_energy", 86.4, "kJ/mol");

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    TABLE[0].1,
    TABLE[1].1,
    TABLE[2].1,
    TABLE[3].1,
    TABLE[4].1,
    TABLE[5].1,
    TABLE[6].1,
    TABLE[7].1,
    TABLE[8].1,
    TABLE[9].1,
    TABLE[10].1,
    TABLE[11].1,
    TABLE[12].1,
    TABLE[13].1,
    TABLE[14].1,
    TABLE[15].1,
    ENERGY,
    HOT_HALF,
    HOT_ENERGY,
    COLD_HALF,
    COLD_ENERGY,
];

/// Temperature at which the response is one (°C).
pub const ONE_AT: Celsius = Celsius(30.0);

static AT_ONE: LazyLock<f64> = LazyLock::new(|| unscaled(ONE_AT));

/// Rate of awake, unhurt yeast over its rate at 30 °C (1).
///
/// ```text
/// f = g(T)/g(303.15 K)
/// g = T exp(−E/(R T)) / (1 + exp(−E_h/R (1/T − 1/T_h)) + exp(E_c/R (1/T − 1/T_c)))
/// ```
///
/// T in kelvin, E 50.4, E_h 318, E_c 86.4 kJ/mol, T_h 45.28 and T_c 9.24 °C. This is what the yeast
/// does at once. Its optimum, near 41.5 °C, is not that of a run: loss above 36 °C ([`loss`]) moves
/// that to 40 °C for half an hour and further down for two hours. The published figures are those
/// of runs, so the law is fitted to them with the mean loss of half an hour taken out.
///
/// # Range
/// 0 to 60 °C; held to 0 and 100 °C outside.
/// # Source
/// Form: Schoolfield, Sharpe and Magnuson (1981), *J. Theor. Biol.* 88, 719 (derived from Sharpe
/// and DeMichele 1977). Figures: [`TABLE`], from White and Munns (1951), *J. Inst. Brew.* 57, 280;
/// Phisalaphong et al. (2006), *Biochem. Eng. J.* 28, 36; and others named in its facts.
///
/// [`loss`]: super::loss
pub fn response(temperature: Celsius) -> f64 {
    unscaled(temperature.liquid()) / *AT_ONE
}

fn unscaled(temperature: Celsius) -> f64 {
    let kelvin = temperature.kelvin().0;
    let (cold, hot) = (Celsius(COLD_HALF.value), Celsius(HOT_HALF.value));
    // Energies over the gas constant (K), against the reciprocal of a temperature.
    let arrhenius = |fact: &Fact, from: Celsius| {
        libm::exp(-1e3 * fact.value / GAS.value * (1.0 / kelvin - 1.0 / from.kelvin().0))
    };
    let stopped_by_cold = 1.0 / arrhenius(&COLD_ENERGY, cold);
    let stopped_by_heat = arrhenius(&HOT_ENERGY, hot);
    kelvin * arrhenius(&ENERGY, ONE_AT) / (1.0 + stopped_by_heat + stopped_by_cold)
}
