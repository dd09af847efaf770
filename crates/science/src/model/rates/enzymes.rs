//! What enzymes do to the carbohydrates of a bag.

use super::FASTEST_LOSS_PER_MIN;
use crate::enzyme::heat;
use crate::enzyme::starch::{self, AlphaAmylase, BACTERIAL, Chains, Cuts, FUNGAL};
use crate::enzyme::sugars::{ACID, Lactase, NEUTRAL, invertase_at_work};
use crate::model::mixture::Mixture;
use crate::model::state::{
    COOKED, DEXTRIN, ENZYME_ORDER, ENZYMES, FRUCTOSE, GALACTOSE, GLUCOSE, LACTOSE, MALTOSE,
    RAW, SUCROSE, State, WATER_USED,
};
use crate::setup::EnzymeKind;
use crate::stoichiometry::{DISACCHARIDE, GLUCAN_UNIT};
use crate::units::Celsius;

impl Mixture {
    /// Lets every enzyme in the bag loose, and lets heat wear it out.
    pub(super) fn cut_all(&self, celsius: Celsius, y: &State, change: &mut State) {
        for (place, kind) in ENZYME_ORDER.into_iter().enumerate() {
            if self.enzymes[place] {
                let heat = heat::heat(kind);
                let left = y[ENZYMES + place];
                let loss = self.parameters.enzyme_loss * heat.loss(celsius);
                change[ENZYMES + place] = -loss.min(FASTEST_LOSS_PER_MIN) * left;
                self.cut(kind, left.max(0.0) * heat.rate(celsius), y, change);
            }
        }
    }

    /// mmol hexose units of chains in grams per litre.
    fn glucan_g_per_l(&self, units: f64) -> f64 {
        1e-3 * GLUCAN_UNIT.value * units / self.solution_l
    }

    /// mmol hexose units bound in pairs, in mmol of pairs per litre.
    pub(super) fn pairs_per_l(&self, units: f64) -> f64 {
        0.5 * units / self.solution_l
    }

    /// Lets `activity` (mmol/min) of one enzyme loose.
    fn cut(&self, kind: EnzymeKind, activity: f64, y: &State, change: &mut State) {
        let half = self.parameters.enzyme_half;
        match kind {
            EnzymeKind::Glucoamylase => {
                let cuts =
                    starch::glucoamylase(&self.chains(y), half, self.parameters.raw_starch);
                self.to_glucose(activity, &cuts, change);
            }
            EnzymeKind::FungalAlphaAmylase => self.to_dextrin(&FUNGAL, activity, y, change),
            EnzymeKind::BacterialAlphaAmylase => {
                self.to_dextrin(&BACTERIAL, activity, y, change);
            }
            EnzymeKind::NeutralLactase => self.split_lactose(&NEUTRAL, activity, y, change),
            EnzymeKind::AcidLactase => self.split_lactose(&ACID, activity, y, change),
            EnzymeKind::Invertase => self.split_sucrose(activity, y, change),
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

    /// Chains to glucose, one water for every bond: one a unit, half a unit of maltose.
    fn to_glucose(&self, activity: f64, cuts: &Cuts, change: &mut State) {
        let (cooked, raw) = (activity * cuts.cooked, activity * cuts.raw);
        let (dextrin, maltose) = (activity * cuts.dextrin, activity * cuts.maltose);
        change[COOKED] -= cooked;
        change[RAW] -= raw;
        change[DEXTRIN] -= dextrin;
        change[MALTOSE] -= maltose;
        change[GLUCOSE] += cooked + raw + dextrin + maltose;
        change[WATER_USED] += cooked + raw + dextrin + 0.5 * maltose;
    }

    /// Starch to dextrin and maltose; only maltose takes up water.
    fn to_dextrin(&self, enzyme: &AlphaAmylase, activity: f64, y: &State, change: &mut State) {
        let (half, raw) = (self.parameters.enzyme_half, self.parameters.raw_starch);
        let cuts = starch::alpha_amylase(enzyme, &self.chains(y), half, raw);
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
        let galactose = y[GALACTOSE] / self.solution_l;
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

    pub(super) fn split_sucrose(&self, activity: f64, y: &State, change: &mut State) {
        let at_work =
            invertase_at_work(self.pairs_per_l(y[SUCROSE]), self.parameters.enzyme_half);
        let pairs = activity * at_work;
        change[SUCROSE] -= 2.0 * pairs;
        change[GLUCOSE] += pairs;
        change[FRUCTOSE] += pairs;
        change[WATER_USED] += pairs;
    }
}
