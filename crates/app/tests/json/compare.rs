//! `barm compare --json`.

use crate::invented::answer;
use crate::program;
use crate::shape::*;
use serde_json::Value;
use std::fs;
use std::sync::OnceLock;

/// Dried weight of plants: Dobson (1983), R's data set PlantGrowth.
pub(crate) const PLANTS: &str = "weight,group\n4.17,ctrl\n5.58,ctrl\n5.18,ctrl\n6.11,ctrl\n4.50,ctrl\n\
    4.61,ctrl\n5.17,ctrl\n4.53,ctrl\n5.33,ctrl\n5.14,ctrl\n4.81,trt1\n4.17,trt1\n4.41,trt1\n3.59,trt1\n\
    5.87,trt1\n3.83,trt1\n6.03,trt1\n4.89,trt1\n4.32,trt1\n4.69,trt1\n6.31,trt2\n5.12,trt2\n5.54,trt2\n\
    5.50,trt2\n5.37,trt2\n5.29,trt2\n4.92,trt2\n6.15,trt2\n5.80,trt2\n5.26,trt2\n";

/// Penicillin yield in blends: Box, Hunter & Hunter (1978), from memory; decimal commas are ours.
const BLENDS: &str = "blend;treatment;yield\n1;A;89,0\n1;B;88\n1;C;97\n1;D;94\n2;A;84\n2;B;77\n2;C;92\n\
    2;D;79\n3;A;81\n3;B;87\n3;C;87\n3;D;85\n4;A;87\n4;B;92\n4;C;89\n4;D;84\n5;A;79\n5;B;81\n5;C;80\n5;D;88\n";

fn of(table: &str, arguments: &[&str]) -> Value {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("table.csv");
    fs::write(&file, table).expect("written");
    let file = file.to_str().expect("a name");
    answer(&[&["compare", file, "--json"], arguments].concat())
}

pub(crate) fn against_a_control() -> &'static Value {
    static ANSWER: OnceLock<Value> = OnceLock::new();
    let arguments = ["--value", "weight", "--by", "group", "--control", "ctrl"];
    ANSWER.get_or_init(|| of(PLANTS, &arguments))
}

fn in_blocks() -> Value {
    of(BLENDS, &["--value", "yield", "--by", "treatment", "--block", "blend"])
}

fn shape(answer: &Value) {
    shaped(
        "comparison",
        answer,
        &[
            ("n", COUNT),
            ("anova", OBJECT),
            ("welch", OBJECT_OR_NULL),
            ("groups", LIST),
            ("tukey", LIST),
            ("dunnett", LIST),
            ("kruskal", OBJECT_OR_NULL),
            ("randomization", OBJECT),
        ],
    );
    let test = [("f", NUMBER), ("df1", NUMBER), ("df2", NUMBER), ("p", NUMBER)];
    shaped("anova", &answer["anova"], &test);
    if !answer["welch"].is_null() {
        shaped("welch", &answer["welch"], &test);
    }
    if !answer["kruskal"].is_null() {
        shaped("kruskal", &answer["kruskal"], &[("h", NUMBER), ("df", COUNT), ("p", NUMBER)]);
    }
    let dealt = [("p", NUMBER), ("draws", COUNT), ("seed", COUNT)];
    shaped("randomization", &answer["randomization"], &dealt);
    for group in list(answer, "groups") {
        let promised =
            [("level", TEXT), ("n", COUNT), ("mean", NUMBER), ("sd", NUMBER), ("mad", NUMBER)];
        shaped("group", group, &promised);
    }
    let ends = [("difference", NUMBER), ("low", NUMBER), ("high", NUMBER), ("p", NUMBER)];
    for pair in list(answer, "tukey") {
        shaped("pair", pair, &[[("a", TEXT), ("b", TEXT)].as_slice(), &ends].concat());
    }
    for one in answer["dunnett"].as_array().expect("a list") {
        shaped("against", one, &[[("level", TEXT)].as_slice(), &ends].concat());
    }
}

