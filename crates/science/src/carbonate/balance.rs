//! The charge balance of a bag's liquid.

use super::acids::{Acid, all_four};
use super::activity::activity_log10;
use super::{constants, power_of_ten};
use crate::fact::Fact;
use crate::units::Celsius;
use core::f64::consts::LN_10;

/// Acid that a gram of dry yeast takes up for each unit of pH (mmol/(g·pH)).
pub const BUFFER_OF_YEAST: Fact = Fact::memory(
    "carbonate.buffer_of_yeast",
    0.25,
    "mmol/g",
    "walls, and what leaks when dry yeast is wetted; with 3 g in 50 mL some 15 (6 to 35) mmol/L for each \
     pH; judgement, from memory",
)
.within((0.1, 0.6));

/// pH at which yeast neither takes up acid nor gives it (1).
pub const YEAST_PH: Fact = Fact::memory(
    "carbonate.yeast_ph",
    5.0,
    "1",
    "about pH 5 measured in a college class for 3 % dry yeast in tap water with sugar; 4 to 5.5 in \
     other liquids, from memory",
)
.within((4.5, 5.5));

/// Acid that a gram of what else is in flour and milk takes up for each unit of pH (mmol/(g·pH)).
pub const BUFFER_OF_FOOD: Fact = Fact::memory(
    "carbonate.buffer_of_food",
    0.4,
    "mmol/g",
    "protein and minerals: dough 4 to 6 mmol for each pH and 100 g of flour, skim milk 15 to 20 mmol/L; \
     from memory",
)
.within((0.2, 0.6));

/// pH at which flour and milk neither take up acid nor give it (1).
pub const FOOD_BUFFER_PH: Fact = Fact::memory(
    "carbonate.food_buffer_ph",
    6.3,
    "1",
    "flour in water 6.0, milk 6.6, from memory",
)
.within((6.0, 6.7));

/// What a bag's liquid holds that decides its acidity, beside inorganic carbon; per kilogram of water.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Solutes {
    /// Metal ions beyond those of table salt, such as the sodium of baking soda (mol/kg).
    pub base: f64,
    /// Acetic, malic, citric and lactic acid, each in all its forms (mol/kg).
    pub acids: [f64; 4],
    /// Acid that yeast, flour and milk take up for each unit of pH (mol/(kg·pH)).
    pub buffer: f64,
    /// pH at which they take up none (1).
    pub buffer_ph: f64,
    /// Ionic strength (mol/kg): half of what ions there are, weighed by the square of their charge.
    pub ionic: f64,
}

/// How acid a liquid is, and what becomes of the carbon in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Speciation {
    /// pH (1): the activity of hydrogen ions, as an electrode shows it.
    pub ph: f64,
    /// Share of the dissolved inorganic carbon that is carbon dioxide (1). This share only is in
    /// equilibrium with the gas.
    pub carbon_dioxide_share: f64,
}

/// Solutes made ready for the balance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Liquid {
    base: f64,
    acids: [Acid; 4],
    /// How many of the acids, from the first, may be there.
    kinds: usize,
    buffer: f64,
    buffer_ph: f64,
    /// Concentration of a single charge for each of activity (1), see [`activity_log10`].
    per_activity: f64,
    /// Where the search begins (1).
    guess: f64,
}

impl Liquid {
    /// A liquid with these in it.
    pub fn new(solutes: &Solutes) -> Self {
        let less = activity_log10(solutes.ionic);
        let there = |acid: &f64| *acid > 0.0;
        let kinds = solutes.acids.iter().rposition(there).map_or(0, |last| last + 1);
        let mut liquid = Self {
            base: solutes.base,
            acids: all_four(solutes.acids, less),
            kinds,
            buffer: solutes.buffer,
            buffer_ph: solutes.buffer_ph,
            per_activity: power_of_ten(less),
            guess: 7.0,
        };
        // Half of what water dissolves under a bag full of gas.
        liquid.guess = liquid.speciation(HALF_FULL, Celsius(30.0)).ph;
        liquid
    }

    /// pH with so much inorganic carbon (mol/kg).
    pub fn ph(&self, carbon: f64, temperature: Celsius) -> f64 {
        self.speciation(carbon, temperature).ph
    }

    /// pH, and how much of so much inorganic carbon (mol/kg) is carbon dioxide.
    ///
    /// ```text
    /// base + β (pH₀ − pH) + (h − Kw/h)/γ = carbon z_c(h) + Σ acid z(h)      h = 10^(−pH)
    /// ```
    ///
    /// z is the mean charge of an acid with its constants at this ionic strength, γ the activity
    /// coefficient of a single charge. Constants of carbonic acid and water go with temperature, those
    /// of the others do not.
    pub fn speciation(&self, carbon: f64, temperature: Celsius) -> Speciation {
        let [first, second, water] = constants::products(temperature);
        // As in `Acid::new`: the second step's constant is of ions that bear two charges more.
        let single = self.per_activity;
        let both = single * single * (single * single);
        let carbonic = Acid { total: carbon, products: [first * single, second * both, 0.0] };
        let (mut low, mut high) = (-2.0, 16.0);
        let mut ph = self.guess;
        let mut inverse = power_of_ten(ph);
        for _ in 0..MOST_TRIALS {
            let (charge, slope) = self.charge(ph, inverse, &carbonic, water);
            if charge > 0.0 {
                low = ph;
            } else {
                high = ph;
            }
            let newton = ph + charge / slope;
            let inside = low <= newton && newton <= high;
            let next = if inside { newton } else { f64::midpoint(low, high) };
            let moved = next - ph;
            ph = next;
            // The next step would be the square of this; a halving says nothing of the kind.
            if inside && moved.abs() < 1e-9 {
                inverse *= 1.0 + LN_10 * moved;
                break;
            }
            inverse = power_of_ten(ph);
            if high - low < 1e-14 {
                break;
            }
        }
        let [one, two, _] = carbonic.products;
        let share = 1.0 / (1.0 + inverse * (one + inverse * two));
        Speciation { ph, carbon_dioxide_share: share }
    }

    /// Positive charge that is left over at a pH (mol/kg), and how fast it falls with it; `inverse` is
    /// one over the activity of hydrogen there (1).
    fn charge(&self, ph: f64, inverse: f64, carbonic: &Acid, water: f64) -> (f64, f64) {
        let (hydrogen, hydroxide) = (1.0 / inverse, water * inverse);
        let mut charge = self.base
            + self.buffer * (self.buffer_ph - ph)
            + (hydrogen - hydroxide) * self.per_activity;
        let mut bend = (hydrogen + hydroxide) * self.per_activity;
        for acid in self.acids[..self.kinds].iter().chain([carbonic]) {
            let (mean, variance) = acid.charge(inverse);
            charge -= acid.total * mean;
            bend += acid.total * variance;
        }
        (charge, self.buffer + LN_10 * bend)
    }
}

/// Carbon in a liquid half full of it (mol/kg).
const HALF_FULL: f64 = 0.015;

/// Enough to reach the last bit by halvings alone.
const MOST_TRIALS: usize = 60;
