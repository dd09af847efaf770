//! The chance of a clear verdict from how much bags and groups will differ.

use super::expected::Rises;
use super::{Expected, USUAL};
use crate::plan::{Plan, PlannedBag, Question};
use barm_science::ruler;
use barm_science::statistics::compare::How;
use barm_science::statistics::power::{Classes, Deals, Place, PowerError, Spreads};
use std::collections::BTreeMap;

/// What is said of one comparison.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Said {
    /// Chance that the difference is found (1), over the days that may be.
    pub(super) chance: f64,
    /// Smallest difference that is usually found (mm); nothing where the verdict is never clear.
    pub(super) usually_found_mm: Option<f64>,
}

/// What it says of all comparisons of a question.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Answer {
    /// One for each pair of a treatment and its reference.
    pub(super) pairs: Vec<Result<Said, PowerError>>,
    /// How much bags alike will differ as the day shows it (mm).
    pub(super) sd_mm: Option<f64>,
}

/// Days that stand for all that may be: so many quantiles.
const DAYS: usize = 32;

/// Bags are dealt so often; the seed decides how, and may be any.
const DEALS: Deals = Deals { count: 400, seed: 1925 };

/// Pairs of a treatment and what it is compared with, in the order of the verdicts.
pub(super) fn pairs<'p>(plan: &'p Plan, question: &'p Question) -> Vec<(&'p str, &'p str)> {
    let answering = plan.answering(question).into_iter();
    answering.filter_map(|t| Some((t.name.as_str(), plan.beside(question, t)?))).collect()
}

/// The chances with the bags of a plan, compared at that minute.
pub(super) fn answer(
    plan: &Plan,
    question: &Question,
    expected: &[Expected],
    minute: f64,
) -> Answer {
    let names: Vec<&str> =
        plan.answering(question).iter().map(|treatment| treatment.name.as_str()).collect();
    let number = |name: &str| names.iter().position(|known| *known == name);
    let asked = pairs(plan, question);
    let places = places(&plan.bags, &number);
    let numbered: Vec<(usize, usize)> = asked
        .iter()
        .map(|(a, b)| (number(a).unwrap_or(usize::MAX), number(b).unwrap_or(usize::MAX)))
        .collect();
    let rises: BTreeMap<&str, Rises> = expected
        .iter()
        .filter(|one| names.contains(&one.treatment.as_str()))
        .map(|one| (one.treatment.as_str(), one.at(minute)))
        .collect();
    let spreads: BTreeMap<usize, Spreads> = names
        .iter()
        .enumerate()
        .filter_map(|(at, name)| Some((at, rises.get(name)?.spreads)))
        .collect();
    let classes = match foretold(plan, &places, &numbered, &spreads) {
        Ok(classes) => classes,
        Err(error) => {
            let pairs = asked.iter().map(|_| Err(error.clone())).collect();
            return Answer { pairs, sd_mm: None };
        }
    };
    let said = |(pair, (treatment, reference)): (usize, &(&str, &str))| {
        let days = rises.get(treatment).zip(rises.get(reference));
        let days = days.map(|(own, other)| own.less(other)).ok_or(PowerError::NoSharedBlock)?;
        let mut chance = 0.0;
        for difference in quantiles(&days) {
            chance += classes.odds(pair, difference)?.rightly / DAYS as f64;
        }
        let usually_found_mm = classes.found_with(pair, USUAL).ok();
        Ok(Said { chance: chance.min(1.0), usually_found_mm })
    };
    Answer { pairs: asked.iter().enumerate().map(said).collect(), sd_mm: Some(classes.sd()) }
}

/// What classes with such bags would see, by the rule of the plan's day.
///
/// # Errors
/// [`PowerError`] where the bags cannot tell anything.
pub(crate) fn foretold(
    plan: &Plan,
    places: &[Place],
    pairs: &[(usize, usize)],
    spreads: &BTreeMap<usize, Spreads>,
) -> Result<Classes, PowerError> {
    let how = How::of_a_class(ruler::usual_difference_sd_mm());
    let how = plan.round.level().map_or(how, |level| how.at(level));
    let rule = (plan.readable_mm.max(0.0), &how);
    Classes::new(places, pairs, spreads, rule, DEALS)
}

/// Where the bags of these treatments stand.
fn places<'p>(bags: &'p [PlannedBag], number: &impl Fn(&str) -> Option<usize>) -> Vec<Place> {
    let mut blocks: BTreeMap<&str, usize> = BTreeMap::new();
    let mut groups: BTreeMap<(&str, u32), usize> = BTreeMap::new();
    let place = |bag: &'p PlannedBag| {
        let (period, group) = (bag.period.as_str(), bag.group);
        let treatment = number(&bag.treatment)?;
        let next = blocks.len();
        let block = *blocks.entry(period).or_insert(next);
        let next = groups.len();
        let group = *groups.entry((period, group)).or_insert(next);
        Some(Place { treatment, block, group })
    };
    bags.iter().filter_map(place).collect()
}

/// Middles of equal shares of values in rising order.
fn quantiles(sorted: &[f64]) -> impl Iterator<Item = f64> {
    let last = sorted.len().saturating_sub(1);
    (0..DAYS).filter_map(move |share| {
        let at = (share as f64 + 0.5) / DAYS as f64 * sorted.len() as f64;
        sorted.get((at as usize).min(last)).copied()
    })
}
