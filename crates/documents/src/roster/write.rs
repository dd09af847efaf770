//! From grades to a zip of tables that a gradebook takes.

use super::{Version, columns};
use crate::bundle::pack;
use crate::guard::guarded;
use crate::rfc4180;
use barm_domain::grades::{Grades, Score, Work};
use barm_domain::roster::Id;
use std::borrow::Cow;

/// Grades as a zip, and what could not be put into it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The zip.
    pub zip: Vec<u8>,
    /// Grades without points, which version 1.1 has no way to write; a blank or a 0 would be
    /// counted as a grade. Version 1.2 has them all.
    pub without_points: usize,
}

/// Why grades cannot be written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotWritten {
    /// A gradebook wants to know the term.
    #[error(
        "the section {section} has no term in the roster it came from, and a gradebook wants one; \
         export the roster again with terms, or write plain CSV"
    )]
    NoTerm {
        /// The section.
        section: Id,
    },
    /// Version 1.2 wants to know the school.
    #[error(
        "the section {section} has no school in the roster it came from, and OneRoster 1.2 wants \
         one; export the roster again with schools, or write version 1.1 or plain CSV"
    )]
    NoSchool {
        /// The section.
        section: Id,
    },
    /// The id of a grade, made of those of the work and the student, would be none.
    #[error(
        "the ids of work {work} and student {student} make no id together; give the work a short id \
         that begins with a letter"
    )]
    NoId {
        /// The work.
        work: Id,
        /// The student.
        student: Id,
    },
}

/// The one category under which all work stands.
const CATEGORY: (&str, &str) = ("barm-class-practical", "Class practical");

/// Writes grades as OneRoster CSV files in a zip: `manifest.csv`, `categories.csv`, `lineItems.csv`
/// and `results.csv`, all of them whole (“bulk”). No name of a student is in it.
///
/// Titles and comments that a spreadsheet would take for a formula get an apostrophe before them.
/// Ids do not, for the gradebook would not know them again: [`Id`] lets none in that could do harm.
/// The same grade has the same id in every export, so a gradebook can write over an earlier one.
///
/// # Errors
/// [`NotWritten`] if the roster did not say what a gradebook has to know.
pub fn write(grades: &Grades, version: Version) -> Result<Written, NotWritten> {
    let section = grades.section();
    let no_term = || NotWritten::NoTerm { section: section.id.clone() };
    let term = section.term.as_ref().ok_or_else(no_term)?;
    let no_school = || NotWritten::NoSchool { section: section.id.clone() };
    let school = match version {
        Version::V1_1 => None,
        Version::V1_2 => Some(section.school.as_ref().ok_or_else(no_school)?),
    };
    let category = |head: &str| match head {
        "sourcedId" => Cow::Borrowed(CATEGORY.0),
        "title" => Cow::Borrowed(CATEGORY.1),
        _ => Cow::Borrowed(""),
    };
    let heads = columns::categories(version);
    let row = heads.iter().map(|head| category(head)).collect::<Vec<_>>();
    let categories = rfc4180::write(&heads, [row].into_iter());

    let heads = columns::line_items(version);
    let line_item = |work: &Work, head: &str| -> Cow<'static, str> {
        Cow::Owned(match head {
            "sourcedId" => work.id.to_string(),
            "title" => guarded(&work.title),
            "description" => guarded(&work.asks),
            "assignDate" => work.given.to_string(),
            "dueDate" => work.due.to_string(),
            "classSourcedId" => section.id.to_string(),
            "categorySourcedId" => CATEGORY.0.to_owned(),
            "gradingPeriodSourcedId" | "academicSessionSourcedId" => term.to_string(),
            "schoolSourcedId" => school.map(ToString::to_string).unwrap_or_default(),
            "resultValueMin" => "0".to_owned(),
            "resultValueMax" => points(work.most),
            _ => String::new(),
        })
    };
    let works = grades.works().iter();
    let works =
        works.map(|work| heads.iter().map(|head| line_item(work, head)).collect::<Vec<_>>());
    let line_items = rfc4180::write(heads, works);

    let heads = columns::results(version);
    let mut rows = Vec::new();
    let mut without_points = 0;
    for (work, student, grade) in grades.all() {
        let score = match grade.score {
            Score::Points(score) => Some(points(score)),
            Score::Missing | Score::Excused => None,
        };
        if score.is_none() && version == Version::V1_1 {
            without_points += 1;
            continue;
        }
        let id = format!("{}:{student}", work.id);
        let id = Id::new(&id).map_err(|_| NotWritten::NoId {
            work: work.id.clone(),
            student: student.clone(),
        })?;
        let cell = |head: &&str| -> Cow<'static, str> {
            Cow::Owned(match *head {
                "sourcedId" => id.to_string(),
                "lineItemSourcedId" => work.id.to_string(),
                "studentSourcedId" => student.to_string(),
                "scoreStatus" => status(grade.score).to_owned(),
                "score" => score.clone().unwrap_or_default(),
                "scoreDate" => grade.on.to_string(),
                "comment" => guarded(&grade.comment),
                "classSourcedId" => section.id.to_string(),
                "missing" => (grade.score == Score::Missing).to_string(),
                "inProgress" | "incomplete" | "late" => "false".to_owned(),
                _ => String::new(),
            })
        };
        rows.push(heads.iter().map(cell).collect::<Vec<_>>());
    }
    let results = rfc4180::write(&heads, rows.into_iter());
    let zip = pack(&[
        ("manifest.csv", &manifest(version)),
        ("categories.csv", &categories),
        ("lineItems.csv", &line_items),
        ("results.csv", &results),
    ]);
    Ok(Written { zip, without_points })
}

/// Points without an exponent, and without a sign before 0.
pub(super) fn points(value: f64) -> String {
    (value + 0.0).to_string()
}

fn status(score: Score) -> &'static str {
    match score {
        Score::Points(_) => "fully graded",
        Score::Missing => "not submitted",
        Score::Excused => "exempt",
    }
}

fn manifest(version: Version) -> Vec<u8> {
    let pair = |name: String, value: &'static str| [Cow::Owned(name), Cow::Borrowed(value)];
    let mode = |file: &&str| match *file {
        "categories" | "lineItems" | "results" => "bulk",
        _ => "absent",
    };
    let files = columns::files(version).iter();
    let files = files.map(|file| pair(format!("file.{file}"), mode(file)));
    let rows = [
        pair("manifest.version".into(), "1.0"),
        pair("oneroster.version".into(), version.word()),
    ]
    .into_iter()
    .chain(files)
    .chain([pair("source.systemName".into(), "Barm")]);
    rfc4180::write(&["propertyName", "value"], rows)
}
