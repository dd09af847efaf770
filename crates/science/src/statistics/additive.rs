//! The additive model of blocks and treatments, fitted to one value a bag: for a class or a school
//! year, with a full matrix of one column for each block and treatment.

use super::distribution::multivariate_t::LargestOfSeveral;
use super::linear::{self, Estimated, Fit, FitError};
use std::collections::{BTreeMap, BTreeSet};

/// Decides the points at which uneven designs are integrated; any number would do, but it must stay
/// the same for answers to stay the same.
const SEED: u64 = 1955;

/// Largest size of a value (unit of the values): differences of two are still within
/// [`linear::LARGEST`].
const LARGEST_VALUE: f64 = 1e99;

/// How much bags of the same treatment and period differ by chance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Standard deviation (unit of the values).
    pub sd: f64,
    /// Degrees of freedom behind it.
    pub df: usize,
    /// Whether the bags differed less than the reading doubt, which then stands in their place.
    pub from_reading_doubt: bool,
}

/// One value with its block and treatment.
#[derive(Debug, Clone, Copy)]
pub(super) struct Row {
    pub(super) value: f64,
    pub(super) block: usize,
    pub(super) treatment: usize,
}

/// value = block + treatment + rest, fitted.
#[derive(Debug)]
pub(super) struct Additive {
    fit: Fit,
    column: BTreeMap<usize, usize>,
    columns: usize,
    largest: f64,
}

impl Additive {
    pub(super) fn fit(rows: &[Row]) -> Result<Self, FitError> {
        let beyond = |v: f64| v.is_nan() || v.abs() > LARGEST_VALUE;
        if let Some((row, found)) = rows.iter().enumerate().find(|(_, row)| beyond(row.value)) {
            return Err(FitError::OutOfReach { row, value: found.value });
        }
        let blocks: BTreeSet<usize> = rows.iter().map(|row| row.block).collect();
        let treatments: BTreeSet<usize> = rows.iter().map(|row| row.treatment).collect();
        let mut columns = marks(rows, &blocks, |row| row.block);
        let column =
            treatments.iter().enumerate().map(|(i, &t)| (t, columns.len() + i)).collect();
        columns.extend(marks(rows, &treatments, |row| row.treatment));
        let fit = linear::fit(&columns, &without_level(rows))?;
        let largest = rows.iter().fold(0.0_f64, |most, row| most.max(row.value.abs()));
        Ok(Self { fit, column, columns: columns.len(), largest })
    }

    /// A contrast of treatments, such as 1 of one and −1 of another, if the design can tell it.
    pub(super) fn contrast(&self, parts: &[(usize, f64)]) -> Option<Estimated> {
        let mut weights = vec![0.0; self.columns];
        for (treatment, weight) in parts {
            weights[*self.column.get(treatment)?] += weight;
        }
        self.fit.estimate(&weights)
    }

    /// Whether any value is of this treatment.
    pub(super) fn holds(&self, treatment: usize) -> bool {
        self.column.contains_key(&treatment)
    }

    /// Residual degrees of freedom.
    pub(super) fn df(&self) -> usize {
        self.fit.df()
    }

    /// The spread of bags alike, if any can be estimated and is not 0.
    pub(super) fn spread(&self, reading_doubt: f64) -> Option<Spread> {
        // Below this the residuals are rounding of the arithmetic, not bags that differ.
        const NOTHING: f64 = 1e-12;
        let df = self.df();
        if df == 0 {
            return None;
        }
        let doubt = if reading_doubt.is_finite() { reading_doubt.max(0.0) } else { 0.0 };
        let sd = libm::sqrt(self.fit.residual_ss() / df as f64);
        let sd = if sd <= NOTHING * self.largest { 0.0 } else { sd };
        let from_reading_doubt = sd < doubt;
        let sd = sd.max(doubt);
        (sd > 0.0).then_some(Spread { sd, df, from_reading_doubt })
    }
}

/// One column of 0 and 1 for each level.
pub(super) fn marks(
    rows: &[Row],
    levels: &BTreeSet<usize>,
    level: impl Fn(&Row) -> usize,
) -> Vec<Vec<f64>> {
    let column =
        |&wanted| rows.iter().map(|row| f64::from(u8::from(level(row) == wanted))).collect();
    levels.iter().map(column).collect()
}

/// The values less the first of them, so that no digits are lost to a common level.
pub(super) fn without_level(rows: &[Row]) -> Vec<f64> {
    let level = rows.first().map_or(0.0, |row| row.value);
    rows.iter().map(|row| row.value - level).collect()
}

/// Half width, in standard errors, with which the 95 % intervals of all of these hold at once.
pub(super) fn multiplier(comparable: &[&Estimated], df: usize) -> Option<f64> {
    multiplier_at(0.95, comparable, df)
}

/// The same for intervals that hold at once with another chance (1).
pub(super) fn multiplier_at(chance: f64, comparable: &[&Estimated], df: usize) -> Option<f64> {
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
