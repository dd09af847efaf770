//! What an answer says beside its numbers: where forecasts go beyond what is known, and what a breath
//! meter is for.

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

/// Maple syrup shows four times what bags without food show, at much the same warmth.
const METER: &str = "\nbag,period,minute,turn,meter (%)\nclean air,1,,1,0.00\nP1-01A-C,1,24,2,0.20\n\
                     P1-01C-8,1,24,3,0.06\nP1-08B-J,1,24,4,0.24\nP1-02C-4,1,24,5,0.05\n\
                     clean air,1,,6,0.01\nP1-03A-4,1,24,7,0.40\n";

#[test]
fn a_meter_is_told_with_what_it_is_for_and_its_report_is_printed() {
    let folder = tempfile::tempdir().expect("a folder");
    let of = |name: &str| fs::read_to_string(invented().join(name)).expect(name);
    fs::write(folder.path().join("plan.toml"), of("plan.toml")).expect("it");
    fs::write(folder.path().join("plain.csv"), of("readings.csv")).expect("it");
    let with = of("readings.csv") + METER;
    fs::write(folder.path().join("readings.csv"), with).expect("it");
    let (plain, _) = run(folder.path(), &["analyze", "plan.toml", "plain.csv"]).ended(0);
    assert!(!plain.contains("Breath meter"), "{plain}");
    let arguments = ["analyze", "plan.toml", "readings.csv", "--pdf", "results.pdf"];
    let (out, err) = run(folder.path(), &arguments).ended(0);
    assert_eq!(err, "");
    let said = flowing(&out);
    for part in [
        "Breath meter",
        "Relative reading: it compares the bags of one class on one meter, and says nothing about any \
         person.",
        "Maple syrup held about ",
        "1 bag against 2.",
        "P1-08B-J: set aside by the rule “leak”, not compared.",
        // The display ends at 0.40 unless it showed more.
        "The display stood at its end: oat flour held at least ",
        "P1-03A-4: the display stood at its end: there is at least so much.",
    ] {
        assert!(said.contains(part), "{part}: {out}");
    }
    let pdf = fs::read(folder.path().join("results.pdf")).expect("the report");
    assert!(pdf.starts_with(b"%PDF"));
}
