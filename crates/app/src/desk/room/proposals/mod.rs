//! What groups handed in and what the teacher answered.
//!
//! Proposals are words of children: they lie where words can be deleted, apart from the record.
//! What was approved stands in the plan.

mod same;
mod together;
mod waiting;

pub(crate) use together::{
    HANDED_MOST, PlanTogetherView, Typed, plans_first, together, together_view,
};
pub(crate) use waiting::{ApproveView, approve_view};

use super::{Kind, Room, Scope};
use crate::desk::{DeskError, doors};
use barm_documents::plan_text;
pub(crate) use barm_documents::proposals::Row;
use barm_domain::proposal::{Written, approve, judge};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A group: period and number.
pub(crate) type Group = (String, u32);

/// Longest question that a teacher writes for the plan (characters).
const LONGEST_ASKS: usize = 200;

const HANDED_IN: &str = "proposal";
const ANSWERED: &str = "proposal-answer";

/// A proposal as it lies on disk.
#[derive(Debug, Clone, Serialize, Deserialize)]
struct Kept {
    at: i64,
    period: String,
    group: u32,
    asks: String,
    changes: String,
    levels: Vec<String>,
    keeps: String,
    beside: String,
    bags: u32,
    expects: String,
    because: String,
}

/// An answer as it lies on disk.
#[derive(Debug, Clone, Serialize, Deserialize)]
struct KeptAnswer {
    at: i64,
    period: String,
    group: u32,
    approved: bool,
    asks: String,
}

/// What the teacher answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Answer {
    /// It is in the plan.
    Approved,
    /// It went back with one question.
    Returned(String),
}

/// What a group handed in, and what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct HandedIn {
    /// The proposal with its words.
    pub(crate) row: Row,
    /// The answer to it, if there is one.
    pub(crate) answer: Option<Answer>,
}

fn row(kept: Kept) -> (Group, i64, Row) {
    let group = (kept.period.clone(), kept.group);
    let written = Written {
        period: kept.period,
        group: kept.group,
        asks: kept.asks,
        changes: kept.changes,
        levels: kept.levels,
        keeps: kept.keeps,
        beside: kept.beside,
        bags: kept.bags,
    };
    (group, kept.at, Row { line: 0, written, expects: kept.expects, because: kept.because })
}

/// What every group handed in last, with the answer to it. Waits for the disk.
pub(crate) fn handed_in(room: &Room) -> Result<BTreeMap<Group, HandedIn>, DeskError> {
    let mut newest: BTreeMap<Group, (i64, HandedIn)> = BTreeMap::new();
    let mut answers: Vec<KeptAnswer> = Vec::new();
    for (_, kind, text) in room.store.all_words(room.id)? {
        match kind.as_str() {
            HANDED_IN => {
                let Ok(kept) = serde_json::from_str::<Kept>(&text) else { continue };
                let (group, at, row) = row(kept);
                let later = newest.get(&group).is_none_or(|(known, _)| *known <= at);
                if later {
                    newest.insert(group, (at, HandedIn { row, answer: None }));
                }
            }
            ANSWERED => answers.extend(serde_json::from_str::<KeptAnswer>(&text)),
            _ => {}
        }
    }
    answers.sort_by_key(|answer| answer.at);
    for answer in answers {
        let group = (answer.period, answer.group);
        // An answer to an older proposal says nothing of the newest.
        if let Some((_, own)) = newest.get_mut(&group).filter(|(at, _)| *at <= answer.at) {
            own.answer = Some(if answer.approved {
                Answer::Approved
            } else {
                Answer::Returned(answer.asks)
            });
        }
    }
    Ok(newest.into_iter().map(|(group, (_, own))| (group, own)).collect())
}

