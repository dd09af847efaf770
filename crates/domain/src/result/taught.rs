//! What a class's readings teach of its yeast, its enzymes, its room and its cards, and which bags do not
//! belong with the others.

use super::{BagResult, ClassResult};
use crate::outlook::Treated;
use crate::pilot::{Change, changes_of_day, door, title};
use crate::plan::{Plan, PlannedBag};
use barm_science::fit::day::{BagSeen, DayError};
use barm_science::forecast::possible;
use barm_science::prior::Learned;
use std::collections::BTreeMap;

/// What the readings of a day taught.
#[derive(Debug, Clone, PartialEq)]
pub struct DayTaught {
    /// Bags that it rests on.
    pub bags: usize,
    /// Their readings, zero readings not counted.
    pub readings: usize,
    /// What changed of the yeast, its waking, the cooling, the enzymes and the cards, the best known
    /// first.
    pub changes: Vec<Change>,
    /// Numbers that the readings could not move, in plain words.
    pub unmoved: Vec<String>,
    /// By which the readings scatter more widely than they should (1).
    pub noise: f64,
    /// Bags that probably do not belong with the others, the surest first.
    pub unlike: Vec<UnlikeBag>,
    /// All that is known of the model's numbers now, what was known before among it.
    pub learned: Learned,
}

/// A bag that probably leaks, or is another than its label says.
#[derive(Debug, Clone, PartialEq)]
pub struct UnlikeBag {
    /// The bag, as it stands in the plan.
    pub bag: PlannedBag,
    /// Chance that it does not belong with the others (1).
    pub chance: f64,
    /// What is odd about it.
    pub looks: Looks,
}

/// How a bag departs from what the others lead one to expect.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Looks {
    /// It falls behind, the longer the more.
    FallsBehind,
    /// It lies below from the beginning.
    Low,
    /// It lies above.
    High,
}

/// From this chance on a bag is named (1): it is more likely than not that something is wrong with it.
const NAMED: f64 = 0.5;

/// What a day taught; nothing where no bag has a height to go by.
///
/// Bags that are set aside by a rule of the plan are left out, and so are bags without a forecast.
/// `forecasts` are those of [`super::analyze`]; `poured` is how warm the water of a bag was when it was
/// poured (°C), by its code, where that was measured. What is known of lots before comes from pilots.
///
/// # Errors
/// [`DayError`] where the readings fit no day that the model knows.
pub fn day_taught(
    plan: &Plan,
    forecasts: &[Treated],
    result: &ClassResult,
    poured: &BTreeMap<String, f64>,
) -> Result<Option<DayTaught>, DayError> {
    let seen: Vec<(&BagResult, BagSeen)> = result
        .bags
        .iter()
        .filter(|bag| bag.set_aside.is_none())
        .filter_map(|bag| Some((bag, seen(plan, forecasts, bag, poured)?)))
        .collect();
    if seen.is_empty() {
        return Ok(None);
    }
    let bags: Vec<BagSeen> = seen.iter().map(|(_, bag)| bag.clone()).collect();
    let before = plan.known.numbers();
    let (after, fit) = door::fit(&bags, &before)?;
    let mut unmoved: Vec<String> = Vec::new();
    for name in fit.learned.could_not_move() {
        let says = title(name);
        if !unmoved.contains(&says) {
            unmoved.push(says);
        }
    }
    let mut unlike: Vec<UnlikeBag> = seen
        .iter()
        .zip(fit.unlike.iter().zip(&fit.expected_mm))
        .filter(|(_, (chance, _))| **chance > NAMED)
        .map(|((bag, seen), (chance, expected))| UnlikeBag {
            bag: bag.bag.clone(),
            chance: *chance,
            looks: looks(&seen.readings, expected),
        })
        .collect();
    unlike.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    Ok(Some(DayTaught {
        bags: bags.len(),
        readings: bags.iter().map(|bag| bag.readings.len()).sum(),
        changes: changes_of_day(&before, &after),
        unmoved,
        noise: fit.noise,
        unlike,
        learned: after,
    }))
}

/// A bag as the fit sees it; nothing without a height after its zero, or of a bag that cannot be followed.
fn seen(
    plan: &Plan,
    forecasts: &[Treated],
    bag: &BagResult,
    poured: &BTreeMap<String, f64>,
) -> Option<BagSeen> {
    let rises = bag.curve.rises.iter().filter(|rise| rise.minute > 0.0);
    let readings: Vec<(f64, f64)> =
        rises.map(|rise| (rise.minute, rise.rise_mm.value)).collect();
    let mut setup = Treated::of_bag(forecasts, plan, &bag.bag)?.setup.clone();
    if let Some(celsius) = poured.get(&bag.bag.code) {
        setup.water_celsius = *celsius;
    }
    if readings.is_empty() || possible(&setup).is_err() {
        return None;
    }
    let place = plan.periods.iter().position(|period| period.name == bag.bag.period)?;
    Some(BagSeen { setup, period: place as u32, group: bag.bag.group, readings })
}

/// What is odd about a bag, from its readings (minute, mm) and what was expected of them (mm).
fn looks(readings: &[(f64, f64)], expected_mm: &[f64]) -> Looks {
    let off: Vec<f64> =
        readings.iter().zip(expected_mm).map(|((_, mm), expected)| mm - expected).collect();
    let (first, last) = (off.first().copied(), off.last().copied());
    let (first, last) = (first.unwrap_or_default(), last.unwrap_or_default());
    let mean = off.iter().sum::<f64>() / off.len().max(1) as f64;
    if mean > 0.0 && last > 0.0 {
        Looks::High
    } else if off.len() > 1 && last < first - 1.0 {
        Looks::FallsBehind
    } else {
        Looks::Low
    }
}

#[cfg(test)]
mod tests {
    use super::{Looks, looks};

    #[test]
    fn how_a_bag_departs_is_told_from_its_course() {
        let expected = [4.0, 8.0, 12.0];
        let of = |mm: [f64; 3]| looks(&[(4.0, mm[0]), (8.0, mm[1]), (12.0, mm[2])], &expected);
        assert_eq!(of([4.0, 6.0, 7.0]), Looks::FallsBehind);
        assert_eq!(of([1.0, 5.0, 9.0]), Looks::Low);
        assert_eq!(of([7.0, 12.0, 18.0]), Looks::High);
    }
}
