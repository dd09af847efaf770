//! How lists of students lie on disk: as words, which can be deleted, and which go by themselves.
//!
//! They are written without the names of their parts, so that every stretch of such a text holds something of a
//! student: after a deletion, whatever of it still stood anywhere would be found by `traces`.

use crate::desk::room::Room;
use crate::desk::room::all_words::{AllWords, Dated};
use crate::desk::room::proposals::Group;
use crate::desk::{DeskError, doors};
use barm_domain::grades::Score;
use barm_domain::marks::OwnMark;
use barm_domain::record::WordsKey;
use barm_domain::roster::{GroupList, Id, Place, Section, Shown, Student};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

const ROSTER: &str = "roster";
const LIST: &str = "group-list";

/// When, period, the class, its students by id and words to show.
#[derive(Serialize, Deserialize)]
struct KeptRoster(i64, String, KeptSection, Vec<(String, String)>);

/// Id, title, code, school, term.
type KeptSection = (String, String, Option<String>, Option<String>, Option<String>);

/// When, period, id of the class; group by id, who was away, marks of their own by id with words.
#[derive(Serialize, Deserialize)]
struct KeptList(
    i64,
    String,
    String,
    Vec<(String, u32)>,
    Vec<String>,
    Vec<(String, KeptScore, String)>,
);

/// Points; or none, and whether that is excused.
type KeptScore = (Option<f64>, bool);

/// The students of a period.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Students {
    /// The class.
    pub(super) section: Section,
    /// Which state of the roster this is.
    pub(super) stamp: i64,
    /// Who is in which group, once that was saved.
    pub(super) list: Option<GroupList>,
    /// Marks of students apart from their group.
    pub(super) own: BTreeMap<Id, OwnMark>,
}

/// Name of the setting that holds the random part of ids of work.
fn work(id: i64) -> String {
    format!("gradebook-{id}")
}

/// The random part of ids of work, by which a gradebook knows it again; it says nothing of anybody.
pub(super) fn work_mark(room: &Room) -> Result<String, DeskError> {
    Ok(room.store.setting(&work(room.id))?.unwrap_or_else(|| room.id.to_string()))
}

fn section(kept: KeptRoster) -> Option<(Section, i64)> {
    let KeptRoster(at, _, (id, title, code, school, term), students) = kept;
    let an_id = |written: String| Id::new(&written).ok();
    let student = |(id, shown): (String, String)| {
        Some(Student { shown: Shown::of(&shown), id: an_id(id)? })
    };
    let section = Section {
        title: Shown::of(&title),
        id: an_id(id)?,
        code: code.map(|code| Shown::of(&code)),
        school: school.and_then(an_id),
        term: term.and_then(an_id),
        students: students.into_iter().filter_map(student).collect(),
    };
    Some((section, at))
}

impl Dated for KeptRoster {
    /// The period.
    type Of = String;

    fn at(&self) -> i64 {
        self.0
    }

    fn of(&self) -> String {
        self.1.clone()
    }
}

impl Dated for KeptList {
    /// The period.
    type Of = String;

    fn at(&self) -> i64 {
        self.0
    }

    fn of(&self) -> String {
        self.1.clone()
    }
}

/// The students of every period that has some, by the newest that was kept.
pub(super) fn students(written: &AllWords) -> BTreeMap<String, Students> {
    let mut lists = written.newest::<KeptList>(LIST);
    let of = |(period, kept)| {
        let (section, stamp) = section(kept)?;
        let mut students = Students { section, stamp, list: None, own: BTreeMap::new() };
        if let Some(list) = lists.remove(&period) {
            apply(&mut students, list);
        }
        Some((period, students))
    };
    written.newest::<KeptRoster>(ROSTER).into_iter().filter_map(of).collect()
}

