//! Analysis of variance: how much of the spread goes with a grouping.

use super::distribution::fisher;
use super::linear::{Fit, FitError, LARGEST};
use super::sum::total;
use super::summary::{mean, squared_deviations};
use std::ops::Range;
use thiserror::Error;

/// One line of the table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Term {
    /// Sum of squares (unit of the values, squared).
    pub ss: f64,
    /// Degrees of freedom.
    pub df: usize,
    /// Sum of squares for each degree of freedom (unit of the values, squared).
    pub ms: f64,
    /// Mean square over that of the rest (1).
    pub f: f64,
    /// Chance of such an F if the term did nothing (1).
    pub p: f64,
}

/// What no term explains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rest {
    /// Sum of squares (unit of the values, squared).
    pub ss: f64,
    /// Degrees of freedom.
    pub df: usize,
    /// Sum of squares for each degree of freedom (unit of the values, squared).
    pub ms: f64,
}

/// A table of terms and what they leave over.
#[derive(Debug, Clone, PartialEq)]
pub struct Anova {
    /// The terms, in order.
    pub terms: Vec<Term>,
    /// The rest.
    pub rest: Rest,
}

/// Why there is no table.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum AnovaError {
    /// The model could not be fitted.
    #[error(transparent)]
    Fit(#[from] FitError),
    /// Nothing left to judge chance by.
    #[error("no value has a second one like it, so chance cannot be judged; repeat some")]
    NoRest,
    /// All values alike are equal.
    #[error("values alike do not differ at all, so chance cannot be judged")]
    NoSpread,
    /// A term has nothing to test: one level only, or all of it explained by the terms before.
    #[error("term {term} has no levels left to compare; check the design")]
    NothingToTest {
        /// Which term, from 0.
        term: usize,
    },
    /// A group has no values.
    #[error("group {group} has no values; leave it out or fill it")]
    EmptyGroup {
        /// Which group, from 0.
        group: usize,
    },
}

/// Analyzes values that are grouped one way.
///
/// # Accuracy
/// Two passes with compensated sums: NIST's SmLs01 and SmLs03 to 14 digits of F.
/// # Source
/// Fisher (1925), *Statistical Methods for Research Workers*; NIST/SEMATECH e-Handbook of
/// Statistical Methods, 7.4.3.
/// # Errors
/// [`AnovaError`] for fewer than two groups, an empty one, single values only or no spread.
pub fn one_way(groups: &[Vec<f64>]) -> Result<Anova, AnovaError> {
    if let Some(group) = groups.iter().position(Vec::is_empty) {
        return Err(AnovaError::EmptyGroup { group });
    }
    let all = groups.concat();
    let beyond = |v: &f64| v.is_nan() || v.abs() > LARGEST;
    if let Some(row) = all.iter().position(beyond) {
        return Err(FitError::OutOfReach { row, value: all[row] }.into());
    }
    if all.is_empty() {
        return Err(FitError::Empty.into());
    }
    let grand = mean(&all);
    let between = total(groups.iter().map(|group| {
        let off = total(group.iter().map(|v| v - grand)) / group.len() as f64;
        group.len() as f64 * off * off
    }));
    let within = total(groups.iter().map(|group| squared_deviations(group, mean(group))));
    let largest = all.iter().fold(0.0_f64, |most, v| most.max(v.abs()));
    let rest = Rest::new(within, all.len() - groups.len(), largest)?;
    Ok(Anova { terms: vec![Term::new(0, between, groups.len() - 1, rest)?], rest })
}

/// Tests columns of a fitted model, each range after the columns before it (sequential sums of
/// squares); `largest` is the largest size of a value (unit of the values).
///
/// # Errors
/// [`AnovaError`] where nothing is left over, or a term has nothing left to test.
pub fn table(fit: &Fit, terms: &[Range<usize>], largest: f64) -> Result<Anova, AnovaError> {
    let rest = Rest::new(fit.residual_ss(), fit.df(), largest)?;
    let terms = terms
        .iter()
        .enumerate()
        .map(|(at, range)| {
            let (ss, df) = fit.term(range.clone());
            Term::new(at, ss, df, rest)
        })
        .collect::<Result<_, _>>()?;
    Ok(Anova { terms, rest })
}

impl Rest {
    pub(super) fn new(ss: f64, df: usize, largest: f64) -> Result<Self, AnovaError> {
        if df == 0 {
            return Err(AnovaError::NoRest);
        }
        // Below this the squares are rounding of the arithmetic, not values that differ.
        let rounding = (1e-15 * largest) * (1e-15 * largest);
        let ms = ss / df as f64;
        if ms <= rounding { Err(AnovaError::NoSpread) } else { Ok(Self { ss, df, ms }) }
    }
}

impl Term {
    pub(super) fn new(term: usize, ss: f64, df: usize, rest: Rest) -> Result<Self, AnovaError> {
        if df == 0 {
            return Err(AnovaError::NothingToTest { term });
        }
        let ms = ss / df as f64;
        let f = ms / rest.ms;
        Ok(Self { ss, df, ms, f, p: fisher::upper(f, df as f64, rest.df as f64) })
    }
}
