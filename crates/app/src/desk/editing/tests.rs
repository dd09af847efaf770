//! A plan is edited: its form, what stands beside its fields, and the three steps of the forecast.

use super::{Editing, Step, answered, edited, foresee, reshaped, sound, swapped, with_bags};
use crate::desk::Wording;
use barm_domain::pilot::Known;

const PLAN: &str = include_str!("../../demo/plan.toml");

fn typed(field: &str, value: &str) -> String {
    edited(PLAN, &[(field.to_owned(), value.to_owned())])
}

#[test]
fn the_form_says_what_the_file_says() {
    let editing = Editing::open(Wording::english(), PLAN, &Known::default());
    assert!(sound(PLAN));
    assert_eq!(editing.faults, 0);
    let all: Vec<(String, String)> =
        editing.fields().map(|field| (field.name.clone(), field.value.clone())).collect();
    assert!(all.len() > 60, "{} fields", all.len());
    assert_eq!(edited(PLAN, &all), PLAN, "sending the form back untouched changes nothing");
    let names: std::collections::BTreeSet<&String> = all.iter().map(|(name, _)| name).collect();
    assert_eq!(names.len(), all.len(), "every field once");
}

#[test]
fn a_fault_stands_at_its_field_and_the_text_is_kept_as_typed() {
    let text = typed("base.water", "forty");
    let editing = Editing::open(Wording::english(), &text, &Known::default());
    assert!(!sound(&text));
    let field = editing.fields().find(|field| field.name == "base.water").expect("the field");
    assert_eq!(field.value, "forty");
    assert_eq!(field.said.len(), 1, "{:?}", field.said);
    // Warmer water for one treatment of a question about food: two things change.
    let two = typed("question[0].treatment[0].water_temperature", "45 °C");
    let editing = Editing::open(Wording::english(), &two, &Known::default());
    assert!(sound(&two), "it can be saved and mended later");
    assert!(editing.faults > 0);
    let at: Vec<&str> = editing
        .fields()
        .filter(|f| f.said.iter().any(|said| said.code == "two-variables"))
        .map(|f| f.name.as_str())
        .collect();
    assert!(at.iter().any(|name| name.starts_with("question[0]")), "{at:?}");
}

#[test]
fn fewer_groups_are_no_fault_of_a_list_that_saving_writes_anew() {
    let fewer = typed("period[0].groups", "7");
    let editing = Editing::open(Wording::english(), &fewer, &Known::default());
    assert_eq!(editing.faults, 0, "{:?}", editing.around);
    let saved = Editing::open(Wording::english(), &with_bags(&fewer), &Known::default());
    assert_eq!(saved.faults, 0, "and so it is when it is saved");
}

#[test]
fn what_is_no_toml_still_opens() {
    let editing = Editing::open(Wording::english(), "title = [", &Known::default());
    assert!(!sound("title = [") && editing.sections.is_empty());
    assert!(editing.around.iter().any(|said| said.line.is_some()));
}

#[test]
fn kinds_periods_and_controls_are_added_and_taken_out() {
    for list in ["question[0].treatment", "period", "control"] {
        let more =
            reshaped(Wording::english(), PLAN, &format!("add {list}")).expect("a longer list");
        assert_ne!(more, PLAN);
        assert!(
            Editing::open(Wording::english(), &more, &Known::default()).fields().count()
                > Editing::open(Wording::english(), PLAN, &Known::default()).fields().count()
        );
    }
    let fewer = reshaped(Wording::english(), PLAN, "out period[3]").expect("a shorter list");
    let kept = with_bags(&fewer);
    assert!(sound(&kept));
    assert!(kept.contains("P6-01A"), "codes of the bags that left are retired, not lost");
    for nothing in ["add moon", "out period[9]", "save", "", "out base"] {
        assert_eq!(reshaped(Wording::english(), PLAN, nothing), None, "{nothing}");
    }
}

#[test]
fn a_swap_reaches_everything_and_keeps_notes() {
    let text = swapped(Wording::english(), PLAN, "banana", "honey").expect("swapped");
    assert!(!text.contains("Mashed banana"));
    assert!(text.contains("# The demonstration plan"));
    assert!(sound(&text));
    assert!(
        swapped(Wording::english(), PLAN, "banana", "oat_flour").is_err(),
        "it is there already"
    );
}

#[test]
fn the_line_comes_first_then_its_band_then_all() {
    let text = typed("question[0].treatment[1].food_amount", "0.7 g");
    let focus = "question[0].treatment[1].food_amount";
    let line = foresee(Wording::english(), &text, &Known::default(), focus, Step::Line);
    assert!(line.verdicts.is_none());
    assert!(line.charts.iter().any(|chart| chart.says.contains("Oat flour")));
    let band = foresee(Wording::english(), &text, &Known::default(), focus, Step::Band);
    assert!(band.verdicts.is_none());
    let all = foresee(Wording::english(), &text, &Known::default(), focus, Step::All);
    assert_eq!(all.charts.len(), 2, "one for each question");
    let verdicts = all.verdicts.expect("what it comes to");
    assert!(verdicts.iter().any(|verdict| verdict.word.starts_with("Bag")));
    let faulty = foresee(
        Wording::english(),
        &typed("base.water", "forty"),
        &Known::default(),
        "base.water",
        Step::All,
    );
    assert!(faulty.trouble.is_some() && faulty.charts.is_empty());
}

#[test]
fn a_bag_that_is_too_small_says_so() {
    let all = foresee(
        Wording::english(),
        &typed("base.food_amount", "3 g"),
        &Known::default(),
        "base.food_amount",
        Step::All,
    );
    let verdicts = all.verdicts.expect("verdicts");
    assert!(verdicts.iter().any(|verdict| verdict.word == "Bag too small"), "{verdicts:?}");
    assert!(all.late.iter().any(|said| said.code == "overfull"));
}

#[test]
fn an_answer_to_a_caution_is_kept_in_the_plan_and_can_be_taken_back() {
    let before = Editing::open(Wording::english(), PLAN, &Known::default());
    let open = before.cautions.iter().find(|one| one.answer.is_empty()).expect("an open one");
    let (code, count) = (open.said.code.to_owned(), before.cautions.len());
    let answer = |text: &str, says: &str| answered(text, &[(code.clone(), says.to_owned())]);
    let text = answer(PLAN, "  Asked the nurse;\n no milk.  ");
    assert!(sound(&text));
    assert!(text.contains("Asked the nurse; no milk."), "one line of the file");
    let after = Editing::open(Wording::english(), &text, &Known::default());
    assert_eq!(after.cautions.len(), count, "an answered caution still stands there");
    let codes = |editing: &Editing| -> Vec<&str> {
        editing.cautions.iter().map(|one| one.said.code).collect()
    };
    assert_eq!(codes(&after), codes(&before), "it stays in its place");
    let said = after.cautions.iter().find(|one| one.said.code == code).expect("the caution");
    assert_eq!(said.answer, "Asked the nurse; no milk.");
    assert_eq!(said.said.message, open.said.message, "the answer stands in its own field only");
    assert!(!after.around.iter().any(|one| one.code == code), "and nowhere else");
    assert_eq!(answer(&text, "Asked the nurse; no milk."), text, "nothing new changes nothing");
    let back = Editing::open(Wording::english(), &answer(&text, ""), &Known::default());
    assert!(back.cautions.iter().all(|one| one.said.code != code || one.answer.is_empty()));
    // What is no caution is not written down.
    assert_eq!(answered(PLAN, &[("S99".into(), "done".into())]), PLAN);
}
