//! What was handed out: a dated copy that later changes leave as it is.

use super::kept::{KeptGiven, KeptRubric, given, rubric};
use crate::desk::room::proposals::Group;
use crate::desk::room::{Room, Scope};
use crate::desk::{DeskError, doors};
use barm_domain::marks::{Given, Rubric};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};

const HANDED_OUT: &str = "mark-copy";

#[derive(Serialize, Deserialize)]
struct KeptCopy {
    at: i64,
    period: String,
    group: u32,
    rubric: KeptRubric,
    given: KeptGiven,
}

/// A copy that a group got.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct HandedOut {
    /// When.
    pub(crate) at: Timestamp,
    /// The rubric of that day.
    pub(crate) rubric: Rubric,
    /// What it was given.
    pub(crate) given: Given,
}

/// Hands out to every group of a period what it is given in full; gives how many got a copy, and which groups are
/// not marked in full. Waits for the disk.
pub(crate) fn hand_out(
    room: &Room,
    period: &str,
    now: Timestamp,
) -> Result<(usize, Vec<u32>), DeskError> {
    let rubric = rubric(room)?;
    let given = given(room)?;
    let groups = room.read(|scene| scene.plan.period(period).map_or(0, |one| one.groups));
    let (mut handed, mut open) = (0, Vec::new());
    for group in 1..=groups {
        let who: Group = (period.to_owned(), group);
        let Some(own) = given.get(&who).filter(|own| own.open(&rubric).is_empty()) else {
            open.push(group);
            continue;
        };
        let kept = KeptCopy {
            at: now.as_millisecond(),
            period: who.0,
            group,
            rubric: KeptRubric::of(&rubric),
            given: KeptGiven::of(own),
        };
        let text = serde_json::to_string(&kept).map_err(|_| DeskError::Stopped)?;
        room.store.keep_words(room.id, doors::words_key()?, HANDED_OUT, &text)?;
        handed += 1;
    }
    let period = period.to_owned();
    room.pulse.beat(|scope| match scope {
        Scope::Teacher => true,
        scope => scope.period() == Some(period.as_str()),
    });
    Ok((handed, open))
}

/// The newest copy that a group got. Waits for the disk.
pub(crate) fn newest_copy(room: &Room, group: &Group) -> Result<Option<HandedOut>, DeskError> {
    let all = room.store.all_words(room.id)?.into_iter();
    let copies = all.filter(|(_, kind, _)| kind == HANDED_OUT);
    let copies = copies.filter_map(|(_, _, text)| serde_json::from_str::<KeptCopy>(&text).ok());
    let own = copies.filter(|copy| copy.period == group.0 && copy.group == group.1);
    let newest = own.max_by_key(|copy| copy.at);
    Ok(newest.map(|copy| HandedOut {
        at: Timestamp::from_millisecond(copy.at).unwrap_or_default(),
        rubric: copy.rubric.rubric(),
        given: copy.given.given(),
    }))
}
