//! Two questions with bags in common, one of them crossed.

use crate::class::{Class, answer, treatment};
use barm_domain::plan::{Difference, Variable};
use barm_domain::words::Voice;
use barm_science::statistics::verdict::Code;

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

/// Foods beside no food; each starchy food with its enzyme beside itself without. The enzyme adds
/// `helps` mm to oat flour and to potato flakes.
fn food_and_enzyme(helps: [f64; 2]) -> Class {
    let mut class = Class::foods(&PERIODS, &["Oat flour", "Potato flakes"]);
    class.ask(
        "enzyme",
        None,
        [
            treatment("Oat flour + enzyme", Some("Oat flour")),
            treatment("Potato flakes + enzyme", Some("Potato flakes")),
        ],
    );
    let question = &mut class.plan.questions[1];
    question.variable = Variable::Enzyme;
    question.crossed_with = Some(Variable::Food);
    question.uses = vec!["Oat flour".into(), "Potato flakes".into()];
    for (at, period) in PERIODS.into_iter().enumerate() {
        // Bags alike differ a little, and not by the same in each period.
        let shift = [0.8, -0.4, 0.3, -0.7][at];
        class.grow("No food", period, 1.0 - shift);
        class.grow("Oat flour", period, 5.0 + shift);
        class.grow("Potato flakes", period, 4.0 - 0.5 * shift);
        class.grow("Oat flour + enzyme", period, 5.0 + helps[0] - shift);
        class.grow("Potato flakes + enzyme", period, 4.0 + helps[1] + 0.5 * shift);
    }
    class
}

#[test]
fn bags_that_serve_two_questions_count_in_both() {
    let result = food_and_enzyme([8.0, 8.0]).result();
    let pairs = |id| -> Vec<(&str, &str, usize, usize)> {
        answer(&result, id)
            .comparisons
            .iter()
            .map(|c| (c.treatment.as_str(), c.reference.as_str(), c.with.n, c.with.n_reference))
            .collect()
    };
    assert_eq!(
        pairs("food"),
        [("Oat flour", "No food", 4, 4), ("Potato flakes", "No food", 4, 4)]
    );
    assert_eq!(
        pairs("enzyme"),
        [
            ("Oat flour + enzyme", "Oat flour", 4, 4),
            ("Potato flakes + enzyme", "Potato flakes", 4, 4)
        ]
    );
    for compared in &answer(&result, "enzyme").comparisons {
        assert_eq!(compared.with.verdict.code, Code::Clear);
    }
    assert!(answer(&result, "food").crossed.is_none());
}

#[test]
fn an_enzyme_that_helps_both_foods_alike_shows_no_interaction() {
    let result = food_and_enzyme([8.0, 8.0]).result();
    let crossed = answer(&result, "enzyme").crossed.as_ref().unwrap();
    assert_eq!(crossed.first_levels, ["Oat flour", "Potato flakes"]);
    assert_eq!(crossed.second_levels, ["without", "with"]);
    let interaction = crossed.with.interaction.as_ref().unwrap();
    assert!((interaction.df1 - 1.0).abs() < 1e-12);
    assert!(interaction.p > 0.05, "{interaction:?}");
    let helps = crossed.with.second[0].outcome.as_ref().unwrap();
    assert!((helps.difference - 8.0).abs() < 1e-9, "{helps:?}");
    let voice = Voice::english(8);
    let said = voice.on_average(crossed);
    assert_eq!(said.len(), 1);
    assert!(
        said[0].starts_with("On average, the change made 8.0 mm more rise (between "),
        "{said:?}"
    );
    assert_eq!(
        voice.interaction(crossed).unwrap(),
        "Nothing shows that the change did more for some than for others."
    );
}

#[test]
fn an_enzyme_that_helps_one_food_only_shows_an_interaction() {
    let result = food_and_enzyme([0.0, 12.0]).result();
    let crossed = answer(&result, "enzyme").crossed.as_ref().unwrap();
    assert!(crossed.with.interaction.as_ref().unwrap().p < 0.001);
    let codes: Vec<Code> =
        answer(&result, "enzyme").comparisons.iter().map(|c| c.with.verdict.code).collect();
    assert_eq!(codes[1], Code::Clear);
    assert_ne!(codes[0], Code::Clear);
}

/// With one reference for all, the levels come from the recipes.
#[test]
fn levels_of_a_full_crossing_come_from_the_recipes() {
    let mut class = Class::with_periods(&PERIODS);
    let recipe = |food: Option<&str>, celsius| Difference {
        food: Some(food.map(str::to_owned)),
        water_celsius: Some(celsius),
        ..Difference::default()
    };
    let cells = [
        ("Plain cool", recipe(None, 30.0)),
        ("Plain warm", recipe(None, 40.0)),
        ("Sugar cool", recipe(Some("table sugar"), 30.0)),
        ("Sugar warm", recipe(Some("table sugar"), 40.0)),
    ];
    let treatments = cells.map(|(name, difference)| {
        let mut treatment = treatment(name, None);
        treatment.difference = difference;
        treatment
    });
    class.ask("both", Some("Plain cool"), treatments);
    class.plan.questions[0].variable = Variable::WaterTemperature;
    class.plan.questions[0].crossed_with = Some(Variable::Food);
    for (at, period) in PERIODS.into_iter().enumerate() {
        let shift = [0.9, -0.3, 0.2, -0.8][at];
        for (name, rise) in [("Plain cool", 1.0), ("Plain warm", 2.0), ("Sugar cool", 6.0)] {
            class.grow(name, period, rise + shift);
        }
        class.grow("Sugar warm", period, 13.0 - shift);
    }
    let result = class.result();
    let crossed = answer(&result, "both").crossed.as_ref().unwrap();
    assert_eq!(crossed.first_levels, ["none", "table sugar"]);
    assert_eq!(crossed.second_levels, ["30 °C", "40 °C"]);
    // Warm less cool, averaged over the foods: half of (2 − 1) + (13 − 6).
    let warm = crossed.with.second[0].outcome.as_ref().unwrap();
    assert!((warm.difference - 4.0).abs() < 1e-9, "{warm:?}");
    assert!(crossed.with.interaction.as_ref().unwrap().p < 0.01);
    assert_eq!(
        Voice::english(6).on_average(crossed),
        ["40 °C rose 4.0 mm more than 30 °C on average."]
    );
    assert!(Voice::english(6).interaction(crossed).unwrap().contains("more for some"));
}

#[test]
fn the_ladder_counts_dots_gaps_and_slopes() {
    let result = food_and_enzyme([8.0, 8.0]).result();
    let ladder = &answer(&result, "enzyme").ladder;
    let oat = ladder.dots.iter().find(|dots| dots.treatment == "Oat flour").unwrap();
    assert_eq!(oat.bags.len(), 4);
    // 5.8, 4.6, 5.3 and 4.3: mean 5, mean distance from it 0.55, by hand.
    let rises = oat.rises.unwrap();
    assert!((rises.mean - 5.0).abs() < 1e-9 && (rises.mad - 0.55).abs() < 1e-9, "{rises:?}");
    let gap = &ladder.gaps[0];
    assert!(gap.overlap.is_none());
    let mads = gap.gap.unwrap();
    assert!((mads.gap - 8.0).abs() < 1e-9 && mads.stands_out(), "{mads:?}");
    // Both rise evenly over 24 min.
    assert!((gap.slope_gap.unwrap() - 8.0 / 24.0).abs() < 1e-9);
    assert!(answer(&result, "enzyme").ladder_without.is_none());
}
