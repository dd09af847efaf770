//! `barm round-two`: proposals in plain words, the plan of one, and both rounds together.

mod program;

use program::{first_period, invented, run};
use serde_json::Value;
use std::fs;
use std::path::Path;
use tempfile::TempDir;

/// One paragraph on one line.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The first period of the invented day, which leaves much open, foreseen as the first of two.
fn first_of_two() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let plan = plan.replacen("\ngrade = 8\n", "\ngrade = 8\nround = \"first of two\"\n", 1);
    assert!(plan.contains("round = "), "the grade stands at the top");
    fs::write(folder.path().join("plan.toml"), plan).expect("written");
    fs::write(folder.path().join("readings.csv"), first_period()).expect("written");
    folder
}

/// The rank of the first proposal that makes more of what round one could not tell.
fn more_bags(folder: &Path) -> String {
    let (out, _) = run(folder, &["round-two", "plan.toml", "readings.csv", "--json"]).ended(0);
    let all: Value = serde_json::from_str(&out).expect("JSON");
    let all = all["proposals"].as_array().expect("proposals");
    let more = all.iter().find(|one| one["kind"] == "more-bags").expect("something was open");
    more["rank"].to_string()
}

#[test]
fn a_proposal_is_taken_and_both_rounds_are_put_together() {
    let folder = first_of_two();
    let rank = more_bags(folder.path());
    let take = [
        "round-two",
        "plan.toml",
        "readings.csv",
        "--to",
        "second.toml",
        "--take",
        rank.as_str(),
    ];
    let (out, err) = run(folder.path(), &take).ended(0);
    assert_eq!(err, "", "a log holds answers only");
    let flat = flowing(&out);
    let written = format!("Number {rank} is written to second.toml");
    for says in [
        "Round one was judged at 2 %",
        "second rounds, the most telling first",
        "the same lots of",
        written.as_str(),
    ] {
        assert!(flat.contains(says), "no “{says}” in\n{out}");
    }
    assert!(!out.contains("NaN") && !out.contains(" inf "), "{out}");
    for line in out.lines() {
        assert!(line.chars().count() <= 100, "too wide: {line}");
    }
    let second = fs::read_to_string(folder.path().join("second.toml")).expect("the plan");
    assert!(second.contains("round = \"second of two\""), "{second}");
    // It is a sound plan, by the program's own check.
    run(folder.path(), &["check", "second.toml"]).ended(0);
    // A file that is there is left as it is.
    let (_, err) = run(folder.path(), &take).ended(2);
    assert!(err.contains("is there already"), "{err}");

    let codes = second.split("code = \"").skip(1).filter_map(|rest| rest.split('"').next());
    let mut readings = "bag,minute,height (mm)\n".to_owned();
    for (at, code) in codes.enumerate() {
        for minute in [0, 8, 16, 24] {
            readings.push_str(&format!("{code},{minute},{}\n", 5 + (1 + at % 2) * minute / 8));
        }
    }
    fs::write(folder.path().join("second.csv"), readings).expect("written");
    let pool =
        ["round-two", "plan.toml", "readings.csv", "--pool", "second.toml", "second.csv"];
    let (out, err) = run(folder.path(), &pool).ended(0);
    assert_eq!(err, "");
    let flat = flowing(&out);
    for says in [
        "Both rounds: ",
        "First look at 2 %, both rounds together at 3.",
        "chance has two tries",
    ] {
        assert!(flat.contains(says), "no “{says}” in\n{out}");
    }
    // Readings of the first round are none of the second's.
    let wrong =
        ["round-two", "plan.toml", "readings.csv", "--pool", "second.toml", "readings.csv"];
    let (out, err) = run(folder.path(), &wrong).ended(1);
    assert_eq!(out, "");
    assert!(err.contains("the readings of that plan"), "{err}");
}

#[test]
fn without_readings_of_this_plan_there_is_nothing_to_propose() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::copy(invented().join("plan.toml"), folder.path().join("plan.toml")).expect("the plan");
    fs::write(folder.path().join("none.csv"), "bag,minute,height (mm)\n").expect("written");
    let (out, err) = run(folder.path(), &["round-two", "plan.toml", "none.csv"]).ended(1);
    assert_eq!(out, "");
    assert!(err.contains("round one says nothing yet"), "{err}");
}
