//! Texts of the plan with letters that no page can print.

use barm_domain::check::letters_missing;
use barm_domain::finding::{Finding, Severity};
use barm_domain::plan::{Control, Difference, GroupSetting, Plan};
use barm_domain::testing::{base_plan, period, question, treatment};

fn ascii(plan: &Plan) -> Vec<Finding> {
    letters_missing(plan, |letter| letter.is_ascii())
}

#[test]
fn every_text_that_stands_on_paper_is_looked_at_and_named() {
    let name = |name: &str| treatment(name, Difference::default());
    let mut plan = base_plan();
    plan.periods.push(period("2"));
    plan.questions.push(question("food", vec![name("Oats"), name("Rye")]));
    plan.controls.push(Control { treatment: name("No food"), per_period: 1 });
    assert_eq!(ascii(&plan), Vec::new());

    plan.questions[0].treatments[1].name = "Rye 🌾".into();
    plan.title = "Дрожжи and дрожжи".into();
    plan.controls[0].treatment.name = "無食 食".into();
    plan.group_settings.push(GroupSetting {
        period: "2".into(),
        group: 1,
        label: Some("Otters 🦦".into()),
        grade: None,
        inquiry: None,
    });
    let found = ascii(&plan);
    let places: Vec<String> =
        found.iter().filter_map(|f| Some(f.at.as_ref()?.to_string())).collect();
    assert_eq!(
        places,
        ["title", "group 1, label", "question 1, treatment 2, name", "control 1, name"]
    );
    for (finding, (text, letters)) in found.iter().zip([
        ("“Дрожжи and дрожжи”", "“Д”, “р”, “о”, “ж”, “и”, “д”."),
        ("“Otters 🦦”", "“🦦”."),
        ("“Rye 🌾”", "“🌾”."),
        ("“無食 食”", "“無”, “食”."),
    ]) {
        assert_eq!(finding.severity, Severity::Note);
        assert_eq!(finding.code, "letters-missing");
        assert!(finding.message.contains(text), "{}", finding.message);
        assert!(finding.message.ends_with(letters), "{}", finding.message);
        assert!(finding.fix.ends_with('.'));
    }
}

#[test]
fn a_long_text_in_another_script_gives_a_short_note() {
    let mut plan = base_plan();
    plan.title = ('а'..='я').cycle().take(900).collect();
    let found = ascii(&plan);
    assert_eq!(found.len(), 1);
    assert!(found[0].message.chars().count() < 200, "{}", found[0].message);
}
