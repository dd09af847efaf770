//! Carbon dioxide between liquid, gas and room.

use crate::carbon_dioxide::salt_factor;
use crate::model::mixture::Mixture;
use crate::model::state::{DISSOLVED, GAS, PERMEATED, State};
use crate::model::warmth::Warmth;

impl Mixture {
    /// Carbon dioxide between liquid, where `dissolved` mmol of it are in that form, gas, which has a
    /// pressure of `dry` pascal without its steam, and room.
    pub(super) fn exchange(
        &self,
        warmth: &Warmth,
        dry: f64,
        dissolved: f64,
        y: &State,
        change: &mut State,
    ) {
        let gases = y[GAS] + self.air;
        let share = if gases > 0.0 { (y[GAS] / gases).clamp(0.0, 1.0) } else { 1.0 };
        // Dissolved when the gas is all carbon dioxide and steam (mmol).
        let full = 1e3
            * warmth.mol_per_kg_pa
            * salt_factor(self.salt_mol_per_kg, warmth.celsius)
            * self.water_kg
            * dry;
        // Across the surface, as far as it is open to gas; and by bubbles, once they can form.
        let open = gases / (gases + self.half_pocket);
        let across = open * (dissolved - full * share);
        let bubbles = (dissolved - full).max(0.0);
        let out = self.parameters.release * (across + bubbles);
        let leak = self.parameters.permeability
            * open
            * self.face_m2
            * 6e4
            * warmth.through_film
            * (share * dry / self.film_um);
        change[DISSOLVED] -= out;
        change[GAS] = out - leak;
        change[PERMEATED] = leak;
    }
}
