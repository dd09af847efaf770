//! Differences in units that leave no number too large or too small to square.

use super::error::MetaError;
use super::study::Study;

/// Differences less that of the surest year, in units of its standard error.
///
/// All sums are made of these, so that neither the unit nor a large common value costs digits.
#[derive(Debug)]
pub(super) struct Scaled {
    /// Differences (1).
    pub(super) y: Vec<f64>,
    /// Their variances (1), the smallest of them 1.
    pub(super) v: Vec<f64>,
    /// One over the degrees of freedom of each.
    pub(super) doubt: Vec<f64>,
    /// The difference that was taken off (unit of the differences).
    pub(super) origin: f64,
    /// What 1 stands for (unit of the differences).
    pub(super) unit: f64,
}

impl Scaled {
    pub(super) fn of(studies: &[Study]) -> Result<Self, MetaError> {
        // Sizes further apart than this lose all digits of the smaller.
        const FURTHEST: f64 = 1e50;
        for (at, study) in studies.iter().enumerate() {
            study.checked(at + 1)?;
        }
        let surest = studies.iter().enumerate().min_by(|a, b| a.1.se.total_cmp(&b.1.se));
        let (other, surest) = surest.ok_or(MetaError::Nothing)?;
        let (origin, unit) = (surest.estimate, surest.se);
        let y: Vec<f64> = studies.iter().map(|s| (s.estimate - origin) / unit).collect();
        for (at, (study, y)) in studies.iter().zip(&y).enumerate() {
            if y.abs() > FURTHEST || study.se / unit > FURTHEST {
                return Err(MetaError::TooUnequal { place: at + 1, other: other + 1 });
            }
        }
        let v = studies.iter().map(|s| (s.se / unit) * (s.se / unit)).collect();
        Ok(Self { y, v, doubt: studies.iter().map(Study::doubt).collect(), origin, unit })
    }

    /// How many years there are.
    pub(super) fn count(&self) -> f64 {
        self.y.len() as f64
    }

    /// From the smallest to the largest difference (1).
    pub(super) fn range(&self) -> f64 {
        let low = self.y.iter().copied().fold(f64::INFINITY, f64::min);
        let high = self.y.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        high - low
    }
}
