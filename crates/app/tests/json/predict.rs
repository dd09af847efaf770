//! `barm predict --json`.

use crate::invented::{SOAKED, plan, prediction, tables, without_one, word};
use crate::shape::*;
use serde_json::Value;

#[test]
fn a_forecast_has_the_promised_shape() {
    let promised = [
        ("format", COUNT),
        ("bags", LIST),
        ("not_forecast", LIST),
        ("held_back", LIST),
        ("by_pilot", TEXT_OR_NULL),
    ];
    shaped("predict", prediction(), &promised);
    assert_eq!(prediction()["format"], 1);
    for bag in list(prediction(), "bags") {
        shaped(
            text(bag, "treatment"),
            bag,
            &[
                ("question", TEXT),
                ("treatment", TEXT),
                ("reference", FLAG),
                ("control", FLAG),
                ("compared_with", TEXT_OR_NULL),
                ("minutes", NUMBERS),
                ("height_mm", OBJECT),
                ("gas_ml", OBJECT),
                ("ethanol_g", OBJECT),
                ("temperature_c", NUMBERS),
                ("peak_fill", NUMBER),
                ("vent_by_min", NUMBER_OR_NULL),
                ("readable_at_min", NUMBER_OR_NULL),
                ("chance_readable", NUMBER_OR_NULL),
                ("beyond", LIST),
            ],
        );
        for band in ["height_mm", "gas_ml", "ethanol_g"] {
            let promised = [("median", NUMBERS), ("low", NUMBERS), ("high", NUMBERS)];
            shaped(band, &bag[band], &promised);
        }
    }
}

#[test]
fn what_holds_a_bag_back_covers_every_minute_of_it() {
    let words = ["no yeast", "no food", "waking", "locked", "enzyme", "food", "yeast"];
    for held in list(prediction(), "held_back") {
        let name = text(held, "treatment");
        let promised =
            [("treatment", TEXT), ("by", TEXT), ("along", LIST), ("dissolved_to_min", COUNT)];
        shaped(name, held, &promised);
        assert!(words.contains(&text(held, "by")), "{held}");
        let along = held["along"].as_array().expect("a list");
        let mut next = 0.0;
        for stretch in along {
            let promised = [("from_min", COUNT), ("to_min", COUNT), ("by", TEXT)];
            shaped(name, stretch, &promised);
            assert!(words.contains(&text(stretch, "by")), "{held}");
            assert!((number(stretch, "from_min") - next).abs() < 1e-9, "{held}");
            next = number(stretch, "to_min") + 1.0;
        }
        let bag = list(prediction(), "bags").iter().find(|bag| bag["treatment"] == name);
        let minutes = numbers(&bag.expect("a forecast")["minutes"]).len();
        assert!(along.is_empty() || next > 1.0 && next <= minutes as f64, "{held}");
    }
}

/// 400 mL of water fit in no snack bag; all other bags keep their forecasts.
#[test]
fn a_treatment_without_a_forecast_is_named_with_its_reason() {
    let answer = without_one();
    let left: Vec<&Value> = list(answer, "not_forecast").iter().collect();
    assert_eq!(left.len(), 1, "{left:?}");
    shaped("not_forecast", left[0], &[("treatment", TEXT), ("reason", TEXT)]);
    assert_eq!(left[0]["treatment"], SOAKED);
    assert!(!text(left[0], "reason").contains(SOAKED), "named once: {}", left[0]);
    let names = |answer: &'static Value| -> Vec<&str> {
        list(answer, "bags").iter().map(|entry| text(entry, "treatment")).collect()
    };
    let mut others = names(prediction());
    others.retain(|name| *name != SOAKED);
    assert_eq!(names(answer), others);
}

#[test]
fn a_forecast_goes_minute_by_minute_inside_its_band() {
    for bag in list(prediction(), "bags") {
        let treatment = text(bag, "treatment");
        let minutes = numbers(&bag["minutes"]);
        let whole: Vec<f64> =
            (0..u32::try_from(minutes.len()).expect("few")).map(f64::from).collect();
        assert_eq!(minutes, whole, "{treatment}: minutes 0, 1, 2 …");
        assert_eq!(numbers(&bag["temperature_c"]).len(), minutes.len(), "{treatment}");
        for name in ["height_mm", "gas_ml", "ethanol_g"] {
            let [low, median, high] = ["low", "median", "high"].map(|k| numbers(&bag[name][k]));
            assert_eq!(low.len(), minutes.len(), "{treatment}: {name} low");
            assert_eq!(median.len(), minutes.len(), "{treatment}: {name} median");
            assert_eq!(high.len(), minutes.len(), "{treatment}: {name} high");
            for minute in 0..minutes.len() {
                let (l, m, h) = (low[minute], median[minute], high[minute]);
                assert!(l <= m && m <= h, "{treatment}: {name} at {minute}: {l}, {m}, {h}");
            }
        }
        // A rise counts from the bag's own zero reading.
        assert!(numbers(&bag["height_mm"]["median"])[0].abs() < 1e-9, "{treatment}");
    }
}

#[test]
fn a_forecast_covers_every_treatment_of_every_question() {
    let plan = plan();
    let mut promised: Vec<(String, String)> = Vec::new();
    for question in tables(&plan, "question") {
        let id = word(question, "id");
        for treatment in tables(question, "treatment") {
            promised.push((id.to_owned(), word(treatment, "name").to_owned()));
        }
        let uses = question.get("uses").and_then(toml::Value::as_array).into_iter().flatten();
        for used in uses.filter_map(toml::Value::as_str) {
            promised.push((id.to_owned(), used.to_owned()));
        }
    }
    let entries = list(prediction(), "bags");
    for (question, treatment) in &promised {
        let found = entries
            .iter()
            .filter(|e| text(e, "question") == question && text(e, "treatment") == treatment);
        assert_eq!(found.count(), 1, "{treatment} under {question}");
    }
    for control in tables(&plan, "control") {
        let name = word(control, "name");
        let mut found = entries.iter().filter(|entry| text(entry, "treatment") == name);
        assert!(found.any(|entry| entry["control"] == true), "control {name}");
    }
}

#[test]
fn only_what_is_compared_has_a_chance_to_differ() {
    let entries = list(prediction(), "bags");
    assert!(entries.iter().any(|entry| entry["reference"] == true));
    for entry in entries {
        let treatment = text(entry, "treatment");
        if entry["reference"] == true {
            assert!(entry["readable_at_min"].is_null(), "{treatment}");
            assert!(entry["chance_readable"].is_null(), "{treatment}");
        } else if text(entry, "question") != "controls" {
            let chance = number(entry, "chance_readable");
            assert!((0.0..=1.0).contains(&chance), "{treatment}: {chance}");
            assert!(entry["compared_with"].is_string(), "{treatment}");
        }
        let last = numbers(&entry["minutes"]).len() as f64 - 1.0;
        if let Some(minute) = entry["readable_at_min"].as_f64() {
            assert!((0.0..=last).contains(&minute), "{treatment}: {minute}");
        }
        if let Some(minute) = entry["vent_by_min"].as_f64() {
            // 0.8 is reached by the last reading just when the fill at that reading says so.
            let full = number(entry, "peak_fill") >= 0.8;
            assert_eq!(full, minute <= last, "{treatment}: vent by {minute}");
            assert!((0.0..=24.0 * 60.0).contains(&minute), "{treatment}: {minute}");
        } else {
            assert!(number(entry, "peak_fill") < 0.8, "{treatment}");
        }
    }
}
