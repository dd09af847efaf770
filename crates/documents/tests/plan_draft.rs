//! A plan file edited field by field: only the field changes, and what is wrong stays as typed.

use barm_documents::plan_text::{Draft, read};
use barm_domain::finding::Field;

const PLAN: &str = include_str!("../../app/src/demo/plan.toml");

fn field(path: &str) -> Field {
    Field(path.to_owned())
}

/// Lines that differ between two texts with as many lines.
fn changed<'t>(one: &'t str, other: &'t str) -> Vec<(&'t str, &'t str)> {
    assert_eq!(one.lines().count(), other.lines().count());
    one.lines().zip(other.lines()).filter(|(a, b)| a != b).collect()
}

#[test]
fn a_field_is_read_as_one_would_type_it() {
    let mut draft = Draft::open(PLAN).unwrap();
    for (path, says) in [
        ("title", "Which breakfast-cupboard food feeds yeast best?"),
        ("grade", "8"),
        ("invented", "true"),
        ("day[0].date", "2027-03-09"),
        ("base.water", "40 mL"),
        ("question[0].treatment[1].food", "oat flour"),
        ("question[1].treatment[0].enzyme_amount", "2 mL"),
        ("period[2].students", "23"),
        ("question[0].replicates", "8"),
    ] {
        assert_eq!(draft.value(&field(path)).as_deref(), Some(says), "{path}");
    }
    for path in ["", "question", "question[9].asks", "base.nothing", "base[0]", "[", "a[x]"] {
        assert_eq!(draft.value(&field(path)), None, "{path}");
    }
    assert_eq!(draft.count("question[0].treatment"), 5);
    assert_eq!(draft.count("nothing"), 0);
}

#[test]
fn one_field_changes_one_line_and_keeps_its_note() {
    for (path, typed, line) in [
        (
            "base.lies",
            "towel",
            "lies = \"towel\"                    # bench, towel or \"warm tray 40 °C\"",
        ),
        ("grade", "7", "grade = 7"),
        ("day[0].date", "2027-03-11", "date = 2027-03-11"),
        ("question[0].treatment[0].food", "honey", "food = \"honey\""),
    ] {
        let mut draft = Draft::open(PLAN).unwrap();
        assert!(draft.put(&field(path), typed));
        let text = draft.text();
        let changed = changed(PLAN, &text);
        assert_eq!(changed.len(), 1, "{changed:?}");
        assert_eq!(changed[0].1, line);
        assert!(read(text.as_bytes()).mistakes.is_empty(), "{path}");
    }
}

#[test]
fn typing_what_stands_there_changes_nothing() {
    let mut draft = Draft::open(PLAN).unwrap();
    for path in ["title", "grade", "day[0].date", "base.water", "period[0].start", "spare"] {
        let says = draft.value(&field(path)).unwrap();
        assert!(draft.put(&field(path), &format!(" {says} ")));
    }
    assert_eq!(draft.text(), PLAN);
}

#[test]
fn what_is_wrong_stays_as_typed_and_is_named() {
    for (path, typed) in [("grade", "eight"), ("base.water", "40"), ("day[0].date", "tomorrow")]
    {
        let mut draft = Draft::open(PLAN).unwrap();
        assert!(draft.put(&field(path), typed));
        let text = draft.text();
        assert_eq!(Draft::open(&text).unwrap().value(&field(path)).as_deref(), Some(typed));
        let mistakes = read(text.as_bytes()).mistakes;
        assert!(mistakes.iter().any(|m| m.field == Some(field(path))), "{path}: {mistakes:?}");
    }
}

#[test]
fn an_empty_field_leaves_the_file_and_a_new_one_comes_in() {
    let mut draft = Draft::open(PLAN).unwrap();
    assert!(draft.put(&field("school"), ""));
    assert!(draft.put(&field("question[0].treatment[0].lies"), "towel"));
    let text = draft.text();
    assert!(!text.contains("school ="));
    let plan = read(text.as_bytes()).plan.unwrap();
    assert!(plan.school.is_none());
    assert!(plan.questions[0].treatments[0].difference.lies.is_some());
    assert!(!draft.put(&field("question[7].asks"), "Why?"));
}

#[test]
fn treatments_come_and_go() {
    let mut draft = Draft::open(PLAN).unwrap();
    let keys = [("name", "Honey"), ("food", "honey")];
    assert!(draft.add("question[0].treatment", &keys));
    let plan = read(draft.text().as_bytes());
    assert!(plan.mistakes.is_empty(), "{:?}", plan.mistakes);
    let names: Vec<String> =
        plan.plan.unwrap().questions[0].treatments.iter().map(|t| t.name.clone()).collect();
    assert_eq!(names.last().map(String::as_str), Some("Honey"));
    assert!(draft.take_out("question[0].treatment[5]"));
    assert_eq!(draft.count("question[0].treatment"), 5);
    assert!(!draft.take_out("question[0].treatment[5]"));
    assert!(!draft.take_out("base"));
    assert!(Draft::open("not = = toml").is_none());
}
