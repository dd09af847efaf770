//! One kind of enzyme in a bag.

use super::parameters::Parameters;
use super::state::{ENZYMES, enzyme_place};
use crate::enzyme::acidity::{Bell, bell};
use crate::enzyme::heat::{Heat, heat};
use crate::enzyme::stock;
use crate::setup::{EnzymeDose, EnzymeKind};
use crate::units::Celsius;

/// An enzyme that is present, with its laws at hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Enzyme {
    pub(super) kind: EnzymeKind,
    /// Its place in a state.
    pub(super) place: usize,
    pub(super) heat: Heat,
    pub(super) acidity: Bell,
}

impl Enzyme {
    pub(super) fn new(kind: EnzymeKind) -> Self {
        let place = ENZYMES + enzyme_place(kind);
        Self { kind, place, heat: heat(kind), acidity: bell(kind) }
    }

    /// What a dose brings into a bag out of its bottle (µmol/min at the reference temperature).
    pub(super) fn delivered(
        &self,
        dose: &EnzymeDose,
        room_celsius: f64,
        parameters: &Parameters,
    ) -> f64 {
        let loss = parameters.enzyme_loss * self.heat.loss(Celsius(room_celsius));
        let warm = libm::exp(-loss * dose.stock_age_min);
        let left = stock::left(dose.stock_age_min, parameters.stock_half_life);
        let settled = if dose.shaken { 1.0 } else { parameters.unshaken };
        dose.units * left * warm * settled
    }
}
