//! `barm trust --json`.

use crate::invented::{answer_text, trust};
use crate::shape::*;

const COUNTED: [(&str, Kind); 5] = [
    ("found", COUNT),
    ("of", COUNT),
    ("share", NUMBER_OR_NULL),
    ("at_least", NUMBER),
    ("at_most", NUMBER),
];

#[test]
fn trust_has_the_promised_shape() {
    let trust = trust();
    shaped(
        "trust",
        trust,
        &[
            ("format", COUNT),
            ("classes", COUNT),
            ("seed", COUNT),
            ("cells", LIST),
            ("over_all", OBJECT),
        ],
    );
    let over_all = &trust["over_all"];
    shaped(
        "over all",
        over_all,
        &[
            ("clear", OBJECT),
            ("clear_holds", FLAG),
            ("large_gap", OBJECT),
            ("large_gap_holds", FLAG),
        ],
    );
    assert_eq!(list(trust, "cells").len(), 26);
    let mut clear = 0;
    for cell in list(trust, "cells") {
        let counts = ["false_clear", "false_large", "held", "true_clear", "true_large"];
        let own: [(&str, Kind); 13] = [
            ("cell", TEXT),
            ("bags", COUNT),
            ("periods", COUNT),
            ("treatments", COUNT),
            ("made", TEXT),
            ("group_sd", NUMBER),
            ("wide", FLAG),
            ("slips", TEXT),
            ("twice", FLAG),
            ("can_be_clear", FLAG),
            ("slips_cost", NUMBER_OR_NULL),
            ("foretold", NUMBER_OR_NULL),
            ("bars", LIST),
        ];
        let all: Vec<(&str, Kind)> =
            own.into_iter().chain(counts.map(|key| (key, OBJECT as Kind))).collect();
        shaped("cell", cell, &all);
        for key in counts {
            let count = &cell[key];
            shaped(key, count, &COUNTED);
            assert!(number(count, "at_least") <= number(count, "at_most"), "{count}");
            if let Some(share) = count["share"].as_f64() {
                assert!(
                    number(count, "at_least") <= share && share <= number(count, "at_most")
                );
            }
        }
        assert_eq!(cell["false_clear"]["of"].as_u64(), Some(2));
        assert_eq!(cell["slips_cost"].is_null(), text(cell, "slips") == "none");
        for bar in list(cell, "bars") {
            shaped("bar", bar, &[("bar", TEXT), ("holds", TEXT)]);
            assert!(["yes", "no", "not-asked"].contains(&text(bar, "holds")), "{bar}");
        }
        if cell["can_be_clear"] == true {
            clear += 1;
        }
    }
    assert_eq!(over_all["clear"]["of"].as_u64(), Some(2 * clear));
}

#[test]
fn one_kind_of_class_alone_is_told_as_among_all() {
    let told =
        answer_text(&["trust", "--json", "--classes", "2", "--cell", "b4-p3-t3-own-g1-mended"]);
    let alone: serde_json::Value = serde_json::from_str(&told).expect("JSON");
    let name = "b4-p3-t3-own-g1-mended";
    let among = list(trust(), "cells").iter().find(|cell| text(cell, "cell") == name);
    let among = among.expect("the cell");
    for key in ["false_clear", "held", "true_clear"] {
        assert_eq!(alone["cells"][0][key], among[key], "{key}");
    }
    assert!(alone["cells"][0]["slips_cost"].is_null(), "nothing to hold it against");
}
