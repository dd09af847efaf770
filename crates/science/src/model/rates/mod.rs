//! The rates of change of a bag, a file for each thing that happens in it.

mod enzymes;
mod exchange;
mod heat;
mod yeast;

use super::mixture::Mixture;
use super::state::{BYPRODUCT, CELSIUS, DISSOLVED, PERMEATED, STATES, State, WATER_USED};
use super::warmth::Warmth;
use crate::gas;
use crate::ode::System;
use crate::units::Celsius;
use crate::yeast::hindrance::ph_factor;

/// Carbon atoms in a hexose, all of which must go somewhere (mol/mol).
pub(super) const CARBON_PER_HEXOSE: f64 = 6.0;

/// Fastest loss by heat that is followed (1/min): a tenth left after half a second, quicker than
/// heat reaches every cell.
const FASTEST_LOSS_PER_MIN: f64 = 250.0;

impl System<STATES> for Mixture {
    fn rates(&self, minute: f64, y: &State) -> State {
        let mut change = [0.0; STATES];
        let warmth = Warmth::of(Celsius(y[CELSIUS]));
        let acidity = self.speciation(warmth.celsius, y);
        let followed_ph = self.acidity.followed.then_some(acidity.ph);
        self.cut_all(warmth.celsius, followed_ph, y, &mut change);
        self.cook(warmth.celsius, y, &mut change);
        let mut hexose = 0.0;
        if let Some(crowd) = &self.crowd {
            self.wake_and_die(crowd, &warmth, y, &mut change);
            self.invert(crowd, &warmth, followed_ph, y, &mut change);
            let fit = if self.acidity.minded { ph_factor(acidity.ph) } else { 1.0 };
            hexose = self.ferment(crowd, warmth.celsius, fit, y, &mut change);
        }
        let dissolved = acidity.carbon_dioxide_share * y[DISSOLVED];
        let dry = gas::dry_beside(warmth.steam, self.pressure).0;
        self.exchange(&warmth, dry, dissolved, y, &mut change);
        change[CELSIUS] = self.kelvin_per_min(minute, hexose, dry, y, &change);
        change
    }

    fn smallest(&self, index: usize) -> f64 {
        if index == CELSIUS { 1.0 } else { 1e-4 }
    }

    /// What has left, or was used up, only counts.
    fn is_read(&self, index: usize) -> bool {
        !matches!(index, PERMEATED | BYPRODUCT | WATER_USED)
    }
}
