//! The JSON answers on the invented plan are what `docs/json.md` promises.

mod analyze;
mod assign;
mod beyond;
mod check;
mod compare;
mod day;
mod facts;
mod fit;
mod invented;
mod metered;
mod pilot;
#[path = "../pilot/school.rs"]
mod pilot_school;
mod power;
mod predict;
mod prep;
#[path = "../program/mod.rs"]
mod program;
mod round_two;
mod schedule;
mod shape;
mod trust;
mod years;

use invented::answer_text;
use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

fn document() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/json.md");
    fs::read_to_string(path).expect("docs/json.md")
}

/// Keys written in the shape under one heading of the document.
fn documented(command: &str) -> BTreeSet<String> {
    let text = document();
    let head = format!("## `barm {command}");
    let (_, part) = text.split_once(&head).unwrap_or_else(|| panic!("no “{head}”"));
    let (_, part) = part.split_once("```text\n").expect("a shape");
    let (shape, _) = part.split_once("```").expect("the shape ends");
    let words: Vec<&str> = shape.split('"').collect();
    let keys = words.windows(2).skip(1).step_by(2);
    keys.filter(|pair| pair[1].starts_with(':')).map(|pair| pair[0].to_owned()).collect()
}

fn keys_of(value: &Value, into: &mut BTreeSet<String>) {
    match value {
        Value::Array(all) => all.iter().for_each(|one| keys_of(one, into)),
        Value::Object(fields) => {
            for (key, one) in fields {
                into.insert(key.clone());
                keys_of(one, into);
            }
        }
        _ => {}
    }
}

#[test]
fn the_document_names_every_key_and_no_other() {
    for (command, answer) in [
        ("predict", invented::prediction()),
        ("power", invented::power()),
        ("analyze", invented::analysis()),
        ("check", invented::check()),
        ("round-two PLAN READINGS --json", invented::proposals()),
        ("round-two PLAN READINGS --pool", invented::both_rounds()),
        ("facts", invented::facts()),
        ("compare", compare::against_a_control()),
        ("fit", fit::logistic()),
        ("prep", invented::prep()),
        ("assign", invented::assignment()),
        ("trust", invented::trust()),
        ("schedule", invented::schedule()),
        ("years", years::over_years()),
        ("pilot PLAN --json", invented::protocol()),
        ("pilot PLAN READINGS --json", invented::lesson()),
    ] {
        let mut given = BTreeSet::new();
        keys_of(answer, &mut given);
        if command == "power" {
            keys_of(invented::power_without_one(), &mut given);
        } else if command == "round-two PLAN READINGS --json" {
            // As every command tells what it could not foresee.
            keys_of(&invented::without_one()["not_forecast"], &mut given);
        } else if command == "predict" {
            keys_of(invented::without_one(), &mut given);
            keys_of(&invented::too_warm()[0], &mut given);
        } else if command == "assign" {
            keys_of(invented::clash(), &mut given);
        } else if command == "analyze" {
            keys_of(&invented::too_warm()[1], &mut given);
            keys_of(invented::with_day(), &mut given);
        }
        assert_eq!(documented(command), given, "barm {command}");
    }
}

#[test]
fn one_seed_gives_the_same_bytes_and_another_seed_others() {
    let of = |seed| {
        answer_text(&["predict", "plan.toml", "--json", "--draws", "64", "--seed", seed])
    };
    let first = of("7");
    assert_eq!(first, of("7"));
    assert_ne!(first, of("8"));
    let analyze = || answer_text(&["analyze", "plan.toml", "readings.csv", "--json"]);
    assert_eq!(analyze(), analyze());
}
