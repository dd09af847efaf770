//! The queue of proposals that wait for the teacher's answer.

use super::{Answer, Group, handed_in};
use crate::desk::queue::{Queue, queue};
use crate::desk::room::{Kind, Room};
use crate::desk::{DeskError, Wording};
use barm_documents::proposals::Row;
use barm_domain::proposal::approve;
use std::collections::BTreeMap;
use std::sync::Arc;

/// The queue page.
#[derive(Debug)]
pub(crate) struct ApproveView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// What waits for an answer.
    pub(crate) queue: Queue,
    /// How many sealed bags keep the plan they were sealed under if a group's proposal is approved,
    /// where there are any.
    pub(crate) keep: BTreeMap<Group, usize>,
    /// Groups that wait for nothing: what they asked, and the answer.
    pub(crate) answered: Vec<(Row, Answer)>,
    /// Groups that have handed in nothing.
    pub(crate) missing: Vec<Group>,
}

/// The queue page of an investigation. Waits for the disk and for forecasts.
pub(crate) fn approve_view(room: &Room, w: Wording) -> Result<ApproveView, DeskError> {
    let plan = room.read(|scene| scene.newest.clone());
    let handed = handed_in(&room.all_words()?);
    let missing = plan
        .periods
        .iter()
        .flat_map(|period| (1..=period.groups).map(|group| (period.name.clone(), group)))
        .filter(|group| !handed.contains_key(group))
        .collect();
    let (mut waiting, mut answered) = (Vec::new(), Vec::new());
    for own in handed.into_values() {
        match own.answer {
            Some(answer) => answered.push((own.row, answer)),
            None => waiting.push(own.row),
        }
    }
    let queue = queue(w, &plan, &waiting);
    let new = queue.sound().filter_map(|one| {
        let new = approve(&plan, std::slice::from_ref(one)).ok()?;
        Some(((one.period.clone(), one.group), Arc::new(new)))
    });
    let new: Vec<_> = new.collect();
    let keep = room.read(|scene| {
        let of = new.iter().map(|(group, new)| (group.clone(), scene.would_keep(new)));
        of.filter(|(_, keep)| *keep > 0).collect()
    });
    Ok(ApproveView {
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        queue,
        keep,
        answered,
        missing,
    })
}
