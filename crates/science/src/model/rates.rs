//! The rates of change of a bag.

use super::mixture::{Crowd, Mixture};
use super::state::{
    ALIVE, AWAKE, BYPRODUCT, CELSIUS, DISSOLVED, ENZYME_ORDER, ENZYMES, ETHANOL, FRUCTOSE, GAS,
    GLUCOSE, INDUCED, MALTOSE, PERMEATED, RESERVE, STATES, SUCROSE, State, WATER_USED,
};
use crate::carbonate::{Solutes, Speciation};
use crate::enzyme::heat;
use crate::enzyme::starch;
use crate::ode::System;
use crate::setup::EnzymeKind;
use crate::stoichiometry::{
    CO2_PER_HEXOSE, DISACCHARIDE, ETHANOL as ETHANOL_MASS, HEAT_PER_HEXOSE, HEXOSE,
};
use crate::units::{Celsius, Pascal};
use crate::yeast::hindrance::{BUFFERED_PH, ethanol_factor, osmotic_factor, ph_factor};
use crate::yeast::sugars::{HALF_MALTOSE, HALF_RESERVE, uptake};
use crate::yeast::temperature::response;
use crate::yeast::waking::{tenfold_kill_min, wake_min};
use crate::{carbon_dioxide, gas, permeation};

/// Carbon atoms in a hexose, all of which must go somewhere (mol/mol).
pub(super) const CARBON_PER_HEXOSE: f64 = 6.0;

/// Fastest loss by heat that is followed (1/min): a tenth left after half a second, quicker than
/// heat reaches every cell.
const FASTEST_LOSS_PER_MIN: f64 = 250.0;

/// Temperature for which the yeast's table of rates is one (°C).
const TABLE_CELSIUS: f64 = 30.0;

impl System<STATES> for Mixture {
    fn rates(&self, minute: f64, y: &State) -> State {
        let mut change = [0.0; STATES];
        let celsius = Celsius(y[CELSIUS]);
        for (place, kind) in ENZYME_ORDER.into_iter().enumerate() {
            if self.enzymes[place] {
                let heat = heat::heat(kind);
                let left = y[ENZYMES + place];
                let loss = self.parameters.enzyme_loss * heat.loss(celsius);
                change[ENZYMES + place] = -loss.min(FASTEST_LOSS_PER_MIN) * left;
                self.cut(kind, left.max(0.0) * heat.rate(celsius), y, &mut change);
            }
        }
        let acidity = self.acidity(celsius, y);
        let mut hexose = 0.0;
        if let Some(crowd) = &self.crowd {
            self.wake_and_die(crowd, celsius, y, &mut change);
            self.invert(crowd, celsius, y, &mut change);
            let fit = acidity.map_or(1.0, |liquid| ph_factor(liquid.ph.max(BUFFERED_PH.value)));
            hexose = self.ferment(crowd, celsius, fit, y, &mut change);
        }
        let as_gas = acidity.map_or(1.0, |liquid| liquid.carbon_dioxide_share);
        self.exchange(celsius, as_gas * y[DISSOLVED], y, &mut change);
        change[CELSIUS] = self.cooling.kelvin_per_min(minute, y[CELSIUS])
            + HEAT_PER_HEXOSE.value * hexose / self.j_per_k;
        change
    }

    fn smallest(&self, index: usize) -> f64 {
        if index == CELSIUS { 1.0 } else { 1e-4 }
    }
}

impl Mixture {
    /// Yeast's own invertase sits outside the cell: it works before the yeast wakes, and after it
    /// has died.
    fn invert(&self, crowd: &Crowd, celsius: Celsius, y: &State, change: &mut State) {
        if y[SUCROSE] > 0.0 {
            let heat = heat::heat(EnzymeKind::Invertase);
            let activity = 1e-3 * crowd.dry_g * self.parameters.own_invertase;
            self.split_sucrose(activity * heat.rate(celsius), y, change);
        }
    }

    fn wake_and_die(&self, crowd: &Crowd, celsius: Celsius, y: &State, change: &mut State) {
        let waking = self.parameters.wake * wake_min(celsius, crowd.kind);
        change[AWAKE] = (1.0 - y[AWAKE]) / waking;
        let kill = tenfold_kill_min(celsius, self.parameters.d60, self.parameters.death_z);
        let death = core::f64::consts::LN_10 / kill;
        change[ALIVE] = -death.min(FASTEST_LOSS_PER_MIN) * y[ALIVE];
    }

