//! What enzymes and warmth do to the carbohydrates of a bag.

use super::FASTEST_LOSS_PER_MIN;
use crate::enzyme::starch::{self, Amylase, BACTERIAL, BETA, Chains, Cuts, FUNGAL};
use crate::enzyme::sugars::{ACID, Lactase, NEUTRAL, galactosidase_at_work, invertase_at_work};
use crate::model::mixture::Mixture;
use crate::model::state::{
    COOKED, DEXTRIN, FRUCTOSE, GALACTOSE, GALACTOSIDES, GLUCOSE, LACTOSE, MALTOSE, MELIBIOSE,
    RAW, SUCROSE, State, WATER_USED,
};
use crate::setup::EnzymeKind;
use crate::stoichiometry::{DISACCHARIDE, GLUCAN_UNIT};
use crate::units::Celsius;

impl Mixture {
    /// Lets every enzyme in the bag loose, and lets heat and acid wear it out; the pH where that
    /// is followed.
    pub(super) fn cut_all(
        &self,
        celsius: Celsius,
        followed_ph: Option<f64>,
        y: &State,
        change: &mut State,
    ) {
        if self.enzymes.is_empty() {
            return;
        }
        let chains = self.chains(y);
        for enzyme in &self.enzymes {
            let left = y[enzyme.place];
            let [rate, loss] = enzyme.warmed(celsius);
            let soured = enzyme.soured(followed_ph);
            let loss = self.parameters.enzyme_loss * loss + soured.loss_per_min;
            let activity = left.max(0.0) * rate * soured.at_work;
            change[enzyme.place] = -loss.min(FASTEST_LOSS_PER_MIN) * left;
            self.cut(enzyme.kind, activity, &chains, y, change);
        }
    }

    /// Raw starch cooks where it is warm enough.
    pub(super) fn cook(&self, celsius: Celsius, y: &State, change: &mut State) {
        let cooked = self.granules.cooks(celsius.0, y[RAW]);
        change[RAW] -= cooked;
        change[COOKED] += cooked;
    }

    /// mmol hexose units of chains in grams per litre.
    fn glucan_g_per_l(&self, units: f64) -> f64 {
        1e-3 * GLUCAN_UNIT.value * units * self.per_solution_l
    }

    /// mmol hexose units bound in pairs, in mmol of pairs per litre.
    pub(super) fn pairs_per_l(&self, units: f64) -> f64 {
        0.5 * units * self.per_solution_l
    }

    /// Lets `activity` (mmol/min) of one enzyme loose.
    fn cut(
        &self,
        kind: EnzymeKind,
        activity: f64,
        chains: &Chains,
        y: &State,
        change: &mut State,
    ) {
        match kind {
            EnzymeKind::Glucoamylase => {
                let (half, raw) = (self.parameters.enzyme_half, self.granules.attack);
                let cuts = starch::glucoamylase(chains, half, raw);
                to_glucose(activity, &cuts, change);
            }
            EnzymeKind::FungalAlphaAmylase => {
                self.to_dextrin(&FUNGAL, activity, chains, change);
            }
            EnzymeKind::BacterialAlphaAmylase => {
                self.to_dextrin(&BACTERIAL, activity, chains, change);
            }
            EnzymeKind::BetaAmylase => self.to_dextrin(&BETA, activity, chains, change),
            EnzymeKind::NeutralLactase => self.split_lactose(&NEUTRAL, activity, y, change),
            EnzymeKind::AcidLactase => self.split_lactose(&ACID, activity, y, change),
            EnzymeKind::Invertase => self.split_sucrose(activity, y, change),
            EnzymeKind::AlphaGalactosidase => self.split_galactosides(activity, y, change),
        }
    }

    fn chains(&self, y: &State) -> Chains {
        Chains {
            cooked: self.glucan_g_per_l(y[COOKED]),
            raw: self.glucan_g_per_l(y[RAW]),
            dextrin: self.glucan_g_per_l(y[DEXTRIN]),
            maltose: 1e-3 * DISACCHARIDE.value * self.pairs_per_l(y[MALTOSE]),
        }
    }

