//! From what the display shows to ethanol in the liquid.

use super::{CELSIUS_SD, LITRES_PER_PERCENT};
use crate::ethanol::water_gas_ratio;
use crate::fact::Fact;
use crate::model::validity::{Beyond, Law};
use crate::units::Celsius;

/// Volume that a gram of dissolved sugar takes from the water (mL/g).
const SUGAR_ROOM: Fact = Fact::memory(
    "meter.sugar_room",
    0.62,
    "mL/g",
    "partial specific volume of sugars; what is left of a litre is water that holds ethanol; from memory",
)
.within((0.5, 0.7));

/// Setschenow constant of salt for ethanol (L/mol).
const SALTING_OUT: Fact = Fact::memory(
    "meter.salting_out",
    0.083,
    "L/mol",
    "half a mole of salt a litre raises the gas over dilute ethanol by 10 %, from memory",
)
.within((0.05, 0.12));

/// Facts of this file.
pub const CHAIN_FACTS: &[Fact] = &[SUGAR_ROOM, SALTING_OUT];

/// Where the ratio between liquid and gas is known: by warmth, by sugar, by salt.
static LAWS: [Law; 3] = [
    Law {
        name: "ethanol.water_gas_ratio",
        quantity: "temperature of the liquid under the meter's gas",
        unit: "°C",
        holds: (15.0, 45.0),
        outside: "carried on by its formulas",
        source: "between those temperatures its four sources were laid side by side",
    },
    Law {
        name: "meter.sugar_room",
        quantity: "sugar in the liquid under the meter's gas",
        unit: "g/L",
        holds: (0.0, MOST_SUGAR),
        outside: "held at the end of the range",
        source: "up to there sugar takes room in proportion, from memory",
    },
    Law {
        name: "meter.salting_out",
        quantity: "salt in the liquid under the meter's gas",
        unit: "mol/L",
        holds: (0.0, MOST_SALT),
        outside: "held at the end of the range",
        source: "up to there after Setschenow, from memory",
    },
];

/// Sugar (g/L) and salt (mol/L) beyond which more counts as so much.
const MOST_SUGAR: f64 = 200.0;
/// See [`MOST_SUGAR`].
const MOST_SALT: f64 = 1.0;

/// The liquid that a bag's gas lies over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Liquid {
    /// Its temperature.
    pub celsius: Celsius,
    /// Standard deviation of that (K).
    pub celsius_sd: f64,
    /// Dissolved sugar (g/L).
    pub sugar_g_per_l: f64,
    /// Dissolved salt (mol/L).
    pub salt_mol_per_l: f64,
}

impl Liquid {
    /// Water that a school thermometer was held into.
    pub const fn water(celsius: Celsius) -> Self {
        Self { celsius, celsius_sd: CELSIUS_SD.value, sugar_g_per_l: 0.0, salt_mol_per_l: 0.0 }
    }

    /// Ethanol in a litre of this liquid over ethanol in a litre of gas above it (1).
    ///
    /// ```text
    /// K = K_water(T) (1 − v S/1000) 10^(−k c)      v 0.62 mL/g, S sugar (g/L), k 0.083 L/mol, c salt
    /// ```
    ///
    /// Up to 200 g/L of sugar and 1 mol/L of salt; more counts as so much, and is marked
    /// ([`Self::beyond`]).
    ///
    /// # Source
    /// [`water_gas_ratio`]; sugar by the room it takes (a share of 5 % at 8 %) and salt after
    /// Setschenow, both from memory.
    pub fn ratio(&self) -> f64 {
        let sugar = self.sugar_g_per_l.clamp(0.0, MOST_SUGAR);
        let salt = self.salt_mol_per_l.clamp(0.0, MOST_SALT);
        water_gas_ratio(self.celsius)
            * (1.0 - 1e-3 * SUGAR_ROOM.value * sugar)
            * libm::exp(-core::f64::consts::LN_10 * SALTING_OUT.value * salt)
    }

    /// What of [`Self::ratio`] is used beyond its range for a reading at a minute.
    pub fn beyond(&self, minute: f64) -> Vec<Beyond> {
        let read = [self.celsius.0, self.sugar_g_per_l, self.salt_mol_per_l];
        LAWS.iter().zip(read).filter_map(|(law, value)| law.mark(value, minute)).collect()
    }

    /// Relative standard deviation of the ratio that the doubt about the temperature brings (1).
    pub fn thermal_sd(&self) -> f64 {
        let warmer = Celsius(self.celsius.0 + self.celsius_sd);
        libm::log(water_gas_ratio(self.celsius) / water_gas_ratio(warmer))
    }
}

/// Ethanol in the gas, in milligrams per litre, when the display shows so many percent.
///
/// ```text
/// c = R · 1000 mg / 210 L      R in % blood alcohol: g per 100 mL of blood, or per 210 L of breath
/// ```
pub const fn gas_mg_per_l(percent: f64) -> f64 {
    percent * 1e3 / LITRES_PER_PERCENT.value
}

/// Ethanol in the liquid, in grams per litre, whose equilibrium gas makes the display show so many
/// percent.
///
/// ```text
/// C = c · K(T) / 1000      K from ethanol::water_gas_ratio at the liquid's temperature
/// ```
pub fn liquid_g_per_l(percent: f64, liquid: Celsius) -> f64 {
    gas_mg_per_l(percent) * 1e-3 * water_gas_ratio(liquid)
}

/// What a perfect meter shows over a liquid with so many grams of ethanol a litre (%): the inverse of
/// the two above, for any liquid.
pub fn percent_over(g_per_l: f64, liquid: &Liquid) -> f64 {
    g_per_l / liquid.ratio() * LITRES_PER_PERCENT.value
}
