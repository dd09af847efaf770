//! A colleague's package as an investigation of its own on the shelf.

use super::taken::Taken;
use crate::desk::DeskError;
use crate::desk::doors::{bells, key};
use crate::desk::room::sheets::from_file;
use crate::desk::room::{Kind, Scene, Shelf};
use barm_domain::code::BagCode;
use barm_domain::record::{Entry, Subject, What, Who};
use jiff::{SignedDuration, Timestamp};
use std::collections::{BTreeMap, BTreeSet};

/// What of a package does not come onto the shelf although it is in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct StaysBehind {
    /// Heights of bags without a zero reading, from which no rise can be told.
    pub(crate) without_zero: usize,
    /// Pushes at the breath meter of thinned gas.
    pub(crate) thinned: usize,
    /// Temperatures of liquids that were pushed; a record has no place for them.
    pub(crate) warmths: usize,
}

/// What of a package does not come onto the shelf.
pub(crate) fn stays_behind(taken: &Taken) -> StaysBehind {
    let own = &taken.investigation;
    let zeros = own.readings.iter().filter(|one| one.minute.abs() < 1e-9);
    let zeros: BTreeSet<&str> = zeros.map(|one| one.bag.as_str()).collect();
    let without = own.readings.iter().filter(|one| !zeros.contains(one.bag.as_str()));
    StaysBehind {
        without_zero: without.count(),
        thinned: taken.thinned,
        warmths: own.meter.iter().filter(|push| push.celsius.is_some()).count(),
    }
}

/// Puts what was taken onto the shelf with its plan, its heights, its bags set aside and what its breath meter showed;
/// all periods are over. Gives the number of the new investigation. What nobody measured is marked. Waits for the disk.
pub(crate) fn put_on_shelf(
    shelf: &Shelf,
    taken: &Taken,
    now: Timestamp,
) -> Result<i64, DeskError> {
    let opened = &taken.package.opened;
    let kind = if opened.made_up { Kind::Invented } else { Kind::Real };
    let licence = opened.licence.map_or("none that is known here", |licence| licence.id());
    // Whoever goes on with the plan still finds under what it came; names of people are in no package.
    let text = format!(
        "# Made of a colleague’s data package. License: {licence}.\n\n{}",
        taken.plan_text
    );
    let room = shelf.begin(&text, kind, key(now)?, now)?;
    let seed = key(now)?;
    let entries = room.read(|scene| entries(scene, taken, seed, now))?;
    room.enter_and_wait(&entries)?;
    Ok(room.id)
}

/// Everything of the day, in the order of its time.
fn entries(
    scene: &Scene<'_>,
    taken: &Taken,
    seed: barm_domain::record::Key,
    now: Timestamp,
) -> Result<Vec<Entry>, DeskError> {
    let mut all = from_file(scene, &taken.table, seed, &BTreeSet::new(), now);
    let zeros: BTreeMap<BagCode, Timestamp> = all
        .iter()
        .filter_map(|entry| match (&entry.subject, &entry.what) {
            (Subject::Bag(code), What::Zero { .. }) => Some((*code, entry.measured)),
            _ => None,
        })
        .collect();
    let mut note =
        |subject: Subject, what: What, measured: Timestamp| -> Result<(), DeskError> {
            let key = key(now)?;
            all.push(Entry { key, subject, what, measured, arrived: now, who: Who::Import });
            Ok(())
        };
    let plan = scene.plan;
    let periods: BTreeMap<&str, (Timestamp, Timestamp)> = plan
        .periods
        .iter()
        .filter_map(|period| Some((period.name.as_str(), bells(plan, period)?)))
        .collect();
    for push in &taken.investigation.meter {
        let Ok(code) = push.bag.parse::<BagCode>() else { continue };
        let home = plan.bags.iter().find(|bag| bag.code == push.bag);
        let bells = home.and_then(|bag| periods.get(bag.period.as_str()));
        let Some((_, ends)) = bells else { continue };
        let at = push.minute.zip(zeros.get(&code)).and_then(|(minute, zero)| {
            zero.checked_add(SignedDuration::try_from_secs_f64(60.0 * minute).ok()?).ok()
        });
        let what = What::Meter { percent: push.percent, turn: push.turn };
        note(Subject::Bag(code), what, at.unwrap_or(*ends))?;
    }
    for (name, (begins, ends)) in periods {
        let period = || Subject::Period(name.to_owned());
        note(period(), What::Began, begins)?;
        note(period(), What::Ended, ends)?;
    }
    all.sort_by_key(|entry| entry.measured);
    Ok(all)
}
