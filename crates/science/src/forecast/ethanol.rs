//! From gas that was measured to ethanol in the bag, by way of the draws.

use super::Forecast;
use super::bands::quantile;
use crate::stoichiometry::{ETHANOL, ETHANOL_PER_CO2};
use crate::units::Celsius;
use crate::{gas, model::Parameters};

/// Ethanol behind a volume of gas, with a 95 % interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EthanolEstimate {
    /// Median (g in the whole bag).
    pub grams: f64,
    /// Lower end (g).
    pub low_grams: f64,
    /// Upper end (g).
    pub high_grams: f64,
}

/// Share of the draws, those nearest in gas, that an estimate rests on (1).
const NEAREST: f64 = 0.25;

impl Forecast {
    /// Ethanol in a bag in which `gas_ml` of wet gas was found at a whole minute, trapped air not
    /// counted; nothing past the last minute or for a volume that is no number.
    ///
    /// Gas that is dissolved or has leaked out went with ethanol too, and how much that is depends
    /// on the minute and on what is not known of the bag. So each of the quarter of all draws
    /// nearest to the gas found is moved onto it along the line of Gay-Lussac, and the ethanol of
    /// those draws is the answer.
    ///
    /// ```text
    /// e_k + (g − g_k) · (p − p_w)/(R T_k) · M · y_e/y_c
    /// ```
    ///
    /// The uncertainty of the gas itself has to be added: ask again for its ends. A bag whose
    /// gas lies outside all draws is answered by the nearest of them, and outside that by the line.
    pub fn ethanol_from_gas(&self, gas_ml: f64, minute: u32) -> Option<EthanolEstimate> {
        if !gas_ml.is_finite() || minute > self.last_minute() {
            return None;
        }
        let gas_ml = gas_ml.max(0.0);
        let (gases, grams) = (self.gas_ml.minute(minute), self.ethanol_g.minute(minute));
        let celsius = self.celsius.minute(minute);
        let mut nearest: Vec<usize> = (0..gases.len()).collect();
        let distance = |k: usize| (gases[k] - gas_ml).abs();
        nearest.sort_by(|&a, &b| distance(a).total_cmp(&distance(b)).then(a.cmp(&b)));
        let count = (NEAREST * gases.len() as f64).ceil() as usize;
        let mut moved: Vec<f64> = nearest
            .iter()
            .take(count)
            .map(|&k| {
                let step = gas_ml - gases[k];
                (grams[k] + step * self.grams_per_ml(celsius[k])).max(0.0)
            })
            .collect();
        Some(EthanolEstimate {
            grams: quantile(&mut moved, 0.5),
            low_grams: quantile(&mut moved, 0.025),
            high_grams: quantile(&mut moved, 0.975),
        })
    }

    /// Ethanol that goes with a millilitre of wet gas (g/mL).
    fn grams_per_ml(&self, celsius: f64) -> f64 {
        let yields = Parameters::median();
        let per_co2 = ETHANOL_PER_CO2.value * yields.ethanol_yield / yields.co2_yield;
        gas::dry_mol(1.0, Celsius(celsius), self.pressure) * ETHANOL.value * per_co2
    }
}
