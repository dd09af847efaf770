//! A bag at one moment, as laws read it.

use crate::bag::short_side_and_aspect;
use crate::carbon_dioxide;
use crate::model::card::CardOnBag;
use crate::model::mixture::Mixture;
use crate::model::state::{CELSIUS, ENZYME_ORDER, GAS, PERMEATED, RAW, State};
use crate::setup::{EnzymeKind, Setup, YeastKind};
use crate::stoichiometry::GLUCAN_UNIT;
use crate::units::Celsius;

/// A bag at one moment.
pub(super) struct Scene<'a> {
    pub(super) setup: &'a Setup,
    pub(super) mixture: &'a Mixture,
    pub(super) card: &'a CardOnBag,
    pub(super) y: &'a State,
}

impl Scene<'_> {
    pub(super) fn celsius(&self) -> f64 {
        self.y[CELSIUS]
    }

    /// The temperature, where there is yeast.
    pub(super) fn of_yeast(&self) -> Option<f64> {
        self.mixture.crowd.as_ref().map(|_| self.celsius())
    }

    /// The temperature, where there is an enzyme of those kinds.
    pub(super) fn of_enzyme(&self, kinds: &[EnzymeKind]) -> Option<f64> {
        let there = |kind| self.setup.enzymes.iter().any(|e| e.kind == kind && e.units > 0.0);
        kinds.iter().any(|kind| there(*kind)).then(|| self.celsius())
    }

    /// The pH, where there is an enzyme and it is worked out.
    pub(super) fn ph_of_enzyme(&self) -> Option<f64> {
        self.of_enzyme(&ENZYME_ORDER)?;
        self.mixture.acidity.minded.then(|| self.mixture.ph(self.y))
    }

    /// The temperature, where salt takes a hundredth of the solubility or more.
    pub(super) fn of_salt(&self) -> Option<f64> {
        let left =
            carbon_dioxide::salt_factor(self.mixture.salt_mol_per_kg, Celsius(self.celsius()));
        (left < 0.99).then(|| self.celsius())
    }

    /// The temperature at which yeast of some kinds was stored, if it was.
    pub(super) fn stored(&self, compressed: bool) -> Option<f64> {
        let yeast = self.setup.yeast.filter(|y| y.grams > 0.0 && y.age_months > 0.0)?;
        ((yeast.kind == YeastKind::Compressed) == compressed).then_some(yeast.stored_celsius)
    }

    /// The pH, where there is yeast and it is followed.
    pub(super) fn ph_of_yeast(&self) -> Option<f64> {
        self.of_yeast()?;
        self.mixture.acidity.followed.then(|| self.mixture.ph(self.y))
    }

    /// The temperature, where acidity is followed.
    pub(super) fn of_acidity(&self) -> Option<f64> {
        self.mixture.acidity.followed.then(|| self.celsius())
    }

    /// For how long the yeast was stored (months), if it was.
    pub(super) fn age_of_yeast(&self) -> Option<f64> {
        self.setup.yeast.filter(|y| y.grams > 0.0).map(|y| y.age_months)
    }

    /// Age of the oldest enzyme solution (min), if there is any.
    pub(super) fn oldest_solution(&self) -> Option<f64> {
        let there = self.setup.enzymes.iter().filter(|enzyme| enzyme.units > 0.0);
        there.map(|enzyme| enzyme.stock_age_min).reduce(f64::max)
    }

    /// Raw starch as a share of starch and water (1), where it is warm enough for some to cook.
    pub(super) fn starch_that_cooks(&self) -> Option<f64> {
        let kg = 1e-6 * GLUCAN_UNIT.value * self.y[RAW].max(0.0);
        self.mixture
            .granules
            .can_cook(self.celsius())
            .then(|| kg / (kg + self.mixture.water_kg))
    }

    /// The temperature, where more than a hundredth of the gas has gone through the film.
    pub(super) fn of_leak(&self) -> Option<f64> {
        let gone = self.y[PERMEATED];
        (gone > 0.01 * (gone + self.y[GAS])).then(|| self.celsius())
    }

    /// Short side of the bag (mm), and long over short side (1).
    pub(super) fn sides(&self) -> (f64, f64) {
        short_side_and_aspect(&self.setup.bag)
    }

    /// Mass of the card over its area (kg/m²).
    pub(super) const fn card_kg_per_m2(&self) -> f64 {
        let card = &self.setup.card;
        1e3 * card.grams / (card.length_mm * card.width_mm)
    }
}
