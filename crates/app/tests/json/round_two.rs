//! `barm round-two --json`.

use crate::invented::{both_rounds, proposals};
use crate::shape::*;
use serde_json::Value;

const BAND: [(&str, Kind); 3] = [("low", NUMBER), ("median", NUMBER), ("high", NUMBER)];

#[test]
fn proposals_have_the_promised_shape_and_stand_in_their_order() {
    let promised = [
        ("format", COUNT),
        ("by", TEXT),
        ("round", TEXT),
        ("tried", COUNT),
        ("notes", TEXTS),
        ("proposals", LIST),
        ("not_forecast", LIST),
        ("by_pilot", TEXT_OR_NULL),
    ];
    shaped("round two", proposals(), &promised);
    assert_eq!(text(proposals(), "by"), "clear-per-bag");
    assert_eq!(text(proposals(), "round"), "only");
    let all = list(proposals(), "proposals");
    assert!(all.len() as f64 <= number(proposals(), "tried"));
    for (at, one) in all.iter().enumerate() {
        let promised = [
            ("rank", COUNT),
            ("kind", TEXT),
            ("makes", TEXT),
            ("why", TEXT),
            ("each", COUNT),
            ("bags", COUNT),
            ("clear", NUMBER),
            ("half_now_mm", NUMBER_OR_NULL),
            ("half_then_mm", NUMBER_OR_NULL),
            ("dollars", NUMBER),
            ("without_price", TEXTS),
            ("comparisons", LIST),
            ("forecast", LIST),
            ("shares", OBJECT),
        ];
        shaped("proposal", one, &promised);
        assert_eq!(one["rank"], at + 1);
        for told in list(one, "comparisons") {
            let promised = [
                ("question", TEXT),
                ("treatment", TEXT),
                ("compared_with", TEXT),
                ("n", COUNT),
                ("n_reference", COUNT),
                ("difference_mm", OBJECT),
                ("half_now_mm", NUMBER_OR_NULL),
                ("half_then_mm", NUMBER_OR_NULL),
                ("clear", NUMBER),
                ("pooled", FLAG),
            ];
            shaped("comparison", told, &promised);
            shaped("difference", &told["difference_mm"], &BAND);
            assert!((0.0..=1.0).contains(&number(told, "clear")), "{told}");
            // The invented day was told at the full level.
            assert_eq!(told["pooled"], false);
        }
        for seen in list(one, "forecast") {
            shaped("forecast", seen, &[("treatment", TEXT), ("rise_mm", OBJECT)]);
            shaped("rise", &seen["rise_mm"], &BAND);
        }
        let promised =
            [("treatments", TEXTS), ("references", TEXTS), ("new", TEXTS), ("lots", TEXTS)];
        shaped("shares", &one["shares"], &promised);
    }
    let worth = |one: &Value| number(one, "clear") / number(one, "bags");
    assert!(all.windows(2).all(|pair| worth(&pair[0]) >= worth(&pair[1]) - 1e-12));
}

#[test]
fn both_rounds_have_the_promised_shape_and_no_verdict_where_none_is_left() {
    let promised = [
        ("format", COUNT),
        ("round", TEXT),
        ("questions", LIST),
        ("rejected", LIST),
        ("notes", TEXTS),
        ("students", TEXTS),
    ];
    shaped("both rounds", both_rounds(), &promised);
    assert!(list(both_rounds(), "students").len() >= 2);
    let rejected = list(both_rounds(), "rejected");
    assert_eq!((&rejected[0]["round"], rejected.len()), (&Value::from(2), 1), "{rejected:?}");
    for row in rejected {
        shaped("rejected", row, &[("round", COUNT), ("line", COUNT), ("reason", TEXT)]);
    }
    for question in list(both_rounds(), "questions") {
        let promised = [
            ("question", TEXT),
            ("first_level", NUMBER_OR_NULL),
            ("pooled_level", NUMBER_OR_NULL),
            ("comparisons", LIST),
        ];
        shaped("question", question, &promised);
        for again in list(question, "comparisons") {
            let promised = [
                ("treatment", TEXT),
                ("compared_with", TEXT),
                ("first", OBJECT_OR_NULL),
                ("second", OBJECT_OR_NULL),
                ("both", OBJECT_OR_NULL),
            ];
            shaped("comparison", again, &promised);
            for judged in ["first", "second", "both"].map(|key| &again[key]) {
                if judged.is_null() {
                    continue;
                }
                let promised = [
                    ("n", COUNT),
                    ("n_reference", COUNT),
                    ("difference_mm", NUMBER_OR_NULL),
                    ("low", NUMBER_OR_NULL),
                    ("high", NUMBER_OR_NULL),
                    ("verdict", TEXT_OR_NULL),
                    ("says", TEXT_OR_NULL),
                ];
                shaped("judged", judged, &promised);
            }
            let told = !question["pooled_level"].is_null();
            assert_eq!(again["both"]["verdict"].is_string(), told, "{again}");
            assert!(again["second"]["verdict"].is_string(), "judged by itself: {again}");
        }
    }
}
