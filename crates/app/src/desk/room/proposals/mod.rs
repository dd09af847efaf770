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

use super::all_words::{AllWords, of_a_group};
use super::{Kind, Room};
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

fn row(kept: Kept) -> Row {
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
    Row { line: 0, written, expects: kept.expects, because: kept.because }
}

of_a_group!(Kept);

/// What every group handed in last, with the answer to it.
pub(crate) fn handed_in(words: &AllWords) -> BTreeMap<Group, HandedIn> {
    let mut answers: Vec<KeptAnswer> = words.of_kind(ANSWERED).map(|(_, kept)| kept).collect();
    answers.sort_by_key(|answer| answer.at);
    let of = |kept: Kept| {
        let at = kept.at;
        let row = row(kept);
        // An answer to an older proposal says nothing of the newest.
        let own = answers.iter().rfind(|answer| {
            answer.at >= at
                && answer.period == row.written.period
                && answer.group == row.written.group
        });
        let answer = own.map(|answer| match answer.approved {
            true => Answer::Approved,
            false => Answer::Returned(answer.asks.clone()),
        });
        HandedIn { row, answer }
    };
    words.newest(HANDED_IN).into_iter().map(|(group, kept)| (group, of(kept))).collect()
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
    room.keep_written(kind, what)?;
    room.tell_of(group);
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
    let handed = handed_in(&room.all_words()?);
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
    let rows: Vec<Row> =
        handed_in(&room.all_words()?).into_values().map(|own| own.row).collect();
    Ok(match room.kind {
        Kind::Real => barm_documents::proposals::write(&rows),
        Kind::Rehearsal => barm_documents::proposals::write_marked(&rows, "rehearsal"),
        Kind::Invented => barm_documents::proposals::write_marked(&rows, "made-up class"),
    })
}
