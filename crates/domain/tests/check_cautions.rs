//! Cautions: each is brought up by its trigger and by nothing else, prints this plan's own
//! amounts, and is easy to read.

#[path = "cautions/amounts.rs"]
mod amounts;
#[path = "cautions/readability.rs"]
mod readability;
#[path = "cautions/scene.rs"]
mod scene;
#[path = "cautions/triggers.rs"]
mod triggers;
#[path = "cautions/words.rs"]
mod words;

use barm_domain::check::{
    ANSWER_TO_NOTHING, CAUTION_RULES, LOCAL_RULES, check_overnight, without_local_rules,
};
use barm_domain::finding::{Finding, Severity};
use barm_domain::plan::Answered;
use barm_science::food::Allergen;
use scene::{Scene, quiet};
use triggers::{Trigger, triggers};

fn found(scene: &Scene) -> Vec<Finding> {
    check_overnight(&scene.plan, &scene.outlook, &scene.overnight)
        .into_iter()
        .filter(|finding| {
            CAUTION_RULES.iter().any(|rule| rule.code == finding.code)
                || finding.code == ANSWER_TO_NOTHING
        })
        .collect()
}

fn the(code: &str, scene: &Scene) -> Option<Finding> {
    found(scene).into_iter().find(|finding| finding.code == code)
}

#[test]
fn every_caution_is_brought_up_by_its_trigger_and_by_nothing_else() {
    for Trigger { code, what, with, without } in triggers() {
        let finding = the(code, &with);
        assert!(finding.is_some(), "{code} is silent on: {what}");
        assert_eq!(finding.unwrap().severity, Severity::Caution, "{code}: {what}");
        assert_eq!(the(code, &without), None, "{code} speaks without: {what}");
    }
}

#[test]
fn every_caution_has_a_trigger_under_test() {
    let tested = triggers();
    for rule in &CAUTION_RULES {
        assert!(tested.iter().any(|trigger| trigger.code == rule.code), "{}", rule.code);
    }
}

#[test]
fn codes_run_from_s01_to_s32_and_every_rule_says_why() {
    for (number, rule) in (1..).zip(&CAUTION_RULES) {
        assert_eq!(rule.code, format!("S{number:02}"));
        for text in [rule.hazard, rule.trigger, rule.source] {
            assert!(!text.is_empty() && !text.contains("  "), "{}: {text}", rule.code);
        }
    }
}

/// A plan with no powder shows no powder warning, and so on: a plan without bags shows nothing.
#[test]
fn a_plan_that_makes_nothing_is_in_no_danger() {
    assert_eq!(found(&Scene::empty()), []);
}

/// Yeast, syrup and warm water in snack bags: what is left is what every such class needs.
#[test]
fn a_quiet_plan_gets_no_wall_of_warnings() {
    let codes: Vec<&str> = found(&quiet()).iter().map(|finding| finding.code).collect();
    assert_eq!(codes, ["S05", "S06", "S09", "S13", "S14", "S22", "S25", "S31", "S32"]);
}

#[test]
fn local_rules_come_first_wherever_there_may_be_some() {
    for Trigger { code, with, .. } in triggers() {
        let rule = CAUTION_RULES.iter().find(|rule| rule.code == code).unwrap();
        let finding = the(code, &with).unwrap();
        assert_eq!(finding.fix.ends_with(LOCAL_RULES), rule.local, "{code}");
        let rest = without_local_rules(&finding.fix);
        assert!(finding.fix.starts_with(rest) && !rest.contains(LOCAL_RULES), "{code}: {rest}");
        assert!(rest.ends_with('.'), "{code}: {rest}");
        assert_eq!(finding.source, Some(rule.source));
    }
}

