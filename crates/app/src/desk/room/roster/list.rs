//! The page of students: who is in which group, who was away, and what each gets.

use super::gradebook::{Tally, got, tally};
use super::kept::{Students, keep_list, students};
use crate::desk::room::{Kind, Room};
use crate::desk::{DeskError, Wording};
use barm_domain::grades::Score;
use barm_domain::marks::{Open, OwnMark, points_of};
use barm_domain::roster::{GroupList, Place, Shown};
use jiff::Timestamp;
use std::collections::BTreeMap;

/// The page of students.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RosterView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Points that can be got.
    pub(crate) most: usize,
    /// Whether any list of students is kept, also of a period that the plan has no more.
    pub(crate) keeps_any: bool,
    /// Period by period.
    pub(crate) periods: Vec<PeriodList>,
}

/// The students of one period.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct PeriodList {
    /// Name of the period.
    pub(crate) name: String,
    /// Its groups.
    pub(crate) groups: u32,
    /// Title of the class, if one was chosen.
    pub(crate) section: Option<Shown>,
    /// Which state of the roster this is; a form sends it back.
    pub(crate) stamp: i64,
    /// Whether groups were saved; if not, the rows are a first proposal.
    pub(crate) saved: bool,
    /// The students, in the order of the roster.
    pub(crate) rows: Vec<ListRow>,
    /// What all of them get.
    pub(crate) tally: Tally,
}

/// A student.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ListRow {
    /// Words to show.
    pub(crate) shown: Shown,
    /// Group, and whether absent.
    pub(crate) place: Place,
    /// A mark of the student's own, as it is typed; mostly blank.
    pub(crate) own: String,
    /// The teacher's words with it.
    pub(crate) words: String,
    /// What the student gets.
    pub(crate) gets: Gets,
}

/// What a student gets, as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Gets {
    /// A score.
    Score(Score),
    /// Nothing yet.
    Open(Open),
    /// Groups were not saved yet.
    NoGroups,
}

/// A row of the form.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct TypedRow {
    /// Number of the group; blank is none.
    pub(crate) group: String,
    /// Whether absent.
    pub(crate) absent: bool,
    /// A mark of the student's own.
    pub(crate) own: String,
    /// Words with it.
    pub(crate) words: String,
}

/// What came of saving a period.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum SavedList {
    /// It is on disk.
    Kept,
    /// The roster is another by now, or there is none; nothing was changed.
    Newer,
    /// Place of the student and what is wrong; nothing was changed.
    Faults(Vec<(usize, String)>),
}

/// Periods of the plan with their groups.
pub(super) fn plan_periods(room: &Room) -> Vec<(String, u32)> {
    room.read(|scene| {
        scene.plan.periods.iter().map(|one| (one.name.clone(), one.groups)).collect()
    })
}

/// The page of students. Waits for the disk.
pub(crate) fn roster_view(room: &Room, w: Wording) -> Result<RosterView, DeskError> {
    let words = room.all_words()?;
    let kept = students(&words);
    let (rubric, work) = super::gradebook::work(room, &words)?;
    let mut periods = Vec::new();
    for (name, groups) in plan_periods(room) {
        let Some(own) = kept.get(&name) else {
            periods.push(PeriodList {
                name,
                groups,
                section: None,
                stamp: 0,
                saved: false,
                rows: Vec::new(),
                tally: Tally::default(),
            });
            continue;
        };
        let saved = own.list.is_some();
        let list = own.list.as_ref().map_or_else(
            || GroupList::even(&own.section, groups),
            |list| list.carried(&own.section, groups),
        );
        let row = |one: &barm_domain::roster::Student| {
            let mark = own.own.get(&one.id);
            let gets = match got(w, &rubric, (&name, groups), &work, own, &one.id) {
                Some(Ok(grade)) => Gets::Score(grade.0),
                Some(Err(open)) => Gets::Open(open),
                None => Gets::NoGroups,
            };
            ListRow {
                shown: one.shown.clone(),
                place: list.place(&one.id),
                own: mark.map(OwnMark::typed).unwrap_or_default(),
                words: mark.map(|mark| mark.words.clone()).unwrap_or_default(),
                gets,
            }
        };
        let rows: Vec<ListRow> = own.section.students.iter().map(row).collect();
        let tally = tally(rows.iter().map(|row| row.gets));
        let (section, stamp) = (Some(own.section.title.clone()), own.stamp);
        periods.push(PeriodList { name, groups, section, stamp, saved, rows, tally });
    }
    let title = room.read(|scene| scene.plan.title.clone());
    let (most, keeps_any) = (points_of(&rubric), !kept.is_empty());
    Ok(RosterView { id: room.id, kind: room.kind, title, most, keeps_any, periods })
}

/// Keeps who is in which group of a period. All of it or nothing. Waits for the disk.
pub(crate) fn save_list(
    room: &Room,
    (period, stamp): (&str, i64),
    typed: &[TypedRow],
    now: Timestamp,
) -> Result<SavedList, DeskError> {
    let periods = plan_periods(room);
    let groups = periods.iter().find(|(name, _)| name == period).map(|(_, groups)| *groups);
    let own = students(&room.all_words()?).remove(period);
    let (Some(groups), Some(mut own)) = (groups, own) else { return Ok(SavedList::Newer) };
    if own.stamp != stamp || typed.len() != own.section.students.len() {
        return Ok(SavedList::Newer);
    }
    let rubric = crate::desk::room::marks::rubric(room)?;
    let before = (own.list.clone(), own.own.clone());
    let (mut list, mut marks, mut faults) = (GroupList::default(), BTreeMap::new(), Vec::new());
    for (at, (student, row)) in own.section.students.iter().zip(typed).enumerate() {
        let group = row.group.trim();
        // What is no number is no group of a page of ours.
        let group = if group.is_empty() { None } else { Some(group.parse().unwrap_or(0)) };
        let place = Place { group, absent: row.absent };
        if let Err(why) = list.put((&own.section, groups), &student.id, place) {
            faults.push((at, why.to_string()));
        }
        match OwnMark::read(&rubric, &row.own, &row.words) {
            Ok(Some(mark)) => {
                marks.insert(student.id.clone(), mark);
            }
            Ok(None) => {}
            Err(why) => faults.push((at, why.to_string())),
        }
    }
    if !faults.is_empty() {
        return Ok(SavedList::Faults(faults));
    }
    own = Students { list: Some(list), own: marks, ..own };
    if before != (own.list.clone(), own.own.clone()) {
        keep_list(room, period, &own, now)?;
    }
    Ok(SavedList::Kept)
}
