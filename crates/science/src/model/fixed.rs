//! What does not change in a bag, by name: enough for another program to work out the same rates.

use super::mixture::Mixture;

/// Names for the raw starch of the first portions that bring some: amount, onset and end of cooking.
const RAW: [[&str; 3]; 4] = [
    ["raw_0", "raw_0_onset", "raw_0_end"],
    ["raw_1", "raw_1_onset", "raw_1_end"],
    ["raw_2", "raw_2_onset", "raw_2_end"],
    ["raw_3", "raw_3_onset", "raw_3_end"],
];

impl Mixture {
    /// Every number, beside the facts and the parameters, that the rates of this bag read; each
    /// with its name and in the unit that stands at its field.
    ///
    /// A comparison with other solvers needs it. A bag without yeast has none of the crowd's.
    pub fn fixed(&self) -> Vec<(&'static str, f64)> {
        let acidity = &self.acidity;
        let mut all = vec![
            ("pressure", self.pressure.0),
            ("water_kg", self.water_kg),
            ("solution_l", self.solution_l),
            ("j_per_k", self.j_per_k),
            ("salts_osmol_per_l", self.salts_osmol_per_l),
            ("salt_mol_per_kg", self.salt_mol_per_kg),
            ("base_mol_per_kg", acidity.solutes.base),
            ("acetic_mol_per_kg", acidity.solutes.acids[0]),
            ("malic_mol_per_kg", acidity.solutes.acids[1]),
            ("citric_mol_per_kg", acidity.solutes.acids[2]),
            ("lactic_mol_per_kg", acidity.solutes.acids[3]),
            ("buffer_mol_per_kg", acidity.solutes.buffer),
            ("buffer_ph", acidity.solutes.buffer_ph),
            ("ionic_mol_per_kg", acidity.solutes.ionic),
            ("acidity_followed", f64::from(acidity.followed)),
            // Zero where nothing minds it.
            ("ph_at_rest", if acidity.minded { acidity.rest.ph } else { 0.0 }),
            ("share_at_rest", acidity.rest.carbon_dioxide_share),
            ("air", self.air),
            ("half_pocket", self.half_pocket),
            ("face_m2", self.face_m2),
            ("film_um", self.film_um),
        ];
        if let Some(crowd) = &self.crowd {
            all.extend([
                ("dry_g", crowd.dry_g),
                ("co2_per_min", crowd.co2_per_min),
                ("reserve_full", crowd.reserve),
            ]);
        }
        all.extend([("raw_attack", self.granules.attack)]);
        for (names, kind) in RAW.iter().zip(&self.granules.kinds) {
            let [mmol, onset, end] = *names;
            all.extend([(mmol, kind.mmol), (onset, kind.onset), (end, kind.end)]);
        }
        all.extend(self.cooling.fixed());
        all
    }
}
