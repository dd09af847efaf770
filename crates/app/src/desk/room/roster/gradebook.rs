//! Every student's grade of a period, as files for a gradebook.

use super::kept::{Students, students, work_mark};
use super::list::{Gets, plan_periods};
use super::take::today;
use crate::desk::room::Room;
use crate::desk::room::all_words::AllWords;
use crate::desk::room::claims::claimed;
use crate::desk::room::marks;
use crate::desk::room::proposals::Group;
use crate::desk::{DeskError, Wording, say};
use barm_documents::roster::{NotWritten, Version, plain, write};
use barm_domain::grades::{Grade, Grades, Score, Work};
use barm_domain::marks::{Given, Graded, GroupWork, Open, Rubric, graded, points_of};
use barm_domain::roster::Id;
use jiff::Timestamp;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};

/// How many students of a period get what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Tally {
    /// Students.
    pub(crate) students: usize,
    /// With points.
    pub(crate) points: usize,
    /// Not handed in.
    pub(crate) missing: usize,
    /// Excused.
    pub(crate) excused: usize,
    /// Not marked yet.
    pub(crate) open: usize,
}

/// What groups have to show.
pub(super) struct WorkOf {
    given: BTreeMap<Group, Given>,
    handed_in: BTreeSet<Group>,
}

/// Grades of one period, with files to be made of them.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Gradebook {
    /// Name of the period.
    pub(crate) period: String,
    /// How many get what.
    pub(crate) tally: Tally,
    grades: Grades,
}

/// A file of grades.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum GradeFile {
    /// For people, with names.
    Table,
    /// For a gradebook, ids only.
    For(Version),
}

impl GradeFile {
    /// All of them.
    pub(crate) const ALL: [Self; 3] =
        [Self::Table, Self::For(Version::V1_1), Self::For(Version::V1_2)];

    /// Its name, without the period.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Table => "grades.csv",
            Self::For(Version::V1_1) => "gradebook-1.1.zip",
            Self::For(Version::V1_2) => "gradebook-1.2.zip",
        }
    }

    /// Its media type.
    pub(crate) const fn kind(self) -> &'static str {
        match self {
            Self::Table => "text/csv; charset=utf-8",
            Self::For(_) => "application/zip",
        }
    }

    /// The file of that name.
    pub(crate) fn of(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.name() == name)
    }
}

impl Gradebook {
    /// A file's bytes.
    ///
    /// # Errors
    /// [`NotWritten`] if the roster did not say what a gradebook has to know.
    pub(crate) fn file(&self, file: GradeFile) -> Result<Vec<u8>, NotWritten> {
        match file {
            GradeFile::Table => Ok(plain(&self.grades)),
            GradeFile::For(version) => write(&self.grades, version).map(|written| written.zip),
        }
    }

    /// A file's name with the period in it, of signs that stand in any file name.
    pub(crate) fn name(&self, file: GradeFile) -> String {
        let plain = |c: char| if c.is_ascii_alphanumeric() || c == '-' { c } else { '_' };
        let period: String = self.period.chars().map(plain).collect();
        format!("period-{period}-{}", file.name())
    }
}

/// What groups have to show, and by which rubric. Waits for the disk.
pub(super) fn work(room: &Room, written: &AllWords) -> Result<(Rubric, WorkOf), DeskError> {
    let (rubric, given) = (marks::rubric(room)?, marks::given(written));
    let handed_in = claimed(written).into_keys().collect();
    Ok((rubric, WorkOf { given, handed_in }))
}

/// Score and comment of a student; nothing while groups were not saved.
pub(super) fn got(
    w: Wording,
    rubric: &Rubric,
    (period, groups): (&str, u32),
    work: &WorkOf,
    students: &Students,
    student: &Id,
) -> Option<Result<(Score, String), Open>> {
    let mut place = students.list.as_ref()?.place(student);
    // A plan may have lost groups since.
    place.group = place.group.filter(|group| (1..=groups).contains(group));
    let group = place.group.map(|group| {
        let who = (period.to_owned(), group);
        GroupWork { given: work.given.get(&who), handed_in: work.handed_in.contains(&who) }
    });
    let own = students.own.get(student);
    let got = graded(rubric, place, group.unwrap_or_default(), own);
    Some(got.map(|got| (got.score, comment(w, &got))))
}

