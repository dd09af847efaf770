//! Carbon dioxide that hides in the liquid as bicarbonate and carbonate.
//!
//! Near pH 5, where a yeast bag with sugar sits, there is next to none. Baking soda turns the
//! liquid into a sponge that takes up forty times as much, and an acid wrings it out.

use crate::fact::Fact;
use crate::units::Celsius;

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
const FIRST: [Fact; 5] = [
    plummer("carbonate.first.a", -356.309_4, "1"),
    plummer("carbonate.first.b", -0.060_919_64, "1/K"),
    plummer("carbonate.first.c", 21_834.37, "K"),
    plummer("carbonate.first.d", 126.833_9, "1"),
    plummer("carbonate.first.e", -1_684_915.0, "K2"),
];

/// log10 of the second constant, in the same form.
const SECOND: [Fact; 5] = [
    plummer("carbonate.second.a", -107.887_1, "1"),
    plummer("carbonate.second.b", -0.032_528_49, "1/K"),
    plummer("carbonate.second.c", 5_151.79, "K"),
    plummer("carbonate.second.d", 38.925_61, "1"),
    plummer("carbonate.second.e", -563_713.9, "K2"),
];

const WATER: [Fact; 3] = [
    harned("carbonate.water.a", 4470.99, "K"),
    harned("carbonate.water.b", -6.0875, "1"),
    harned("carbonate.water.c", 0.017_06, "1/K"),
];

/// pKa by which the acids of foods and vinegar are treated (1).
pub const FOOD_ACID_PKA: Fact = Fact::memory(
    "carbonate.food_acid_pka",
    4.76,
    "1",
    "acetic acid 4.76, malic 3.4 and 5.1, citric 3.1 and 4.8, from memory; all react with \
         bicarbonate",
)
.within((3.0, 4.9));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    FIRST[0],
    FIRST[1],
    FIRST[2],
    FIRST[3],
    FIRST[4],
    SECOND[0],
    SECOND[1],
    SECOND[2],
    SECOND[3],
    SECOND[4],
    WATER[0],
    WATER[1],
    WATER[2],
    FOOD_ACID_PKA,
];

fn plummer_log10(terms: &[Fact; 5], temperature: Celsius) -> f64 {
    let kelvin = temperature.liquid().kelvin().0;
    terms[0].value
        + terms[1].value * kelvin
        + terms[2].value / kelvin
        + terms[3].value * libm::log10(kelvin)
        + terms[4].value / (kelvin * kelvin)
}

/// pK of dissolved carbon dioxide giving bicarbonate (1).
///
/// # Source
/// Plummer and Busenberg (1982), *Geochim. Cosmochim. Acta* 46, 1011. Holds its temperature within
/// 0 to 100 °C, as do the others here.
pub fn pk1(temperature: Celsius) -> f64 {
    -plummer_log10(&FIRST, temperature)
}

/// pK of bicarbonate giving carbonate (1).
///
/// # Source
/// Plummer and Busenberg (1982), *Geochim. Cosmochim. Acta* 46, 1011.
pub fn pk2(temperature: Celsius) -> f64 {
    -plummer_log10(&SECOND, temperature)
}

/// pK of water (1).
///
/// # Source
/// Harned and Owen, from memory: 14.00 at 25 °C.
pub fn pkw(temperature: Celsius) -> f64 {
    let kelvin = temperature.liquid().kelvin().0;
    WATER[0].value / kelvin + WATER[1].value + WATER[2].value * kelvin
}

/// All dissolved inorganic carbon over dissolved carbon dioxide at a pH (1).
///
/// ```text
/// 1 + K1/h + K1 K2/h²
/// ```
pub fn carbon_over_carbon_dioxide(ph: f64, temperature: Celsius) -> f64 {
    let bicarbonate = power_of_ten(ph - pk1(temperature));
    1.0 + bicarbonate * (1.0 + power_of_ten(ph - pk2(temperature)))
}

