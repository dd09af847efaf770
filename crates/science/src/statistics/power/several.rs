//! The chance that an F test of several treatments finds that they differ.

use super::error::{PowerError, spread, usable};
use super::is_inner;
use crate::statistics::distribution::{fisher, noncentral_fisher};

/// The F test of several treatments with as many bags each, before any value is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeveralTreatments {
    treatments: usize,
    bags: f64,
    df2: f64,
    critical: f64,
}

impl SeveralTreatments {
    /// The test of `treatments` with `bags` of each, spread evenly over `periods`, at a level (1).
    ///
    /// ```text
    /// df1 = k − 1      df2 = k n − k − (periods − 1)
    /// ```
    ///
    /// # Errors
    /// [`PowerError`] for a level that is none, and for too few treatments or bags.
    pub fn new(
        treatments: usize,
        bags: f64,
        periods: usize,
        level: f64,
    ) -> Result<Self, PowerError> {
        if !is_inner(level) {
            return Err(PowerError::NoChance { what: "the level", value: level });
        }
        for (what, found, least) in [
            ("treatments", treatments as f64, 2.0),
            ("bags", bags, 1.0),
            ("periods", periods as f64, 1.0),
        ] {
            if usable(what, found)? < least {
                return Err(PowerError::TooFew { what, found, least });
            }
        }
        let k = treatments as f64;
        let df2 = k * bags - k - (periods as f64 - 1.0);
        if df2 <= 0.0 {
            return Err(PowerError::NoSpreadSeen);
        }
        let critical = fisher::quantile(1.0 - level, k - 1.0, df2);
        Ok(Self { treatments, bags, df2, critical })
    }

    /// The chance of finding that treatments with these true means (unit of the values, one each)
    /// differ, where bags alike differ by `sd` (1).
    ///
    /// ```text
    /// λ = n Σ (mean − grand mean)² / sd²
    /// ```
    ///
    /// # Source
    /// Scheffé (1959), *The Analysis of Variance*, 2.8 (from memory); R's `power.anova.test` gives
    /// the rows of the tests.
    /// # Errors
    /// [`PowerError`] for another number of means than treatments, and for numbers that are not
    /// usable.
    pub fn odds(&self, means: &[f64], sd: f64) -> Result<f64, PowerError> {
        let least = self.treatments as f64;
        if means.len() != self.treatments {
            return Err(PowerError::TooFew { what: "means", found: means.len() as f64, least });
        }
        for &mean in means {
            usable("a mean", mean)?;
        }
        let grand = means.iter().sum::<f64>() / least;
        let squares: f64 = means.iter().map(|mean| (mean - grand) * (mean - grand)).sum();
        self.of(squares, sd)
    }

    /// The chance where the two extremes differ by `gap` and all others lie midway (1): the least
    /// for any treatments with that gap.
    ///
    /// # Errors
    /// [`PowerError`] for numbers that are not usable.
    pub fn odds_of_gap(&self, gap: f64, sd: f64) -> Result<f64, PowerError> {
        usable("the gap", gap)?;
        self.of(0.5 * gap * gap, sd)
    }

    fn of(&self, squares: f64, sd: f64) -> Result<f64, PowerError> {
        let sd = spread(sd)?;
        let lambda = self.bags * (squares / sd / sd);
        // Beyond this the chance is 1 to the last digit, for any count of bags that has a test.
        const SURE: f64 = 1e8;
        if lambda.is_nan() || lambda > SURE {
            return Ok(1.0);
        }
        let df1 = self.treatments as f64 - 1.0;
        Ok(noncentral_fisher::upper(self.critical, df1, self.df2, lambda))
    }
}
