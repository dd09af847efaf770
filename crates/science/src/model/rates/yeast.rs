//! What the yeast does: it wakes, dies, splits sucrose and ferments.

use super::{CARBON_PER_HEXOSE, FASTEST_LOSS_PER_MIN};
use crate::enzyme::starch;
use crate::exponential::exp;
use crate::model::mixture::{Crowd, Mixture};
use crate::model::state::{
    ALIVE, AWAKE, BYPRODUCT, DISSOLVED, ETHANOL, FRUCTOSE, GALACTOSE, GALACTOSE_INDUCED,
    GALACTOSIDES, GLUCOSE, INDUCED, MALTOSE, MALTOTRIOSE, RESERVE, SUCROSE, State, WATER_USED,
};
use crate::model::warmth::{Warmth, response_at};
use crate::stoichiometry::{
    CO2_PER_HEXOSE, DISACCHARIDE, ETHANOL as ETHANOL_MASS, HEXOSE, TRISACCHARIDE,
};
use crate::units::Celsius;
use crate::yeast::hindrance::{ethanol_factor, osmotic_factor};
use crate::yeast::repression::{galactose_at_work, made_per_min};
use crate::yeast::sugars::{HALF_GALACTOSE, maltotriose_full, uptake};
use crate::yeast::temperature::ONE_AT;
use crate::yeast::waking::kill_per_min;

impl Mixture {
    /// Yeast's own invertase sits outside the cell: it works before the yeast wakes, and after it
    /// has died.
    pub(super) fn invert(
        &self,
        crowd: &Crowd,
        warmth: &Warmth,
        followed_ph: Option<f64>,
        y: &State,
        change: &mut State,
    ) {
        if y[SUCROSE] > 0.0 || y[GALACTOSIDES] > 0.0 {
            let fit = self.invertase.soured(followed_ph).at_work;
            let activity = 1e-3 * crowd.dry_g * self.parameters.own_invertase * fit;
            self.split_sucrose(activity * warmth.invertase, y, change);
        }
    }

    pub(super) fn wake_and_die(
        &self,
        crowd: &Crowd,
        warmth: &Warmth,
        y: &State,
        change: &mut State,
    ) {
        let p = &self.parameters;
        change[AWAKE] = (1.0 - y[AWAKE]) / (p.wake * crowd.over_active_dry * warmth.wake_min);
        let loss =
            kill_per_min(warmth.celsius, p.d60, p.death_z) + p.slow_loss * warmth.slow_loss;
        change[ALIVE] = -loss.min(FASTEST_LOSS_PER_MIN) * y[ALIVE];
    }

    /// Response to temperature, as steep and with the optimum as the parameters have it (1).
    fn response(&self, celsius: Celsius) -> f64 {
        let (steeper, shift) = (self.parameters.steepness, self.parameters.optimum_shift);
        response_at(Celsius(celsius.0 - shift)) * exp(steeper * (celsius.0 - ONE_AT.0))
    }

    /// Ferments, at `fit` of the rate that the liquid's acidity allows; returns the hexose used
    /// (mmol/min).
    pub(super) fn ferment(
        &self,
        crowd: &Crowd,
        celsius: Celsius,
        fit: f64,
        y: &State,
        change: &mut State,
    ) -> f64 {
        let p = &self.parameters;
        let g_per_l = |mmol: f64| 1e-3 * HEXOSE.value * mmol * self.per_solution_l;
        let ethanol = 1e-3 * ETHANOL_MASS.value * y[ETHANOL] * self.per_solution_l;
        let made_per_hexose = CO2_PER_HEXOSE.value * p.co2_yield;
        // Hexose that unhindered carriers would take up (mmol/min).
        let most = crowd.hexose_per_min
            * y[AWAKE].max(0.0)
            * y[ALIVE].max(0.0)
            * self.response(celsius)
            * osmotic_factor(self.osmol_per_l(y), p.half_osmotic)
            * ethanol_factor(ethanol, p.ethanol_most)
            * fit;
        let half_fructose = p.fructose_half_ratio * p.half_glucose;
        let carriers =
            uptake(g_per_l(y[GLUCOSE]), g_per_l(y[FRUCTOSE]), p.half_glucose, half_fructose);
        let free = most * carriers.idle;
        let maltose_g_per_l = 1e-3 * DISACCHARIDE.value * self.pairs_per_l(y[MALTOSE]);
        let maltose_full = starch::saturation(maltose_g_per_l, p.half_maltose);
        let induced = y[INDUCED].max(0.0);

        let glucose = most * carriers.glucose;
        let fructose = most * p.fructose_rate * carriers.fructose;
        let maltose = free * p.maltose_rate * induced * maltose_full;
        let maltotriose = if y[MALTOTRIOSE] > 0.0 {
            let g_per_l =
                1e-3 * TRISACCHARIDE.value / 3.0 * y[MALTOTRIOSE] * self.per_solution_l;
            let full = maltotriose_full(g_per_l, maltose_g_per_l, p.half_maltose);
            free * p.maltose_rate * p.maltotriose_rate * induced * full
        } else {
            0.0
        };
        let galactose_full = starch::saturation(g_per_l(y[GALACTOSE]), HALF_GALACTOSE.value);
        let galactose =
            free * p.galactose_rate * galactose_at_work(y[GALACTOSE_INDUCED]) * galactose_full;
        let stock = if y[RESERVE] > 0.0 {
            starch::saturation(y[RESERVE], p.half_reserve * crowd.reserve)
        } else {
            0.0
        };
        let reserve = free * p.reserve_rate * (1.0 + p.half_reserve) * stock;
        let hexose = glucose + fructose + maltose + maltotriose + galactose + reserve;

        change[GLUCOSE] -= glucose;
        change[FRUCTOSE] -= fructose;
        change[MALTOSE] -= maltose;
        change[MALTOTRIOSE] -= maltotriose;
        change[GALACTOSE] -= galactose;
        change[RESERVE] -= reserve;
        let (busy, call) = (carriers.busy(), carriers.idle * y[AWAKE]);
        change[INDUCED] =
            made_per_min(y[INDUCED], call * maltose_full, busy, p.induction, p.repression);
        change[GALACTOSE_INDUCED] = made_per_min(
            y[GALACTOSE_INDUCED],
            call * galactose_full,
            busy,
            p.galactose_induction,
            p.repression,
        );
        let co2 = made_per_hexose * hexose;
        let ethanol = CO2_PER_HEXOSE.value * p.ethanol_yield * hexose;
        change[DISSOLVED] += co2;
        change[ETHANOL] = ethanol;
        change[BYPRODUCT] = CARBON_PER_HEXOSE * hexose - co2 - 2.0 * ethanol;
        change[WATER_USED] += 0.5 * (maltose + reserve) + 2.0 / 3.0 * maltotriose;
        hexose
    }
}