fn power_of_ten(exponent: f64) -> f64 {
    libm::exp(std::f64::consts::LN_10 * exponent)
}

/// What a bag's liquid holds that decides its acidity, per litre of water.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Solutes {
    /// Dissolved inorganic carbon in all forms (mol/L).
    pub carbon: f64,
    /// Strong base, such as the sodium of baking soda (mol/L).
    pub base: f64,
    /// Weak acid of foods and vinegar (mol of H⁺ per L).
    pub acid: f64,
}

/// How acid a liquid is, and what becomes of the carbon in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Speciation {
    /// pH (1).
    pub ph: f64,
    /// Share of the dissolved inorganic carbon that is carbon dioxide (1). This share only is in
    /// equilibrium with the gas.
    pub carbon_dioxide_share: f64,
}

impl Solutes {
    /// pH of the liquid (1).
    ///
    /// ```text
    /// base + h = Kw/h + carbon (K1 h + 2 K1 K2)/(h² + K1 h + K1 K2) + acid Ka/(Ka + h)
    /// ```
    ///
    /// No activities: a teaspoon of soda in 50 mL shifts the true pK1 by about 0.3 (from memory).
    /// Buffering by yeast and flour is left out too.
    pub fn ph(&self, temperature: Celsius) -> f64 {
        self.speciation(temperature).ph
    }

    /// Share of the dissolved inorganic carbon that is carbon dioxide (1).
    pub fn carbon_dioxide_share(&self, temperature: Celsius) -> f64 {
        self.speciation(temperature).carbon_dioxide_share
    }

    /// Both at once.
    pub fn speciation(&self, temperature: Celsius) -> Speciation {
        let k = Constants::at(temperature);
        let h = self.hydrogen(&k);
        Speciation {
            ph: -libm::log10(h),
            carbon_dioxide_share: h * h / (h * h + k.first * (h + k.second)),
        }
    }

    /// Charge that is left over at a hydrogen ion (mol/L), and its slope with it.
    fn charge(&self, h: f64, k: &Constants) -> (f64, f64) {
        let over = k.first * (h + 2.0 * k.second);
        let under = h * h + k.first * (h + k.second);
        let free = k.acid / (k.acid + h);
        let charge =
            self.base + h - k.water / h - self.carbon * over / under - self.acid * free;
        let bend = (k.first * under - over * (2.0 * h + k.first)) / (under * under);
        let slope =
            1.0 + k.water / (h * h) - self.carbon * bend + self.acid * free / (k.acid + h);
        (charge, slope)
    }

    /// Hydrogen ion (mol/L) from the charge balance, which rises with it: halvings of its
    /// logarithm until it is known to a factor of two, then Newton's method inside the bracket.
    fn hydrogen(&self, k: &Constants) -> f64 {
        let (mut low, mut high) = (1e-15, 10.0);
        let mut h = f64::sqrt(low * high);
        for _ in 0..MOST_TRIALS {
            let (charge, slope) = self.charge(h, k);
            if charge > 0.0 {
                high = h;
            } else {
                low = h;
            }
            let newton = h - charge / slope;
            let next = if high < 2.0 * low && low <= newton && newton <= high {
                newton
            } else {
                f64::sqrt(low * high)
            };
            if (next - h).abs() <= 4.0 * f64::EPSILON * h {
                return next;
            }
            h = next;
        }
        h
    }
}

/// Enough to reach the last bit by halvings alone.
const MOST_TRIALS: usize = 70;

struct Constants {
    first: f64,
    second: f64,
    water: f64,
    acid: f64,
}

impl Constants {
    fn at(temperature: Celsius) -> Self {
        Self {
            first: power_of_ten(-pk1(temperature)),
            second: power_of_ten(-pk2(temperature)),
            water: power_of_ten(-pkw(temperature)),
            acid: power_of_ten(-FOOD_ACID_PKA.value),
        }
    }
}
