//! The rates of change of a bag, a file for each thing that happens in it.

mod enzymes;
mod exchange;
mod heat;
mod yeast;

use super::mixture::Mixture;
use super::state::{CELSIUS, DISSOLVED, STATES, State};
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
        let celsius = Celsius(y[CELSIUS]);
        let acidity = self.speciation(celsius, y);
        let ph = self.acidity.minded.then_some(acidity.ph);
        self.cut_all(celsius, ph, y, &mut change);
        self.cook(celsius, y, &mut change);
        let mut hexose = 0.0;
        if let Some(crowd) = &self.crowd {
            self.wake_and_die(crowd, celsius, y, &mut change);
            self.invert(crowd, celsius, ph, y, &mut change);
            let fit = ph.map_or(1.0, ph_factor);
            hexose = self.ferment(crowd, celsius, fit, y, &mut change);
        }
        let dissolved = acidity.carbon_dioxide_share * y[DISSOLVED];
        let dry = gas::dry_pressure(celsius, self.pressure).0;
        self.exchange(celsius, dry, dissolved, y, &mut change);
        change[CELSIUS] = self.kelvin_per_min(minute, hexose, dry, y, &change);
        change
    }

    fn smallest(&self, index: usize) -> f64 {
        if index == CELSIUS { 1.0 } else { 1e-4 }
    }
}
