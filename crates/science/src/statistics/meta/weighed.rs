//! Differences weighed as a variance between years has it.

use super::scaled::Scaled;
use crate::statistics::sum::total;

/// Mean and spread of differences at one variance between years.
#[derive(Debug)]
pub(super) struct Weighed {
    /// w_i = 1/(v_i + τ²).
    pub(super) weights: Vec<f64>,
    /// W, their sum.
    pub(super) sum: f64,
    /// μ̂.
    pub(super) mean: f64,
    /// Q = Σ w_i (y_i − μ̂)².
    pub(super) q: f64,
}

impl Weighed {
    pub(super) fn at(scaled: &Scaled, tau2: f64) -> Self {
        let weights: Vec<f64> = scaled.v.iter().map(|v| 1.0 / (v + tau2)).collect();
        let sum = total(weights.iter().copied());
        let mean = total(weights.iter().zip(&scaled.y).map(|(w, y)| w * y)) / sum;
        let q = total(weights.iter().zip(&scaled.y).map(|(w, y)| w * (y - mean) * (y - mean)));
        Self { weights, sum, mean, q }
    }

    /// What each weight leaves to the others, 1 − w_i/W, with all its digits also where one weight
    /// is nearly everything.
    pub(super) fn rest(&self) -> Vec<f64> {
        let mut rest = vec![0.0; self.weights.len()];
        let mut before = 0.0;
        for (rest, weight) in rest.iter_mut().zip(&self.weights) {
            *rest = before;
            before += weight;
        }
        let mut after = 0.0;
        for (rest, weight) in rest.iter_mut().zip(&self.weights).rev() {
            *rest = (*rest + after) / self.sum;
            after += weight;
        }
        rest
    }

    /// Σ w_i − Σ w_i²/W.
    pub(super) fn freedom(&self) -> f64 {
        total(self.weights.iter().zip(self.rest()).map(|(w, rest)| w * rest))
    }

    /// Degrees of freedom of the variance 1/W where those of the v_i are known to be few; τ² is taken
    /// as known.
    pub(super) fn df(&self, scaled: &Scaled) -> f64 {
        let terms = self.weights.iter().zip(scaled.v.iter().zip(&scaled.doubt));
        let doubt = total(terms.map(|(w, (v, doubt))| {
            let part = (w * v) * (w / self.sum);
            part * part * doubt
        }));
        // A variance without doubt has endless degrees of freedom.
        if doubt > 0.0 { 1.0 / doubt } else { f64::INFINITY }
    }
}
