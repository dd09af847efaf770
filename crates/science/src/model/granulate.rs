//! The raw starch of one bag, plant by plant.

use super::parameters::Parameters;
use crate::enzyme::gelatinization::{cooked_share, granules};
use crate::setup::Grain;
use crate::stoichiometry::GLUCAN_UNIT;

/// Raw starch of one plant as it was put in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Kind {
    /// Amount (mmol glucose units).
    pub(super) mmol: f64,
    /// Temperature under which none cooks (°C).
    pub(super) onset: f64,
    /// Temperature over which all does (°C).
    pub(super) end: f64,
}

/// How the raw starch of a bag cooks and is bored into.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Granulate {
    pub(super) kinds: Vec<Kind>,
    /// Temperature under which none of it cooks (°C); without any, beyond all.
    onset: f64,
    /// How fast it cooks (1/min).
    per_min: f64,
    /// Rate of enzymes on it over that on cooked starch (1).
    pub(super) attack: f64,
}

impl Granulate {
    /// Of grams of raw starch, each with its plant.
    pub(super) fn new(raw: &[(Option<Grain>, f64)], parameters: &Parameters) -> Self {
        let mut kinds: Vec<Kind> = Vec::with_capacity(raw.len());
        let (mut all, mut attacked) = (0.0, 0.0);
        for (grain, grams) in raw {
            let table = granules(*grain);
            let mmol = 1e3 * grams / GLUCAN_UNIT.value;
            let shift = parameters.gelatinization_shift;
            let (onset, end) = (table.onset.value + shift, table.end.value + shift);
            kinds.push(Kind { mmol, onset, end });
            all += mmol;
            attacked += mmol * table.attack.value;
        }
        let onset = kinds.iter().map(|kind| kind.onset).fold(f64::INFINITY, f64::min);
        let attack = if all > 0.0 { attacked / all } else { 1.0 };
        Self {
            kinds,
            onset,
            per_min: parameters.gelatinization,
            attack: parameters.raw_starch * attack,
        }
    }

    /// Whether there is any that cooks at a temperature (°C).
    pub(super) fn can_cook(&self, celsius: f64) -> bool {
        celsius > self.onset
    }

    /// Raw starch that cooks (mmol/min) at a temperature (°C), where so much is raw (mmol).
    pub(super) fn cooks(&self, celsius: f64, raw: f64) -> f64 {
        if !self.can_cook(celsius) {
            return 0.0;
        }
        let stays =
            |kind: &Kind| kind.mmol * (1.0 - cooked_share(celsius, kind.onset, kind.end));
        self.per_min * (raw - self.kinds.iter().map(stays).sum::<f64>()).max(0.0)
    }
}
