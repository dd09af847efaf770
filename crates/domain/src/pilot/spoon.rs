//! What weighed teaspoons say of a spoon.

use super::lots::Teaspoon;
use super::readings::{Seen, Weight};
use crate::bench::tools::{SPOON_SD, YEAST_SPOON};
use barm_science::fact::Fact;

/// As many spoons as what is usual counts for (1).
pub(super) const SPOONS_KNOWN: Fact = Fact::derived(
    "pilot.spoons_known",
    4.0,
    "1",
    "judgement: how widely level spoons scatter is known about as well as four of them would show",
);

/// What is known of a level teaspoon of dry yeast before any was weighed.
pub(super) fn usual() -> Teaspoon {
    Teaspoon { grams: YEAST_SPOON.value, grams_sd: YEAST_SPOON.sd(), scatter: SPOON_SD.value }
}

/// A level teaspoon after some were weighed.
///
/// ```text
/// s² = (k s0² + Σ (x − x̄)²) / (k + n − 1)        m = (m0/u0² + n x̄/s²) / (1/u0² + n/s²)
/// u² = 1 / (1/u0² + n/s²)
/// ```
///
/// x masses, m their mean as it is known, u its doubt, s how widely single spoons scatter; k =
/// [`SPOONS_KNOWN`].
///
/// # Source
/// Normal mean with a normal prior; the scatter pulled towards what is usual as by a scaled inverse χ²
/// prior of k degrees of freedom; A. Gelman et al., *Bayesian Data Analysis*, ch. 2 and 3, from memory.
pub(super) fn weighed(before: Teaspoon, spoons: &[Seen<Weight>]) -> Teaspoon {
    let count = spoons.len() as f64;
    if spoons.is_empty() {
        return before;
    }
    let mean = spoons.iter().map(|spoon| spoon.value.grams).sum::<f64>() / count;
    let squares: f64 =
        spoons.iter().map(|s| (s.value.grams - mean) * (s.value.grams - mean)).sum();
    let usual = before.scatter * mean;
    let known = SPOONS_KNOWN.value;
    let variance = (known * usual * usual + squares) / (known + count - 1.0);
    let (own, seen) = (1.0 / (before.grams_sd * before.grams_sd), count / variance);
    let grams = (own * before.grams + seen * mean) / (own + seen);
    Teaspoon { grams, grams_sd: 1.0 / (own + seen).sqrt(), scatter: variance.sqrt() / grams }
}

#[cfg(test)]
mod tests {
    use super::{Seen, Weight, usual, weighed};

    fn spoons(grams: &[f64]) -> Vec<Seen<Weight>> {
        grams.iter().map(|grams| Seen { value: Weight { grams: *grams }, line: 0 }).collect()
    }

    /// Worked by hand. Masses 3 and 4 g: mean 3.5, squares 0.5; usual scatter 0.35 g:
    /// s² = (4 · 0.1225 + 0.5)/5 = 0.198; prior 3.11 ± 1.2/3.29 = 0.36474, so 1/u0² = 7.5169; n/s² =
    /// 10.1010; m = (23.3774 + 35.3535)/17.6179 = 3.33360; u = 0.238245.
    #[test]
    fn two_spoons_worked_by_hand() {
        let after = weighed(usual(), &spoons(&[3.0, 4.0]));
        assert!((after.grams - 3.333_60).abs() < 2e-5, "{}", after.grams);
        assert!((after.grams_sd - 0.238_245).abs() < 2e-6, "{}", after.grams_sd);
        assert!((after.scatter - 0.198_f64.sqrt() / 3.333_60).abs() < 1e-5);
    }

    #[test]
    fn many_spoons_speak_for_themselves() {
        let after = weighed(usual(), &spoons(&[3.8; 200]));
        assert!((after.grams - 3.8).abs() < 0.005);
        assert!(after.grams_sd < 0.01);
        assert!(after.scatter < 0.02);
        assert_eq!(weighed(usual(), &[]), usual());
    }
}
