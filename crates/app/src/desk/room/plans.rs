//! The versions of a plan: opened for editing, saved, gone back to.

use super::{Room, Shelf};
use crate::desk::doors;
use crate::desk::editing::{self, Editing};
use crate::desk::{DeskError, Wording};
use barm_domain::plan::Plan;
use barm_domain::record::{Subject, What};
use jiff::Timestamp;
use std::collections::BTreeMap;
use std::sync::Arc;

/// The page of a plan.
#[derive(Debug)]
pub(crate) struct PlanView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: super::Kind,
    /// Its title.
    pub(crate) title: String,
    /// Number of the newest version.
    pub(crate) version: u32,
    /// The text with its form.
    pub(crate) editing: Editing,
    /// Versions, the newest first.
    pub(crate) versions: Vec<Version>,
    /// Bags that were sealed, so that their recipe can no longer change.
    pub(crate) sealed: usize,
    /// How many of them more would keep the plan they were sealed under, if this were saved.
    pub(crate) keep: usize,
    /// One line about the lots that the forecast goes by, if a pilot tried any.
    pub(crate) by_pilot: Option<String>,
}

/// A version that was saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Version {
    /// Its number.
    pub(crate) number: u32,
    /// When it was saved, if the record says.
    pub(crate) saved: Option<Timestamp>,
    /// Whether its text is that of the version before: a pilot made it.
    pub(crate) pilot: bool,
}

/// What became of saving.
#[derive(Debug)]
pub(crate) enum Saved {
    /// It is on disk under this number; so many bags came and went.
    As {
        /// The version.
        version: u32,
        /// Bags that are new on the list.
        new: usize,
        /// Bags that left it.
        gone: usize,
        /// Sealed bags that keep the plan they were sealed under, where this one says otherwise.
        keep: usize,
    },
    /// It says what the newest version says.
    Same,
    /// It has faults of the text and was not saved.
    Faulty,
    /// Somebody saved another version meanwhile.
    Overtaken(u32),
}

/// The page of a plan: with its newest text, or with one that is not saved.
pub(crate) fn plan_view(
    room: &Room,
    w: Wording,
    text: Option<String>,
) -> Result<PlanView, DeskError> {
    let version = room.read(|scene| scene.version);
    let text = match text {
        Some(text) => text,
        None => room.plan_text(version)?,
    };
    let (versions, sealed) = room.read(|scene| {
        let entries = scene.ledger.entries_of(&Subject::Investigation);
        let saved = |number: u32| {
            let at = entries.iter().find_map(|entry| match entry.what {
                What::PlanSaved { version } if version == number => Some(entry.measured),
                _ => None,
            });
            Version { number, saved: at, pilot: is_pilot(scene.plans, number) }
        };
        let versions = scene.plans.keys().rev().map(|number| saved(*number)).collect();
        let bags = scene.standing().bags.values();
        (versions, bags.filter(|bag| bag.sealed.is_some()).count())
    });
    let editing = Editing::open(w, &text, &room.read(|scene| scene.newest.known.clone()));
    Ok(PlanView {
        id: room.id,
        kind: room.kind,
        title: room.read(|scene| scene.plan.title.clone()),
        version,
        keep: would_keep(room, &editing),
        by_pilot: room.read(|scene| scene.by_pilot()),
        editing,
        versions,
        sealed,
    })
}

/// Whether a version differs from the one before in its lots alone.
fn is_pilot(plans: &BTreeMap<u32, Arc<Plan>>, number: u32) -> bool {
    let before = number.checked_sub(1).and_then(|before| plans.get(&before));
    before.zip(plans.get(&number)).is_some_and(|(before, plan)| {
        before.title == plan.title
            && Plan { known: plan.known.clone(), ..Plan::clone(before) } == **plan
    })
}

/// How many sealed bags more would keep the plan they were sealed under, if this were saved.
pub(crate) fn would_keep(room: &Room, editing: &Editing) -> usize {
    let plan = editing.plan.as_ref();
    plan.map(|plan| room.read(|scene| scene.would_keep(plan))).unwrap_or_default()
}

