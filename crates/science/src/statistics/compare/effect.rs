//! How large a difference is, beside its unit.

use crate::statistics::distribution::{detection, gamma};
use crate::statistics::mixed::{Mixed, Place};
use crate::statistics::sum::total;

/// Chance with which the "smallest difference usually found" is found (1).
const USUALLY: f64 = 0.80;

/// A difference over the standard deviation of a bag of any group, corrected for few bags (1).
///
/// # Source
/// Hedges (1981), *J. Educ. Stat.* 6, 107–128, for the correction; Hedges (2007), *J. Educ. Behav.
/// Stat.* 32, 341–370, for the standard deviation over all groups (both from memory).
pub(super) fn standardized(difference: f64, model: &Mixed) -> Option<f64> {
    let variances = model.variances();
    let sd = libm::hypot(variances.bag, variances.group);
    let df = model.df_of_bag();
    (sd > 0.0 && df >= 1.5).then(|| {
        let ln = gamma::ln_gamma(0.5 * df)
            - gamma::ln_gamma(0.5 * (df - 1.0))
            - 0.5 * libm::log(0.5 * df);
        libm::exp(ln) * difference / sd
    })
}

/// The smallest true difference usually found, in standard errors (1), by intervals of `factor`
/// standard errors with `df` degrees of freedom.
pub(super) fn smallest_found(factor: f64, df: f64) -> f64 {
    detection::smallest(USUALLY, factor, df)
}

/// How high the values are altogether.
pub(super) struct Level {
    mean: f64,
    /// Share of the bags that are of each treatment (1).
    shares: Vec<f64>,
}

impl Level {
    pub(super) fn of(places: &[Place], treatments: usize) -> Self {
        let count = places.len().max(1) as f64;
        let mut shares = vec![0.0; treatments];
        for place in places {
            shares[place.treatment] += 1.0 / count;
        }
        Self { mean: total(places.iter().map(|place| place.value)) / count, shares }
    }

    /// Mean of a treatment, had all bags been of it: blocks count by their bags (unit of the values).
    pub(super) fn adjusted(&self, model: &Mixed, treatment: usize) -> Option<f64> {
        let mut weights: Vec<f64> = self.shares.iter().map(|share| -share).collect();
        weights[treatment] += 1.0;
        if self.shares.len() < 2 {
            return Some(self.mean);
        }
        let mean = self.mean + model.told(&weights)?.value;
        mean.is_finite().then_some(mean)
    }
}
