//! What a breath meter says of bags, beside what it is for.

use crate::invented::{analysis, too_warm};
use crate::shape::*;
use serde_json::Value;

fn range(of: &Value) {
    let promised =
        [("value", NUMBER_OR_NULL), ("low", NUMBER_OR_NULL), ("high", NUMBER_OR_NULL)];
    shaped("range", of, &promised);
}

#[test]
fn bags_are_compared_and_a_slip_is_named() {
    assert_eq!(analysis()["meter"], Value::Null, "no bag of the invented day was held to one");
    let meter = &too_warm()[1]["meter"];
    let promised = [("note", TEXT), ("compared", LIST), ("bags", LIST), ("not_used", TEXTS)];
    shaped("meter", meter, &promised);
    assert!(text(meter, "note").contains("says nothing about any person"), "{meter}");
    let compared = list(meter, "compared");
    assert_eq!(compared.len(), 1, "{meter}");
    shaped(
        "compared",
        &compared[0],
        &[
            ("question", TEXT),
            ("treatment", TEXT),
            ("compared_with", TEXT),
            ("n", COUNT),
            ("n_reference", COUNT),
            ("outcome", TEXT),
            ("times", OBJECT),
            ("shown_times", NUMBER_OR_NULL),
            ("order_in_doubt", FLAG),
            ("says", TEXT),
            ("warning", TEXT_OR_NULL),
        ],
    );
    range(&compared[0]["times"]);
    assert_eq!(
        (text(&compared[0], "treatment"), compared[0]["n"].as_u64()),
        ("Oat flour", Some(1))
    );
    let bags = list(meter, "bags");
    assert_eq!(bags.len(), 2, "{meter}");
    for bag in bags {
        shaped(
            "bag",
            bag,
            &[
                ("bag", TEXT),
                ("treatment", TEXT),
                ("shown_percent", NUMBER),
                ("percent", NUMBER_OR_NULL),
                ("temperature_c", NUMBER_OR_NULL),
                ("ethanol_g_per_l", OBJECT),
                ("at_least", FLAG),
                ("set_aside", TEXT_OR_NULL),
            ],
        );
        range(&bag["ethanol_g_per_l"]);
        // A hundredth of clean air is taken off, more or less (the zero is held back by what is usual).
        assert!(number(bag, "percent") < number(bag, "shown_percent"), "{bag}");
    }
    let not_used = list(meter, "not_used");
    assert_eq!(not_used.len(), 1, "{meter}");
    assert!(not_used[0].as_str().is_some_and(|says| says.contains("decimal point")), "{meter}");
}
