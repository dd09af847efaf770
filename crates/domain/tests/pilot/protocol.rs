//! What there is to do.

use super::school;
use barm_domain::finding::Severity;
use barm_domain::pilot::{Role, as_plan, cautions, protocol, timetable};
use barm_domain::plan::Lies;
use barm_domain::testing::{bag, base_plan, card};
use barm_science::bag::robin_capacity_ml;

#[test]
fn every_lot_of_the_plan_is_tried() {
    let plan = school::plan();
    let pilot = protocol(&plan).expect("a pilot");
    let roles: Vec<&Role> = pilot.bags.iter().map(|bag| &bag.role).collect();
    let glucoamylase = "glucoamylase-powder".to_owned();
    let wanted = [Role::Yeast, Role::Carrier(glucoamylase.clone()), Role::Enzyme(glucoamylase)];
    assert_eq!(roles, wanted.iter().collect::<Vec<_>>());
    assert_eq!(pilot.bags[2].recipe.food.as_deref(), Some("potato_flakes"));
    for bag in &pilot.bags {
        assert_eq!(bag.recipe.lies, Lies::WarmTray(35.0), "{}", bag.letter);
        assert_eq!(bag.minutes, [5, 10, 15, 20, 25, 30]);
    }
    assert!(pilot.spoons.is_some_and(|spoons| spoons.count == 10 && spoons.of_use));
    assert_eq!(pilot.meter.map(|meter| meter.strengths), Some(vec![0.0, 0.5, 1.0]));
    assert_eq!(pilot.dummy.minutes, [0, 5, 10, 20]);
}

/// A pilot for a sandwich bag injects 50, 100, 200 and 300 mL and more up to four fifths of the bag; a
/// snack bag takes smaller steps.
#[test]
fn volumes_stop_at_four_fifths_of_the_bag() {
    for name in ["snack", "sandwich", "quart", "gallon"] {
        let mut plan = base_plan();
        plan.base.bag = bag(name);
        plan.base.card = card("8.5 x 11 in");
        let pilot = protocol(&plan).expect("a pilot");
        let syringe = pilot.syringe.expect("a pair that shows");
        let volumes = &syringe.volumes_ml;
        let most = 0.8 * robin_capacity_ml(&syringe.bag.bag) - syringe.water_ml;
        assert!(volumes.windows(2).all(|two| two[0] < two[1]), "{name}: {volumes:?}");
        assert!((3..=7).contains(&volumes.len()), "{name}: {volumes:?}");
        assert!(volumes.last().is_some_and(|last| *last <= most), "{name}: {volumes:?}");
        if name == "sandwich" {
            assert_eq!(volumes[..4], [50.0, 100.0, 200.0, 300.0]);
        }
    }
}

#[test]
fn a_blind_card_is_not_calibrated() {
    let mut plan = base_plan();
    plan.base.bag = bag("gallon");
    let pilot = protocol(&plan).expect("a pilot");
    assert_eq!(pilot.syringe, None);
    assert!(timetable(&plan, &pilot).iter().all(|step| !step.says.contains("syringe with")));
}

#[test]
fn everything_is_done_in_forty_minutes() {
    let plan = school::plan();
    let pilot = protocol(&plan).expect("a pilot");
    let steps = timetable(&plan, &pilot);
    assert!(steps.windows(2).all(|two| two[0].minute <= two[1].minute));
    assert_eq!(steps.last().map(|step| step.minute), Some(40));
    let heights = steps.iter().filter(|step| step.says.starts_with("Read A")).count();
    assert_eq!(heights, 6);
}

#[test]
fn the_pilots_bags_stay_below_what_is_safe_and_cautions_say_the_rest() {
    let plan = school::plan();
    let pilot = protocol(&plan).expect("a pilot");
    let found = cautions(&plan, &pilot);
    assert!(found.iter().all(|one| one.severity == Severity::Caution));
    let text = |code: &str| {
        let one = found.iter().find(|one| one.code == code);
        one.map(|one| format!("{} {}", one.message, one.fix)).unwrap_or_default()
    };
    assert!(text("S01").contains("Dust from"), "enzyme dust");
    assert!(text("S03").contains("water"), "warm water");
    assert!(text("S29").contains("mouth") && text("S29").contains("needle"), "syringe");
    assert!(text("S07").contains("burst"), "bursting bags");
    assert!(text("S33").contains("adult"), "ethanol");
    assert!(text("S16").contains("Nobody blows"), "mouthpieces");
    let mut codes: Vec<&str> = found.iter().map(|one| one.code).collect();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), found.len(), "each once");
}

#[test]
fn a_pilot_is_a_plan_of_its_own() {
    let plan = school::plan();
    let pilot = protocol(&plan).expect("a pilot");
    let own = as_plan(&plan, &pilot);
    assert_eq!(own.treatments().count(), pilot.bags.len());
    for ((_, treatment), bag) in own.treatments().zip(&pilot.bags) {
        assert_eq!(own.recipe(treatment), bag.recipe, "{}", bag.letter);
    }
}

#[test]
fn a_plan_without_yeast_has_bags_and_no_spoons() {
    let mut plan = base_plan();
    plan.base.yeast = None;
    let pilot = protocol(&plan).expect("a pilot");
    assert!(pilot.bags.is_empty());
    assert_eq!(pilot.spoons, None);
    assert!(pilot.syringe.is_some());
    assert!(timetable(&plan, &pilot).iter().any(|step| step.says.contains("plain water")));
}
