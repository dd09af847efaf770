//! What can be printed of an investigation on the shelf, and printing it.

use super::results::{analysis, beside};
use super::{Kind, Room};
use crate::desk::print::{self, Job, PARTS, Part, Sheet, Wish};
use crate::desk::{DeskError, Unheard, Wording};
use barm_domain::record::Standing;

/// The print page.
#[derive(Debug)]
pub(crate) struct PrintView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Names of its periods.
    pub(crate) periods: Vec<String>,
    /// Every part that it has use for.
    pub(crate) parts: Vec<PrintPart>,
    /// What it has no use for yet.
    pub(crate) not_yet: Vec<String>,
    /// One line about the lots that forecasts go by, if a pilot tried any.
    pub(crate) by_pilot: Option<String>,
}

/// A part on the print page.
#[derive(Debug)]
pub(crate) struct PrintPart {
    /// The name of its file.
    pub(crate) file: String,
    /// What it is.
    pub(crate) says: String,
}

/// The print page of an investigation, for somebody who wants it so.
pub(crate) fn print_view(room: &Room, w: Wording, wish: &Wish) -> PrintView {
    let (plan, read) = room.read(|scene| (scene.plan.clone(), has_readings(scene.standing())));
    let job = Job::new(&plan, wish, None, &Unheard).with_readings(read);
    let (of_use, others): (Vec<&Part>, Vec<&Part>) =
        PARTS.iter().partition(|part| (part.of_use)(&job));
    PrintView {
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        periods: plan.periods.iter().map(|period| period.name.clone()).collect(),
        parts: of_use
            .into_iter()
            .map(|part| PrintPart { file: part.plain_name(), says: (part.says)(w) })
            .collect(),
        by_pilot: plan.known.says(),
        not_yet: others.into_iter().map(|part| (part.says)(w)).collect(),
    }
}

/// One part as a file, made now; none if there is no part of that name. Not for asynchronous code.
pub(crate) fn printed(room: &Room, key: &str, wish: &Wish) -> Result<Option<Sheet>, DeskError> {
    let Some(part) = Part::of(key) else { return Ok(None) };
    let (plan, newest, read) = room.read(|scene| {
        (scene.plan.clone(), scene.newest.clone(), has_readings(scene.standing()))
    });
    let job = Job::new(&plan, wish, None, &Unheard).of_kind(room.kind).bought_by(&newest);
    if read && !(part.of_use)(&job) {
        // It waits for what the class found; then each bag is what it is in truth.
        let (plan, analysis, waits) = analysis(room)?;
        let job = Job::new(&plan, wish, Some(&analysis), &Unheard).of_kind(room.kind);
        let job = job.with_beside(beside(room, waits));
        return print::one(&job, part).map(Some);
    }
    print::one(&job, part).map(Some)
}

fn has_readings(standing: &Standing) -> bool {
    standing.bags.values().any(|bag| bag.zero.is_some())
}
