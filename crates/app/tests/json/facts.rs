//! `barm facts --json`.

use crate::invented::facts;
use crate::shape::*;
use std::collections::BTreeSet;

#[test]
fn facts_have_the_promised_shape() {
    let facts = facts().as_array().expect("a list");
    let mut names = BTreeSet::new();
    for fact in facts {
        shaped(
            "fact",
            fact,
            &[
                ("name", TEXT),
                ("value", NUMBER),
                ("unit", TEXT),
                ("low", NUMBER_OR_NULL),
                ("high", NUMBER_OR_NULL),
                ("status", TEXT),
                ("source", TEXT),
            ],
        );
        assert!(names.insert(text(fact, "name")), "twice: {fact}");
        assert!(["sourced", "derived", "memory"].contains(&text(fact, "status")), "{fact}");
        assert!(!text(fact, "unit").is_empty() && !text(fact, "source").is_empty(), "{fact}");
        if let (Some(low), Some(high)) = (fact["low"].as_f64(), fact["high"].as_f64()) {
            let value = number(fact, "value");
            assert!(low <= value && value <= high, "{fact}");
        } else {
            assert!(fact["low"].is_null() && fact["high"].is_null(), "half a range: {fact}");
        }
    }
}
