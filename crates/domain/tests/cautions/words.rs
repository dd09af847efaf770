//! How cautions read, and that the documentation lists them all.

use super::scene::{Scene, calm, period};
use super::triggers::triggers;
use super::{found, readability};
use barm_domain::check::{ANSWER_TO_NOTHING, CAUTION_RULES};
use barm_domain::outlook::Overnight;
use barm_domain::plan::Circumstance;

/// A plan with many dangers at once.
fn busy() -> Scene {
    let mut scene = Scene::enzyme("glucoamylase-powder", "2 mL");
    let mut more = Vec::new();
    for food in ["milk_powder_nonfat", "oat_flour", "cooked_oats", "wheat_flour_white"] {
        more.push(Scene::food(food).plan.questions[0].treatments[0].clone());
    }
    scene.plan.questions[0].treatments.extend(more);
    scene.plan.base.water_celsius = 46.0;
    scene.plan.circumstances = Circumstance::ALL.to_vec();
    scene.plan.equipment.meters = Some(1);
    scene.plan.equipment.kettles = Some(1);
    scene.plan.equipment.thermometers = Some(4);
    scene.plan.periods = vec![period("1", "Tuesday", 8), period("2", "Tuesday", 9)];
    scene.plan.periods[1].students = 28;
    let mut entry = calm("Maple syrup");
    entry.peak_fill = 0.91;
    entry.vent_by_min = Some(17.0);
    entry.upper.ethanol_percent_last = 0.9;
    entry.gas_ml.high = vec![220.0];
    scene.outlook = vec![entry];
    scene.overnight = vec![Overnight { treatment: "Maple syrup".into(), ethanol_percent: 2.4 }];
    scene
}

#[test]
fn a_twelve_year_old_can_follow() {
    let foods = barm_science::food::all().iter().map(|food| Scene::food(food.id));
    let enzymes = barm_science::enzyme::PRODUCTS.iter().map(|p| Scene::enzyme(p.key, "2 mL"));
    let scenes = triggers().into_iter().map(|t| t.with).chain(foods).chain(enzymes);
    let mut messages: Vec<String> = Vec::new();
    let mut fixes: Vec<String> = Vec::new();
    for finding in scenes.chain([busy()]).flat_map(|scene| found(&scene)) {
        messages.push(finding.message);
        fixes.push(finding.fix);
    }
    for texts in [&mut messages, &mut fixes] {
        texts.sort();
        texts.dedup();
    }
    let mut trouble = Vec::new();
    for message in &messages {
        let count = readability::sentences(message).len();
        if count != 1 {
            trouble.push(format!("{count} sentences: {message}"));
        }
    }
    for text in messages.iter().chain(&fixes) {
        for sentence in readability::sentences(text) {
            let count = readability::words(&sentence).len();
            if count > 25 {
                trouble.push(format!("{count} words: {sentence}"));
            }
        }
        let grade = readability::grade(text);
        if grade > 9.0 {
            trouble.push(format!("grade {grade:.1}: {text}"));
        }
    }
    for (what, texts) in [("messages", &messages), ("fixes", &fixes)] {
        let grades: Vec<f64> = texts.iter().map(|text| readability::grade(text)).collect();
        let mean = grades.iter().sum::<f64>() / grades.len() as f64;
        if mean > 7.0 {
            trouble.push(format!("{what}: mean grade {mean:.1}"));
        }
    }
    assert!(trouble.is_empty(), "{}", trouble.join("\n"));
}

/// The table of cautions in the documentation is exactly that of the rules.
#[test]
fn the_documentation_lists_every_caution() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/findings.md");
    let document = std::fs::read_to_string(path).unwrap();
    let written: Vec<&str> = document
        .lines()
        .filter(|line| line.starts_with("| S") && !line.starts_with("| S "))
        .collect();
    let expected: Vec<String> = CAUTION_RULES
        .iter()
        .map(|rule| {
            format!("| {} | {} | {} | {} |", rule.code, rule.hazard, rule.trigger, rule.source)
        })
        .collect();
    assert_eq!(written, expected, "write these rows:\n{}", expected.join("\n"));
    assert!(document.contains(&format!("`{ANSWER_TO_NOTHING}`")));
}
