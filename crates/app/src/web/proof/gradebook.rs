//! Grades go out as a gradebook wants them: every student under the id that the school gave.

use super::class::{Class, DURING_1};
use super::forgetting::teachers;
use super::students::{CHOSEN, page, saves, sends, tables, taken, zip};
use crate::desk::room::Kind;
use crate::desk::shared::{Bundle, Limits};
use std::collections::BTreeMap;

/// Marks every strand of a group of period 1.
async fn marks(class: &Class, teacher: &str, group: u32, level: u8, rest: &str) {
    let path = format!("/marks/1/{group}");
    let body = page(class, teacher, &path).await.body;
    let strands =
        body.split("name=\"remark-").skip(1).filter_map(|rest| rest.split('"').next());
    let levels: String = strands.map(|strand| format!("level-{strand}={level}&")).collect();
    let path = format!("/i/{}{path}", class.room.id);
    let done = teachers(class, teacher, &path, &format!("{levels}{rest}&do=stay")).await;
    assert_eq!(done.status, 200, "{}", done.body);
}

/// Cells of a line; in quotes commas are no ends of cells, and no cell here has a quote of its own.
fn cells(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            letter => cells.last_mut().expect("a cell").push(letter),
        }
    }
    cells
}

/// Rows of a table without line ends in cells, head by head.
fn rows(text: &str) -> Vec<BTreeMap<String, String>> {
    let mut lines = text.trim_start_matches('\u{feff}').lines();
    let heads = cells(lines.next().expect("heads"));
    let row = |line: &str| {
        let cells = cells(line);
        assert_eq!(cells.len(), heads.len(), "{line}");
        heads.iter().cloned().zip(cells).collect()
    };
    lines.map(row).collect()
}

pub(super) fn unzipped(bytes: &[u8]) -> BTreeMap<String, String> {
    let mut bundle = Bundle::open(bytes, &Limits::USUAL).expect("a sound zip");
    let names: Vec<String> = bundle.names().map(str::to_owned).collect();
    let read = |name: String| {
        let bytes = bundle.read(&name).expect("sound").expect("there");
        (name, String::from_utf8(bytes).expect("UTF-8"))
    };
    names.into_iter().map(read).collect()
}

/// The columns of a file of version 1.1, by the list that others made, in order.
fn listed(file: &str) -> Vec<&'static str> {
    let list = include_str!("../../../../documents/tests/roster/columns.csv");
    let rows = list.lines().skip(1).map(|row| row.split(',').collect::<Vec<_>>());
    let own = rows.filter(|row| row[0].contains("1.1") && row[1] == file);
    own.map(|row| row[3]).collect()
}

/// Ten students: 1 to 8 in groups of one or two, the fifth absent, the sixth in no group. Groups 1 and 2 are marked.
pub(super) async fn graded(family: &str) -> (Class, String) {
    let (class, teacher) = taken(family).await;
    // By the proposal students 1 and 2 are in group 1, 3 and 4 in group 2, and so on one by one.
    marks(&class, &teacher, 1, 3, "remark-data=Fine+table").await;
    marks(&class, &teacher, 2, 2, "class-data=1").await;
    let changed = [
        ("absent-1", "1"),
        ("own-3", "30,5"),
        ("words-3", "Led+the+talk"),
        ("absent-4", "1"),
        ("own-4", "20"),
        ("group-5", ""),
        ("own-6", "excused"),
    ];
    let told = saves(&class, &teacher, &changed).await;
    assert_eq!(told.status, 200, "{}", told.body);
    // Group 6 began and is not marked in full.
    let strand = "level-data=2";
    let path = format!("/i/{}/marks/1/6", class.room.id);
    teachers(&class, &teacher, &path, &format!("{strand}&do=stay")).await;
    (class, teacher)
}

/// Score and status of every student as worked out by hand: 8 strands at level 3 are 24 points, at level 2 are 16.
const EXPECTED: [(&str, &str, &str); 10] = [
    ("pupil-01", "24", "fully graded"),
    ("pupil-02", "", "exempt"),
    ("pupil-03", "16", "fully graded"),
    ("pupil-04", "30.5", "fully graded"),
    ("pupil-05", "20", "fully graded"),
    ("pupil-06", "", "not submitted"),
    ("pupil-07", "", "exempt"),
    ("pupil-08", "-", "-"),
    ("pupil-09", "", "not submitted"),
    ("pupil-10", "", "not submitted"),
];

