//! How a bag's contents cool, what the yeast's own heat adds, and what leaving gas takes along.

use crate::constants::GAS as GAS_CONSTANT;
use crate::cooling::Inside;
use crate::model::mixture::Mixture;
use crate::model::state::{CELSIUS, GAS, PERMEATED, State};
use crate::stoichiometry::HEAT_OF_RELEASE;
use crate::units::Celsius;

impl Mixture {
    /// Change of temperature (K/min) while `hexose` (mmol/min) is fermented and gas leaves the liquid
    /// as `change` says; `dry_pa` is the pressure of the gas without its steam.
    pub(super) fn kelvin_per_min(
        &self,
        minute: f64,
        hexose: f64,
        dry_pa: f64,
        y: &State,
        change: &State,
    ) -> f64 {
        let celsius = y[CELSIUS];
        let rt = GAS_CONSTANT.value * Celsius(celsius).liquid().kelvin().0;
        let inside = Inside {
            celsius,
            gas_ml: 1e3 * (y[GAS] + self.air).max(0.0) * rt / dry_pa,
            steam_pa: self.pressure.0 - dry_pa,
        };
        let released = change[GAS] + change[PERMEATED];
        let own = self.parameters.own_heat * hexose - HEAT_OF_RELEASE.value * released;
        self.cooling.kelvin_per_min(minute, &inside) + own / self.j_per_k
    }
}
