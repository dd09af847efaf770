//! A bag at one moment, as laws read it.

use crate::carbon_dioxide;
use crate::model::card::CardOnBag;
use crate::model::mixture::Mixture;
use crate::model::state::{CELSIUS, ENZYME_ORDER, State};
use crate::setup::{EnzymeKind, Setup, YeastKind};
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
}