/// Puts students where a list has them. A list of another class says nothing of this one.
fn apply(students: &mut Students, kept: KeptList) {
    let KeptList(_, _, of, groups, absent, own) = kept;
    let section = &students.section;
    if of != section.id.as_str() {
        return;
    }
    let absent: BTreeSet<String> = absent.into_iter().collect();
    let groups: BTreeMap<String, u32> = groups.into_iter().collect();
    let mut list = GroupList::default();
    for student in &section.students {
        let id = student.id.as_str();
        let place = Place { group: groups.get(id).copied(), absent: absent.contains(id) };
        // How many groups there are is asked where it is shown: the plan may have changed since.
        let put = list.put((section, u32::MAX), &student.id, place);
        debug_assert!(put.is_ok());
    }
    let own = own.into_iter().filter_map(|(id, (points, excused), words)| {
        let none = if excused { Score::Excused } else { Score::Missing };
        let mark = OwnMark { score: points.map_or(none, Score::Points), words };
        Some((section.student(&Id::new(&id).ok()?)?.id.clone(), mark))
    });
    students.own = own.collect();
    students.list = Some(list);
}

/// Keeps the students of periods, in place of those that these periods had before, which are overwritten on disk.
/// Waits for the disk.
pub(super) fn keep_students(
    room: &Room,
    chosen: &[(String, Section)],
    now: Timestamp,
) -> Result<(), DeskError> {
    if room.store.setting(&work(room.id))?.is_none() {
        let mark: String = doors::words_key()?.to_string().chars().take(12).collect();
        room.store.keep_setting(&work(room.id), &mark)?;
    }
    let mut older = Vec::new();
    let mut at = now.as_millisecond();
    for (key, kept) in room.all_words()?.of_kind::<KeptRoster>(ROSTER) {
        if chosen.iter().any(|(period, _)| *period == kept.1) {
            older.push(key);
            at = at.max(kept.0.saturating_add(1));
        }
    }
    for (period, section) in chosen {
        let text = |id: &Id| id.as_str().to_owned();
        let about = (
            text(&section.id),
            section.title.words().to_owned(),
            section.code.as_ref().map(|code| code.words().to_owned()),
            section.school.as_ref().map(text),
            section.term.as_ref().map(text),
        );
        let student = |one: &Student| (text(&one.id), one.shown.words().to_owned());
        let students = section.students.iter().map(student).collect();
        room.keep_written(ROSTER, &KeptRoster(at, period.clone(), about, students))?;
    }
    if !older.is_empty() {
        room.store.forget_words(&older)?;
    }
    Ok(())
}

/// Keeps who is in which group of a period, and marks of students apart from it. Waits for the disk.
pub(super) fn keep_list(
    room: &Room,
    period: &str,
    students: &Students,
    now: Timestamp,
) -> Result<(), DeskError> {
    let mut at = now.as_millisecond();
    if let Some(kept) = room.all_words()?.newest::<KeptList>(LIST).get(period) {
        at = at.max(kept.0.saturating_add(1));
    }
    let list = students.list.clone().unwrap_or_default();
    let text = |id: &Id| id.as_str().to_owned();
    let groups = list.places().filter_map(|(id, place)| Some((text(id), place.group?)));
    let absent = list.places().filter(|(_, place)| place.absent).map(|(id, _)| text(id));
    let own = students.own.iter().map(|(id, mark)| {
        let score = match mark.score {
            Score::Points(points) => (Some(points), false),
            Score::Missing => (None, false),
            Score::Excused => (None, true),
        };
        (text(id), score, mark.words.clone())
    });
    let of = text(&students.section.id);
    let kept =
        KeptList(at, period.to_owned(), of, groups.collect(), absent.collect(), own.collect());
    room.keep_written(LIST, &kept)
}

/// Deletes every list of students of an investigation, overwritten on disk and in backups that can be reached. Gives
/// how many texts went. Waits for the disk.
pub(crate) fn put_away(room: &Room) -> Result<u64, DeskError> {
    let all = room.store.all_words(room.id)?.into_iter();
    let own = all.filter(|(_, kind, _)| kind == ROSTER || kind == LIST);
    let keys: Vec<WordsKey> = own.map(|(key, ..)| key).collect();
    if keys.is_empty() {
        return Ok(0);
    }
    Ok(room.store.forget_words(&keys)?.words)
}

/// Who is in a group, as the teacher's marking page shows it: name, and whether absent.
pub(crate) fn students_of(written: &AllWords, group: &Group) -> Vec<(Shown, bool)> {
    let all = students(written);
    let Some((students, list)) =
        all.get(&group.0).and_then(|students| Some((students, students.list.as_ref()?)))
    else {
        return Vec::new();
    };
    let own = list.of_group(&students.section, group.1).into_iter();
    own.map(|one| (one.shown.clone(), list.place(&one.id).absent)).collect()
}
