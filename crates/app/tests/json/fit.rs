//! `barm fit --json`.

use crate::invented::answer;
use crate::shape::*;
use serde_json::Value;
use std::fs;
use std::sync::OnceLock;

/// Reaction velocity over substrate, treated cells: Treloar (1974), R's data set Puromycin.
const PUROMYCIN: &str = "conc,rate\n0.02,76\n0.02,47\n0.06,97\n0.06,107\n0.11,123\n0.11,139\n0.22,159\n\
    0.22,152\n0.56,191\n0.56,201\n1.1,207\n1.1,200\n";

/// Circumference of a tree over days: R's data set Orange, the third tree.
const ORANGE: &str =
    "age,circumference\n118,30\n484,51\n664,75\n1004,108\n1231,115\n1372,139\n1582,140\n";

fn of(table: &str, x: &str, y: &str, shape: &str) -> Value {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("table.csv");
    fs::write(&file, table).expect("written");
    let file = file.to_str().expect("a name");
    answer(&["fit", file, "--x", x, "--y", y, "--shape", shape, "--json"])
}

pub(crate) fn logistic() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    ANSWER.get_or_init(|| of(ORANGE, "age", "circumference", "logistic"))
}

fn shape(answer: &Value) {
    let promised = [
        ("shape", TEXT),
        ("parameters", LIST),
        ("rss", NUMBER),
        ("df", COUNT),
        ("converged", FLAG),
    ];
    shaped("fit", answer, &promised);
    for parameter in list(answer, "parameters") {
        let promised = [
            ("name", TEXT),
            ("value", NUMBER),
            ("se", NUMBER_OR_NULL),
            ("low", NUMBER_OR_NULL),
            ("high", NUMBER_OR_NULL),
        ];
        shaped("parameter", parameter, &promised);
    }
}

fn close(value: &Value, key: &str, wanted: f64, within: f64) {
    let found = number(value, key);
    assert!((found / wanted - 1.0).abs() <= within, "{key}: {found} for {wanted}: {value}");
}

/// Worked with 50 digits: Vm 212.68374314253607, K 0.064121281681567; quantile 2.228138851986 of t with
/// 10 degrees of freedom (any table).
#[test]
fn the_enzyme_has_the_promised_shape_and_the_published_numbers() {
    let answer = of(PUROMYCIN, "conc", "rate", "michaelis-menten");
    shape(&answer);
    assert_eq!((&answer["shape"], &answer["df"]), (&"michaelis-menten".into(), &10.into()));
    assert_eq!(answer["converged"], true);
    close(&answer, "rss", 1_195.448_814_439_359_3, 1e-9);
    let [vm, k] = list(&answer, "parameters") else { panic!("{answer}") };
    assert_eq!((text(vm, "name"), text(k, "name")), ("Vm", "K"));
    close(vm, "value", 212.683_743_142_536_07, 1e-9);
    close(vm, "se", 6.947_155_160_040_72, 1e-8);
    close(k, "value", 0.064_121_281_681_567, 1e-9);
    let half = 2.228_138_851_986_274 * 6.947_155_160_040_72;
    close(vm, "low", 212.683_743_142_536_07 - half, 1e-9);
    close(vm, "high", 212.683_743_142_536_07 + half, 1e-9);
}

#[test]
fn every_shape_answers_under_its_names() {
    for (name, parameters) in [
        ("line", &["b0", "b1"][..]),
        ("saturating", &["b1", "b2"]),
        ("michaelis-menten", &["Vm", "K"]),
        ("logistic", &["b1", "b2", "b3"]),
        ("gompertz", &["A", "mu", "lambda"]),
        ("richards", &["b1", "b2", "b3", "b4"]),
    ] {
        // An S without noise that turns a little early; for shapes without a turn, a rise that slows.
        let turns = parameters.len() > 2;
        let row = |day: u32| {
            let x = f64::from(day);
            let y = if turns {
                30.0 / (1.0 + (2.0 - 0.2 * x).exp()).powf(1.0 / 0.7)
            } else {
                30.0 * x / (9.0 + x)
            };
            format!("{x},{y}\n")
        };
        let table: String =
            std::iter::once("x,y\n".to_owned()).chain((0..30).map(row)).collect();
        let answer = of(&table, "x", "y", name);
        shape(&answer);
        assert_eq!(text(&answer, "shape"), name);
        let found: Vec<&str> =
            list(&answer, "parameters").iter().map(|p| text(p, "name")).collect();
        assert_eq!(found, parameters);
    }
}