    /// Rate of the yeast at a temperature over its rate at 30 °C (1).
    fn warmth(&self, celsius: Celsius) -> f64 {
        let (steeper, shift) = (self.parameters.steepness, self.parameters.optimum_shift);
        let table = response(Celsius(celsius.0 - shift));
        if steeper.abs() + shift.abs() > 0.0 {
            table / response(Celsius(TABLE_CELSIUS - shift))
                * libm::exp(steeper * (celsius.0 - TABLE_CELSIUS))
        } else {
            table
        }
    }

    /// Ferments, at `fit` of the rate that the liquid's acidity allows; returns the hexose used
    /// (mmol/min).
    fn ferment(
        &self,
        crowd: &Crowd,
        celsius: Celsius,
        fit: f64,
        y: &State,
        change: &mut State,
    ) -> f64 {
        let p = &self.parameters;
        let g_per_l = |mmol: f64| 1e-3 * HEXOSE.value * mmol / self.solution_l;
        let ethanol = 1e-3 * ETHANOL_MASS.value * y[ETHANOL] / self.solution_l;
        let made_per_hexose = CO2_PER_HEXOSE.value * p.co2_yield;
        // Hexose that unhindered carriers would take up (mmol/min).
        let most = crowd.co2_per_min / made_per_hexose
            * y[AWAKE].max(0.0)
            * y[ALIVE].max(0.0)
            * self.warmth(celsius)
            * osmotic_factor(self.osmol_per_l(y), p.half_osmotic)
            * ethanol_factor(ethanol, p.ethanol_most)
            * fit;
        let carriers = uptake(g_per_l(y[GLUCOSE]), g_per_l(y[FRUCTOSE]), p.half_glucose);
        let idle = carriers.idle();
        let half_maltose = HALF_MALTOSE.value;
        let maltose_g_per_l = 1e-3 * DISACCHARIDE.value * self.pairs_per_l(y[MALTOSE]);
        let maltose_full = starch::saturation(maltose_g_per_l, half_maltose);

        let glucose = most * carriers.glucose;
        let fructose = most * p.fructose_rate * carriers.fructose;
        let maltose = most * p.maltose_rate * y[INDUCED].max(0.0) * maltose_full * idle;
        let stock = if y[RESERVE] > 0.0 {
            starch::saturation(y[RESERVE], HALF_RESERVE.value * crowd.reserve)
        } else {
            0.0
        };
        let reserve = most * p.reserve_rate * (1.0 + HALF_RESERVE.value) * stock * idle;
        let hexose = glucose + fructose + maltose + reserve;

        change[GLUCOSE] -= glucose;
        change[FRUCTOSE] -= fructose;
        change[MALTOSE] -= maltose;
        change[RESERVE] -= reserve;
        change[INDUCED] = (1.0 - y[INDUCED]) / p.induction * idle * maltose_full * y[AWAKE];
        let co2 = made_per_hexose * hexose;
        let ethanol = CO2_PER_HEXOSE.value * p.ethanol_yield * hexose;
        change[DISSOLVED] += co2;
        change[ETHANOL] = ethanol;
        change[BYPRODUCT] = CARBON_PER_HEXOSE * hexose - co2 - 2.0 * ethanol;
        change[WATER_USED] += 0.5 * (maltose + reserve);
        hexose
    }

    /// Acidity and carbon of a liquid with soda in it. Without soda neither counts: what dissolves
    /// is carbon dioxide, and foods' own acids are buffered by salts that no label gives.
    fn acidity(&self, celsius: Celsius, y: &State) -> Option<Speciation> {
        (self.base_mol_per_kg > 0.0).then(|| {
            let liquid = Solutes {
                carbon: 1e-3 * y[DISSOLVED].max(0.0) / self.water_kg,
                base: self.base_mol_per_kg,
                acid: self.acid_mol_per_kg,
            };
            liquid.speciation(celsius)
        })
    }

    /// Carbon dioxide between liquid, where `dissolved` mmol of it are in that form, gas and room.
    fn exchange(&self, celsius: Celsius, dissolved: f64, y: &State, change: &mut State) {
        let gases = y[GAS] + self.air;
        let dry = gas::dry_pressure(celsius, self.pressure).0;
        let share = if gases > 0.0 { (y[GAS] / gases).clamp(0.0, 1.0) } else { 1.0 };
        // Dissolved when the gas is all carbon dioxide and steam (mmol).
        let full = 1e3
            * carbon_dioxide::mol_per_kg_pa(celsius)
            * carbon_dioxide::salt_factor(self.salt_mol_per_kg, celsius)
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
            * permeation::mol_per_m2_s(celsius, Pascal(share * dry), self.film_um);
        change[DISSOLVED] -= out;
        change[GAS] = out - leak;
        change[PERMEATED] = leak;
    }
}
