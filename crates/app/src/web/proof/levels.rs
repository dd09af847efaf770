//! What a group is told depends on how much its level leaves to it.

use super::class::{Call, Class, DURING_1, plan_text};
use crate::desk::doors::Part;
use crate::desk::room::Kind;
use crate::web::cookies;
use serde_json::Value;
use std::collections::BTreeSet;

/// The class whose period 1 works at this level, its questions marked.
fn at_level(level: &str) -> Class {
    let text = plan_text();
    let mut lines: Vec<String> = Vec::new();
    for line in text.lines() {
        // Groups of their own mind would hide the level of the plan.
        if line.starts_with("inquiry = ") {
            lines.push(format!("inquiry = \"{level}\""));
        } else if line.starts_with("asks = ") {
            lines.push("asks = \"MARKQUESTION, which one?\"".to_owned());
        } else {
            lines.push(line.to_owned());
        }
    }
    Class::of(&lines.join("\n"), DURING_1, Kind::Real)
}

async fn given(class: &Class, token: &str) -> (Value, String) {
    let of = |path: &str| Call::get(path).cookie(cookies::name(Part::Group), token);
    let state = class.call(of("/bench/state")).await;
    let page = class.call(of("/bench")).await;
    assert_eq!((state.status.as_u16(), page.status.as_u16()), (200, 200));
    let all = format!("{}\n{}", state.body, page.body);
    (serde_json::from_str(&state.body).expect("JSON"), all)
}

fn names(value: &Value) -> BTreeSet<&str> {
    value.as_object().expect("an object").keys().map(String::as_str).collect()
}

/// What a bench card prints: whose it is, when to read, and for each bag its letter, its code, what
/// goes in, and room for its heights. The rest is what the group itself wrote and the page's clock.
const PAGE: [&str; 17] = [
    "now_ms", "speed", "seat", "kind", "period", "group", "label", "inquiry", "plan", "older",
    "stand_in", "opened", "clock", "guess", "bags", "keys", "refused",
];
const BAG: [&str; 18] = [
    "code",
    "letter",
    "treatment",
    "look",
    "hollow",
    "full_mm",
    "dry",
    "water",
    "lies",
    "asks",
    "sealed",
    "zero",
    "other_zeros",
    "readings",
    "odd",
    "poured",
    "vented",
    "lost",
];

#[tokio::test]
async fn at_each_level_a_group_is_told_what_its_card_prints_and_no_more() {
    for (level, question) in
        [("confirmation", false), ("structured", false), ("guided", true), ("open", true)]
    {
        let class = at_level(level);
        let token = class.group("1", 1);
        let (state, all) = given(&class, &token).await;
        assert_eq!(state["inquiry"], level);
        assert_eq!(names(&state), BTreeSet::from(PAGE), "{level}");
        assert_eq!(state["older"], Value::Null, "no name is one of an older plan");
        let bags = state["bags"].as_array().expect("bags");
        assert!(!bags.is_empty());
        for bag in bags {
            assert_eq!(names(bag), BTreeSet::from(BAG), "{level}");
            assert!(!bag["dry"].as_array().expect("a list").is_empty(), "{bag}");
        }
        // The card of a given method has the steps; what is asked is the class's talk.
        assert_eq!(all.contains("MARKQUESTION"), question, "{level}");
        // Of the other treatments no card of the group knows.
        let others = class.room.read(|scene| {
            let own: Vec<String> = scene
                .plan
                .bags
                .iter()
                .filter(|bag| bag.period == "1" && bag.group == 1)
                .map(|bag| bag.treatment.clone())
                .collect();
            let all = scene.plan.treatments().map(|(_, treatment)| treatment.name.clone());
            all.filter(|name| !own.contains(name)).collect::<Vec<String>>()
        });
        assert!(others.len() > 3);
        for name in others.iter().filter(|name| name.contains(' ')) {
            assert!(!all.contains(name.as_str()), "{level}: {name}");
        }
    }
}
