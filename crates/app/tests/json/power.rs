//! `barm power --json`.

use crate::invented::{SOAKED, plan, power, power_without_one, tables, word};
use crate::shape::*;
use serde_json::Value;

const CHANCE: [(&str, Kind); 8] = [
    ("each", NUMBER_OR_NULL),
    ("n", COUNT),
    ("n_reference", COUNT),
    ("by_spreads", NUMBER_OR_NULL),
    ("tried", NUMBER_OR_NULL),
    ("with_slips", NUMBER),
    ("usually_found_mm", NUMBER_OR_NULL),
    ("never", TEXT_OR_NULL),
];

/// Every comparison of an answer with the name of its question.
fn comparisons(answer: &Value) -> impl Iterator<Item = (&str, &Value)> {
    list(answer, "questions").iter().flat_map(|one| {
        list(one, "comparisons").iter().map(move |c| (text(one, "question"), c))
    })
}

#[test]
fn what_is_foretold_has_the_promised_shape() {
    let promised = [
        ("format", COUNT),
        ("classes", COUNT),
        ("seed", COUNT),
        ("level", NUMBER),
        ("usually", NUMBER),
        ("questions", LIST),
        ("not_forecast", LIST),
        ("by_pilot", TEXT_OR_NULL),
    ];
    shaped("power", power(), &promised);
    for question in list(power(), "questions") {
        let promised = [
            ("question", TEXT),
            ("minute", NUMBER_OR_NULL),
            ("bag_sd_mm", NUMBER_OR_NULL),
            ("any_clear", OBJECT),
            ("comparisons", LIST),
            ("advice", TEXT),
        ];
        shaped(text(question, "question"), question, &promised);
        let advice = text(question, "advice");
        assert!(advice.starts_with("With ") && advice.ends_with('.'), "{advice}");
        shaped(
            "any_clear",
            &question["any_clear"],
            &[("tried", NUMBER), ("with_slips", NUMBER)],
        );
    }
    for (_, comparison) in comparisons(power()) {
        let promised = [
            ("treatment", TEXT),
            ("compared_with", TEXT),
            ("difference_mm", OBJECT),
            ("plan", OBJECT),
            ("by_bags", LIST),
        ];
        shaped(text(comparison, "treatment"), comparison, &promised);
        let promised = [("median", NUMBER), ("low", NUMBER), ("high", NUMBER)];
        shaped("difference_mm", &comparison["difference_mm"], &promised);
        shaped("plan", &comparison["plan"], &CHANCE);
        for one in list(comparison, "by_bags") {
            shaped("by_bags", one, &CHANCE);
        }
    }
}

#[test]
fn every_chance_is_one_and_every_number_of_bags_stands_once() {
    let mut seen = 0;
    for (question, comparison) in comparisons(power()) {
        let at = format!("{question}: {comparison}");
        let each: Vec<u64> =
            list(comparison, "by_bags").iter().filter_map(|one| one["each"].as_u64()).collect();
        assert_eq!(each, [1, 2, 3, 4, 5, 6, 7, 8], "{at}");
        assert!(comparison["plan"]["each"].is_null(), "{at}");
        for one in list(comparison, "by_bags").iter().chain([&comparison["plan"]]) {
            for name in ["by_spreads", "tried", "with_slips"] {
                let chance = one[name].as_f64();
                assert!(chance.is_none_or(|chance| (0.0..=1.0).contains(&chance)), "{at}");
            }
            let found = one["usually_found_mm"].as_f64();
            // Nothing smaller than the plan's 3 mm counts.
            assert!(found.is_none_or(|mm| mm > 3.0), "{at}");
            seen += 1;
        }
    }
    assert!(seen >= 9 * 5, "{seen}");
}

#[test]
fn every_treatment_that_is_compared_stands_in_its_question() {
    let plan = plan();
    for question in tables(&plan, "question") {
        let id = word(question, "id");
        for treatment in tables(question, "treatment") {
            let name = word(treatment, "name");
            let found = comparisons(power())
                .filter(|(of, one)| *of == id && text(one, "treatment") == name);
            assert!(found.count() <= 1, "{name} under {id}");
        }
    }
    let (_, maple) = comparisons(power())
        .find(|(_, one)| text(one, "treatment") == "Maple syrup")
        .expect("the story of the invented plan");
    // Sugar of maple syrup lifts its card by far more than yeast alone.
    assert!(number(&maple["difference_mm"], "median") > 3.0, "{maple}");
    assert!(number(&maple["plan"], "by_spreads") > 0.5, "{maple}");
}

#[test]
fn a_treatment_that_cannot_be_followed_is_named_and_the_others_are_foretold() {
    let answer = power_without_one();
    let left = list(answer, "not_forecast");
    assert_eq!(left.len(), 1, "{left:?}");
    assert_eq!(left[0]["treatment"], SOAKED);
    let (mut told, mut untold) = (0, 0);
    for (_, comparison) in comparisons(answer) {
        let names = ["treatment", "compared_with"].map(|key| text(comparison, key));
        if names.contains(&SOAKED) {
            assert!(comparison["difference_mm"].is_null(), "{comparison}");
            assert!(comparison["plan"]["by_spreads"].as_f64().is_none_or(|c| c == 0.0));
            untold += 1;
        } else {
            assert!(comparison["difference_mm"].is_object(), "{comparison}");
            told += 1;
        }
    }
    assert!(told > 0 && untold > 0, "{told} {untold}");
}
