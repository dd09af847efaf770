//! How acid a bag's liquid is: worked out all along where soda or acid make it matter, and once
//! where the yeast keeps it near pH 5.

use super::mixture::Mixture;
use super::pantry::Pantry;
use super::state::{CELSIUS, DISSOLVED, State};
use crate::carbon_dioxide::BICARBONATE_OVER_SALT;
use crate::carbonate::{BUFFER_OF_FOOD, FOOD_BUFFER_PH, Liquid, Solutes, Speciation, YEAST_PH};
use crate::stoichiometry::SALT;
use crate::units::Celsius;

/// From where to where yeast works alike, and carbon is mostly carbon dioxide, so that acidity is
/// worked out once only (1).
const AT_EASE: core::ops::RangeInclusive<f64> = 4.3..=5.8;

/// Where acids move the pH by less than this, enzymes need not be asked (1).
const LEAST_MINDED: f64 = 0.25;

/// Carbon that a liquid half full of it holds (mol/kg), and a temperature between those of a lesson.
const HALF_FULL: (f64, Celsius) = (0.015, Celsius(30.0));

/// What decides the acidity of a bag.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Acidity {
    pub(super) liquid: Liquid,
    pub(super) solutes: Solutes,
    /// As it is throughout, unless it is followed.
    pub(super) rest: Speciation,
    /// Whether it is followed.
    pub(super) followed: bool,
    /// Whether it is other than enzymes and yeast are used to.
    pub(super) minded: bool,
    /// Particles of salts and acids (mol).
    pub(super) particles: f64,
    /// Table salt that would keep out as much gas as all salts do (mol).
    pub(super) as_salt: f64,
}

impl Acidity {
    /// Of what is in a bag with `yeast_g` grams of dry yeast, each of which takes up `buffer` mmol of
    /// acid for each unit of pH, and `water_kg` of water.
    pub(super) fn new(pantry: &Pantry, yeast_g: f64, buffer: f64, water_kg: f64) -> Self {
        let salt = pantry.sum.salt / SALT.value;
        let soda = pantry.sum.bicarbonate;
        let (of_yeast, of_food) =
            (1e-3 * buffer * yeast_g, 1e-3 * BUFFER_OF_FOOD.value * pantry.buffering_g);
        let both = of_yeast + of_food;
        let toward = of_yeast * YEAST_PH.value + of_food * FOOD_BUFFER_PH.value;
        let base = soda + pantry.cations;
        let solutes = Solutes {
            base: base / water_kg,
            acids: pantry.acids.map(|acid| acid / water_kg),
            buffer: both / water_kg,
            buffer_ph: if both > 0.0 { toward / both } else { YEAST_PH.value },
            // Each metal ion, of salt or not, goes with a single charge of the other kind.
            ionic: (salt + base) / water_kg,
        };
        let liquid = Liquid::new(&solutes);
        let rest = liquid.speciation(HALF_FULL.0, HALF_FULL.1);
        let soured = pantry.sum.acids.sum() > 0.0;
        let followed = soda > 0.0 || (yeast_g > 0.0 && soured && !AT_EASE.contains(&rest.ph));
        let moved = (rest.ph - solutes.buffer_ph).abs() > LEAST_MINDED;
        let soda_left = (soda - pantry.sum.acids.sum()).max(0.0);
        Self {
            liquid,
            solutes,
            rest,
            followed,
            minded: followed || (soured && moved),
            particles: 2.0 * salt + base + soda_left + pantry.acids.iter().sum::<f64>(),
            as_salt: salt + base + (BICARBONATE_OVER_SALT.value - 1.0) * soda_left,
        }
    }

    /// pH at rest, where it is other than enzymes are used to.
    pub(super) fn ph_at_rest(&self) -> Option<f64> {
        self.minded.then_some(self.rest.ph)
    }

    /// As it is with so much inorganic carbon (mol/kg).
    pub(super) fn at(&self, carbon: f64, celsius: Celsius) -> Speciation {
        if self.followed { self.liquid.speciation(carbon, celsius) } else { self.rest }
    }
}

impl Mixture {
    /// Acidity and carbon of the liquid, at a state.
    pub(super) fn speciation(&self, celsius: Celsius, y: &State) -> Speciation {
        self.acidity.at(1e-3 * y[DISSOLVED].max(0.0) / self.water_kg, celsius)
    }

    /// pH of the liquid (1), at a state. Where neither soda nor acid takes it out of what yeast likes,
    /// it is that of the bag half full of gas.
    pub fn ph(&self, y: &State) -> f64 {
        self.speciation(Celsius(y[CELSIUS]), y).ph
    }
}
