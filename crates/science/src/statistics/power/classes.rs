//! The chance of a clear verdict with the very bags of a plan, by the rule of the day.
//!
//! Bags that are still to be made are dealt many times over, as they may come out where treatments do not
//! differ. Each deal shows an estimate e of every difference and half the width h of its interval. A
//! true difference d moves the first and leaves the second as it is, so the chance of finding it is
//!
//! ```text
//! mean of P(e + d ≥ max(h, readable)) over the deals' h        e ~ N(0, s²), s² the mean of the deals' e²
//! ```
//!
//! e has nothing to do with h where bags alike differ alike and designs are even, and very nearly so elsewhere.

use super::error::{PowerError, usable};
use super::is_inner;
use super::one_difference::{Odds, smallest};
use super::widths::Widths;
use crate::statistics::chance::Chance;
use crate::statistics::compare::compare;
use crate::statistics::compare::{BagValue, Compared, Contrast, How, NotComparable, Question};
use crate::statistics::distribution::normal;
use crate::statistics::verdict::barred;
use std::collections::BTreeMap;

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

/// How often bags are dealt, and from what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Deals {
    /// How often: with 400, a chance is off by about 0.01 (one standard deviation).
    pub count: usize,
    /// Decides all of it.
    pub seed: u64,
}

/// What many classes with the same bags would see.
#[derive(Debug, Clone)]
pub struct Classes {
    pairs: Vec<Result<Seen, PowerError>>,
    sd: f64,
    readable: f64,
}

/// What they see of one comparison.
#[derive(Debug, Clone)]
struct Seen {
    /// Whether it can be clear at all.
    can_be_clear: bool,
    /// Standard deviation of the estimate.
    se: f64,
    /// Half widths of the interval.
    halves: Vec<f64>,
}

impl Classes {
    /// The bags of a question, how much those of each treatment differ, and the pairs of a treatment and its
    /// reference that are compared in this way, where only what is as large as `readable` counts (unit of the
    /// values).
    ///
    /// # Errors
    /// [`PowerError`] for a treatment without a spread or with one that bags cannot have, for bags of which no
    /// two are alike, and where nothing is dealt.
    pub fn new(
        places: &[Place],
        pairs: &[(usize, usize)],
        spreads: &BTreeMap<usize, Spreads>,
        (readable, how): (f64, &How),
        deals: Deals,
    ) -> Result<Self, PowerError> {
        if usable("the smallest difference that counts", readable)? < 0.0 {
            let what = "the smallest difference that counts";
            return Err(PowerError::Unusable { what, value: readable });
        }
        if deals.count == 0 {
            return Err(PowerError::TooFew { what: "deals", found: 0.0, least: 1.0 });
        }
        let none = PowerError::NoSuchSpread { sd: 0.0 };
        for place in places {
            spreads.get(&place.treatment).ok_or_else(|| none.clone())?.usable()?;
        }
        let compared = Compared::Pairs(pairs.to_vec());
        let mut chance = Chance::from_seed(deals.seed);
        let mut deal = || dealt(places, spreads, &mut chance);
        let first = deal();
        let contrasts = compare(&first, &compared, how).contrasts;
        let mut all = vec![Question::of(&first, &compared, how)];
        all.extend((1..deals.count).map(|_| Question::of(&deal(), &compared, how)));
        // A deal of bags that all came out alike tells nothing; it is as rare as it is in a class.
        all.retain(|one| one.model.is_ok());
        if all.is_empty() {
            return Err(PowerError::NoSpreadSeen);
        }
        let widths = Widths::of(&all, (how.levels(), how.seed)).unwrap_or_default();
        let pairs = contrasts.iter().enumerate();
        let shown: Vec<f64> = all.iter().filter_map(bag_variance).collect();
        Ok(Self {
            pairs: pairs
                .map(|(pair, contrast)| Seen::of(contrast, pair, &all, &widths))
                .collect(),
            sd: libm::sqrt(shown.iter().sum::<f64>() / shown.len() as f64),
            readable,
        })
    }

    /// Standard deviation of bags of any group that a day will show, in the mean of squares (unit of the
    /// values).
    pub fn sd(&self) -> f64 {
        self.sd
    }

    /// The chances of finding a true difference in a comparison, by its place among the pairs.
    ///
    /// # Errors
    /// [`PowerError`] for a comparison that the bags cannot tell and a difference that is not usable.
    pub fn odds(&self, pair: usize, difference: f64) -> Result<Odds, PowerError> {
        let seen = self.pairs.get(pair).ok_or(PowerError::NoSharedBlock)?;
        let seen = seen.as_ref().map_err(Clone::clone)?;
        let away = usable("the difference", difference)?.abs();
        Ok(seen.odds(away, self.readable))
    }

    /// The smallest true difference of a comparison that is found rightly with that chance (unit of
    /// the values).
    ///
    /// # Errors
    /// [`PowerError`] as [`Self::odds`], for a chance that is none, and where the verdict is never clear.
    pub fn found_with(&self, pair: usize, chance: f64) -> Result<f64, PowerError> {
        if !is_inner(chance) {
            return Err(PowerError::NoChance { what: "the chance", value: chance });
        }
        smallest(self.sd, chance, |difference| Ok(self.odds(pair, difference)?.rightly))
    }
}

impl Seen {
    fn of(
        contrast: &Contrast,
        pair: usize,
        all: &[Question],
        widths: &Widths,
    ) -> Result<Self, PowerError> {
        let estimate = contrast.outcome.as_ref().map_err(|why| match why {
            NotComparable::NoSpread => PowerError::NoSpreadSeen,
            _ => PowerError::NoSharedBlock,
        })?;
        let told = || all.iter().filter_map(|one| one.told.get(pair)?.as_ref().ok());
        let squares: f64 = told().map(|told| told.value * told.value).sum();
        let halves: Vec<f64> = told().map(|told| widths.at(told.df) * told.se).collect();
        let se = libm::sqrt(squares / halves.len() as f64);
        let can_be_clear = barred(contrast, estimate).is_none();
        if se > 0.0 {
            Ok(Self { can_be_clear, se, halves })
        } else {
            Err(PowerError::NoSuchSpread { sd: se })
        }
    }

    fn odds(&self, away: f64, readable: f64) -> Odds {
        if !self.can_be_clear {
            return Odds { rightly: 0.0, wrongly: 0.0 };
        }
        let share = |away: f64| {
            let found = self
                .halves
                .iter()
                .map(|half| normal::cdf((away - half.max(readable)) / self.se));
            found.sum::<f64>() / self.halves.len() as f64
        };
        Odds { rightly: share(away), wrongly: share(-away) }
    }
}

/// Variance of a bag of any group that a deal shows.
fn bag_variance(one: &Question) -> Option<f64> {
    let shown = one.model.as_ref().ok()?.variances();
    Some(shown.bag * shown.bag + shown.group * shown.group)
}

/// Bags as they may come out where treatments and blocks do not differ.
fn dealt(
    places: &[Place],
    spreads: &BTreeMap<usize, Spreads>,
    chance: &mut Chance,
) -> Vec<BagValue> {
    let mut habits: BTreeMap<usize, f64> = BTreeMap::new();
    let mut bags = Vec::with_capacity(places.len());
    for &Place { treatment, block, group } in places {
        let habit = *habits.entry(group).or_insert_with(|| chance.normal());
        let own = chance.normal();
        let value = spreads.get(&treatment).map_or(0.0, |spreads| {
            libm::sqrt(spreads.bag) * own + libm::sqrt(spreads.group) * habit
        });
        bags.push(BagValue { value, treatment, block, group });
    }
    bags
}
