//! A plan that is written reads as the same plan; a person's own words stay.

#[path = "plan/any.rs"]
mod any;

use barm_documents::plan_text::{read, write, write_new};
use barm_domain::finding::Field;
use barm_domain::plan::Plan;
use proptest::prelude::*;

const DEMO: &str = include_str!("../../app/src/demo/plan.toml");

fn cases(base: u32) -> ProptestConfig {
    let cases = match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => base / 4,
        Ok("long") => base * 16,
        _ => base,
    };
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

/// The plan of a text that must be sound.
fn sound(text: &str) -> Plan {
    let read = read(text.as_bytes());
    let mistakes: Vec<String> = read.mistakes.iter().map(ToString::to_string).collect();
    read.plan.unwrap_or_else(|| panic!("{}\n{text}", mistakes.join("\n")))
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn a_plan_that_is_written_reads_the_same(plan in any::plan()) {
        prop_assert_eq!(sound(&write_new(&plan)), plan);
    }

    #[test]
    fn a_plan_written_over_another_reads_the_same(old in any::plan(), new in any::plan()) {
        let text = write(&new, &format!("# my own note\n{}", write_new(&old)));
        prop_assert_eq!(&sound(&text), &new);
        prop_assert!(text.starts_with("# my own note\n"), "written anew");
        // Written once more, nothing changes.
        prop_assert_eq!(write(&new, &text), text);
    }

    #[test]
    fn a_plan_written_over_the_demonstration_reads_the_same(plan in any::plan()) {
        let text = write(&plan, DEMO);
        prop_assert_eq!(sound(&text), plan);
        prop_assert!(text.starts_with("# The demonstration plan"), "written anew");
    }

    #[test]
    fn a_plan_written_over_anything_reads_the_same(plan in any::plan(), old in "\\PC{0,200}") {
        prop_assert_eq!(sound(&write(&plan, &old)), plan);
    }
}

#[test]
fn the_demonstration_reads_without_a_mistake_and_stays_as_it_is() {
    let plan = sound(DEMO);
    assert!(plan.invented && plan.school.as_deref().is_some_and(|s| s.contains("invented")));
    assert_eq!(write(&plan, DEMO), DEMO);
    assert_eq!(sound(&write_new(&plan)), plan);
    // Its bag list is the one that the plain rule writes.
    let bare = Plan { bags: Vec::new(), ..plan.clone() };
    assert_eq!(barm_domain::bag_list::write(&bare).unwrap().bags, plan.bags);
    assert_eq!(plan.bags.len(), 4 * (8 * 3 + 4));
}

#[test]
fn the_first_plan_reads_the_same() {
    let answers = barm_domain::starter::Answers {
        title: "What does yeast like to eat?".into(),
        date: jiff::civil::date(2027, 3, 9),
        zone: "America/Chicago".into(),
        place: barm_domain::plan::Place::Altitude(200.0),
        first_start: jiff::civil::time(8, 10, 0, 0),
        length_min: 45.0,
        periods: 4,
        groups: 8,
        students: 24,
    };
    let plan = barm_domain::starter::plan(&answers).unwrap();
    assert_eq!(sound(&write_new(&plan)), plan);
}

#[test]
fn only_what_has_changed_is_touched() {
    let mut changed = sound(DEMO);
    changed.title = "Another \"title\"".into();
    changed.base.water_celsius = 38.0;
    changed.periods[2].students = 21;
    changed.questions[0].treatments[1].name = "Fine oat flour".into();
    changed.questions[0].treatments.remove(3);
    changed.questions.pop();
    changed.controls.truncate(1);
    changed.bags.clear();
    changed.materials[0].price = Some(6.0);
    let text = write(&changed, DEMO);
    assert_eq!(sound(&text), changed);

    let old: Vec<&str> = DEMO.lines().collect();
    let new: Vec<&str> = text.lines().collect();
    let gone: Vec<&&str> =
        old.iter().filter(|line| line.contains('#') && !new.contains(line)).collect();
    // Notes on changed lines stay on those lines; notes go only with the question they stand at.
    for line in gone {
        let belongs = ["crossed", "enzyme", "same food", "as poured"];
        assert!(belongs.iter().any(|word| line.contains(word)), "lost: {line}");
    }
    for kept in [
        "title = \"Another \\\"title\\\"\"",
        "water_temperature = \"38 °C\"       # as poured into the bag",
        "# Shared controls, made at the teacher's bench in every period: yeast alone, enzyme without food",
        "price = \"$6.00\"",
    ] {
        let same = |line: &&str| {
            line.replace('\'', "\"") == kept.replace("\\\"", "\"").replace('\'', "\"")
        };
        assert!(new.contains(&kept) || new.iter().any(same), "{kept} is missing in\n{text}");
    }
}

