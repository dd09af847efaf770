//! How a bag's contents cool, and what the yeast's own heat adds.

use crate::model::mixture::Mixture;
use crate::model::state::{CELSIUS, State};
use crate::stoichiometry::HEAT_PER_HEXOSE;

impl Mixture {
    /// Change of temperature (K/min) while `hexose` (mmol/min) is fermented.
    pub(super) fn kelvin_per_min(&self, minute: f64, hexose: f64, y: &State) -> f64 {
        self.cooling.kelvin_per_min(minute, y[CELSIUS])
            + HEAT_PER_HEXOSE.value * hexose / self.j_per_k
    }
}
