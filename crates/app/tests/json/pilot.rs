//! `barm pilot --json`.

use crate::invented::{lesson, protocol};
use crate::shape::*;

const RANGE: [(&str, Kind); 3] =
    [("best", NUMBER_OR_NULL), ("low", NUMBER_OR_NULL), ("high", NUMBER_OR_NULL)];

#[test]
fn what_to_do_has_the_promised_shape() {
    let promised = [
        ("format", COUNT),
        ("steps", LIST),
        ("bags", LIST),
        ("syringe_ml", NUMBERS),
        ("cooling_min", NUMBERS),
        ("spoons", COUNT),
        ("ethanol_percent", NUMBERS),
        ("cautions", LIST),
        ("in_use", TEXT_OR_NULL),
    ];
    shaped("pilot", protocol(), &promised);
    for step in list(protocol(), "steps") {
        shaped("step", step, &[("minute", COUNT), ("part", TEXT_OR_NULL), ("says", TEXT)]);
    }
    for bag in list(protocol(), "bags") {
        let promised =
            [("bag", TEXT), ("tells", TEXT), ("enzyme", TEXT_OR_NULL), ("minutes", NUMBERS)];
        shaped("bag", bag, &promised);
        assert!(["yeast", "carrier", "enzyme"].contains(&text(bag, "tells")), "{bag}");
    }
    for caution in list(protocol(), "cautions") {
        shaped("caution", caution, &[("code", TEXT), ("message", TEXT), ("fix", TEXT)]);
    }
}

#[test]
fn what_it_taught_has_the_promised_shape() {
    let promised = [
        ("format", COUNT),
        ("date", TEXT),
        ("measured", TEXTS),
        ("changes", LIST),
        ("unmoved", TEXTS),
        ("noise", NUMBER_OR_NULL),
        ("bags", LIST),
        ("treatments", LIST),
        ("stored", FLAG),
        ("file", TEXT_OR_NULL),
    ];
    shaped("lesson", lesson(), &promised);
    for change in list(lesson(), "changes") {
        let promised = [
            ("what", TEXT),
            ("unit", TEXT),
            ("before", OBJECT),
            ("after", OBJECT),
            ("left", NUMBER_OR_NULL),
        ];
        shaped(text(change, "what"), change, &promised);
        shaped("before", &change["before"], &RANGE);
        shaped("after", &change["after"], &RANGE);
    }
    for bag in list(lesson(), "bags") {
        let promised = [
            ("bag", TEXT),
            ("minutes", NUMBERS),
            ("rise_mm", NUMBERS),
            ("before_mm", LIST),
            ("after_mm", LIST),
        ];
        shaped("bag", bag, &promised);
        assert_eq!(list(bag, "before_mm").len(), numbers(&bag["minutes"]).len());
    }
    for treatment in list(lesson(), "treatments") {
        let promised = [
            ("treatment", TEXT),
            ("question", TEXT),
            ("before_mm", OBJECT),
            ("after_mm", OBJECT),
        ];
        shaped("treatment", treatment, &promised);
    }
}
