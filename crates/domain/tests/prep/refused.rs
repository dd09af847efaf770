//! What cannot be prepared is refused with its place and a way out.

use crate::school::{amount, fill, plan, treatment, with_enzyme, with_food};
use barm_domain::plan::{Difference, Plan};
use barm_domain::prep::{PrepError, prep};

fn day() -> Plan {
    let mut plan = plan(2, 2, vec![with_food("oat_flour", "2 g")]);
    fill(&mut plan, 1);
    plan
}

#[test]
fn names_that_the_plan_does_not_have_are_said_with_the_bag() {
    let mut no_period = day();
    no_period.bags[1].period = "9".into();
    let mut no_treatment = day();
    no_treatment.bags[2].treatment = "Rye".into();
    let mut no_day = day();
    no_day.periods[1].day = "Friday".into();
    for (plan, words) in [
        (no_period, ["bag 2", "9"]),
        (no_treatment, ["bag 3", "Rye"]),
        (no_day, ["period 2", "Friday"]),
    ] {
        let refused = prep(&plan).unwrap_err();
        let said = refused.to_string();
        assert!(words.iter().all(|word| said.contains(word)), "{said}");
        assert!(refused.fix().starts_with("write"), "{}", refused.fix());
    }
}

#[test]
fn a_recipe_that_cannot_be_measured_names_its_key() {
    let change = |change: fn(&mut Difference)| {
        let mut plan = day();
        plan.questions[0].treatments[0] = treatment("oat_flour", change);
        plan
    };
    let mut nowhere = day();
    nowhere.days[0].place = barm_domain::plan::Place::Altitude(40_000.0);
    for (plan, key) in [
        (change(|d| d.food = Some(Some("oat flour".into()))), "food_amount"),
        (change(|d| d.yeast_amount = Some(amount("3 drops"))), "yeast_amount"),
        (change(|d| d.enzyme = Some(Some("catalase".into()))), "enzyme_amount"),
        (change(|d| d.water = Some(amount("3 drops"))), "water"),
        (change(|d| *d = with_enzyme("catalase", "2 mL").difference), "enzyme"),
        (nowhere, "altitude"),
    ] {
        match prep(&plan).unwrap_err() {
            PrepError::Bench { source, .. } => {
                assert_eq!(source.key, key);
                assert!(!source.fix.is_empty());
            }
            other => panic!("{key}: {other}"),
        }
    }
}

#[test]
fn a_spare_that_is_no_share_is_refused() {
    for share in [-0.1, 11.0, f64::NAN, f64::INFINITY] {
        let mut plan = day();
        plan.spare = share;
        let refused = prep(&plan).unwrap_err();
        assert!(matches!(refused, PrepError::Spare { .. }), "{share}");
        assert!(refused.fix().contains("10 %"));
    }
}
