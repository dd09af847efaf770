//! What was handed out: a dated copy that later changes leave as it is.

use super::kept::{KeptGiven, KeptRubric, given, rubric};
use crate::desk::DeskError;
use crate::desk::room::all_words::{AllWords, of_a_group};
use crate::desk::room::proposals::Group;
use crate::desk::room::{Room, Scope};
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
    let given = given(&room.all_words()?);
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
        room.keep_written(HANDED_OUT, &kept)?;
        handed += 1;
    }
    let period = period.to_owned();
    room.pulse.beat(|scope| match scope {
        Scope::Teacher => true,
        scope => scope.period() == Some(period.as_str()),
    });
    Ok((handed, open))
}

of_a_group!(KeptCopy);

/// The newest copy that a group got.
pub(crate) fn newest_copy(written: &AllWords, group: &Group) -> Option<HandedOut> {
    let newest = written.newest::<KeptCopy>(HANDED_OUT).remove(group);
    newest.map(|copy| HandedOut {
        at: Timestamp::from_millisecond(copy.at).unwrap_or_default(),
        rubric: copy.rubric.rubric(),
        given: copy.given.given(),
    })
}
