//! Cautions name this plan's own amounts.

use super::scene::{Scene, amount, bag, calm, period, quiet};
use super::the;
use barm_domain::outlook::{self, Look, Overnight};
use barm_domain::plan::{Circumstance, Lies};

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
