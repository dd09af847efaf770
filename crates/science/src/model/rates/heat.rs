//! How a bag's contents cool, and what the yeast's own heat adds.

use crate::model::mixture::Mixture;
use crate::model::state::{CELSIUS, State};

impl Mixture {
    /// Change of temperature (K/min) while `hexose` (mmol/min) is fermented.
    pub(super) fn kelvin_per_min(&self, minute: f64, hexose: f64, y: &State) -> f64 {
        self.cooling.kelvin_per_min(minute, y[CELSIUS])
            + self.parameters.own_heat * hexose / self.j_per_k
    }
}
