//! Numbers that a group works with in the place of its own. They never count.

use super::curves::{ClassCurves, sheaf};
use super::seen::{Eyes, treatment};
use crate::desk::paper::look;
use crate::desk::room::Scene;
use crate::desk::room::foretold::Foretelling;
use barm_documents::chart::Look;
use barm_domain::board::running_minutes;
use barm_domain::record::Bag;
use barm_domain::rehearsal::simulated;
use barm_domain::schedule::schedule;
use jiff::Timestamp;

/// What was lent, as a table and as curves.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LentNumbers {
    /// Whether nobody measured it.
    pub(crate) simulated: bool,
    /// Columns of the table: minutes after zero.
    pub(crate) minutes: Vec<u32>,
    /// Bags by treatment, in the order of looks.
    pub(crate) kinds: Vec<LentBags>,
    /// The same as curves.
    pub(crate) curves: ClassCurves,
}

/// Bags of one treatment.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LentBags {
    /// The treatment.
    pub(crate) treatment: String,
    /// How it looks on every page.
    pub(crate) look: Look,
    /// Height of the card above the bench (mm) by bag and column, where it was read.
    pub(crate) heights: Vec<Vec<Option<f64>>>,
}

/// Bags made alike that other groups read, each with what it is in truth.
pub(super) fn of_the_class<'a>(
    scene: &'a Scene<'_>,
    eyes: &'a Eyes,
) -> impl Iterator<Item = (&'a Bag, String)> {
    scene.standing().bags.iter().filter_map(|(code, bag)| {
        let home = scene.ledger.known().bags.get(code)?;
        let name = treatment(scene, *code)?;
        let counts = bag.set_aside.is_none() && bag.rises().len() > 1;
        (counts && eyes.see_number(home, &name)).then_some((bag, name))
    })
}

/// What other groups read of bags made alike.
pub(super) fn class_data(scene: &Scene<'_>, eyes: &Eyes) -> LentNumbers {
    let mut kinds: Vec<LentBags> = Vec::new();
    let seen: Vec<(&Bag, String)> = of_the_class(scene, eyes).collect();
    let readings = seen.iter().flat_map(|(bag, _)| &bag.readings);
    let mut minutes: Vec<u32> = readings.filter_map(|reading| reading.planned).collect();
    minutes.push(0);
    minutes.sort_unstable();
    minutes.dedup();
    for (bag, name) in seen {
        let read = |minute: &u32| match minute {
            0 => bag.zero.as_ref().filter(|zero| !zero.rival).map(|zero| zero.height_mm),
            minute => {
                let same = |planned: Option<u32>| planned == Some(*minute);
                let mut readings = bag.readings.iter();
                readings.find(|one| same(one.planned) && !one.rival).map(|one| one.height_mm)
            }
        };
        add(scene, &mut kinds, name, minutes.iter().map(read).collect());
    }
    numbers(scene, false, minutes, kinds)
}

/// One made-up run of the group's own bags, up to the minute that has come.
pub(super) fn simulated_run(
    scene: &Scene<'_>,
    period: &str,
    group: u32,
    (seed, version): (u64, u32),
    now: Timestamp,
) -> Option<LentNumbers> {
    let plan = scene.plans.get(&version).unwrap_or(scene.plan);
    let of_plan = plan.period(period)?;
    // A plan that cannot be followed has no forecast either, and its page says why.
    let run = simulated(plan, of_plan, group, seed).unwrap_or_default();
    let day = scene.standing().periods.get(period);
    let start = schedule(plan, of_plan, day).start_of(group).unwrap_or(0.0);
    let ran = day.and_then(|day| Some(running_minutes(day, day.began?, now)));
    let over = day.is_some_and(|day| day.ended.is_some());
    let has_come =
        |minute: u32| over || ran.is_some_and(|ran| start + f64::from(minute) <= ran);
    let mut kinds = Vec::new();
    let mut minutes: Vec<u32> = Vec::new();
    for bag in run {
        let heights = bag.heights.iter().filter(|(minute, _)| has_come(*minute));
        let heights: Vec<(u32, f64)> = heights.copied().collect();
        if heights.is_empty() {
            continue;
        }
        minutes = heights.iter().map(|(minute, _)| *minute).collect();
        let heights = heights.into_iter().map(|(_, mm)| Some(mm)).collect();
        add(scene, &mut kinds, bag.treatment, heights);
    }
    Some(numbers(scene, true, minutes, kinds))
}

fn add(
    scene: &Scene<'_>,
    kinds: &mut Vec<LentBags>,
    treatment: String,
    heights: Vec<Option<f64>>,
) {
    match kinds.iter_mut().find(|kind| kind.treatment == treatment) {
        Some(kind) => kind.heights.push(heights),
        None => {
            let look = look(scene.plan, &treatment);
            kinds.push(LentBags { treatment, look, heights: vec![heights] });
        }
    }
}

fn numbers(
    scene: &Scene<'_>,
    simulated: bool,
    minutes: Vec<u32>,
    mut kinds: Vec<LentBags>,
) -> LentNumbers {
    kinds.sort_by(|a, b| (a.look, &a.treatment).cmp(&(b.look, &b.treatment)));
    let rises = |heights: &Vec<Option<f64>>| -> Vec<(f64, f64)> {
        let zero = heights.first().copied().flatten();
        let read = minutes.iter().zip(heights);
        read.filter_map(|(minute, mm)| Some((f64::from(*minute), (*mm)? - zero?))).collect()
    };
    let interval = scene.plan.timing.interval_min;
    let sheaves = kinds.iter().map(|kind| {
        let bags = kind.heights.iter().map(rises).filter(|rises| rises.len() > 1);
        let bags: Vec<Vec<(f64, f64)>> = bags.collect();
        sheaf(kind.look, kind.treatment.clone(), &bags, interval)
    });
    let sheaves = sheaves.filter(|sheaf| !sheaf.bags.is_empty()).collect();
    let curves = ClassCurves { day: false, sheaves, foretold: Foretelling::default() };
    LentNumbers { simulated, minutes, kinds, curves }
}