fn close(value: &Value, key: &str, wanted: f64, within: f64) {
    let found = number(value, key);
    assert!(
        (found - wanted).abs() <= within,
        "{key}: {found} where {wanted} is wanted: {value}"
    );
}

/// R 4.2.2 and SciPy 1.17.1 on PlantGrowth.
#[test]
fn plants_have_the_promised_shape_and_the_published_numbers() {
    let answer = against_a_control();
    shape(answer);
    assert_eq!(answer["n"], 30);
    close(&answer["anova"], "f", 4.846_087_862_380_135, 1e-10);
    close(&answer["anova"], "p", 0.015_909_958_325_622_937, 1e-11);
    close(&answer["welch"], "df2", 17.128_418_616_644_13, 1e-9);
    close(&answer["kruskal"], "h", 7.988_228_749_443_715, 1e-9);
    let last =
        list(answer, "tukey").iter().find(|one| one["a"] == "trt2" && one["b"] == "trt1");
    let last = last.expect("each pair once, the later less the earlier");
    close(last, "difference", 0.865, 1e-12);
    close(last, "low", 0.173_783_9, 1e-6);
    close(last, "high", 1.556_216_1, 1e-6);
    close(last, "p", 0.012_006_423_979_493, 1e-10);
    let dunnett = list(answer, "dunnett");
    assert_eq!(dunnett.len(), 2);
    close(&dunnett[0], "p", 0.322_695_685_768_773, 1e-9);
    close(&dunnett[1], "p", 0.153_485_861_515_115, 1e-9);
    let group = &list(answer, "groups")[1];
    assert_eq!(group["level"], "trt1");
    close(group, "mad", 0.597, 5e-5);
    close(group, "mean", 4.661, 1e-12);
}

/// Box, Hunter & Hunter (1978): F 1.23894, p 0.338658; differences of means 84, 85, 89, 86.
#[test]
fn blends_are_compared_in_their_blocks() {
    let answer = in_blocks();
    shape(&answer);
    assert!(answer["welch"].is_null() && !answer["kruskal"].is_null(), "{answer}");
    assert_eq!(answer["dunnett"].as_array().map(Vec::len), Some(0));
    close(&answer["anova"], "f", 1.238_94, 5e-6);
    close(&answer["anova"], "df2", 12.0, 0.0);
    close(&answer["anova"], "p", 0.338_658, 1e-6);
    let pair = list(&answer, "tukey").iter().find(|one| one["a"] == "C" && one["b"] == "A");
    close(pair.expect("the pair"), "difference", 5.0, 1e-10);
    assert_eq!(answer["randomization"]["draws"], 9_999);
    // A gap makes the blocks incomplete.
    let gap = BLENDS.replace("3;B;87\n", "");
    let answer = of(&gap, &["--value", "yield", "--by", "treatment", "--block", "blend"]);
    assert!(answer["kruskal"].is_null(), "{answer}");
}

#[test]
fn levels_are_text_and_a_single_value_has_no_sd() {
    let table = "dose,rise\n10,1\n10.0,2.5\n10,1.5\n010,4\n10.0,3\n";
    let answer = of(table, &["--value", "rise", "--by", "dose"]);
    let levels: Vec<&str> = list(&answer, "groups").iter().map(|g| text(g, "level")).collect();
    assert_eq!(levels, ["10", "10.0", "010"]);
    assert!(list(&answer, "groups")[2]["sd"].is_null() && answer["welch"].is_null());
}

/// Rows that are left out are named beside the answer, which holds nothing else.
#[test]
fn what_was_left_out_is_said_on_the_error_stream() {
    let folder = tempfile::tempdir().expect("a folder");
    let table = format!("{PLANTS},ctrl\nNA,trt1\n");
    fs::write(folder.path().join("t.csv"), table).expect("written");
    let arguments = ["compare", "t.csv", "--value", "weight", "--by", "group", "--json"];
    let (out, err) = program::run(folder.path(), &arguments).ended(0);
    assert!(err.contains("left out: lines 32, 33."), "{err}");
    let answer: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(answer["n"], 30);
}