#[tokio::test]
async fn a_gradebook_gets_every_student_under_the_id_that_the_school_gave() {
    let (class, teacher) = graded("Invented").await;
    let list = page(&class, &teacher, "/marks").await.body;
    assert!(
        list.contains("Of 10 students 4 get points, 3 are missing, 2 are excused; 1 are"),
        "{list}"
    );
    let file = page(&class, &teacher, "/grades/1/gradebook-1.2.zip").await;
    assert_eq!(file.header("content-type"), "application/zip");
    assert!(
        file.header("content-disposition").ends_with("filename=\"period-1-gradebook-1.2.zip\"")
    );
    let files = unzipped(&file.bytes);
    let results = rows(&files["results.csv"]);
    let got: Vec<[&str; 3]> = results
        .iter()
        .map(|row| ["studentSourcedId", "score", "scoreStatus"].map(|head| row[head].as_str()))
        .collect();
    let expected = EXPECTED.into_iter().filter(|(.., status)| *status != "-");
    assert_eq!(
        got,
        expected.map(|(id, score, status)| [id, score, status]).collect::<Vec<_>>()
    );
    let of = |id: &str, head: &str| {
        results.iter().find(|row| row["studentSourcedId"] == id).expect("a row")[head].clone()
    };
    assert_eq!(of("pupil-01", "comment"), "Data: Fine table.");
    assert_eq!(
        of("pupil-02", "comment"),
        "",
        "no word on work that this student had no part in"
    );
    assert_eq!(of("pupil-03", "comment"), "Marked on the class’s data.");
    assert_eq!(of("pupil-04", "comment"), "Marked on the class’s data. Led the talk.");
    assert_eq!(of("pupil-05", "comment"), "Marked on the class’s data.");
    let work = &rows(&files["lineItems.csv"])[0];
    assert_eq!(work["resultValueMax"], "32");
    assert_eq!(work["classSourcedId"], "class-one");
    assert_eq!(work["academicSessionSourcedId"], "term-3");
    assert_eq!(work["schoolSourcedId"], "school-7");
    assert_eq!(work["assignDate"], "2027-03-09");
    // Version 1.1 has the listed columns, and only grades with points.
    let old = page(&class, &teacher, "/grades/1/gradebook-1.1.zip").await;
    let old = unzipped(&old.bytes);
    for name in ["manifest.csv", "categories.csv", "lineItems.csv", "results.csv"] {
        let heads: Vec<&str> = old[name].lines().next().expect("heads").split(',').collect();
        assert_eq!(heads, listed(name), "{name}");
    }
    assert_eq!(rows(&old["results.csv"]).len(), 4);
    assert_eq!(rows(&old["lineItems.csv"])[0]["sourcedId"], work["sourcedId"], "the same work");
    for (name, text) in files.iter().chain(&old) {
        assert!(!text.contains("Given") && !text.contains("Invented"), "{name}: {text}");
    }
    // The plain table is for people: names, in the order of the list.
    let table = page(&class, &teacher, "/grades/1/grades.csv").await;
    assert_eq!(table.header("content-type"), "text/csv; charset=utf-8");
    let table = rows(&table.body);
    let title = class.room.read(|scene| scene.plan.title.clone());
    let points = format!("{title} (of 32)");
    for (row, (id, score, status)) in table.iter().zip(EXPECTED) {
        let shown = match status {
            "exempt" => "excused",
            "not submitted" => "missing",
            "-" => "",
            _ => score,
        };
        assert_eq!((row["student id"].as_str(), row[&points].as_str()), (id, shown));
        assert!(row["student"].starts_with("Given"), "{row:?}");
    }
    assert_eq!(page(&class, &teacher, "/grades/1/other.csv").await.status, 404);
}

#[tokio::test]
async fn a_roster_without_a_term_says_why_a_gradebook_gets_nothing() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let mut bare = tables("Invented");
    let classes = String::from_utf8(bare["classes.csv"].clone()).expect("text");
    bare.insert("classes.csv", classes.replace("term-3", "").into_bytes());
    assert_eq!(sends(&class, &teacher, CHOSEN, &zip(&bare)).await.status, 200);
    assert_eq!(saves(&class, &teacher, &[]).await.status, 200);
    let list = page(&class, &teacher, "/marks").await.body;
    assert!(
        list.contains("OneRoster 1.1 cannot be written") && list.contains("has no term"),
        "{list}"
    );
    assert!(!list.contains("gradebook-1.1.zip"), "{list}");
    assert_eq!(page(&class, &teacher, "/grades/1/gradebook-1.1.zip").await.status, 400);
    assert_eq!(page(&class, &teacher, "/grades/1/grades.csv").await.status, 200);
}
