//! Grades as one plain table, to be looked at or typed from.

use super::write::points;
use crate::guard::guarded;
use crate::rfc4180;
use barm_domain::grades::{Grade, Grades, Score};
use std::borrow::Cow;

/// Grades as a table in UTF-8 with a mark, for spreadsheets: a row a student of the section, with
/// id and name, and for each work a column of points and one of comments. A student without a grade
/// has blank cells; instead of points may stand `missing` or `excused`.
///
/// Every cell that a spreadsheet would take for a formula gets an apostrophe before it, ids too: this
/// table is for people. An id or a word that has an apostrophe of its own gets a second one.
pub fn plain(grades: &Grades) -> Vec<u8> {
    let mut heads = vec!["student id".to_owned(), "student".to_owned()];
    for work in grades.works() {
        heads.push(guarded(&format!("{} (of {})", work.title, points(work.most))));
        heads.push(guarded(&format!("{}: comment", work.title)));
    }
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let rows = grades.section().students.iter().map(|student| {
        let given = grades.works().iter().flat_map(|work| {
            let grade = grades.of(&work.id, &student.id);
            let comment = grade.map(|grade| guarded(&grade.comment)).unwrap_or_default();
            [grade.map(score).unwrap_or_default(), comment]
        });
        let who = [guarded(student.id.as_str()), guarded(student.shown.words())];
        who.into_iter().chain(given).map(Cow::Owned).collect::<Vec<_>>()
    });
    let mut table = b"\xef\xbb\xbf".to_vec();
    table.extend(rfc4180::write(&heads, rows));
    table
}

fn score(grade: &Grade) -> String {
    match grade.score {
        Score::Points(value) => points(value),
        Score::Missing => "missing".to_owned(),
        Score::Excused => "excused".to_owned(),
    }
}
