//! How marks and the rubric lie on disk.

use crate::desk::DeskError;
use crate::desk::room::Room;
use crate::desk::room::all_words::{AllWords, of_a_group};
use crate::desk::room::proposals::Group;
use barm_domain::marks::{Basis, Given, LEVELS, Rubric, Strand};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

const MARKED: &str = "mark";

/// One rubric for everything on the shelf: it is the teacher's, not the lesson's.
const RUBRIC: &str = "rubric";

/// Marks of a group as they lie on disk.
#[derive(Serialize, Deserialize)]
struct KeptMark {
    at: i64,
    period: String,
    group: u32,
    given: KeptGiven,
}

/// What is given, as it lies on disk.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub(super) struct KeptGiven {
    levels: BTreeMap<String, u8>,
    remarks: BTreeMap<String, String>,
    class_data: bool,
}

impl KeptGiven {
    pub(super) fn of(given: &Given) -> Self {
        Self {
            levels: given.levels.clone(),
            remarks: given.remarks.clone(),
            class_data: given.basis == Basis::ClassData,
        }
    }

    pub(super) fn given(self) -> Given {
        let basis = if self.class_data { Basis::ClassData } else { Basis::Own };
        Given { levels: self.levels, remarks: self.remarks, basis }
    }
}

/// A rubric as it lies on disk.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub(super) struct KeptRubric {
    levels: [String; LEVELS],
    strands: Vec<(String, String, [String; LEVELS])>,
}

impl KeptRubric {
    pub(super) fn of(rubric: &Rubric) -> Self {
        let strand = |one: &Strand| (one.id.clone(), one.name.clone(), one.looks.clone());
        Self {
            levels: rubric.levels.clone(),
            strands: rubric.strands.iter().map(strand).collect(),
        }
    }

    pub(super) fn rubric(self) -> Rubric {
        let strands = self.strands.into_iter();
        let strand = |(id, name, looks)| Strand { id, name, looks };
        Rubric { levels: self.levels, strands: strands.map(strand).collect() }
    }
}

/// The teacher's rubric, or the one that is offered first. Waits for the disk.
pub(crate) fn rubric(room: &Room) -> Result<Rubric, DeskError> {
    let kept = room.store.setting(RUBRIC)?;
    let kept = kept.and_then(|text| serde_json::from_str::<KeptRubric>(&text).ok());
    Ok(kept.map(KeptRubric::rubric).unwrap_or_default())
}

/// Keeps a rubric, or goes back to the one that is offered first. It must be without faults. Waits for the disk.
pub(crate) fn keep_rubric(room: &Room, rubric: Option<&Rubric>) -> Result<(), DeskError> {
    match rubric {
        Some(rubric) => {
            let text = serde_json::to_string(&KeptRubric::of(rubric));
            room.store.keep_setting(RUBRIC, &text.map_err(|_| DeskError::Stopped)?)?;
        }
        None => room.store.drop_setting(RUBRIC)?,
    }
    Ok(())
}

of_a_group!(KeptMark);

/// What every group is given, by the newest that was kept.
pub(crate) fn given(written: &AllWords) -> BTreeMap<Group, Given> {
    let all = written.newest::<KeptMark>(MARKED).into_iter();
    all.map(|(group, kept)| (group, kept.given.given())).collect()
}

/// Keeps what a group is given, if that is something else than before. Waits for the disk.
pub(crate) fn keep_given(
    room: &Room,
    group: &Group,
    (before, new): (&Given, &Given),
    now: Timestamp,
) -> Result<(), DeskError> {
    if *before == *new {
        return Ok(());
    }
    let kept = KeptMark {
        at: now.as_millisecond(),
        period: group.0.clone(),
        group: group.1,
        given: KeptGiven::of(new),
    };
    room.keep_written(MARKED, &kept)
}
