//! `barm years --json`.

use crate::program::{invented, run};
use crate::shape::*;
use serde_json::Value;
use std::fs;
use std::sync::OnceLock;

/// The answer on three classes, one of them twice, and a package that is none. The second class has a
/// food that only a label told.
pub(crate) fn over_years() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder");
        let at = folder.path();
        let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
        let readings = fs::read_to_string(invented().join("readings.csv")).expect("readings");
        let label = "[[label_food]]\nname = \"Own mix\"\nserving = \"40 g\"\ncarbohydrate = \"28 g\"\n\
                     sugars = \"12 g\"\nstarch = \"raw\"\nnatural_sugar = \"unknown\"\n\n[base]\n";
        for (name, more) in [("a", 0.0), ("b", 1.0), ("c", 2.0), ("d", 0.0)] {
            let plan = if name == "b" {
                let plan = plan.replacen("food = \"mashed banana\"", "food = \"Own mix\"", 1);
                plan.replacen("[base]\n", label, 1)
            } else {
                plan.clone()
            };
            fs::write(at.join("plan.toml"), plan).expect("written");
            let line = |line: &str| {
                let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
                // Late heights of the first period are higher in some classes.
                let late = cells.get(1).and_then(|cell| cell.parse::<f64>().ok()).unwrap_or(0.0);
                if let Some(height) = cells.get(2).and_then(|cell| cell.parse::<f64>().ok())
                    && height > 12.0
                    && late > 9.0
                {
                    cells[2] = (height + more).to_string();
                }
                cells.join(",")
            };
            let lines: Vec<String> = readings.lines().map(line).collect();
            fs::write(at.join("readings.csv"), lines.join("\n")).expect("written");
            let to = format!("{name}.zip");
            run(at, &["share", "plan.toml", "readings.csv", "--to", &to]).ended(0);
        }
        fs::write(at.join("e.zip"), "none").expect("written");
        let (out, err) =
            run(at, &["years", "a.zip", "b.zip", "c.zip", "d.zip", "e.zip", "--json"]).ended(1);
        assert_eq!(err, "");
        assert!(!out.contains("NaN"), "{out}");
        serde_json::from_str(&out).expect("JSON")
    })
}

#[test]
fn years_have_their_shape() {
    let answer = over_years();
    shaped(
        "years",
        answer,
        &[
            ("format", COUNT),
            ("classes", LIST),
            ("differences", LIST),
            ("left_out", LIST),
            ("passed_over", TEXTS),
            ("not_read", LIST),
        ],
    );
    for class in list(answer, "classes") {
        let row = [("name", TEXT), ("bags", COUNT), ("heights", COUNT), ("made_up", FLAG)];
        shaped("class", class, &row);
    }
    let number = NUMBER_OR_NULL;
    for difference in list(answer, "differences") {
        let row = [
            ("treatment", TEXT),
            ("reference", TEXT),
            ("minute", NUMBER),
            ("of", LIST),
            ("together", OBJECT_OR_NULL),
            ("between", OBJECT_OR_NULL),
            ("next", OBJECT_OR_NULL),
            ("says", TEXTS),
        ];
        shaped("difference", difference, &row);
        for one in list(difference, "of") {
            let row = [
                ("class", COUNT),
                ("n", COUNT),
                ("n_reference", COUNT),
                ("difference", number),
                ("low", number),
                ("high", number),
                ("se", number),
                ("df", number),
            ];
            shaped("of a class", one, &row);
        }
        let row = [
            ("difference", NUMBER),
            ("low", NUMBER),
            ("high", NUMBER),
            ("se", NUMBER),
            ("df", number),
            ("p", NUMBER),
            ("shares", NUMBERS),
        ];
        shaped("together", &difference["together"], &row);
    }
    let between = [
        ("q", NUMBER),
        ("df", NUMBER),
        ("p", NUMBER),
        ("tau", NUMBER),
        ("tau_low", NUMBER),
        ("tau_high", NUMBER),
        ("i2", NUMBER),
        ("h2", NUMBER),
    ];
    let first = &answer["differences"][0];
    shaped("between", &first["between"], &between);
    shaped("next", &first["next"], &[("low", NUMBER), ("high", NUMBER)]);
}

#[test]
fn what_does_not_count_is_told() {
    let answer = over_years();
    assert_eq!(answer["classes"].as_array().map(Vec::len), Some(4));
    assert_eq!(answer["passed_over"][0], "d holds the same data as a and counts once.");
    assert!(text(&answer["not_read"][0], "reason").contains("no zip file"), "{answer}");
    let out = &answer["left_out"][0];
    assert_eq!(out["class"], 1);
    assert!(text(out, "reason").contains("label"));
    // Shares of three classes are all of it.
    let shares = numbers(&answer["differences"][0]["together"]["shares"]);
    assert_eq!(shares.len(), 3);
    assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-9);
}