    /// Starch to dextrin and maltose; only maltose takes up water.
    fn to_dextrin(&self, enzyme: &Amylase, activity: f64, chains: &Chains, change: &mut State) {
        let (half, raw) = (self.parameters.enzyme_half, self.granules.attack);
        let cuts = starch::amylase(enzyme, chains, half, raw);
        let (cooked, raw) = (activity * cuts.cooked, activity * cuts.raw);
        let trimmed = activity * cuts.dextrin;
        let maltose = enzyme.maltose * (cooked + raw);
        change[COOKED] -= cooked;
        change[RAW] -= raw;
        change[DEXTRIN] += cooked + raw - maltose - trimmed;
        change[MALTOSE] += maltose + trimmed;
        change[WATER_USED] += 0.5 * (maltose + trimmed);
    }

    fn split_lactose(&self, lactase: &Lactase, activity: f64, y: &State, change: &mut State) {
        let galactose = y[GALACTOSE] * self.per_solution_l;
        let share = lactase.at_work(
            self.pairs_per_l(y[LACTOSE]),
            galactose,
            self.parameters.enzyme_half,
        );
        let pairs = activity * share;
        change[LACTOSE] -= 2.0 * pairs;
        change[GLUCOSE] += pairs;
        change[GALACTOSE] += pairs;
        change[WATER_USED] += pairs;
    }

    /// Table sugar to glucose and fructose, raffinose to melibiose and fructose.
    pub(super) fn split_sucrose(&self, activity: f64, y: &State, change: &mut State) {
        let raffinose = y[GALACTOSIDES] / 3.0 * self.per_solution_l;
        let (sucrose, raffinose) = invertase_at_work(
            self.pairs_per_l(y[SUCROSE]),
            raffinose,
            self.parameters.enzyme_half,
        );
        let pairs = activity * sucrose;
        change[SUCROSE] -= 2.0 * pairs;
        change[GLUCOSE] += pairs;
        let threes = activity * raffinose;
        change[GALACTOSIDES] -= 3.0 * threes;
        change[MELIBIOSE] += 2.0 * threes;
        change[FRUCTOSE] += pairs + threes;
        change[WATER_USED] += pairs + threes;
    }

    /// Galactose off raffinose, which leaves table sugar, and off melibiose, which leaves glucose.
    fn split_galactosides(&self, activity: f64, y: &State, change: &mut State) {
        let (raffinose, melibiose) =
            (y[GALACTOSIDES].max(0.0) / 3.0, 0.5 * y[MELIBIOSE].max(0.0));
        let both = raffinose + melibiose;
        if both <= 0.0 {
            return;
        }
        let share = galactosidase_at_work(
            both * self.per_solution_l,
            y[GALACTOSE] * self.per_solution_l,
            self.parameters.enzyme_half,
        );
        let (threes, pairs) =
            (activity * share * raffinose / both, activity * share * melibiose / both);
        change[GALACTOSIDES] -= 3.0 * threes;
        change[SUCROSE] += 2.0 * threes;
        change[MELIBIOSE] -= 2.0 * pairs;
        change[GLUCOSE] += pairs;
        change[GALACTOSE] += threes + pairs;
        change[WATER_USED] += threes + pairs;
    }
}

/// Chains to glucose, one water for every bond: one a unit, half a unit of maltose.
fn to_glucose(activity: f64, cuts: &Cuts, change: &mut State) {
    let (cooked, raw) = (activity * cuts.cooked, activity * cuts.raw);
    let (dextrin, maltose) = (activity * cuts.dextrin, activity * cuts.maltose);
    change[COOKED] -= cooked;
    change[RAW] -= raw;
    change[DEXTRIN] -= dextrin;
    change[MALTOSE] -= maltose;
    change[GLUCOSE] += cooked + raw + dextrin + maltose;
    change[WATER_USED] += cooked + raw + dextrin + 0.5 * maltose;
}
