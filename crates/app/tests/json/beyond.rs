//! Forecasts that go beyond what is known say so, in both answers.

use crate::invented::{HEATED, prediction, too_warm};
use crate::shape::*;
use serde_json::Value;

const BEYOND: [(&str, Kind); 8] = [
    ("law", TEXT),
    ("quantity", TEXT),
    ("unit", TEXT),
    ("known", OBJECT),
    ("value", NUMBER),
    ("from_min", NUMBER),
    ("outside", TEXT),
    ("says", TEXT),
];

/// Yeast's law of warmth is known to 60 °C; water of 70 °C is beyond, from the pouring on.
fn is_too_warm(mark: &Value) {
    shaped("known", &mark["known"], &[("low", NUMBER), ("high", NUMBER)]);
    assert_eq!((number(&mark["known"], "high"), text(mark, "unit")), (60.0, "°C"), "{mark}");
    let value = number(mark, "value");
    assert!(value > 60.0 && value < 70.0, "{mark}");
    assert!(number(mark, "from_min") < 0.0, "{mark}");
    assert!(text(mark, "says").contains("0 to 60 °C (32 to 140 °F)"), "{mark}");
}

#[test]
fn a_bag_that_is_too_warm_is_marked_and_no_other() {
    let [forecast, _] = too_warm();
    let mut marked = 0;
    for bag in list(forecast, "bags") {
        let marks = bag["beyond"].as_array().expect("a list");
        assert_eq!(marks.is_empty(), bag["treatment"] != HEATED, "{bag}");
        for mark in marks {
            shaped("beyond", mark, &BEYOND);
        }
        if let Some(mark) = marks.iter().find(|mark| mark["law"] == "yeast.response") {
            is_too_warm(mark);
            marked += 1;
        }
    }
    assert!(marked > 0);
    for bag in list(prediction(), "bags") {
        assert_eq!(bag["beyond"], Value::Array(Vec::new()), "{}", bag["treatment"]);
    }
}

#[test]
fn an_analysis_names_all_bags_that_go_beyond_a_law_once() {
    let [_, found] = too_warm();
    let of_a_law = list(found, "beyond");
    for together in of_a_law {
        let promised: Vec<_> = [("treatments", TEXTS)].into_iter().chain(BEYOND).collect();
        shaped("beyond", together, &promised);
        assert_eq!(together["treatments"], serde_json::json!([HEATED]));
    }
    let own: Vec<_> = of_a_law.iter().filter(|one| one["law"] == "yeast.response").collect();
    assert_eq!(own.len(), 1, "{of_a_law:?}");
    is_too_warm(own[0]);
}
