//! `barm assign --json`.

use crate::invented::{assignment, clash};
use crate::shape::*;
use serde_json::Value;
use std::collections::BTreeSet;

const ANSWER: [(&str, Kind); 11] = [
    ("format", COUNT),
    ("done", FLAG),
    ("seed", COUNT),
    ("bags_each", COUNT),
    ("groups", LIST),
    ("broken", LIST),
    ("treatments", LIST),
    ("questions", LIST),
    ("proof", OBJECT_OR_NULL),
    ("clash", OBJECT_OR_NULL),
    ("notes", TEXTS),
];

const AMISS: [(&str, Kind); 4] =
    [("missing", COUNT), ("short", COUNT), ("regret", COUNT), ("uneven", COUNT)];

fn whole(value: &Value) -> bool {
    value.is_i64() || value.is_u64()
}

#[test]
fn who_does_what_has_the_promised_shape() {
    let all = assignment();
    shaped("assign", all, &ANSWER);
    assert_eq!((&all["format"], &all["done"]), (&1.into(), &true.into()));
    assert!(all["clash"].is_null());
    for group in list(all, "groups") {
        let promised = [
            ("period", TEXT),
            ("group", COUNT),
            ("question", TEXT),
            ("wished", TEXTS),
            ("choice", (|value| value.is_u64() || value.is_null()) as Kind),
            ("bags", LIST),
            ("bench", COUNT),
            ("turn", COUNT),
        ];
        shaped("group", group, &promised);
        let bags = list(group, "bags");
        for bag in bags {
            shaped("bag", bag, &[("code", TEXT), ("treatment", TEXT), ("control", FLAG)]);
        }
        assert!(bags.iter().any(|bag| bag["control"] == true), "its own control: {group}");
        let choice = group["choice"].as_u64().map(|rank| rank as usize - 1);
        let wished = group["wished"].as_array().expect("a list");
        let found = wished.iter().position(|question| *question == group["question"]);
        assert_eq!(choice, found, "{group}");
    }
    for treatment in list(all, "treatments") {
        let promised = [
            ("question", TEXT),
            ("treatment", TEXT),
            ("bags", COUNT),
            ("asked", COUNT),
            ("periods", COUNT),
        ];
        shaped("treatment", treatment, &promised);
    }
    for question in list(all, "questions") {
        shaped(
            "question",
            question,
            &[("question", TEXT), ("groups", COUNT), ("connected", FLAG)],
        );
    }
    for broken in list(all, "broken") {
        let promised = [
            ("period", TEXT),
            ("group", COUNT),
            ("wanted", TEXT),
            ("gets", TEXT),
            ("price", OBJECT_OR_NULL),
            ("clashes_with", TEXTS),
        ];
        shaped("broken", broken, &promised);
        let price: [(&str, Kind); 4] =
            [("missing", whole), ("short", whole), ("others", whole), ("proven", FLAG)];
        if broken["price"].is_object() {
            shaped("price", &broken["price"], &price);
        }
    }
    let proof: [(&str, Kind); 7] = [
        ("worth", OBJECT),
        ("bound", OBJECT),
        ("proven", FLAG),
        ("dealt", FLAG),
        ("gap", NUMBER_OR_NULL),
        ("flows", COUNT),
        ("most_flows", COUNT),
    ];
    shaped("proof", &all["proof"], &proof);
    shaped("worth", &all["proof"]["worth"], &AMISS);
    shaped("bound", &all["proof"]["bound"], &AMISS);
    assert_eq!(all["proof"]["proven"], true);
    assert!(number(&all["proof"], "gap").abs() < 1e-12);
}

#[test]
fn the_invented_day_has_every_treatment_in_every_period_and_all_bags_asked_for() {
    let all = assignment();
    let groups = list(all, "groups");
    assert_eq!(groups.len(), 32);
    for treatment in list(all, "treatments") {
        if treatment["asked"].as_u64() > Some(0) {
            assert_eq!(treatment["bags"], treatment["asked"], "{treatment}");
        }
    }
    let benches: BTreeSet<(String, u64)> = groups
        .iter()
        .map(|group| (text(group, "period").to_owned(), group["bench"].as_u64().expect("one")))
        .collect();
    assert_eq!(benches.len(), 32, "no bench is taken twice");
    // The teacher's word: two groups of period 4 at least on enzymes, one of them group 1.
    let on = |period: &str, number: u64| {
        let own = |group: &&Value| group["period"] == period && group["group"] == number;
        groups.iter().find(own).map(|group| text(group, "question")).expect("the group")
    };
    assert_eq!((on("4", 1), on("4", 2), on("4", 6)), ("enzyme", "food", "food"));
}

#[test]
fn a_clash_has_the_promised_shape() {
    let all = clash();
    shaped(
        "assign",
        all,
        &ANSWER.map(|(key, kind)| {
            let empty = ["groups", "broken", "treatments", "questions"].contains(&key);
            (key, if empty { LIST } else { kind })
        }),
    );
    assert_eq!(all["done"], false);
    assert!(all["proof"].is_null());
    let promised: [(&str, Kind); 3] = [("rules", TEXTS), ("minimal", FLAG), ("smallest", FLAG)];
    shaped("clash", &all["clash"], &promised);
    let rules = list(&all["clash"], "rules");
    assert_eq!(rules.len(), 2, "{rules:?}");
}