#[test]
fn a_persons_spelling_order_and_line_ends_stay() {
    let own = "\
# my plan\r
grade = 7   # seventh\r
format = 1\r
title = 'Yeast'\r
big_question = \"Which?\"\r
base = { bag = \"Snack bag\", water = \"1/4 cup\", water_temperature = \"104 F\", yeast = \"fresh\", \
yeast_amount = \"1/2 tsp\", reading_interval = \"4 min\", mixing = \"600 s\", clearing = \"6 min\" }\r
period = [{ name = 1, day = \"A\", start = \"8:10 am\", length = \"3/4 h\", students = 24, groups = 2 }]\r
[[day]] # A days\r
name = \"A\"\r
date = \"2027-03-09\"\r
zone = \"america/denver\"\r
room = \"70 °F\"\r
pressure = \"25.3 inHg\"\r
[[question]]\r
id = \"food\"\r
asks = \"Which?\"\r
variable = \"Food\"\r
replicates = 2\r
[[question.treatment]]\r
name = \"Sugar\"\r
food = \"SUGAR\"\r
food_amount = \"1 tsp\"\r
";
    let own = own
        .replace("\"fresh\", yeast_amount = \"1/2 tsp\"", "\"fresh\", yeast_amount = \"17 g\"");
    let plan = sound(&own);
    assert_eq!(write(&plan, &own), own);
    let mut changed = plan;
    changed.grade = 8;
    assert_eq!(write(&changed, &own), own.replace("grade = 7 ", "grade = 8 "));
    changed.days[0].room_celsius = 22.0;
    changed.base.water_celsius = 41.0;
    let text = write(&changed, &own);
    assert_eq!(sound(&text), changed);
    let expected = own
        .replace("grade = 7 ", "grade = 8 ")
        .replace("\"70 °F\"", "\"22 °C\"")
        .replace("\"104 F\"", "\"41 °C\"");
    assert_eq!(text, expected);
}

/// Format 0 is that of the drafts before the first release.
#[test]
fn an_older_plan_opens_and_is_upgraded_when_saved() {
    let draft = DEMO
        .replace("format = 1", "format = 0")
        .replace("readable_difference = \"3 mm\"      #", "readable_mm = 3   #");
    assert_ne!(draft, DEMO);
    let old = read(draft.as_bytes());
    assert_eq!(old.mistakes, Vec::new());
    assert_eq!(old.older_format, Some(0));
    let plan = old.plan.unwrap();
    assert_eq!(plan, sound(DEMO));
    let saved = write(&plan, &draft);
    assert_eq!(read(saved.as_bytes()).older_format, None);
    assert_eq!(sound(&saved), plan);
    let expected = DEMO
        .replace("readable_difference = \"3 mm\"      #", "readable_difference = \"3 mm\"   #");
    assert_eq!(saved, expected);

    // The old key is wrong in a file of today, and a wrong value is found in its place.
    let mixed = draft.replace("format = 0", "format = 1");
    let found = read(mixed.as_bytes()).mistakes;
    assert_eq!(found.len(), 1);
    assert!(found[0].what.contains("readable_mm"), "{}", found[0]);
    let wrong = draft.replace("readable_mm = 3", "readable_mm = \"three\"");
    let found = read(wrong.as_bytes()).mistakes;
    assert_eq!(found.len(), 1);
    let line = 1 + draft.lines().position(|line| line.starts_with("readable_mm")).unwrap();
    assert_eq!((found[0].line, found[0].column), (line, 15));
}

#[test]
fn every_field_has_its_place() {
    let places = read(DEMO.as_bytes()).places;
    let of = |field: &str| {
        let place = places.of(&Field(field.into())).unwrap_or_else(|| panic!("{field}"));
        let line = DEMO.lines().nth(place.line - 1).unwrap();
        line.chars().skip(place.column - 1).collect::<String>()
    };
    assert!(of("question[0].treatment[2].food").starts_with("\"potato flakes\""));
    assert!(of("base.water_temperature").starts_with("\"40 °C\"  "));
    assert!(of("period[3]").starts_with("[[period]]"));
    // Not written: where it would stand.
    assert!(of("question[0].treatment[2].water").starts_with("[[question.treatment]]"));
    assert!(of("bag[5].code").starts_with("\"P1-01B-A\""));
    assert!(of("bag[5]").starts_with("{ code = \"P1-01B-A\""));
    assert!(of("equipment.rulers").starts_with('8'));
    assert_eq!(places.of(&Field("nowhere".into())), None);
}
