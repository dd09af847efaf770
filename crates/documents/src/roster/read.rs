//! From a zip of tables to a roster.

use super::manifest::Manifest;
use super::{Passed, Version};
use crate::bundle::{Bundle, Limits, Refused};
use crate::readings::quoted::quoted;
use crate::rfc4180::{self, Column, Row, needed, welcome};
use barm_domain::roster::{Id, Roster, Section, Shown, Student};
use jiff::civil::Date;
use std::collections::{BTreeMap, BTreeSet, HashSet};

/// What was taken from an export.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// Sections with their students.
    pub roster: Roster,
    /// The version it was written in.
    pub version: Version,
    /// What was passed over.
    pub passed: Passed,
}

/// Reads an export of OneRoster CSV files in a zip, as the school stands on that day.
///
/// Ids of students, their preferred or given and family names, and ids, titles, codes, schools and
/// first terms of the classes they are in are taken; everything else is dropped.
///
/// # Errors
/// [`Refused`] with one sentence. Nothing of a refused export is kept.
pub fn read(zip: &[u8], on: Date) -> Result<Taken, Refused> {
    let mut bundle = Bundle::open(zip, &Limits::USUAL)?;
    let manifest = Manifest::of(&mut bundle)?;
    let mut passed = Passed::default();
    let enrolled = enrolled(&manifest.whole(&mut bundle, "enrollments")?, on, &mut passed)?;
    let wanted: HashSet<&str> = enrolled.iter().map(|one| one.class.as_str()).collect();
    let mut classes = classes(&manifest.whole(&mut bundle, "classes")?, &wanted, &mut passed)?;
    let wanted: HashSet<&str> = enrolled.iter().map(|one| one.user.as_str()).collect();
    let users = users(&manifest.whole(&mut bundle, "users")?, &wanted, &mut passed)?;
    let mut seen = BTreeSet::new();
    for one in &enrolled {
        match (classes.get_mut(&one.class), users.get(&one.user)) {
            (None, _) => passed.no_class += 1,
            (_, None) => passed.no_user += 1,
            _ if !seen.insert((&one.class, &one.user)) => passed.twice += 1,
            (Some(class), Some(user)) => class.students.push(user.clone()),
        }
    }
    let (sections, empty): (Vec<_>, Vec<_>) =
        classes.into_values().partition(|section| !section.students.is_empty());
    passed.empty += empty.len();
    if sections.is_empty() {
        return Err(Refused::whole(
            "no student is in any class of this export",
            "export users, classes and enrollments of your own classes together",
        ));
    }
    let roster = Roster::new(sections);
    let roster =
        roster.map_err(|error| Refused::whole(&error.to_string(), "export it again"))?;
    Ok(Taken { roster, version: manifest.version, passed })
}

/// A student in a class.
struct Enrolled {
    class: String,
    user: String,
}

const ENROLLMENTS: &str = "enrollments.csv";

fn enrolled(bytes: &[u8], on: Date, passed: &mut Passed) -> Result<Vec<Enrolled>, Refused> {
    let rows = rows(
        ENROLLMENTS,
        bytes,
        &[
            needed("sourcedId"),
            welcome("status"),
            needed("classSourcedId"),
            needed("userSourcedId"),
            needed("role"),
            welcome("endDate"),
        ],
    )?;
    let mut enrolled = Vec::new();
    for row in rows {
        let [class, user, role, end] = [2, 3, 4, 5].map(|at| row.cell(at).trim());
        if class.is_empty() || user.is_empty() {
            let what = "the enrollment names no class or no user";
            return Err(Refused::of(ENROLLMENTS, what, "export it again").on(row.line));
        }
        if is_deleted(ENROLLMENTS, &row)? {
            passed.deleted += 1;
        } else if !role.eq_ignore_ascii_case("student") {
            passed.others += 1;
        } else if is_before(end, on).map_err(|refused| refused.on(row.line))? {
            passed.ended += 1;
        } else {
            enrolled.push(Enrolled { class: class.to_owned(), user: user.to_owned() });
        }
    }
    Ok(enrolled)
}

/// Whether an end lies before that day; a blank one does not.
fn is_before(end: &str, on: Date) -> Result<bool, Refused> {
    if end.is_empty() {
        return Ok(false);
    }
    // Some write a time behind it.
    let day = end.get(..10).filter(|_| end.len() == 10 || end[10..].starts_with('T'));
    let day: Option<Date> = day.and_then(|day| day.parse().ok());
    let wrong = || {
        let what = format!("{} is no date such as 2027-06-30", quoted(end));
        Refused::of(ENROLLMENTS, what, "export it again")
    };
    day.map(|day| day < on).ok_or_else(wrong)
}

