//! A run for a group without numbers of its own: drawn from the bag model, never measured.

use super::Truth;
use super::bench::{READING_SD_MM, ZERO_MM};
use super::chance::Chance;
use crate::code::BagCode;
use crate::outlook::OutlookError;
use crate::plan::{Period, Plan, PlannedBag};
use crate::schedule::schedule;

/// One bag of a run that nobody measured.
#[derive(Debug, Clone, PartialEq)]
pub struct Simulated {
    /// The bag that it stands in for.
    pub code: BagCode,
    /// What is in it, as its label says.
    pub treatment: String,
    /// Height of the card above the bench at each planned minute, in whole mm as a ruler shows it;
    /// the zero reading, at minute 0, first.
    pub heights: Vec<(u32, f64)>,
}

/// Draws a run of a group's bags: one possible course of each on one possible day, read with a
/// ruler at every planned minute, with no slip. The same seed gives the same run.
///
/// # Errors
/// [`OutlookError`] if a treatment of one of the bags cannot be followed.
pub fn simulated(
    plan: &Plan,
    period: &Period,
    group: u32,
    seed: u64,
) -> Result<Vec<Simulated>, OutlookError> {
    let schedule = schedule(plan, period, None);
    let own = plan.bags.iter().filter(|bag| bag.period == period.name && bag.group == group);
    let mut bags: Vec<(BagCode, &PlannedBag)> =
        own.filter_map(|bag| Some((bag.code.parse().ok()?, bag))).collect();
    bags.sort_by_key(|(code, bag)| (bag.place, *code));
    let run = bags.into_iter().map(|(code, bag)| {
        let truth = Truth::of(plan, bag, schedule.last, seed)?;
        let mut chance = Chance::of(seed, &format!("simulated/{code}"));
        let zero = (ZERO_MM.0 + ZERO_MM.1 * chance.normal()).max(1.0);
        let mut read = |minute: u32| {
            let mm = zero + truth.rise_mm(f64::from(minute)) + READING_SD_MM * chance.normal();
            (minute, mm.round().max(1.0))
        };
        let heights = std::iter::once(0).chain(schedule.minutes.iter().copied());
        let heights = heights.map(&mut read).collect();
        Ok(Simulated { code, treatment: bag.treatment.clone(), heights })
    });
    run.collect()
}