#[test]
fn an_answered_caution_stays_as_a_note_with_its_answer() {
    let scene = Scene::changed(|plan| {
        for (caution, answer) in [("s06", "By the door."), ("S09", "Told on Monday.")] {
            plan.answered.push(Answered { caution: caution.into(), answer: answer.into() });
        }
    });
    let note = the("S06", &scene).unwrap();
    assert_eq!(note.severity, Severity::Note);
    assert!(note.message.ends_with("The plan answers: “By the door.”"), "{}", note.message);
    assert_eq!(the("S09", &scene).unwrap().severity, Severity::Note);
    assert_eq!(the("S05", &scene).unwrap().severity, Severity::Caution);
}

#[test]
fn an_answer_to_no_caution_is_pointed_out() {
    let scene = Scene::changed(|plan| {
        plan.answered.push(Answered { caution: "S99".into(), answer: "Done.".into() });
    });
    let finding = the(ANSWER_TO_NOTHING, &scene).unwrap();
    assert_eq!(finding.severity, Severity::Warning);
    assert_eq!(finding.at.unwrap().0, "answered[0].caution");
    assert_eq!(the(ANSWER_TO_NOTHING, &quiet()), None);
}

/// An answer alone brings nothing up: the caution has to apply.
#[test]
fn an_answer_to_a_caution_that_is_not_brought_up_is_silent() {
    let scene = Scene::changed(|plan| {
        plan.answered.push(Answered { caution: "S01".into(), answer: "No powder.".into() });
    });
    assert_eq!(the("S01", &scene), None);
}

/// Every food of the table beside what the table says of it, and every enzyme product.
#[test]
fn the_whole_cupboard_is_told_apart() {
    for food in barm_science::food::all() {
        let scene = Scene::food(food.id);
        let listed: Vec<Allergen> = food.allergens.iter().chain(food.traces).copied().collect();
        let spoken = |code: &str| the(code, &scene).is_some();
        assert_eq!(spoken("S10"), !listed.is_empty(), "{}", food.name);
        let milk = listed.contains(&Allergen::Milk) || food.composition.lactose > 0.0;
        assert_eq!(spoken("S11"), milk, "{}", food.name);
        // Grains and nuts: what S12 is about.
        let grain_or_nut = [
            Allergen::Wheat,
            Allergen::Soy,
            Allergen::TreeNuts,
            Allergen::Peanut,
            Allergen::Sesame,
        ];
        let hidden = listed.iter().any(|allergen| grain_or_nut.contains(allergen));
        assert_eq!(spoken("S12"), hidden, "{}", food.name);
        if let Some(finding) = the("S10", &scene) {
            for allergen in listed {
                assert!(finding.message.contains(allergen.name()), "{}", finding.message);
            }
            assert!(finding.fix.contains(food.name), "{}", finding.fix);
        }
    }
    for product in barm_science::enzyme::PRODUCTS {
        let scene = Scene::enzyme(product.key, "2 mL");
        assert_eq!(the("S01", &scene).is_some(), product.dust, "{}", product.key);
        assert!(the("S02", &scene).is_some(), "{}", product.key);
        let found = the("S10", &scene);
        assert_eq!(found.is_some(), !product.traces.is_empty(), "{}", product.key);
        assert!(found.is_none_or(|f| f.fix.contains(product.name)), "{}", product.key);
    }
}

/// Places must be keys of the plan file, so that they turn into a line and a column.
#[test]
fn places_are_fields_of_the_plan() {
    let tables = [
        "question",
        "control",
        "base",
        "material",
        "equipment",
        "period",
        "circumstances",
        "grade",
        "answered",
    ];
    for Trigger { code, with, .. } in triggers() {
        let Some(at) = the(code, &with).unwrap().at else {
            assert!(["S06", "S14", "S22", "S31"].contains(&code), "{code} has a place");
            continue;
        };
        let table = at.0.split(['.', '[']).next().unwrap();
        assert!(tables.contains(&table), "{code}: {}", at.0);
        assert!(!at.0.contains(' '), "{code}: {}", at.0);
    }
}
