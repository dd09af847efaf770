//! Cautions: each is brought up by its trigger and by nothing else, prints this plan's own
//! amounts, and is easy to read.

#[path = "cautions/readability.rs"]
mod readability;
#[path = "cautions/scene.rs"]
mod scene;
#[path = "cautions/triggers.rs"]
mod triggers;

use barm_domain::check::{ANSWER_TO_NOTHING, CAUTION_RULES, LOCAL_RULES, check_overnight};
use barm_domain::finding::{Finding, Severity};
use barm_domain::outlook::{self, Look, Overnight};
use barm_domain::plan::{Answered, Circumstance, Lies};
use barm_science::food::Allergen;
use scene::{Scene, amount, bag, calm, period, quiet};
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

#[test]
fn amounts_are_the_upper_forecast_of_this_plan() {
    let mut scene = quiet();
    let look = Look { draws: 64, ..Look::default() };
    // A warm tray and plenty of sugar: far more alcohol than one class period usually makes.
    scene.plan.base.lies = Lies::WarmTray(45.0);
    scene.plan.questions[0].treatments[0].difference.food_amount = Some(amount("6 g"));
    scene.plan.periods[0].length_min = 80.0;
    let treated: Vec<_> = scene
        .plan
        .treatments()
        .map(|(_, treatment)| outlook::forecast(&scene.plan, treatment, look).unwrap())
        .collect();
    scene.outlook = outlook::gather(&scene.plan, &treated);
    let maple = scene.outlook.iter().find(|entry| entry.treatment == "Maple syrup").unwrap();
    let percent = maple.upper.ethanol_percent_last;
    let fill = maple.peak_fill;
    scene.overnight =
        vec![Overnight { treatment: "Maple syrup".into(), ethanol_percent: percent + 3.0 }];

    let alcohol = the("S15", &scene).unwrap();
    let numbers = numbers(&alcohol.message);
    assert!(
        (numbers[0] - percent).abs() <= 0.1 && numbers[0] >= percent,
        "{}",
        alcohol.message
    );
    assert!((numbers[1] - percent - 3.0).abs() <= 0.1, "{}", alcohol.message);
    let burst = the("S07", &scene).unwrap();
    let printed = self::numbers(&burst.message)[0];
    assert!(printed >= 100.0 * fill && printed <= 100.0 * fill + 1.0, "{}", burst.message);
    // 45 °C and twice the scatter of pouring is 47 °C, where skin burns within 20 minutes.
    let tray = the("S04", &scene).unwrap();
    assert!(tray.message.contains("47 °C (117 °F)"), "{}", tray.message);
    assert!(tray.message.contains("20 minutes"), "{}", tray.message);
}

/// The numbers of a text, in order.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|part| part.trim_matches('.').parse().ok())
        .collect()
}

#[test]
fn without_a_forecast_nothing_is_said_about_what_it_would_show() {
    let mut loud = Scene::expecting(|entry| {
        entry.upper.ethanol_percent_last = 2.0;
        entry.peak_fill = 0.95;
        entry.vent_by_min = Some(12.0);
        entry.gas_ml.high = vec![400.0];
    });
    let resting = ["S07", "S15", "S24"];
    for code in resting {
        assert!(the(code, &loud).is_some(), "{code}");
    }
    loud.outlook.clear();
    for code in resting {
        assert_eq!(the(code, &loud), None, "{code}");
    }
}

#[test]
fn allergens_are_named_with_the_foods_that_bring_them() {
    let mut scene = Scene::food("milk_powder_nonfat");
    let mut oats = scene.plan.questions[0].treatments[0].clone();
    oats.name = "Oat flour".into();
    oats.difference.food = Some(Some("oat flour".into()));
    scene.plan.questions[0].treatments.push(oats);
    let finding = the("S10", &scene).unwrap();
    assert_eq!(finding.message, "Some people get very ill from milk and traces of wheat.");
    for place in ["Here milk is in nonfat dry milk.", "Traces of wheat may be in oat flour."] {
        assert!(finding.fix.contains(place), "{}", finding.fix);
    }
    assert_eq!(finding.at.unwrap().0, "question[0].treatment[0].food");
    assert_eq!(the("S12", &scene).unwrap().at.unwrap().0, "question[0].treatment[1].food");
}

#[test]
fn powder_in_students_hands_is_sent_back_to_the_teachers_bench() {
    let by_hand = the("S01", &Scene::enzyme("glucoamylase-powder", "0.1 g")).unwrap();
    assert_eq!(by_hand.at.unwrap().0, "base.enzyme_amount");
    assert!(by_hand.fix.contains("write the amount in mL"), "{}", by_hand.fix);
    let stock = the("S01", &Scene::enzyme("glucoamylase-powder", "2 mL")).unwrap();
    assert!(!stock.fix.contains("write the amount"), "{}", stock.fix);
    let splash = the("S02", &Scene::enzyme("glucoamylase-powder", "2 mL")).unwrap();
    assert!(splash.message.contains("glucoamylase solution"), "{}", splash.message);
}

#[test]
fn the_gas_of_a_class_is_summed_over_its_bags() {
    let mut scene = Scene::expecting(|entry| entry.gas_ml.high = vec![250.0]);
    scene.outlook.push(calm("No food"));
    scene.plan.periods.push(period("2", "Tuesday", 10));
    scene.plan.bags = (1..=3).map(|n| bag("1", "Maple syrup", n)).collect();
    scene.plan.bags.extend((1..=5).map(|n| bag("2", "Maple syrup", n)));
    scene.plan.bags.push(bag("2", "No food", 1));
    let finding = the("S24", &scene).unwrap();
    // Five bags of 250 mL, rounded up.
    assert!(finding.message.contains("class 2 let out up to 1.3 L"), "{}", finding.message);
    assert_eq!(finding.at.unwrap().0, "period[1]");
    // Nine bags of 40 mL are 0.36 L.
    let waste = the("S14", &scene).unwrap();
    assert!(waste.message.contains("9 bags with 0.4 L"), "{}", waste.message);
    // Without a list: 8 replicates over two periods.
    scene.plan.bags.clear();
    let finding = the("S24", &scene).unwrap();
    assert!(finding.message.contains("up to 1.0 L"), "{}", finding.message);
}

#[test]
fn a_substitute_is_told_what_to_leave_out() {
    let mut scene = Scene::enzyme("amylase-powder", "2 mL");
    scene.plan.circumstances = vec![Circumstance::Substitute];
    scene.plan.base.water_celsius = 47.0;
    scene.plan.equipment.meters = Some(1);
    let fix = the("S28", &scene).unwrap().fix;
    for part in ["43 °C (109 °F)", "enzyme powder", "breath meter"] {
        assert!(fix.contains(part), "{part}: {fix}");
    }
    let calm = Scene::changed(|plan| plan.circumstances = vec![Circumstance::Substitute]);
    assert!(the("S28", &calm).unwrap().fix.contains("keep it so"));
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
        assert_eq!(spoken("S12"), listed.contains(&Allergen::Wheat), "{}", food.name);
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
