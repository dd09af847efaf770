//! The chance of finding each difference with the very bags of a plan.

use super::error::{PowerError, usable};
use super::is_inner;
use super::one_difference::{Limits, Odds, smallest};
use super::together;
use crate::statistics::distribution::noncentral_student;
use crate::statistics::linear::{self, Estimated, Fit};
use std::collections::{BTreeMap, BTreeSet};

/// Where one bag stands that is still to be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place {
    /// Which treatment, by any number.
    pub treatment: usize,
    /// Which block (class period), by any number.
    pub block: usize,
    /// Which group makes it, by a number that no other group of the day has.
    pub group: usize,
}

/// How much bags of one treatment differ (variances, unit of the values squared).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spreads {
    /// Between bags of one group.
    pub bag: f64,
    /// Between groups.
    pub group: f64,
}

impl Spreads {
    /// Share of the variance that is between groups (1).
    pub fn group_share(&self) -> f64 {
        let all = self.bag + self.group;
        if all > 0.0 { self.group / all } else { 0.0 }
    }

    fn usable(&self) -> Result<(), PowerError> {
        for (what, value) in
            [("the spread of bags", self.bag), ("the spread of groups", self.group)]
        {
            if usable(what, value)? < 0.0 {
                return Err(PowerError::Unusable { what, value });
            }
        }
        if self.bag > 0.0 { Ok(()) } else { Err(PowerError::NoSuchSpread { sd: self.bag }) }
    }
}

/// Bags that are still to be made, and what is compared: value = block + treatment + rest.
#[derive(Debug, Clone)]
pub struct Design {
    columns: Vec<Vec<f64>>,
    treatments: Vec<usize>,
    /// The bags of each group, by position.
    groups: Vec<Vec<usize>>,
    df: f64,
    critical: f64,
    /// What each bag counts in each comparison; nothing where the design cannot tell it.
    weights: Vec<Option<Vec<f64>>>,
}

impl Design {
    /// The bags of a question and its pairs of a treatment and its reference, whose tests together
    /// find a difference that is none with chance `level` (1), as
    /// [`compare`](crate::statistics::compare::compare) has it.
    ///
    /// # Errors
    /// [`PowerError`] for a level that is none and for bags of which no two are alike.
    pub fn new(
        places: &[Place],
        pairs: &[(usize, usize)],
        level: f64,
    ) -> Result<Self, PowerError> {
        if !is_inner(level) {
            return Err(PowerError::NoChance { what: "the level", value: level });
        }
        let treatments: BTreeSet<usize> = places.iter().map(|place| place.treatment).collect();
        let blocks: BTreeSet<usize> = places.iter().map(|place| place.block).collect();
        let mut columns = marks(places, &blocks, |place| place.block);
        let first = columns.len();
        columns.extend(marks(places, &treatments, |place| place.treatment));
        let column: BTreeMap<usize, usize> =
            treatments.iter().enumerate().map(|(i, &t)| (t, first + i)).collect();
        let combination = |&(treatment, reference): &(usize, usize)| {
            let mut combination = vec![0.0; columns.len()];
            *combination.get_mut(*column.get(&treatment)?)? += 1.0;
            *combination.get_mut(*column.get(&reference)?)? -= 1.0;
            (treatment != reference).then_some(combination)
        };
        let combinations: Vec<Option<Vec<f64>>> = pairs.iter().map(combination).collect();
        let fits: Vec<Fit> =
            (0..places.len()).map(|bag| fitted(&columns, bag)).collect::<Result<_, _>>()?;
        let fit = fits.first().filter(|fit| fit.df() > 0).ok_or(PowerError::NoSpreadSeen)?;
        let told: Vec<Estimated> =
            combinations.iter().flatten().filter_map(|c| fit.estimate(c)).collect();
        let told: Vec<&Estimated> = told.iter().collect();
        let critical =
            together::factor(1.0 - level, &told, fit.df()).ok_or(PowerError::NoSharedBlock)?;
        let weights = combinations
            .iter()
            .map(|combination| {
                let combination = combination.as_ref()?;
                fits.iter().map(|fit| Some(fit.estimate(combination)?.value)).collect()
            })
            .collect();
        let makers: BTreeSet<usize> = places.iter().map(|place| place.group).collect();
        let of = |group: usize| {
            (0..places.len()).filter(move |&bag| places[bag].group == group).collect()
        };
        Ok(Self {
            treatments: places.iter().map(|place| place.treatment).collect(),
            groups: makers.into_iter().map(of).collect(),
            df: fit.df() as f64,
            critical,
            weights,
            columns,
        })
    }

    /// Degrees of freedom of the spread.
    pub fn df(&self) -> f64 {
        self.df
    }

    /// How many standard errors from 0 a difference must lie (1).
    pub fn critical(&self) -> f64 {
        self.critical
    }

