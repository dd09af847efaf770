//! `barm assign`: who does what, said to people, and written into a plan.

mod program;

use program::{invented, run};
use std::fs;
use std::path::Path;
use tempfile::TempDir;

const USE: [&str; 3] = ["assign", "plan.toml", "wishes.csv"];

/// A folder with the invented plan and these wishes.
fn with_wishes(wishes: impl AsRef<[u8]>) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::copy(invented().join("plan.toml"), folder.path().join("plan.toml")).expect("the plan");
    fs::write(folder.path().join("wishes.csv"), wishes).expect("written");
    folder
}

fn invented_wishes() -> String {
    fs::read_to_string(invented().join("wishes.csv")).expect("the wishes")
}

/// A page as one line.
fn unwrapped(out: &str) -> String {
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_invented_day_is_shared_out_with_proof_and_prices() {
    let folder = with_wishes(invented_wishes());
    let (out, err) = run(folder.path(), &USE).ended(0);
    assert_eq!(err, "");
    let flat = unwrapped(&out);
    for says in [
        "32 groups in 4 periods, 3 bags each unless they say otherwise. Seed 1.",
        "Period 6",
        "8 Magpies",
        "No food (control)",
        "groups with a wish get what they ranked first.",
        "Proven: no way to share groups out is better",
        "Every bag was held against every rule once more",
    ] {
        assert!(flat.contains(says), "no “{says}” in\n{out}");
    }
    assert!(flat.contains("it would cost"), "a price:\n{out}");
    assert_eq!(run(folder.path(), &USE).ended(0).0, out, "the same seed, the same answer");
    let other = [USE.as_slice(), &["--seed", "2"]].concat();
    let (other, _) = run(folder.path(), &other).ended(0);
    assert!(other.contains("Seed 2.") && other != out);
}

#[test]
fn the_plan_with_its_bags_is_written_anew_and_never_over_another() {
    let folder = with_wishes(invented_wishes());
    let before = fs::read(folder.path().join("plan.toml")).expect("it");
    let into = [USE.as_slice(), &["--out", "given.toml"]].concat();
    let (out, _) = run(folder.path(), &into).ended(0);
    assert!(unwrapped(&out).contains("Written to given.toml: 112 bags"), "{out}");
    assert_eq!(fs::read(folder.path().join("plan.toml")).expect("it"), before);
    let (checked, _) = run(folder.path(), &["check", "given.toml"]).ended(0);
    assert!(checked.contains("No faults."), "{checked}");
    for absent in ["missing-bags", "idle-group", "crowded-group", "period-without-control"] {
        assert!(!checked.contains(absent), "{checked}");
    }
    run(folder.path(), &["prep", "given.toml"]).ended(0);
    let given = fs::read(folder.path().join("given.toml")).expect("it");
    let (out, err) = run(folder.path(), &into).ended(2);
    assert_eq!(out, "");
    assert!(err.contains("given.toml is there already, and nothing was written"), "{err}");
    assert_eq!(fs::read(folder.path().join("given.toml")).expect("it"), given);
    // Shared out once more from what was written, every bag stays where it is.
    let again = ["assign", "given.toml", "wishes.csv", "--out", "again.toml"];
    run(folder.path(), &again).ended(0);
    assert_eq!(fs::read(folder.path().join("again.toml")).expect("it"), given);
}

#[test]
fn bad_rows_are_1_and_all_named_with_their_lines() {
    let folder = with_wishes(
        "period,group,first,set\n1,1,fod,\n9,1,food,\n1,2,food,\n1,2,food,\n1,x,,\n",
    );
    let (out, err) = run(folder.path(), &USE).ended(1);
    assert_eq!(out, "");
    for says in [
        "barm: wishes.csv has rows that cannot be taken:",
        "line 2: the plan has no question “fod”; did you mean “food”?",
        "line 3: the plan has no period “9”; write one of 1, 2, 4, 6",
        "line 5: group 2 of period 1 stands on line 4 already; keep one of the two rows",
        "line 6: “x” is no number for group; write a whole number from 1 to 8",
        "try: the columns stand in docs/assign.md",
    ] {
        assert!(err.contains(says), "no “{says}” in\n{err}");
    }
    let folder = with_wishes("period,group\n");
    let (_, err) = run(folder.path(), &USE).ended(1);
    assert!(err.contains("there is no row under the heads"), "{err}");
}

#[test]
fn what_is_no_table_of_wishes_is_2() {
    for (bytes, says) in [
        (&b""[..], "there is no column “period”"),
        (b"\xff\xfe\0", "this is no text in UTF-8"),
        (b"hello\nworld\n", "there is no column “group”"),
    ] {
        let folder = with_wishes(bytes);
        let (out, err) = run(folder.path(), &USE).ended(2);
        assert_eq!(out, "");
        assert!(err.starts_with("barm: wishes.csv cannot be read as wishes:"), "{err}");
        assert!(err.contains(says), "{err}");
    }
    let folder = with_wishes(invented_wishes());
    let (_, err) = run(folder.path(), &["assign", "plan.toml", "none.csv"]).ended(2);
    assert!(err.starts_with("barm: cannot read none.csv"), "{err}");
    for bags in ["0", "9", "many"] {
        let wrong = [USE.as_slice(), &["--bags", bags]].concat();
        run(folder.path(), &wrong).ended(2);
    }
}

#[test]
fn what_cannot_be_done_names_the_fewest_rules_that_clash_and_writes_nothing() {
    let folder = with_wishes(
        "period,group,set,never,question,least\n1,1,food,,,\n1,2,,enzyme,,\n1,3,food,,,\n\
         1,4,,enzyme,,\n1,5,,enzyme,,\n1,,,,enzyme,4\n2,1,food,,,\n",
    );
    let into = [USE.as_slice(), &["--out", "given.toml"]].concat();
    let (out, _) = run(folder.path(), &into).ended(1);
    let flat = unwrapped(&out);
    for says in [
        "It cannot be done",
        "These clash, and no fewer do: take one of them back.",
        "group 1 of period 1 is set to “food”",
        "group 2 of period 1 must not get “enzyme”",
        "at least 4 groups work on “enzyme” in period 1",
    ] {
        assert!(flat.contains(says), "no “{says}” in\n{out}");
    }
    assert!(!flat.contains("period 2"), "what has nothing to do with it is not named:\n{out}");
    assert!(!Path::new(&folder.path().join("given.toml")).exists());
}

#[test]
fn too_few_rulers_for_so_many_bags_are_named() {
    let folder = with_wishes(invented_wishes());
    let plan = fs::read_to_string(folder.path().join("plan.toml")).expect("the plan");
    let plan = plan.replacen("rulers = 8", "rulers = 3", 1);
    fs::write(folder.path().join("plan.toml"), plan).expect("written");
    // 3 rulers read 24 bags in 4 min; 8 groups with 3 each and 4 on the bench are 28.
    let (out, _) = run(folder.path(), &USE).ended(1);
    let flat = unwrapped(&out);
    assert!(flat.contains("3 rulers get round 24 bags in period"), "{out}");
    assert!(flat.contains("every group without a number of its own makes 3 bags"), "{out}");
    let fewer = [USE.as_slice(), &["--bags", "2"]].concat();
    run(folder.path(), &fewer).ended(0);
}
