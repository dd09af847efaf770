//! What is in a bag.

use crate::class;
use barm_domain::discussion::{ByYeast, Carbohydrate, Inside, inside};
use barm_domain::plan::Difference;
use barm_domain::testing::{amount, food};
use barm_science::setup::EnzymeKind;

fn of(difference: Difference) -> Inside {
    let mut class = class([0.0; 4], [0.0; 4]);
    class.plan.questions[0].treatments[0].difference = difference;
    inside(&class.plan, &class.plan.questions[0].treatments[0]).expect("a recipe")
}

/// USDA SR28, NDB 19335: granulated sugar is 99.80 g of sucrose in 100 g.
#[test]
fn white_sugar_is_sucrose_which_yeast_cuts_outside() {
    let found = of(food("white sugar", "2 g"));
    let [(Carbohydrate::Sucrose, grams)] = found.carbohydrates[..] else { panic!("{found:?}") };
    assert!((grams - 2.0).abs() < 0.01, "{grams}");
    assert_eq!(Carbohydrate::Sucrose.by_yeast(), ByYeast::CutOutside);
    assert!(found.yeast && found.enzymes.is_empty());
}

/// Milk sugar is closed to yeast, and lactase is what opens it.
#[test]
fn milk_has_lactose_that_lactase_cuts() {
    let milk = food("nonfat dry milk", "2 g");
    let found = of(Difference {
        enzyme: Some(Some("lactase-drops".into())),
        enzyme_amount: Some(amount("5 drops")),
        ..milk
    });
    let lactose = found.carbohydrates.iter().find(|(one, _)| *one == Carbohydrate::Lactose);
    // USDA SR28, NDB 01091: 51.98 g of sugars in 100 g, all of it lactose.
    let (_, grams) = lactose.expect("lactose");
    assert!((grams - 1.04).abs() < 0.06, "{grams}");
    assert_eq!(Carbohydrate::Lactose.by_yeast(), ByYeast::NotAtAll);
    let [enzyme] = found.enzymes[..] else { panic!("{found:?}") };
    assert!(Carbohydrate::Lactose.is_cut_by(enzyme));
    assert!(!Carbohydrate::RawStarch.is_cut_by(EnzymeKind::NeutralLactase));
}

#[test]
fn a_bag_without_food_has_nothing_to_tell() {
    let found = of(Difference { food: Some(None), ..Difference::default() });
    assert!(found.carbohydrates.is_empty() && found.yeast);
    let found = of(Difference { yeast: Some(None), ..food("white sugar", "1 g") });
    assert!(!found.yeast);
}