    /// What this design makes of bags that differ so much; `spreads` says how much, by treatment.
    ///
    /// # Errors
    /// [`PowerError`] for a treatment without a spread, or with one that bags cannot have.
    pub fn with(
        &self,
        spreads: &BTreeMap<usize, Spreads>,
        limits: Limits,
    ) -> Result<Weighed<'_>, PowerError> {
        let limits = limits.usable()?;
        let own: Vec<Spreads> = self
            .treatments
            .iter()
            .map(|treatment| {
                let none = PowerError::NoSuchSpread { sd: 0.0 };
                let spreads = spreads.get(treatment).ok_or(none)?;
                spreads.usable().map(|()| *spreads)
            })
            .collect::<Result<_, _>>()?;
        // E[RSS] = Σ σ²_i M_ii + Σ_groups u'M u, where u holds the group's standard deviations.
        let mut squares = 0.0;
        for (bag, spreads) in own.iter().enumerate() {
            squares += spreads.bag * fitted(&self.columns, bag)?.residual_ss();
        }
        for group in &self.groups {
            let mut together = vec![0.0; own.len()];
            for &bag in group {
                together[bag] = libm::sqrt(own[bag].group);
            }
            squares += fit(&self.columns, &together)?.residual_ss();
        }
        Ok(Weighed { design: self, own, seen: squares / self.df, limits })
    }
}

/// A design with bags that differ by a known amount.
#[derive(Debug, Clone)]
pub struct Weighed<'a> {
    design: &'a Design,
    own: Vec<Spreads>,
    /// The variance that the bags will show on the average.
    seen: f64,
    limits: Limits,
}

impl Weighed<'_> {
    /// Standard deviation of bags that the day will show on the average (unit of the values).
    pub fn sd(&self) -> f64 {
        libm::sqrt(self.seen)
    }

    /// True standard error of a comparison, by its place among the pairs (unit of the values).
    ///
    /// # Errors
    /// [`PowerError::NoSharedBlock`] where the design cannot tell it.
    pub fn se(&self, pair: usize) -> Result<f64, PowerError> {
        let weights = self.weights(pair)?;
        let mut variance: f64 =
            weights.iter().zip(&self.own).map(|(w, own)| w * w * own.bag).sum();
        for group in &self.design.groups {
            // What a group has in common falls out where it makes both sides.
            let common: f64 =
                group.iter().map(|&bag| weights[bag] * libm::sqrt(self.own[bag].group)).sum();
            variance += common * common;
        }
        Ok(libm::sqrt(variance))
    }

    /// The chances of finding a true difference in a comparison, by its place among the pairs.
    ///
    /// The day judges by the spread that it shows, as if bags of one group were as different as bags
    /// of two; the estimate varies as it truly does, by treatment and group.
    ///
    /// # Accuracy
    /// Exact where spreads are equal and groups have nothing in common. Else the spread that is shown
    /// is taken to vary as χ² with the design's degrees of freedom.
    /// # Errors
    /// [`PowerError`] for a comparison that the design cannot tell and numbers that are not usable.
    pub fn odds(&self, pair: usize, difference: f64) -> Result<Odds, PowerError> {
        let weights = self.weights(pair)?;
        let design = self.design;
        let se = self.se(pair)?;
        if se.is_nan() || se <= 0.0 {
            return Err(PowerError::NoSuchSpread { sd: se });
        }
        let delta = usable("the difference", difference)?.abs() / se;
        let even = libm::sqrt(weights.iter().map(|w| w * w).sum::<f64>());
        let critical = design.critical * even * self.sd() / se;
        let doubted = design.critical * even * self.limits.reading_doubt;
        let least = self.limits.readable.max(doubted) / se;
        let (rightly, wrongly) = noncentral_student::beyond(critical, least, design.df, delta);
        Ok(Odds { rightly, wrongly })
    }

    /// The smallest true difference of a comparison that is found rightly with that chance (unit of
    /// the values).
    ///
    /// # Errors
    /// [`PowerError`] as [`Self::odds`], and for a chance that is none.
    pub fn found_with(&self, pair: usize, chance: f64) -> Result<f64, PowerError> {
        if !is_inner(chance) {
            return Err(PowerError::NoChance { what: "the chance", value: chance });
        }
        smallest(self.se(pair)?, chance, |difference| Ok(self.odds(pair, difference)?.rightly))
    }

    fn weights(&self, pair: usize) -> Result<&[f64], PowerError> {
        let known = self.design.weights.get(pair).and_then(Option::as_deref);
        known.ok_or(PowerError::NoSharedBlock)
    }
}

/// One column of 0 and 1 for each level.
fn marks(
    places: &[Place],
    levels: &BTreeSet<usize>,
    level: impl Fn(&Place) -> usize,
) -> Vec<Vec<f64>> {
    let mark = |&wanted: &usize| {
        places.iter().map(|place| f64::from(u8::from(level(place) == wanted))).collect()
    };
    levels.iter().map(mark).collect()
}

/// The fit of values that are 1 for one bag and 0 for all others.
fn fitted(columns: &[Vec<f64>], bag: usize) -> Result<Fit, PowerError> {
    let rows = columns.first().map_or(0, Vec::len);
    let values: Vec<f64> = (0..rows).map(|row| f64::from(u8::from(row == bag))).collect();
    fit(columns, &values)
}

fn fit(columns: &[Vec<f64>], values: &[f64]) -> Result<Fit, PowerError> {
    linear::fit(columns, values).map_err(|_| PowerError::NoSpreadSeen)
}
