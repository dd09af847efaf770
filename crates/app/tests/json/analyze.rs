//! `barm analyze --json`.

use crate::invented::{analysis, bag_codes, plan, tables, word};
use crate::shape::*;
use std::collections::BTreeSet;

#[test]
fn results_have_the_promised_shape() {
    shaped(
        "analyze",
        analysis(),
        &[
            ("format", COUNT),
            ("bags", LIST),
            ("questions", LIST),
            ("rejected", LIST),
            ("notes", TEXTS),
            ("not_forecast", LIST),
            ("beyond", LIST),
            ("meter", OBJECT_OR_NULL),
            ("day", OBJECT_OR_NULL),
        ],
    );
    assert_eq!(analysis()["format"], 1);
    for bag in list(analysis(), "bags") {
        shaped(
            text(bag, "bag"),
            bag,
            &[
                ("bag", TEXT),
                ("question", TEXT),
                ("treatment", TEXT),
                ("period", TEXT),
                ("minute", NUMBER_OR_NULL),
                ("height_mm", OBJECT),
                ("gas_ml", OBJECT),
                ("ethanol_g", OBJECT),
                ("steepest_mm_per_min", NUMBER_OR_NULL),
                ("readable_at_min", NUMBER_OR_NULL),
                ("set_aside", TEXT_OR_NULL),
                ("hints", TEXTS),
            ],
        );
        for name in ["height_mm", "gas_ml", "ethanol_g"] {
            let measured = &bag[name];
            let promised =
                [("value", NUMBER_OR_NULL), ("low", NUMBER_OR_NULL), ("high", NUMBER_OR_NULL)];
            shaped(name, measured, &promised);
            let [value, low, high] = ["value", "low", "high"].map(|key| measured[key].as_f64());
            assert_eq!(value.is_some(), low.is_some() && high.is_some(), "{bag}");
            assert!(low <= value && value <= high, "{bag}");
        }
    }
    for row in list(analysis(), "rejected") {
        shaped("rejected", row, &[("line", COUNT), ("reason", TEXT)]);
    }
}

#[test]
fn verdicts_have_the_promised_shape_and_fixed_codes() {
    const JUDGED: [(&str, Kind); 7] = [
        ("n", COUNT),
        ("n_reference", COUNT),
        ("difference_mm", NUMBER_OR_NULL),
        ("low", NUMBER_OR_NULL),
        ("high", NUMBER_OR_NULL),
        ("verdict", TEXT),
        ("reason", TEXT),
    ];
    for question in list(analysis(), "questions") {
        shaped(
            text(question, "question"),
            question,
            &[
                ("question", TEXT),
                ("reference", TEXT),
                ("comparisons", LIST),
                ("interaction_p", NUMBER_OR_NULL),
            ],
        );
        for comparison in list(question, "comparisons") {
            let mut promised = vec![
                ("treatment", TEXT),
                ("compared_with", TEXT),
                ("without_set_aside", OBJECT),
            ];
            promised.extend(JUDGED);
            shaped(text(comparison, "treatment"), comparison, &promised);
            shaped("without_set_aside", &comparison["without_set_aside"], &JUDGED);
            for judged in [comparison, &comparison["without_set_aside"]] {
                let codes = ["clear", "leaning", "unclear", "no-rise", "not-comparable"];
                assert!(codes.contains(&text(judged, "verdict")), "{judged}");
                assert!(!text(judged, "reason").is_empty(), "{judged}");
                let [low, difference, high] =
                    ["low", "difference_mm", "high"].map(|key| judged[key].as_f64());
                assert!(low <= difference && difference <= high, "{judged}");
            }
            let [with, without] = [comparison, &comparison["without_set_aside"]]
                .map(|judged| judged["n"].as_u64().expect("a count"));
            assert!(without <= with, "leaving bags out adds none: {comparison}");
        }
    }
}

#[test]
fn results_hold_every_bag_of_the_plan_once() {
    let bags = list(analysis(), "bags");
    let found: BTreeSet<String> = bags.iter().map(|bag| text(bag, "bag").to_owned()).collect();
    assert_eq!(found.len(), bags.len(), "no bag twice");
    assert_eq!(found, bag_codes());
    let plan = plan();
    let rules: BTreeSet<&str> =
        tables(&plan, "set_aside").iter().map(|rule| word(rule, "rule")).collect();
    for bag in bags {
        if let Some(rule) = bag["set_aside"].as_str() {
            assert!(rules.contains(rule), "{bag}");
        }
    }
    assert!(bags.iter().any(|bag| bag["set_aside"].is_string()), "one bag was set aside");
}
