//! `barm power`: what the plan's bags will probably show, in words and numbers.

mod program;

use program::{invented, run, soak};
use std::fs;

/// One paragraph on one line.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_invented_plan_is_told_question_by_question_with_what_to_add() {
    let arguments = ["power", "plan.toml", "--classes", "4"];
    let (out, err) = run(&invented(), &arguments).ended(0);
    assert_eq!(err, "", "a log holds answers only");
    let flat = flowing(&out);
    assert!(flat.contains("Which breakfast-cupboard food feeds yeast best?"), "{out}");
    let heads = flat.contains("apart bags finds spreads tried slips");
    assert!(heads && flat.contains("Bags of each 1 2 3 4 5 6 7 8"), "{out}");
    // Maple syrup, the plan's own story, in the table of its question.
    let row = |line: &&str| line.trim_start().starts_with("Maple syrup") && line.contains('█');
    assert!(out.lines().any(|line| row(&line) && line.contains('%')), "{out}");
    let advice = flat.matches("; the smallest difference usually found is about ").count();
    assert!(advice >= 2, "an advice a question: {out}");
    assert!(flat.contains("Tried: 4 simulated classes"), "{out}");
    assert!(!out.contains("NaN") && !out.contains("inf %"), "{out}");
    for line in out.lines() {
        assert!(line.chars().count() <= 100, "too wide: {line}");
    }
}

#[test]
fn a_treatment_that_cannot_be_followed_is_named_and_the_rest_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    soak(folder.path(), "Oat flour");
    let arguments = ["power", "plan.toml", "--classes", "4"];
    let (out, err) = run(folder.path(), &arguments).ended(1);
    assert_eq!(err, "");
    assert!(flowing(&out).contains("No forecast"), "{out}");
    assert!(flowing(&out).contains("Oat flour: all that goes into the bag, "), "{out}");
    let row = |line: &str| line.trim_start().starts_with("Maple syrup") && line.contains('%');
    assert!(out.lines().any(row), "{out}");
}

#[test]
fn where_nothing_is_compared_there_is_nothing_to_find() {
    let folder = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let compares =
        |line: &&str| line.starts_with("reference =") || line.starts_with("beside =");
    // The list of bags knows the control that groups of two bags or more make beside a reference.
    let (plan, _) = plan.split_once("[bag_list]").expect("a list of bags");
    let kept: Vec<&str> = plan.lines().filter(|line| !compares(line)).collect();
    fs::write(folder.path().join("plan.toml"), kept.join("\n")).expect("written");
    let (out, err) = run(folder.path(), &["power", "plan.toml"]).ended(1);
    assert_eq!(out, "");
    assert!(err.contains("nothing to find") && err.contains("  try: "), "{err}");
}
