//! A treatment that the model cannot follow: the others keep their forecasts, and it is named.

mod program;

use program::{invented, run, soak};
use std::fs;
use tempfile::TempDir;

const SOAKED: &str = "Oat flour";

fn folder() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    soak(folder.path(), SOAKED);
    fs::copy(invented().join("readings.csv"), folder.path().join("readings.csv")).expect("it");
    folder
}

/// One paragraph on one line.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn predict_says_what_it_can_and_names_what_it_cannot() {
    let folder = folder();
    let arguments = ["predict", "plan.toml", "--draws", "64", "--pdf", "forecast.pdf"];
    let (out, err) = run(folder.path(), &arguments).ended(1);
    assert_eq!(err, "");
    assert!(flowing(&out).contains("No forecast"), "{out}");
    assert!(flowing(&out).contains("Oat flour: all that goes into the bag, "), "{out}");
    assert!(
        out.lines().any(|l| l.trim_start().starts_with("Maple syrup") && l.contains(" mL")),
        "{out}"
    );
    // What is compared with it is foreseen, the difference is not.
    let helped =
        out.lines().find(|l| l.trim_start().starts_with("Oat flour + ") && l.contains(" mL"));
    assert!(helped.expect("its line").contains("no reference"), "{out}");
    assert!(fs::read(folder.path().join("forecast.pdf")).expect("it").starts_with(b"%PDF"));
}

#[test]
fn check_keeps_the_cautions_that_rest_on_the_other_forecasts() {
    let folder = folder();
    let (out, err) = run(folder.path(), &["check", "plan.toml"]).ended(1);
    assert_eq!(err, "");
    assert!(out.contains("cannot-foresee") && out.contains("Oat flour"), "{out}");
    // The carbon dioxide of a class is a sum over forecasts.
    assert!(out.contains("S24"), "{out}");
}

#[test]
fn prep_names_it_beside_the_cautions() {
    let folder = folder();
    let (out, err) = run(folder.path(), &["prep", "plan.toml", "--pdf", "prep.pdf"]).ended(0);
    assert_eq!(err, "");
    assert!(flowing(&out).contains("No forecast: “Oat flour” can not be worked out"), "{out}");
}

#[test]
fn analyze_keeps_its_answers() {
    let folder = folder();
    let (out, err) = run(folder.path(), &["analyze", "plan.toml", "readings.csv"]).ended(0);
    assert_eq!(err, "");
    assert!(
        flowing(&out).contains("no forecast: Oat flour: all that goes into the bag, "),
        "{out}"
    );
    assert!(out.contains("Maple syrup"), "{out}");
}

#[test]
fn the_demo_does_the_rest_of_the_job() {
    let folder = folder();
    let day = folder.path().join("day");
    fs::create_dir(&day).expect("made");
    fs::rename(folder.path().join("plan.toml"), day.join("plan.toml")).expect("moved");
    let (out, err) = run(folder.path(), &["demo", "--out", "day"]).ended(0);
    assert_eq!(err, "");
    assert!(flowing(&out).contains("Oat flour: all that goes into the bag, "), "{out}");
    for name in ["forecast.pdf", "prep.pdf", "results.pdf"] {
        assert!(fs::read(day.join(name)).expect(name).starts_with(b"%PDF"), "{name}");
    }
}
