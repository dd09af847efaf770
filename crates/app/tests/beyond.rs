//! A forecast that goes beyond what is known says so wherever it stands, and says what is known.

mod program;

use program::{heat, invented, run};
use std::fs;

const HEATED: &str = "Maple syrup";
const HEAD: &str = "Beyond what is known";

/// One paragraph on one line.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_forecast_and_the_analysis_say_where_and_what() {
    let folder = tempfile::tempdir().expect("a folder");
    heat(folder.path(), HEATED);
    fs::copy(invented().join("readings.csv"), folder.path().join("readings.csv")).expect("it");
    let says = "Maple syrup: How fast yeast works is known from 0 to 60 °C (32 to 140 °F). This bag \
                goes up to 6";
    for arguments in [
        ["predict", "plan.toml", "--draws", "64"].as_slice(),
        ["analyze", "plan.toml", "readings.csv"].as_slice(),
    ] {
        let (out, _) = run(folder.path(), arguments).ended(0);
        assert!(out.contains(HEAD), "{out}");
        assert!(flowing(&out).contains(says), "{out}");
    }
}

#[test]
fn where_all_laws_hold_nothing_is_said() {
    let (out, _) = run(&invented(), &["predict", "plan.toml", "--draws", "64"]).ended(0);
    assert!(!out.contains(HEAD), "{out}");
}
