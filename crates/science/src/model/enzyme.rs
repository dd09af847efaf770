//! One kind of enzyme in a bag.

use super::parameters::Parameters;
use super::state::{ENZYMES, enzyme_place};
use crate::enzyme::acidity::{Bell, bell, loss_per_min};
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
    bell: Bell,
    /// In the liquid as it is at rest.
    at_rest: Soured,
}

/// What a liquid's acidity makes of an enzyme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Soured {
    /// Rate over that at the usual acidity (1).
    pub(super) at_work: f64,
    /// Loss to acid (1/min).
    pub(super) loss_per_min: f64,
}

impl Enzyme {
    /// In a liquid whose pH is this at rest, where it is minded.
    pub(super) fn new(kind: EnzymeKind, ph_at_rest: Option<f64>) -> Self {
        let place = ENZYMES + enzyme_place(kind);
        let at_rest = Soured { at_work: 1.0, loss_per_min: 0.0 };
        let mut enzyme = Self { kind, place, heat: heat(kind), bell: bell(kind), at_rest };
        if let Some(ph) = ph_at_rest {
            enzyme.at_rest = enzyme.soured(Some(ph));
        }
        enzyme
    }

    /// At a pH, where it is followed, and else at rest.
    pub(super) fn soured(&self, followed_ph: Option<f64>) -> Soured {
        followed_ph.map_or(self.at_rest, |ph| Soured {
            at_work: self.bell.at_work(ph),
            loss_per_min: loss_per_min(self.kind, ph),
        })
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
