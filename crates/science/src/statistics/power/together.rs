//! How wide the intervals of a planned question will be.

use crate::statistics::distribution::multivariate_t::LargestOfSeveral;
use crate::statistics::linear::Estimated;

/// Decides the points at which uneven designs are integrated; any number would do, but it must stay
/// the same for answers to stay the same.
const SEED: u64 = 1955;

/// Half width, in standard errors, with which intervals of all of these hold at once with this
/// chance (1); `None` for none.
pub(super) fn factor(chance: f64, comparable: &[&Estimated], df: usize) -> Option<f64> {
    let correlation: Vec<Vec<f64>> = comparable
        .iter()
        .map(|a| {
            let own = a.variance();
            comparable
                .iter()
                .map(|b| a.covariance(b) / libm::sqrt(own * b.variance()))
                .collect()
        })
        .collect();
    let together = LargestOfSeveral::new(&correlation, df as f64, SEED);
    (!comparable.is_empty()).then(|| together.bound(chance))
}
