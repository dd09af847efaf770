//! What a day teaches, as far as anybody asked.

use crate::invented::{LEAKING, analysis, bag_codes, with_day};
use crate::shape::*;
use serde_json::Value;

#[test]
fn a_day_has_the_promised_shape() {
    assert_eq!(analysis()["day"], Value::Null, "nobody asked");
    let day = &with_day()["day"];
    shaped(
        "day",
        day,
        &[
            ("bags", COUNT),
            ("readings", COUNT),
            ("changes", LIST),
            ("unmoved", TEXTS),
            ("noise", NUMBER_OR_NULL),
            ("look_at", LIST),
        ],
    );
    for change in list(day, "changes") {
        let promised = [
            ("what", TEXT),
            ("unit", TEXT),
            ("before", OBJECT),
            ("after", OBJECT),
            ("left", NUMBER_OR_NULL),
        ];
        shaped("change", change, &promised);
        for side in ["before", "after"] {
            let [low, best, high] =
                ["low", "best", "high"].map(|key| number(&change[side], key));
            assert!(low <= best && best <= high, "{change}");
        }
    }
    let codes = bag_codes();
    let look_at = list(day, "look_at");
    let leaks =
        look_at.iter().find(|bag| bag["bag"] == LEAKING).expect("the leak is asked about");
    assert_eq!(leaks["looks"], "falls-behind", "{leaks}");
    for bag in look_at {
        let promised = [
            ("bag", TEXT),
            ("treatment", TEXT),
            ("chance", NUMBER_OR_NULL),
            ("looks", TEXT),
            ("says", TEXT),
        ];
        shaped("look at", bag, &promised);
        assert!(codes.contains(text(bag, "bag")) && text(bag, "says").ends_with('?'), "{bag}");
        assert!(number(bag, "chance") > 0.5, "{bag}");
    }
    // A class that reads so many bags of sugar tells its yeast's strength.
    let whats: Vec<&str> = list(day, "changes").iter().map(|one| text(one, "what")).collect();
    assert!(whats.contains(&"strength of the yeast"), "{whats:?}");
}
