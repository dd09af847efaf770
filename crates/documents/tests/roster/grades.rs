//! Grades out: into a gradebook's tables and into a plain one.

use crate::by_hand::cases;
use crate::school::School;
use barm_documents::bundle::{Bundle, Limits};
use barm_documents::roster::{NotWritten, Version, plain, write};
use barm_domain::grades::{Grade, Grades, Score, Work};
use barm_domain::roster::{Id, Section, Shown, Student};
use jiff::civil::date;
use proptest::prelude::*;
use std::collections::BTreeMap;

fn id(written: &str) -> Id {
    Id::new(written).unwrap()
}

fn work(name: &str, title: &str, most: f64) -> Work {
    let (given, due) = (date(2027, 3, 9), date(2027, 3, 12));
    Work { id: id(name), title: title.into(), asks: "With evidence.".into(), given, due, most }
}

fn grade(score: Score, comment: &str) -> Grade {
    Grade { score, comment: comment.into(), on: date(2027, 3, 15) }
}

/// Grades of the invented school's first section: two pieces of work, two students.
pub(crate) fn grades() -> Grades {
    let taken = School::of(Version::V1_1).taken();
    let section = taken.roster.section(&id("c1")).unwrap().clone();
    let works = vec![work("w1", "Conclusion", 10.0), work("w2", "=Plan", 4.5)];
    let mut grades = Grades::new(section, works).unwrap();
    let good = grade(Score::Points(9.5), "Good, \"clear\"\nand short");
    grades.give(&id("w1"), &id("s1"), good).unwrap();
    grades.give(&id("w1"), &id("s2"), grade(Score::Missing, "")).unwrap();
    grades.give(&id("w2"), &id("s1"), grade(Score::Points(0.0), "+1 for trying")).unwrap();
    grades.give(&id("w2"), &id("s2"), grade(Score::Excused, "ill")).unwrap();
    grades
}

/// The files of a zip.
pub(crate) fn files(zip: &[u8]) -> BTreeMap<String, Vec<u8>> {
    let mut bundle = Bundle::open(zip, &Limits::USUAL).unwrap();
    let names: Vec<String> = bundle.names().map(str::to_owned).collect();
    let read = |name: String| {
        let bytes = bundle.read(&name).unwrap().unwrap();
        (name, bytes)
    };
    names.into_iter().map(read).collect()
}

/// Rows of a table, head by head.
fn rows(bytes: &[u8]) -> Vec<BTreeMap<String, String>> {
    csv::Reader::from_reader(bytes).deserialize().map(Result::unwrap).collect()
}

#[test]
fn a_gradebook_gets_works_and_results() {
    let written = write(&grades(), Version::V1_2).unwrap();
    assert_eq!(written.without_points, 0);
    let files = files(&written.zip);
    let works = rows(&files["lineItems.csv"]);
    assert_eq!(works.len(), 2);
    assert_eq!(
        (works[0]["sourcedId"].as_str(), works[0]["title"].as_str()),
        ("w1", "Conclusion")
    );
    assert_eq!(works[0]["classSourcedId"], "c1");
    assert_eq!(works[0]["academicSessionSourcedId"], "t1");
    assert_eq!(works[0]["schoolSourcedId"], "o1");
    assert_eq!(
        (works[0]["assignDate"].as_str(), works[0]["dueDate"].as_str()),
        ("2027-03-09", "2027-03-12")
    );
    assert_eq!(
        (works[1]["resultValueMin"].as_str(), works[1]["resultValueMax"].as_str()),
        ("0", "4.5")
    );
    assert_eq!(works[1]["title"], "'=Plan");
    let category = &rows(&files["categories.csv"])[0]["sourcedId"];
    assert!(works.iter().all(|work| work["categorySourcedId"] == *category));
    let results = rows(&files["results.csv"]);
    let of = |result: &BTreeMap<String, String>| {
        ["studentSourcedId", "lineItemSourcedId", "scoreStatus", "score", "comment", "missing"]
            .map(|head| result[head].clone())
    };
    let results: Vec<[String; 6]> = results.iter().map(of).collect();
    let expected = [
        ["s1", "w1", "fully graded", "9.5", "Good, \"clear\"\nand short", "false"],
        ["s2", "w1", "not submitted", "", "", "true"],
        ["s1", "w2", "fully graded", "0", "'+1 for trying", "false"],
        ["s2", "w2", "exempt", "", "ill", "false"],
    ];
    assert_eq!(results, expected.map(|row| row.map(str::to_owned)));
}

#[test]
fn version_1_1_leaves_out_grades_without_points_and_says_so() {
    let written = write(&grades(), Version::V1_1).unwrap();
    assert_eq!(written.without_points, 2);
    let results = rows(&files(&written.zip)["results.csv"]);
    assert_eq!(results.len(), 2);
    assert!(results.iter().all(|row| row["studentSourcedId"] == "s1"));
    assert_eq!(rows(&files(&written.zip)["lineItems.csv"])[0]["gradingPeriodSourcedId"], "t1");
}

#[test]
fn no_name_is_in_what_a_gradebook_gets_and_the_same_grades_make_the_same_bytes() {
    for version in Version::ALL {
        let zip = write(&grades(), version).unwrap().zip;
        assert_eq!(zip, write(&grades(), version).unwrap().zip);
        for (name, bytes) in files(&zip) {
            let text = String::from_utf8(bytes).unwrap();
            assert!(!text.contains("Ann") && !text.contains("Bea"), "{name}");
        }
    }
}

