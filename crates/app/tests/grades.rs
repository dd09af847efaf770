//! `barm grades`: files for a gradebook, from what lies in a data folder.

mod program;

use barm_domain::record::WordsKey;
use barm_store::{Kind, Place, Store};
use jiff::Timestamp;
use program::{invented, run};
use std::fs;
use std::path::Path;
use tempfile::TempDir;

/// A data folder with the invented plan.
fn folder() -> TempDir {
    let folder = TempDir::new().expect("a folder");
    let store = Store::open(&Place::Folder(folder.path().join("data"))).expect("a record");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let now = Timestamp::now();
    let made = store.add_investigation("Invented", Kind::Invented, now).expect("kept");
    store.save_plan(made.id, &plan, now).expect("kept");
    folder
}

/// Puts a text among the words that can be deleted.
fn keep(folder: &Path, key: u128, kind: &str, text: &str) {
    let store = Store::open(&Place::Folder(folder.join("data"))).expect("a record");
    assert!(store.keep_words(1, WordsKey(key), kind, text).expect("kept"));
}

/// As the page keeps it: when, period, class, students; when, period, class, groups, absent, marks of their own.
const ROSTER: &str =
    r#"[1,"4",["c1","Science",null,"o1","t1"],[["s1","Ann Invented"],["s2","Bea Invented"]]]"#;
const GROUPS: &str =
    r#"[2,"4","c1",[["s1",2],["s2",2]],["s2"],[["s1",[17.5,false],"Well led"]]]"#;

#[test]
fn grades_of_every_period_are_written_and_nothing_of_the_teachers_is_overwritten() {
    let folder = folder();
    let at = folder.path();
    let (out, err) = run(at, &["grades", "out", "--data", "data"]).ended(2);
    assert!(out.is_empty() && err.contains("no investigation there has a roster"), "{err}");
    assert!(err.contains("try: in Barm, open Results"), "{err}");
    keep(at, 1, "roster", ROSTER);
    let (_, err) = run(at, &["grades", "out", "--data", "data"]).ended(2);
    assert!(err.contains("saved groups"), "a proposal is no list: {err}");
    keep(at, 2, "group-list", GROUPS);
    let (out, err) = run(at, &["grades", "out", "--data", "data"]).ended(0);
    assert_eq!(err, "");
    assert!(out.contains("the readings are invented") && out.contains("barm kept"), "{out}");
    assert!(
        !out.contains("Ann") && !out.contains("Bea"),
        "a terminal keeps what it showed: {out}"
    );
    let table = fs::read_to_string(at.join("out/period-4-grades.csv")).expect("the table");
    assert!(table.contains("s1,Ann Invented,17.5,Well led.\r\n"), "{table}");
    assert!(table.contains("s2,Bea Invented,excused,\r\n"), "{table}");
    for name in ["period-4-gradebook-1.1.zip", "period-4-gradebook-1.2.zip"] {
        assert!(at.join("out").join(name).is_file(), "{name}: {out}");
    }
    assert_eq!(fs::read_dir(at.join("out")).expect("a folder").count(), 4, "three and a list");
    // Written again as they were; what somebody changed is left alone.
    run(at, &["grades", "out", "--data", "data"]).ended(0);
    fs::write(at.join("out/period-4-grades.csv"), "mine").expect("changed");
    let (_, err) = run(at, &["grades", "out", "--data", "data"]).ended(2);
    assert!(err.contains("is there already"), "{err}");
    assert_eq!(fs::read(at.join("out/period-4-grades.csv")).expect("it"), b"mine");
    let asked = ["grades", "other", "--data", "data", "--investigation", "7"];
    let (_, err) = run(at, &asked).ended(2);
    assert!(err.contains("there is no investigation number 7"), "{err}");
}

#[test]
fn a_roster_without_a_school_gets_what_can_be_written_and_hears_why_the_rest_was_not() {
    let folder = folder();
    let at = folder.path();
    keep(at, 1, "roster", &ROSTER.replace("\"o1\"", "null"));
    keep(at, 2, "group-list", GROUPS);
    let (out, _) = run(at, &["grades", "out", "--data", "data"]).ended(1);
    assert!(
        out.contains("Not written: period-4-gradebook-1.2.zip")
            && out.contains("has no school"),
        "{out}"
    );
    assert!(at.join("out/period-4-gradebook-1.1.zip").is_file());
    assert!(!at.join("out/period-4-gradebook-1.2.zip").exists());
}

#[test]
fn deleting_all_words_leaves_no_student_in_the_data_folder() {
    let folder = folder();
    let at = folder.path();
    keep(at, 1, "roster", ROSTER);
    keep(at, 2, "group-list", GROUPS);
    let (out, _) = run(at, &["kept", "--data", "data", "--look-for", "Ann Invented"]).ended(1);
    assert!(out.contains("It stands in"), "{out}");
    let (out, _) = run(at, &["kept", "--data", "data", "--delete"]).ended(0);
    assert!(
        out.contains("2 texts deleted") && out.contains("None of it stands anywhere"),
        "{out}"
    );
    run(at, &["kept", "--data", "data", "--look-for", "Ann Invented"]).ended(0);
    run(at, &["grades", "out", "--data", "data"]).ended(2);
}
