//! Constants of carbonic acid and water with temperature.

use super::power_of_ten;
use crate::fact::Fact;
use crate::temperature_table::TemperatureTable;
use crate::units::Celsius;
use std::sync::LazyLock;

const PLUMMER: &str = "L. N. Plummer, E. Busenberg, Geochim. Cosmochim. Acta 46, 1011 (1982)";
const HARNED: &str =
    "H. S. Harned, B. B. Owen, pKw = 4470.99/T − 6.0875 + 0.01706 T, from memory";

const fn plummer(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::sourced(name, value, unit, PLUMMER)
}

const fn harned(name: &'static str, value: f64, unit: &'static str) -> Fact {
    Fact::memory(name, value, unit, HARNED)
}

/// log10 of the first constant: a + b T + c/T + d log10 T + e/T².
pub(super) const FIRST: [Fact; 5] = [
    plummer("carbonate.first.a", -356.309_4, "1"),
    plummer("carbonate.first.b", -0.060_919_64, "1/K"),
    plummer("carbonate.first.c", 21_834.37, "K"),
    plummer("carbonate.first.d", 126.833_9, "1"),
    plummer("carbonate.first.e", -1_684_915.0, "K2"),
];

/// log10 of the second constant, in the same form.
pub(super) const SECOND: [Fact; 5] = [
    plummer("carbonate.second.a", -107.887_1, "1"),
    plummer("carbonate.second.b", -0.032_528_49, "1/K"),
    plummer("carbonate.second.c", 5_151.79, "K"),
    plummer("carbonate.second.d", 38.925_61, "1"),
    plummer("carbonate.second.e", -563_713.9, "K2"),
];

pub(super) const WATER: [Fact; 3] = [
    harned("carbonate.water.a", 4470.99, "K"),
    harned("carbonate.water.b", -6.0875, "1"),
    harned("carbonate.water.c", 0.017_06, "1/K"),
];

fn plummer_log10(terms: &[Fact; 5], kelvin: f64, log10_kelvin: f64) -> f64 {
    terms[0].value
        + terms[1].value * kelvin
        + terms[2].value / kelvin
        + terms[3].value * log10_kelvin
        + terms[4].value / (kelvin * kelvin)
}

/// pK1, pK2 and pKw at once (1).
pub(super) fn all(temperature: Celsius) -> (f64, f64, f64) {
    let kelvin = temperature.liquid().kelvin().0;
    let log10 = libm::log10(kelvin);
    let water = WATER[0].value / kelvin + WATER[1].value + WATER[2].value * kelvin;
    (-plummer_log10(&FIRST, kelvin, log10), -plummer_log10(&SECOND, kelvin, log10), water)
}

/// K1, K1 K2 and Kw at once, as activities (1), from a table of these laws.
pub(super) fn products(temperature: Celsius) -> [f64; 3] {
    static TABLE: LazyLock<TemperatureTable<3>> = LazyLock::new(|| {
        TemperatureTable::of(|temperature| {
            let (pk1, pk2, pkw) = all(temperature);
            [pk1, pk1 + pk2, pkw].map(|pk| power_of_ten(-pk))
        })
    });
    TABLE.at(temperature)
}

/// pK of dissolved carbon dioxide giving bicarbonate (1).
///
/// # Source
/// Plummer and Busenberg (1982), *Geochim. Cosmochim. Acta* 46, 1011. Holds its temperature within
/// 0 to 100 °C, as do the others here.
pub fn pk1(temperature: Celsius) -> f64 {
    all(temperature).0
}

/// pK of bicarbonate giving carbonate (1).
///
/// # Source
/// Plummer and Busenberg (1982), *Geochim. Cosmochim. Acta* 46, 1011.
pub fn pk2(temperature: Celsius) -> f64 {
    all(temperature).1
}

/// pK of water (1).
///
/// # Source
/// Harned and Owen, from memory: 14.00 at 25 °C.
pub fn pkw(temperature: Celsius) -> f64 {
    all(temperature).2
}

/// All dissolved inorganic carbon over dissolved carbon dioxide at a pH, in thin solution (1).
///
/// ```text
/// 1 + K1/h + K1 K2/h²
/// ```
pub fn carbon_over_carbon_dioxide(ph: f64, temperature: Celsius) -> f64 {
    let bicarbonate = power_of_ten(ph - pk1(temperature));
    1.0 + bicarbonate * (1.0 + power_of_ten(ph - pk2(temperature)))
}