/// Saves a text as a new version, its bag list brought in step, if nobody saved another than
/// `from` meanwhile.
pub(crate) fn save(
    room: &Arc<Room>,
    text: &str,
    from: u32,
    now: Timestamp,
) -> Result<Saved, DeskError> {
    let newest = room.read(|scene| scene.version);
    // A pilot makes a version with the same text.
    if from != newest && room.plan_text(from).ok() != Some(room.plan_text(newest)?) {
        return Ok(Saved::Overtaken(newest));
    }
    if !editing::sound(text) {
        return Ok(Saved::Faulty);
    }
    let text = editing::with_bags(text);
    if room.plan_text(newest)? == text {
        return Ok(Saved::Same);
    }
    let codes = || {
        room.read(|scene| {
            scene.newest.bags.iter().map(|bag| bag.code.clone()).collect::<Vec<String>>()
        })
    };
    let before = codes();
    let kept = || room.read(|scene| scene.bound.kept.clone());
    let kept_before = kept();
    let version = match room.save_plan(&text, doors::key(now)?, now) {
        Ok(version) => version,
        Err(DeskError::Unsound(_)) => return Ok(Saved::Faulty),
        Err(error) => return Err(error),
    };
    let after = codes();
    room.foresee();
    Ok(Saved::As {
        version,
        new: after.iter().filter(|code| !before.contains(code)).count(),
        gone: before.iter().filter(|code| !after.contains(code)).count(),
        keep: kept().difference(&kept_before).count(),
    })
}

/// Puts a new investigation on the shelf.
pub(crate) fn begin(
    shelf: &Shelf,
    text: &str,
    kind: super::Kind,
    now: Timestamp,
) -> Result<i64, DeskError> {
    let room = shelf.begin(&editing::with_bags(text), kind, doors::key(now)?, now)?;
    Ok(room.id)
}

#[cfg(test)]
mod tests {
    use super::{Saved, begin, plan_view, save};
    use crate::desk::room::{Kind, Shelf};
    use crate::desk::{Wording, demo};
    use jiff::Timestamp;

    #[test]
    fn versions_are_saved_in_order_and_none_is_lost() {
        let folder = tempfile::tempdir().expect("a folder");
        let now = Timestamp::from_second(1_800_000_000).expect("a time");
        let shelf = Shelf::open(folder.path(), now).expect("a shelf");
        let id = begin(&shelf, demo::plan(), Kind::Real, now).expect("an investigation");
        let room = shelf.room(id, now).expect("a room");
        assert!(matches!(save(&room, demo::plan(), 1, now), Ok(Saved::Same)));
        let shorter = demo::plan().replacen("grade = 8", "grade = 7", 1);
        let saved = save(&room, &shorter, 1, now).expect("an answer");
        assert!(
            matches!(saved, Saved::As { version: 2, new: 0, gone: 0, keep: 0 }),
            "{saved:?}"
        );
        // Another window that still has the first version must not run over the second.
        assert!(matches!(save(&room, demo::plan(), 1, now), Ok(Saved::Overtaken(2))));
        assert!(matches!(save(&room, "title = [", 2, now), Ok(Saved::Faulty)));
        let fewer = shorter.replacen("groups = 8", "groups = 7", 1);
        let saved = save(&room, &fewer, 2, now).expect("an answer");
        assert!(matches!(saved, Saved::As { version: 3, gone, .. } if gone > 0), "{saved:?}");
        let view = plan_view(&room, Wording::english(), None).expect("a view");
        let numbers: Vec<u32> = view.versions.iter().map(|version| version.number).collect();
        assert_eq!(numbers, [3, 2, 1]);
        assert!(view.versions.iter().all(|version| version.saved == Some(now)));
        let back = room.plan_text(1).expect("the first text");
        let saved = save(&room, &back, 3, now).expect("an answer");
        assert!(matches!(saved, Saved::As { version: 4, .. }), "going back is a new version");
    }
}