/// Keeps what a group hands in. Waits for the disk.
pub(crate) fn hand_in(room: &Room, handed: &Row, now: Timestamp) -> Result<(), DeskError> {
    let written = handed.written.clone();
    let kept = Kept {
        at: now.as_millisecond(),
        period: written.period,
        group: written.group,
        asks: written.asks,
        changes: written.changes,
        levels: written.levels,
        keeps: written.keeps,
        beside: written.beside,
        bags: written.bags,
        expects: handed.expects.clone(),
        because: handed.because.clone(),
    };
    let group = (kept.period.clone(), kept.group);
    keep(room, HANDED_IN, &group, &kept)
}

/// Keeps what concerns one group; only the teacher's pages and its own hear of it.
fn keep(
    room: &Room,
    kind: &str,
    group: &Group,
    what: &impl Serialize,
) -> Result<(), DeskError> {
    let text = serde_json::to_string(what).map_err(|_| DeskError::Stopped)?;
    room.store.keep_words(room.id, doors::words_key()?, kind, &text)?;
    let own = Scope::Group { period: group.0.clone(), group: group.1 };
    room.pulse.beat(|scope| *scope == Scope::Teacher || *scope == own);
    Ok(())
}

fn answer(
    room: &Room,
    group: &Group,
    approved: bool,
    asks: &str,
    now: Timestamp,
) -> Result<(), DeskError> {
    let kept = KeptAnswer {
        at: now.as_millisecond(),
        period: group.0.clone(),
        group: group.1,
        approved,
        asks: asks.to_owned(),
    };
    keep(room, ANSWERED, group, &kept)
}

/// Sends a proposal back with one question. Waits for the disk.
pub(crate) fn send_back(
    room: &Room,
    group: &Group,
    asks: &str,
    now: Timestamp,
) -> Result<(), DeskError> {
    answer(room, group, false, asks, now)
}

/// Puts a proposal into the plan as a new version, with changes if some were made, and its question
/// as the teacher worded it, or in plain words of the plan; nothing if it
/// has faults. Gives how many sealed bags keep the plan they were sealed under, where this one
/// leaves them out. Waits for the disk.
pub(crate) fn take_in(
    room: &Room,
    written: &Written,
    worded: Option<&str>,
    now: Timestamp,
) -> Result<Option<usize>, DeskError> {
    let (plan, version) = room.read(|scene| (scene.newest.clone(), scene.version));
    let handed = handed_in(room)?;
    let read = |own: &HandedIn| own.row.written.read(&plan).ok();
    let all: Vec<_> = handed.values().filter_map(read).collect();
    // What was offered and left as it is follows what else the teacher changed.
    let offered = handed.get(&(written.period.clone(), written.group)).and_then(read);
    let offered = offered.map(|proposal| proposal.asks);
    let judged = judge(&plan, written, &all, &[]);
    let faults = judged.faults();
    let Some(mut proposal) = judged.proposal.filter(|_| faults == 0) else {
        return Ok(None);
    };
    let worded = worded.map(str::trim).filter(|worded| !worded.is_empty());
    let worded = worded.filter(|worded| Some(*worded) != offered.as_deref());
    if let Some(worded) = worded {
        proposal.asks = worded.chars().filter(|c| !c.is_control()).take(LONGEST_ASKS).collect();
    }
    let new = Arc::new(approve(&plan, &[proposal])?);
    let keep = room.read(|scene| scene.would_keep(&new));
    let text = plan_text::write(&new, &room.plan_text(version)?);
    room.save_plan(&text, doors::key(now)?, now)?;
    answer(room, &(written.period.clone(), written.group), true, "", now)?;
    Ok(Some(keep))
}

/// Everything that was handed in, as a table. Waits for the disk.
pub(crate) fn table_of(room: &Room) -> Result<String, DeskError> {
    let rows: Vec<Row> = handed_in(room)?.into_values().map(|own| own.row).collect();
    Ok(match room.kind {
        Kind::Real => barm_documents::proposals::write(&rows),
        Kind::Rehearsal => barm_documents::proposals::write_marked(&rows, "rehearsal"),
        Kind::Invented => barm_documents::proposals::write_marked(&rows, "made-up class"),
    })
}
