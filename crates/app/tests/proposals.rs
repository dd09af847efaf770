//! `barm check --proposals` and `barm approve`: what groups propose, judged and put into the plan.

mod program;

use program::run;
use std::fs;
use std::path::Path;

const HEAD: &str =
    "period,group,question,changes,levels,keeps,compared with,bags,expects,because\n";
const GOOD: &str =
    "1,1,Is honey better?,food,honey; white sugar,,No food,2,honey,it is sweet\n";
const PARTNER: &str = "2,3,,food,white sugar; honey,,No food,2,,\n";
const TWO: &str = "1,2,Is warm honey better?,food,honey + 45 °C; white sugar,,No food,2,,\n";

fn lesson(folder: &Path) {
    let new = ["new", "plan.toml", "--ready", "own-question", "--date", "2027-03-09"];
    run(folder, &new).ended(0);
}

#[test]
fn a_table_is_judged_with_the_gravest_on_top() {
    let folder = tempfile::tempdir().expect("a folder");
    lesson(folder.path());
    fs::write(folder.path().join("table.csv"), [HEAD, GOOD, TWO, PARTNER].concat())
        .expect("it");
    let check = ["check", "plan.toml", "--proposals", "table.csv"];
    let (out, err) = run(folder.path(), &check).ended(1);
    assert_eq!(err, "");
    let (fault, good) = (out.find("group 2: Is warm"), out.find("group 1: Is honey"));
    assert!(fault.expect("the faulty one") < good.expect("the good one"), "{out}");
    for says in ["two-variables", "Shows: ", "The same question: P2-3.", "What they cover"] {
        assert!(out.contains(says), "{says}: {out}");
    }
}

#[test]
fn what_has_no_fault_comes_into_the_plan_and_the_rest_is_named() {
    let folder = tempfile::tempdir().expect("a folder");
    lesson(folder.path());
    fs::write(folder.path().join("table.csv"), [HEAD, GOOD, TWO].concat()).expect("it");
    fs::write(folder.path().join("second.csv"), [HEAD, PARTNER].concat()).expect("it");
    let approve = ["approve", "plan.toml", "table.csv", "second.csv"];
    let (out, _) = run(folder.path(), &approve).ended(1);
    assert!(out.contains("2 proposals (P1 group 1, P2 group 3)"), "{out}");
    assert!(out.contains("Left out") && out.contains("Is warm honey better?"), "{out}");
    let plan = fs::read_to_string(folder.path().join("plan.toml")).expect("the plan");
    assert!(!plan.contains("it is sweet"), "a group's own words stay out of the plan");
    assert!(plan.lines().any(|line| line.starts_with('#')), "the notes stay");
    let (out, _) = run(folder.path(), &["check", "plan.toml"]).ended(0);
    assert!(out.contains("No faults."), "{out}");
    run(folder.path(), &["prep", "plan.toml"]).ended(0);
    // Once more changes nothing.
    fs::write(folder.path().join("table.csv"), [HEAD, GOOD].concat()).expect("it");
    run(folder.path(), &["approve", "plan.toml", "table.csv"]).ended(0);
    assert_eq!(fs::read_to_string(folder.path().join("plan.toml")).expect("it"), plan);
}

#[test]
fn a_table_that_cannot_be_read_says_where() {
    let folder = tempfile::tempdir().expect("a folder");
    lesson(folder.path());
    fs::write(folder.path().join("table.csv"), "period,group\n1,1\n").expect("it");
    let check = ["check", "plan.toml", "--proposals", "table.csv"];
    let (out, err) = run(folder.path(), &check).ended(2);
    assert_eq!(out, "");
    assert!(err.contains("line 1: there is no column “changes”"), "{err}");
    let (_, err) = run(folder.path(), &["approve", "plan.toml", "none.csv"]).ended(2);
    assert!(err.contains("cannot read none.csv"), "{err}");
}