const CLASSES: &str = "classes.csv";

fn classes(
    bytes: &[u8],
    wanted: &HashSet<&str>,
    passed: &mut Passed,
) -> Result<BTreeMap<String, Section>, Refused> {
    let rows = rows(
        CLASSES,
        bytes,
        &[
            needed("sourcedId"),
            welcome("status"),
            needed("title"),
            welcome("classCode"),
            welcome("schoolSourcedId"),
            welcome("termSourcedIds"),
        ],
    )?;
    let mut classes = BTreeMap::new();
    for row in rows {
        let id = row.cell(0).trim();
        if is_deleted(CLASSES, &row)? {
            passed.deleted += 1;
        } else if !wanted.contains(id) {
            passed.empty += 1;
        } else {
            let section = Section {
                id: an_id(CLASSES, &row, id)?,
                title: Shown::of(row.cell(2)),
                code: Some(Shown::of(row.cell(3))).filter(|code| !code.is_blank()),
                school: linked(&row, row.cell(4))?,
                // Terms are parted by commas inside of the cell.
                term: linked(&row, row.cell(5).split(',').next().unwrap_or_default())?,
                students: Vec::new(),
            };
            classes.insert(id.to_owned(), section);
        }
    }
    Ok(classes)
}

/// The id of something else, if there is one.
fn linked(row: &Row, written: &str) -> Result<Option<Id>, Refused> {
    let written = written.trim();
    if written.is_empty() { Ok(None) } else { an_id(CLASSES, row, written).map(Some) }
}

const USERS: &str = "users.csv";

fn users(
    bytes: &[u8],
    wanted: &HashSet<&str>,
    passed: &mut Passed,
) -> Result<BTreeMap<String, Student>, Refused> {
    let rows = rows(
        USERS,
        bytes,
        &[
            needed("sourcedId"),
            welcome("status"),
            needed("givenName"),
            needed("familyName"),
            welcome("preferredGivenName"),
            welcome("preferredFamilyName"),
        ],
    )?;
    let mut users = BTreeMap::new();
    for row in rows {
        let id = row.cell(0).trim();
        // Who is in no class as a student is not looked at.
        if !wanted.contains(id) {
            continue;
        }
        if is_deleted(USERS, &row)? {
            passed.deleted += 1;
            continue;
        }
        let either = |preferred: usize, given: usize| {
            let preferred = Shown::of(row.cell(preferred));
            if preferred.is_blank() { Shown::of(row.cell(given)) } else { preferred }
        };
        let (given, family) = (either(4, 2), either(5, 3));
        let shown = Shown::of(&format!("{} {}", given.words(), family.words()));
        // A student without a name is shown by the id.
        let shown = if shown.is_blank() { Shown::of(id) } else { shown };
        users.insert(id.to_owned(), Student { shown, id: an_id(USERS, &row, id)? });
    }
    Ok(users)
}

/// The rows of a table whose first column is an id that no other row has.
fn rows(file: &str, bytes: &[u8], columns: &[Column]) -> Result<Vec<Row>, Refused> {
    let rows = rfc4180::read(file, bytes, columns)?;
    let mut seen = HashSet::new();
    for row in &rows {
        let id = row.cell(0).trim();
        if id.is_empty() {
            let what = "the row has no sourcedId";
            return Err(Refused::of(file, what, "export it again").on(row.line));
        }
        if !seen.insert(id) {
            let what = format!("the sourcedId {} stands there twice", quoted(id));
            return Err(Refused::of(file, what, "export it again").on(row.line));
        }
    }
    drop(seen);
    Ok(rows)
}

fn an_id(file: &str, row: &Row, written: &str) -> Result<Id, Refused> {
    Id::new(written).map_err(|error| {
        let what = format!("{} is no id: {error}", quoted(written));
        Refused::of(file, what, "ask whoever runs the school's system for plain ids")
            .on(row.line)
    })
}

/// Whether the row is marked for deletion; the second column is its status.
fn is_deleted(file: &str, row: &Row) -> Result<bool, Refused> {
    let status = row.cell(1).trim();
    match status.to_ascii_lowercase().as_str() {
        "" | "active" => Ok(false),
        // “inactive” is what version 1.0 wrote.
        "tobedeleted" | "inactive" => Ok(true),
        _ => {
            let what = format!("{} is no status; it is active or tobedeleted", quoted(status));
            Err(Refused::of(file, what, "export it again").on(row.line))
        }
    }
}
