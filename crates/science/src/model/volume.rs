//! What a bag's state comes to: dissolved particles, volumes, and the most gas it can ever hold.

use super::mixture::Mixture;
use super::parameters::DEXTRIN_UNITS;
use super::state::{
    CELSIUS, COOKED, DEXTRIN, DISSOLVED, FRUCTOSE, GALACTOSE, GALACTOSIDES, GAS, GLUCOSE,
    LACTOSE, MALTOSE, MALTOTRIOSE, MELIBIOSE, RAW, RESERVE, SUCROSE, State,
};
use crate::gas;
use crate::setup::EnzymeKind;
use crate::stoichiometry::CO2_PER_HEXOSE;
use crate::units::Celsius;

/// More than yeast ever warms its own bag (K).
const OWN_WARMTH_KELVIN: f64 = 10.0;

impl Mixture {
    /// Dissolved particles (osmol/L) that the yeast feels, at a state.
    pub fn osmol_per_l(&self, y: &State) -> f64 {
        let singles = y[GLUCOSE] + y[FRUCTOSE] + y[GALACTOSE];
        let pairs = y[SUCROSE] + y[MALTOSE] + y[LACTOSE] + y[MELIBIOSE];
        let particles = singles
            + 0.5 * pairs
            + (y[MALTOTRIOSE] + y[GALACTOSIDES]) / 3.0
            + y[DEXTRIN] / DEXTRIN_UNITS.value;
        self.salts_osmol_per_l + 1e-3 * particles * self.per_solution_l
    }

    /// Volume of the gas with the trapped air, wet, in millilitres, at a state.
    pub fn gas_with_air_ml(&self, y: &State) -> f64 {
        self.wet_ml(y, y[GAS] + self.air)
    }

    /// Volume of `mmol` of dry gas, wet, in millilitres, at the temperature of a state.
    pub(super) fn wet_ml(&self, y: &State, mmol: f64) -> f64 {
        self.wet_at(y[CELSIUS], mmol)
    }

    /// Volume of `mmol` of dry gas, wet, in millilitres, at a temperature.
    pub(crate) fn wet_at(&self, celsius: f64, mmol: f64) -> f64 {
        gas::wet_volume_ml(1e-3 * mmol, Celsius(celsius), self.pressure)
    }

    /// Trapped air, in mmol.
    pub(crate) const fn air_mmol(&self) -> f64 {
        self.air
    }

    /// More than the gas, with the air, can ever become from `minute` on, in millilitres: all that
    /// can ferment has fermented, nothing stays dissolved, nothing leaks, at the warmest it gets.
    pub fn most_gas_ml(&self, y: &State, minute: f64) -> f64 {
        let mut mmol = y[GAS] + y[DISSOLVED];
        if self.crowd.is_some() {
            let has = |kind| self.enzymes.iter().any(|enzyme| enzyme.kind == kind);
            let mut hexose = y[RESERVE]
                + y[MALTOTRIOSE]
                + y[MALTOSE]
                + y[SUCROSE]
                + y[GALACTOSE]
                + y[GLUCOSE]
                + y[FRUCTOSE];
            if has(EnzymeKind::Glucoamylase)
                || has(EnzymeKind::FungalAlphaAmylase)
                || has(EnzymeKind::BacterialAlphaAmylase)
                || has(EnzymeKind::BetaAmylase)
            {
                hexose += y[RAW] + y[COOKED] + y[DEXTRIN];
            }
            if has(EnzymeKind::NeutralLactase) || has(EnzymeKind::AcidLactase) {
                hexose += y[LACTOSE];
            }
            // Invertase, the yeast's own, takes the fructose off; the rest wants its enzyme.
            hexose += if has(EnzymeKind::AlphaGalactosidase) {
                y[GALACTOSIDES] + y[MELIBIOSE]
            } else {
                y[GALACTOSIDES] / 3.0
            };
            mmol += CO2_PER_HEXOSE.value * self.parameters.co2_yield * hexose;
        }
        // Its own heat may warm a bag by some kelvin above its surroundings.
        let warmest = y[CELSIUS].max(self.cooling.warmest_celsius(minute)) + OWN_WARMTH_KELVIN;
        self.wet_at(warmest, mmol + self.air)
    }
}
