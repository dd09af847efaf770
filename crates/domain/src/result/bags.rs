//! Every bag of the plan with what was read of it.

use super::contents::{self, Contents};
use super::curve::Curve;
use super::hint::{Hint, hints};
use super::shared_minute::{Reach, common_minute as latest_shared};
use super::summary::Summary;
use crate::outlook::Treated;
use crate::plan::{Plan, PlannedBag};
use crate::reading::{Reading, Rejected};
use std::collections::{BTreeMap, BTreeSet};

/// One bag with everything that was found of it.
#[derive(Debug, Clone, PartialEq)]
pub struct BagResult {
    /// The bag, as it stands in the plan.
    pub bag: PlannedBag,
    /// Its readings.
    pub curve: Curve,
    /// Its summary, if it can be compared.
    pub summary: Option<Summary>,
    /// Gas and ethanol at the minute of the summary.
    pub contents: Option<Contents>,
    /// The rule by which it is set aside, if it is.
    pub set_aside: Option<String>,
    /// What is worth a second look.
    pub hints: Vec<Hint>,
}

/// The curve of every bag of the plan, in the plan's order.
pub(super) fn curves(
    plan: &Plan,
    readings: &[Reading],
    rejected: &mut Vec<Rejected>,
) -> Vec<Curve> {
    let places: BTreeMap<&str, usize> =
        plan.bags.iter().enumerate().map(|(at, bag)| (bag.code.as_str(), at)).collect();
    let mut of_bags: Vec<Vec<&Reading>> = vec![Vec::new(); plan.bags.len()];
    for reading in readings {
        match taken(plan, &places, &of_bags, reading) {
            Ok(place) => of_bags[place].push(reading),
            Err(reason) => rejected.push(Rejected { line: reading.line, reason }),
        }
    }
    of_bags.into_iter().map(Curve::of).collect()
}

/// A card that stands higher than this many times the full height of its bag (1) was not read in
/// the unit that was taken, or not on that bag (own rule).
const BEYOND_FULL: f64 = 1.5;

fn taken(
    plan: &Plan,
    places: &BTreeMap<&str, usize>,
    of_bags: &[Vec<&Reading>],
    reading: &Reading,
) -> Result<usize, String> {
    let code = &reading.bag;
    let place =
        *places.get(code.as_str()).ok_or_else(|| format!("{code} is no bag of this plan"))?;
    let (minute, height) = (reading.minute, reading.height_mm);
    // The negation also refuses what is not a number.
    if !(minute >= 0.0 && minute.is_finite() && height.is_finite()) {
        return Err(format!("{code}: minute {minute} and height {height} mm cannot be"));
    }
    let full = full_height_mm(plan, &plan.bags[place]);
    if height > BEYOND_FULL * full {
        return Err(format!(
            "{code}: {height:.0} mm is far more than the {full:.0} mm that this bag reaches when it \
             is full; is the unit right?"
        ));
    }
    // Two readings of one bag are never within a hundredth of a minute.
    match of_bags[place].iter().find(|other| (other.minute - minute).abs() < 0.01) {
        Some(other) => Err(format!(
            "{code} has a reading at minute {minute} on line {} already",
            other.line
        )),
        None => Ok(place),
    }
}

/// The minute at which bags are compared, from the bags that count: those of a question, with a
/// zero reading and a later one, not set aside unless all are.
pub(super) fn common_minute(
    plan: &Plan,
    curves: &[Curve],
    aside: &BTreeMap<String, String>,
) -> Option<f64> {
    let asked: BTreeSet<&str> = plan
        .questions
        .iter()
        .flat_map(|question| plan.answering(question))
        .map(|treatment| treatment.name.as_str())
        .collect();
    let reaches = |and_set_aside: bool| -> Vec<(Reach<'_>, Option<f64>)> {
        plan.bags
            .iter()
            .zip(curves)
            .filter(|(bag, _)| asked.contains(bag.treatment.as_str()))
            .filter(|(bag, _)| and_set_aside || !aside.contains_key(&bag.code))
            .filter_map(|(bag, curve)| {
                let (treatment, period) = (bag.treatment.as_str(), bag.period.as_str());
                let last = curve.last_minute()?;
                Some((Reach { treatment, period, last }, bell_min(plan, bag)))
            })
            .collect()
    };
    let mut counted = reaches(false);
    if counted.is_empty() {
        counted = reaches(true);
    }
    let bell = counted.iter().filter_map(|(_, bell)| *bell).fold(f64::INFINITY, f64::min);
    let reaches: Vec<Reach<'_>> = counted.into_iter().map(|(reach, _)| reach).collect();
    latest_shared(&reaches, plan.timing.interval_min, bell)
}

/// The minute after the zero reading at which a bag's period ends.
fn bell_min(plan: &Plan, bag: &PlannedBag) -> Option<f64> {
    let period = plan.period(&bag.period)?;
    Some(period.length_min - plan.timing.mixing_min).filter(|minutes| *minutes > 0.0)
}

/// How high a bag of this kind stands when it is as full as can be (mm).
pub fn full_height_mm(plan: &Plan, bag: &PlannedBag) -> f64 {
    let treatment = plan.treatment(&bag.treatment);
    let bag = treatment.map_or(plan.base.bag.bag, |treatment| plan.recipe(treatment).bag.bag);
    barm_science::bag::full_height_mm(&bag)
}

/// Everything about every bag.
pub(super) fn results(
    plan: &Plan,
    forecasts: &[Treated],
    curves: Vec<Curve>,
    aside: &BTreeMap<String, String>,
    minute: Option<f64>,
) -> Vec<BagResult> {
    let result = |(bag, curve): (&PlannedBag, Curve)| {
        let mut hints = hints(&curve, bell_min(plan, bag), full_height_mm(plan, bag));
        let interval = plan.timing.interval_min;
        let summary = minute.and_then(|minute| {
            match Summary::of(&curve, minute, interval, plan.readable_mm) {
                Ok((summary, hint)) => {
                    hints.extend(hint);
                    Some(summary)
                }
                Err(hint) => {
                    if !hints.contains(&hint) {
                        hints.push(hint);
                    }
                    None
                }
            }
        });
        let treated = Treated::of_bag(forecasts, plan, bag);
        let contents = summary.as_ref().zip(treated).map(|(summary, treated)| {
            contents::contents(treated, summary.minute, summary.rise_mm.value)
        });
        BagResult {
            set_aside: aside.get(&bag.code).cloned(),
            bag: bag.clone(),
            curve,
            summary,
            contents,
            hints,
        }
    };
    plan.bags.iter().zip(curves).map(result).collect()
}
