//! Texts with letters that no page can print.

use crate::finding::{Finding, Severity};
use crate::plan::Plan;

/// So many letters are shown; of more, only these.
const SHOWN: usize = 8;
/// So much of a text is shown.
const START: usize = 60;

/// A note for every text of the plan that stands on paper with letters for which `prints` is false.
///
/// Whoever sets the pages knows which letters they can print.
pub fn letters_missing(plan: &Plan, prints: impl Fn(char) -> bool) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for (field, text) in texts(plan) {
        let mut missing: Vec<char> = Vec::new();
        for letter in text.chars().filter(|letter| !prints(*letter)) {
            if !missing.contains(&letter) {
                missing.push(letter);
            }
        }
        if missing.is_empty() {
            continue;
        }
        let letters: Vec<String> =
            missing.iter().take(SHOWN).map(|letter| format!("“{letter}”")).collect();
        let more = if missing.len() > SHOWN { " and more" } else { "" };
        let start = match text.char_indices().nth(START) {
            Some((end, _)) => format!("{}…", &text[..end]),
            None => text.to_owned(),
        };
        let letters = letters.join(", ");
        let message = format!("On paper “{start}” will show [?] for {letters}{more}.");
        let fix = "Write it without these, or put them on the paper by hand.";
        found.push(Finding::new(Severity::Note, "letters-missing", message, fix).at(field));
    }
    found
}

/// Every text of a plan that can stand on paper, with its place.
fn texts(plan: &Plan) -> Vec<(String, &str)> {
    let mut texts: Vec<(String, &str)> =
        vec![("title".into(), &plan.title), ("big_question".into(), &plan.big_question)];
    texts.extend(plan.school.as_deref().map(|school| ("school".into(), school)));
    let standards = plan.standards.iter().enumerate();
    texts.extend(standards.clone().map(|(i, s)| (format!("standard[{i}].code"), &*s.code)));
    texts.extend(standards.map(|(i, s)| (format!("standard[{i}].wording"), &*s.wording)));
    let days = plan.days.iter().enumerate();
    texts.extend(days.map(|(i, day)| (format!("day[{i}].name"), &*day.name)));
    let periods = plan.periods.iter().enumerate();
    texts.extend(periods.map(|(i, period)| (format!("period[{i}].name"), &*period.name)));
    let labels = plan.group_settings.iter().enumerate();
    texts.extend(
        labels.filter_map(|(i, g)| Some((format!("group[{i}].label"), g.label.as_deref()?))),
    );
    let rules = plan.set_aside_rules.iter().enumerate();
    texts.extend(rules.map(|(i, rule)| (format!("set_aside[{i}].says"), &*rule.says)));
    let answers = plan.answered.iter().enumerate();
    texts.extend(answers.map(|(i, said)| (format!("answered[{i}].answer"), &*said.answer)));
    for (q, question) in plan.questions.iter().enumerate() {
        texts.push((format!("question[{q}].asks"), &question.asks));
        let own = question.treatments.iter().enumerate();
        texts.extend(
            own.map(|(t, one)| {
                (format!("question[{q}].treatment[{t}].name"), one.name.as_str())
            }),
        );
    }
    let controls = plan.controls.iter().enumerate();
    texts.extend(controls.map(|(i, c)| (format!("control[{i}].name"), &*c.treatment.name)));
    let foods = plan.label_foods.iter().enumerate();
    texts.extend(foods.map(|(i, food)| (format!("label_food[{i}].name"), &*food.name)));
    texts
}