#[test]
fn what_a_gradebook_wants_to_know_has_to_be_known() {
    let mut section = grades().section().clone();
    section.school = None;
    let without = Grades::new(section.clone(), Vec::new()).unwrap();
    assert!(write(&without, Version::V1_1).is_ok());
    let refused = write(&without, Version::V1_2).unwrap_err();
    assert!(matches!(refused, NotWritten::NoSchool { .. }), "{refused}");
    section.term = None;
    let without = Grades::new(section, Vec::new()).unwrap();
    let refused = write(&without, Version::V1_1).unwrap_err();
    assert!(refused.to_string().contains("no term"), "{refused}");
    let long = Student { shown: Shown::of("x"), id: id(&"9".repeat(254)) };
    let mut section = grades().section().clone();
    section.students.push(long.clone());
    let mut grades = Grades::new(section, vec![work("w1", "Conclusion", 1.0)]).unwrap();
    grades.give(&id("w1"), &long.id, grade(Score::Points(1.0), "")).unwrap();
    assert!(matches!(write(&grades, Version::V1_1), Err(NotWritten::NoId { .. })));
}

#[test]
fn a_plain_table_has_a_row_for_every_student() {
    let table = plain(&grades());
    let expected = "\u{feff}student id,student,Conclusion (of 10),Conclusion: comment,'=Plan (of 4.5),'=Plan: comment\r\n\
        s1,Ann Invented,9.5,\"Good, \"\"clear\"\"\nand short\",0,'+1 for trying\r\n\
        s2,\"Bea \"\"B\"\" Made Up\",missing,,excused,ill\r\n";
    assert_eq!(String::from_utf8(table).unwrap(), expected);
}

fn any_id() -> impl Strategy<Value = Id> {
    "[-@'=+a-zA-Z0-9{}._|!()\" ,;é]{1,12}"
        .prop_filter_map("an id", |written| Id::new(written.trim()).ok())
}

fn any_text() -> impl Strategy<Value = String> {
    "[-=+@'a-zA-Z0-9 é,;\"\n\t|!()]{0,16}"
}

prop_compose! {
    fn any_grades()(
        ids in prop::collection::btree_set(any_id(), 1..5),
        section in any_id(), term in any_id(), school in any_id(),
        titles in prop::collection::vec((any_text(), any_text(), 0.5_f64..200.0), 1..4),
        given in prop::collection::vec((any::<prop::sample::Index>(), any::<prop::sample::Index>(), 0.0_f64..1.0, 0..4, any_text()), 0..8),
    ) -> Grades {
        let student = |id: &Id| Student { shown: Shown::of(&format!("={id} Name")), id: id.clone() };
        let ids: Vec<Id> = ids.into_iter().collect();
        let section = Section {
            title: Shown::of("S"), id: section, code: None, school: Some(school), term: Some(term),
            students: ids.iter().map(student).collect(),
        };
        let works: Vec<Work> = titles.into_iter().enumerate().map(|(at, (title, asks, most))| {
            Work { title, asks, ..work(&format!("w{at}"), "", most) }
        }).collect();
        let mut grades = Grades::new(section, works.clone()).unwrap();
        for (work, student, share, kind, comment) in given {
            let (work, student) = (work.get(&works), student.get(&ids));
            let score = match kind {
                0 => Score::Missing,
                1 => Score::Excused,
                _ => Score::Points(work.most * share),
            };
            grades.give(&work.id, student, grade(score, &comment)).unwrap();
        }
        grades
    }
}

/// Signs of ASVS 5.0, V1.2.10, that make a cell a formula.
fn computes(cell: &str) -> bool {
    cell.trim_start().starts_with(['=', '+', '-', '@'])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn every_grade_is_found_again_by_the_ids_as_they_came(grades in any_grades()) {
        let zip = write(&grades, Version::V1_2).unwrap().zip;
        let files = files(&zip);
        let results = rows(&files["results.csv"]);
        prop_assert_eq!(results.len(), grades.all().count());
        for (result, (work, student, grade)) in results.iter().zip(grades.all()) {
            prop_assert_eq!(&result["studentSourcedId"], student.as_str());
            prop_assert_eq!(&result["lineItemSourcedId"], work.id.as_str());
            prop_assert_eq!(&result["classSourcedId"], grades.section().id.as_str());
            match grade.score {
                Score::Points(points) => prop_assert_eq!(result["score"].parse(), Ok(points)),
                _ => prop_assert_eq!(&result["score"], ""),
            }
            let comment = result["comment"].strip_prefix('\'').unwrap_or(&result["comment"]);
            prop_assert!(comment == grade.comment || result["comment"] == grade.comment);
        }
        let mut ids: Vec<&String> = results.iter().map(|result| &result["sourcedId"]).collect();
        ids.sort();
        ids.dedup();
        prop_assert_eq!(ids.len(), results.len());
    }

    // A cell of words is never a formula; an id that begins like one can call nothing.
    #[test]
    fn nothing_is_computed_where_it_is_opened(grades in any_grades()) {
        for version in Version::ALL {
            for (_, bytes) in files(&write(&grades, version).unwrap().zip) {
                for row in rows(&bytes) {
                    for (head, cell) in row {
                        let harmless = head.ends_with("SourcedId") || head == "sourcedId";
                        let calls = cell.contains(['(', '|', '!', '=', '+', '"', ' ']);
                        prop_assert!(!computes(&cell) || harmless && !calls, "{}: {}", head, cell);
                    }
                }
            }
        }
        let table = plain(&grades);
        let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(&table[3..]);
        for row in reader.records() {
            for cell in &row.unwrap() {
                prop_assert!(!computes(cell), "{}", cell);
            }
        }
    }
}
