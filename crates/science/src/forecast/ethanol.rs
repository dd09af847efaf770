//! From gas that was measured to ethanol in the bag, by way of the draws.

use super::Forecast;
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

/// Draws by which an interval is widened at either end.
const FURTHER_OUT: f64 = 1.0;

impl Forecast {
    /// Ethanol in a bag in which `gas_ml` of wet gas was found at a whole minute, trapped air not
    /// counted; nothing past the last minute or for a volume that is no number.
    ///
    /// Gas that is dissolved or has leaked out went with ethanol too, and how much that is depends
    /// on the minute and on what is not known of the bag. So a straight line is laid through the
    /// quarter of all draws nearest to the gas found, each of them is moved along it onto that
    /// gas, and the ethanol of those draws is the answer.
    ///
    /// ```text
    /// e_k + b (g − g_k)      b by least squares, within half and four times Gay-Lussac's
    ///                        (p − p_w)/(R T) · M · y_e/y_c
    /// ```
    ///
    /// The uncertainty of the gas itself has to be added: ask again for its ends. A bag whose
    /// gas lies outside all draws is answered at the last of them, and from there on by Gay-Lussac's
    /// line alone.
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
        nearest.truncate(count);
        let (slope, line) = self.slopes(&nearest, &gases, &grams, &celsius);
        // As far as there are draws by what they show, from there on by what a millilitre weighs: a
        // slope among a few of them says nothing of a gas that none of them reached.
        let ends = gases.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), gas| {
            (low.min(*gas), high.max(*gas))
        });
        let drawn = gas_ml.clamp(ends.0, ends.1);
        let mut moved: Vec<f64> = nearest
            .iter()
            .map(|&k| {
                let inside = grams[k] + slope * (drawn - gases[k]);
                (inside + line * (gas_ml - drawn)).max(0.0)
            })
            .collect();
        moved.sort_by(f64::total_cmp);
        Some(EthanolEstimate {
            grams: next_draw(&moved, 0.5, 0.0),
            low_grams: next_draw(&moved, 0.025, -FURTHER_OUT),
            high_grams: next_draw(&moved, 0.975, FURTHER_OUT),
        })
    }

    /// Ethanol with each millilitre of gas (g/mL): among some draws, by least squares, and of the gas
    /// itself.
    fn slopes(
        &self,
        draws: &[usize],
        gases: &[f64],
        grams: &[f64],
        celsius: &[f64],
    ) -> (f64, f64) {
        let n = draws.len() as f64;
        let mean = |of: &[f64]| draws.iter().map(|&k| of[k]).sum::<f64>() / n;
        let (gas, gram) = (mean(gases), mean(grams));
        let (mut both, mut square) = (0.0, 0.0);
        for &k in draws {
            both += (gases[k] - gas) * (grams[k] - gram);
            square += (gases[k] - gas) * (gases[k] - gas);
        }
        let line = self.grams_per_ml(mean(celsius));
        let slope =
            if square > 0.0 { (both / square).clamp(0.5 * line, 4.0 * line) } else { line };
        (slope, line)
    }

    /// Ethanol that goes with a millilitre of wet gas (g/mL).
    fn grams_per_ml(&self, celsius: f64) -> f64 {
        let yields = Parameters::median();
        let per_co2 = ETHANOL_PER_CO2.value * yields.ethanol_yield / yields.co2_yield;
        gas::dry_mol(1.0, Celsius(celsius), self.pressure) * ETHANOL.value * per_co2
    }
}

/// Value that one more draw stays below with chance `p`, from sorted draws (type 6 of R. J.
/// Hyndman, Y. Fan (1996), *Am. Stat.* 50, 361-365), taken `out` draws further out: what moving
/// the draws onto one gas leaves open.
fn next_draw(sorted: &[f64], p: f64, out: f64) -> f64 {
    let last = sorted.len() - 1;
    let place = (p * (sorted.len() + 1) as f64 - 1.0 + out).clamp(0.0, last as f64);
    let below = place.floor() as usize;
    let above = (below + 1).min(last);
    sorted[below] + (place - place.floor()) * (sorted[above] - sorted[below])
}
