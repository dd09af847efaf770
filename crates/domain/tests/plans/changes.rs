//! In what two recipes differ.

use crate::Dice;
use crate::school::{Asks, amount, food, sound};
use Variable::{
    Enzyme, EnzymeAmount, Food, FoodAmount, Lies as Lying, WaterTemperature, Yeast, YeastAmount,
};
use barm_domain::check::{changes, changes_for};
use barm_domain::plan::{Difference, Lies, Plan, Variable};
use barm_science::setup::YeastKind;
use std::collections::BTreeSet;

fn between(one: &Difference, other: &Difference) -> BTreeSet<Variable> {
    let plan = plan();
    changes(&plan, &plan.base.with(one), &plan.base.with(other))
}

fn plan() -> Plan {
    sound(Asks::Food, &mut Dice::of(3))
}

fn is(one: &Difference, other: &Difference, wanted: &[Variable]) {
    let wanted: BTreeSet<Variable> = wanted.iter().copied().collect();
    assert_eq!(between(one, other), wanted, "{one:?}\n{other:?}");
    assert_eq!(between(other, one), wanted, "the other way round");
}

#[test]
fn a_food_is_one_change_if_as_much_of_it_goes_in() {
    is(&food("honey", "2 g"), &food("molasses", "2 g"), &[Food]);
    is(&food("honey", "2 g"), &food("molasses", "4 g"), &[Food, FoodAmount]);
    is(&food("honey", "2 g"), &food("honey", "3 g"), &[FoodAmount]);
    is(&food("honey", "2 g"), &food("honey", "2000 mg"), &[]);
    // The same spoon; what it hides has a finding of its own.
    is(&food("sugar_white", "1/2 tsp"), &food("sugar_powdered", "1/2 tsp"), &[Food]);
    // 4.2 g a teaspoon (USDA SR28, NDB 19335).
    is(&food("sugar_white", "1/2 tsp"), &food("sugar_white", "2.1 g"), &[]);
    is(&food("sugar_white", "1/2 tsp"), &food("honey", "2.1 g"), &[Food]);
    // As much sugar: 100 g of dextrose monohydrate hold 90.9 g of glucose, and 99.8 g of sucrose
    // split into 105 g.
    is(&food("sugar_white", "1 g"), &food("dextrose_monohydrate", "1.156 g"), &[Food]);
    is(&Difference::default(), &food("honey", "2 g"), &[Food]);
}

#[test]
fn an_enzyme_is_one_change_in_any_amount() {
    let enzyme = |key: &str, much: &str| Difference {
        enzyme: Some(Some(key.into())),
        enzyme_amount: Some(amount(much)),
        ..Difference::default()
    };
    is(&enzyme("lactase-drops", "5 drops"), &Difference::default(), &[Enzyme]);
    is(&enzyme("lactase-drops", "5 drops"), &enzyme("glucoamylase-powder", "2 mL"), &[Enzyme]);
    is(
        &enzyme("glucoamylase-powder", "2 mL"),
        &enzyme("glucoamylase-powder", "4 mL"),
        &[EnzymeAmount],
    );
    // 2 mL of a solution of 1 g in 100 mL.
    is(&enzyme("glucoamylase-powder", "2 mL"), &enzyme("glucoamylase-powder", "0.02 g"), &[]);
}

#[test]
fn fresh_yeast_weighs_more_for_the_same_yeast() {
    let yeast = |kind, much: &str| Difference {
        yeast: Some(Some(kind)),
        yeast_amount: Some(amount(much)),
        ..Difference::default()
    };
    let (dry, instant, fresh) =
        (YeastKind::ActiveDry, YeastKind::Instant, YeastKind::Compressed);
    is(&yeast(dry, "2 g"), &yeast(instant, "2 g"), &[Yeast]);
    is(&yeast(dry, "2 g"), &yeast(instant, "3 g"), &[Yeast, YeastAmount]);
    is(&yeast(dry, "2 g"), &yeast(fresh, "6 g"), &[Yeast]);
    is(&yeast(dry, "2 g"), &yeast(dry, "3 g"), &[YeastAmount]);
    // 7 g a packet (1/4 oz on the packet).
    is(&yeast(dry, "1 packet"), &yeast(dry, "7 g"), &[]);
}

#[test]
fn a_tray_as_warm_as_the_water_belongs_to_the_warmth() {
    let tray = |water: f64, tray: f64| Difference {
        water_celsius: Some(water),
        lies: Some(Lies::WarmTray(tray)),
        ..Difference::default()
    };
    is(&tray(30.0, 30.0), &tray(40.0, 41.0), &[WaterTemperature]);
    is(&tray(30.0, 30.0), &tray(40.0, 30.0), &[WaterTemperature]);
    is(&tray(30.0, 20.0), &tray(40.0, 40.0), &[WaterTemperature, Lying]);
    is(&tray(40.0, 30.0), &tray(40.0, 40.0), &[Lying]);
}

#[test]
fn none_of_something_is_an_amount_to_a_question_about_amounts() {
    let plan = plan();
    let (none, some) = (plan.base.clone(), plan.base.with(&food("honey", "2 g")));
    let about = |variable| changes_for(&plan, variable, &none, &some);
    assert_eq!(about(FoodAmount), BTreeSet::from([FoodAmount]));
    assert_eq!(about(Food), BTreeSet::from([Food]));
    assert_eq!(about(Yeast), BTreeSet::from([Food]));
}