/// The teacher's words to a student: what is this student's alone first, then the remarks strand by strand.
fn comment(w: Wording, got: &Graded) -> String {
    let ended = |words: &str| {
        let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
        let ends = words.ends_with(['.', '!', '?', '…', '”', '"']);
        if words.is_empty() || ends { words } else { format!("{words}.") }
    };
    let basis = got.class_data.then(|| say!(w, "roster-on-class-data"));
    let own = (!got.words.is_empty()).then(|| ended(&got.words));
    let remarks = got.remarks.iter();
    let remarks = remarks.map(|(strand, words)| ended(&format!("{strand}: {words}")));
    basis.into_iter().chain(own).chain(remarks).collect::<Vec<_>>().join(" ")
}

pub(super) fn tally(gets: impl Iterator<Item = Gets>) -> Tally {
    let mut tally = Tally::default();
    for one in gets {
        tally.students += 1;
        match one {
            Gets::Score(Score::Points(_)) => tally.points += 1,
            Gets::Score(Score::Missing) => tally.missing += 1,
            Gets::Score(Score::Excused) => tally.excused += 1,
            Gets::Open(_) | Gets::NoGroups => tally.open += 1,
        }
    }
    tally
}

/// What of a period's grades can be had as files.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Offered {
    /// Name of the period.
    pub(crate) period: String,
    /// How many get what.
    pub(crate) tally: Tally,
    /// Each file, and why it cannot be made, if it cannot.
    pub(crate) files: Vec<(GradeFile, Option<NotWritten>)>,
}

/// What can be had of every period whose groups were saved. Waits for the disk.
pub(crate) fn grades_offered(
    room: &Room,
    w: Wording,
    now: Timestamp,
) -> Result<Vec<Offered>, DeskError> {
    let mut all = Vec::new();
    for (period, _) in plan_periods(room) {
        let Some(book) = gradebook(room, w, &period, now)? else { continue };
        let tried = GradeFile::ALL.map(|file| (file, book.file(file).err()));
        all.push(Offered { period, tally: book.tally, files: tried.to_vec() });
    }
    Ok(all)
}

/// The grades of a period; nothing if its groups were not saved. Waits for the disk.
pub(crate) fn gradebook(
    room: &Room,
    w: Wording,
    period: &str,
    now: Timestamp,
) -> Result<Option<Gradebook>, DeskError> {
    let periods = plan_periods(room);
    let Some((_, groups)) = periods.into_iter().find(|(name, _)| name == period) else {
        return Ok(None);
    };
    let words = room.all_words()?;
    let Some(own) = students(&words).remove(period).filter(|own| own.list.is_some()) else {
        return Ok(None);
    };
    let (rubric, work_of) = work(room, &words)?;
    let (title, held) = room.read(|scene| {
        let day = scene.plan.period(period).map(|one| one.day.clone());
        let day = scene.plan.days.iter().find(|one| Some(&one.name) == day.as_ref());
        (scene.plan.title.clone(), day.map(|day| day.date))
    });
    let on = today(room, now);
    let held = held.unwrap_or(on);
    let class = Sha256::digest(own.section.id.as_str().as_bytes());
    let class: String = class.iter().take(4).map(|byte| format!("{byte:02x}")).collect();
    let id = format!("barm-{}-{class}", work_mark(room)?);
    let id = Id::new(&id).map_err(|_| DeskError::Stopped)?;
    let most = points_of(&rubric) as f64;
    let asks = say!(w, "roster-work-asks");
    let work = Work { id: id.clone(), title, asks, given: held, due: held, most };
    let mut grades = Grades::new(own.section.clone(), vec![work])?;
    let mut gets = Vec::new();
    for student in &own.section.students {
        let got = got(w, &rubric, (period, groups), &work_of, &own, &student.id);
        gets.push(match got {
            Some(Ok((score, comment))) => {
                grades.give(&id, &student.id, Grade { score, comment, on })?;
                Gets::Score(score)
            }
            Some(Err(open)) => Gets::Open(open),
            None => Gets::NoGroups,
        });
    }
    let tally = tally(gets.into_iter());
    Ok(Some(Gradebook { period: period.to_owned(), tally, grades }))
}
