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
use crate::yeast::hindrance::{BUFFERED_PH, ph_factor};

/// Carbon atoms in a hexose, all of which must go somewhere (mol/mol).
pub(super) const CARBON_PER_HEXOSE: f64 = 6.0;

/// Fastest loss by heat that is followed (1/min): a tenth left after half a second, quicker than
/// heat reaches every cell.
const FASTEST_LOSS_PER_MIN: f64 = 250.0;

impl System<STATES> for Mixture {
    fn rates(&self, minute: f64, y: &State) -> State {
        let mut change = [0.0; STATES];
        let celsius = Celsius(y[CELSIUS]);
        let acidity = self.acidity(celsius, y);
        let ph = acidity.map(|liquid| liquid.ph);
        self.cut_all(celsius, ph, y, &mut change);
        self.cook(celsius, y, &mut change);
        let mut hexose = 0.0;
        if let Some(crowd) = &self.crowd {
            self.wake_and_die(crowd, celsius, y, &mut change);
            self.invert(crowd, celsius, ph, y, &mut change);
            let fit = acidity.map_or(1.0, |liquid| ph_factor(liquid.ph.max(BUFFERED_PH.value)));
            hexose = self.ferment(crowd, celsius, fit, y, &mut change);
        }
        let as_gas = acidity.map_or(1.0, |liquid| liquid.carbon_dioxide_share);
        let dry = gas::dry_pressure(celsius, self.pressure).0;
        self.exchange(celsius, dry, as_gas * y[DISSOLVED], y, &mut change);
        change[CELSIUS] = self.kelvin_per_min(minute, hexose, dry, y, &change);
        change
    }

    fn smallest(&self, index: usize) -> f64 {
        if index == CELSIUS { 1.0 } else { 1e-4 }
    }
}
