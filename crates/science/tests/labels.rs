//! Foods described by their nutrition label.

use barm_science::food::label::{
    self, Declared, LabelError, LabelStarch, NaturalSugar, NutritionLabel,
};
use barm_science::food::{self, DAMAGED_FLOUR};
use proptest::prelude::*;

fn grams(grams: f64) -> Declared {
    Declared::Grams(grams)
}

/// A label with whole grams only: serving, carbohydrate, fiber, sugars.
fn plain(serving_g: f64, carbohydrate: f64, fiber: f64, sugars: f64) -> NutritionLabel {
    NutritionLabel {
        serving_g,
        carbohydrate: grams(carbohydrate),
        fiber: grams(fiber),
        sugars: grams(sugars),
        added_sugars: None,
        sugar_alcohols: None,
        fat_g: None,
        protein_g: None,
        sodium_mg: None,
        starch: LabelStarch::Raw,
        natural_sugar: NaturalSugar::Unknown,
    }
}

/// USDA SR28 (2015): a label rounded by 21 CFR 101.9(c)(6) from a food's own analysis must lead
/// back to that food within what the label says it leaves open.
#[test]
fn a_label_made_from_usda_numbers_leads_back_to_them() {
    // id, serving, carbohydrate, fiber, sugars, fat, protein per 100 g, kinds
    let rows = [
        ("maple_syrup", 60.0, 67.04, 0.0, 60.46, 0.06, 0.04, NaturalSugar::Sucrose),
        ("potato_flakes", 23.0, 81.17, 6.6, 3.36, 0.41, 8.34, NaturalSugar::Unknown),
        ("milk_powder_nonfat", 23.0, 51.98, 0.0, 51.98, 0.77, 36.16, NaturalSugar::Milk),
        ("wheat_flour_white", 30.0, 76.31, 2.7, 0.27, 0.98, 10.33, NaturalSugar::Unknown),
        ("honey", 21.0, 82.4, 0.2, 82.12, 0.0, 0.3, NaturalSugar::Fruit),
    ];
    for (id, serving, carbohydrate, fiber, sugars, fat, protein, natural_sugar) in rows {
        let line = |per_100_g: f64| {
            let exact = per_100_g * serving / 100.0;
            if (0.5..1.0).contains(&exact) {
                Declared::LessThanOne
            } else {
                grams(exact.round())
            }
        };
        let starch = if id == "potato_flakes" { LabelStarch::Cooked } else { LabelStarch::Raw };
        let printed = NutritionLabel {
            serving_g: serving,
            carbohydrate: line(carbohydrate),
            fiber: line(fiber),
            sugars: line(sugars),
            fat_g: Some((fat * serving / 100.0).round()),
            protein_g: Some((protein * serving / 100.0).round()),
            starch,
            natural_sugar,
            ..plain(1.0, 0.0, 0.0, 0.0)
        };
        let read = label::food(&printed).unwrap_or_else(|e| panic!("{id}: {e}"));
        let theirs = &food::by_id(id).expect(id).composition;
        let sum = |c: &barm_science::setup::Composition| {
            barm_science::stoichiometry::hexose_in_all(c)
        };
        let off = sum(&read.composition) / sum(theirs) - 1.0;
        assert!(off.abs() < 2.0 * read.content_sd, "{id}: off by {off:+.3}");
        assert!((0.06..0.25).contains(&read.content_sd), "{id}: {}", read.content_sd);
        let water = read.composition.water - theirs.water;
        assert!(water.abs() < 12.0, "{id}: water off by {water:+.1} g per 100 g");
    }
}

#[test]
fn starch_goes_where_the_label_says() {
    let raw = label::food(&plain(30.0, 23.0, 1.0, 0.0)).unwrap().composition;
    let starch = raw.raw_starch + raw.cooked_starch;
    assert!((starch - 100.0 * 22.0 / 30.0).abs() < 1e-9);
    assert!((raw.cooked_starch / starch - DAMAGED_FLOUR.value).abs() < 1e-12);
    let with = |starch| {
        let label = NutritionLabel { starch, ..plain(30.0, 23.0, 1.0, 0.0) };
        label::food(&label).unwrap().composition
    };
    assert!((with(LabelStarch::Cooked).cooked_starch - starch).abs() < 1e-9);
    assert!((with(LabelStarch::Dextrin).dextrin - starch).abs() < 1e-9);
}

#[test]
fn added_sugar_is_sucrose_and_the_rest_is_what_it_is() {
    let yogurt = NutritionLabel {
        added_sugars: Some(grams(9.0)),
        natural_sugar: NaturalSugar::Milk,
        ..plain(100.0, 15.0, 0.0, 14.0)
    };
    let food = label::food(&yogurt).unwrap().composition;
    assert!((food.sucrose - 9.0).abs() < 1e-9 && (food.lactose - 5.0).abs() < 1e-9);
}

#[test]
fn a_small_serving_leaves_more_open() {
    let small = label::food(&plain(4.0, 3.0, 0.0, 0.0)).unwrap().content_sd;
    let large = label::food(&plain(40.0, 30.0, 0.0, 0.0)).unwrap().content_sd;
    assert!(small > 0.15 && large < 0.08, "{small} and {large}");
    let unsure = label::food(&plain(40.0, 30.0, 0.0, 30.0)).unwrap().content_sd;
    assert!(unsure > 0.15, "an unknown sugar: {unsure}");
}

#[test]
fn impossible_labels_are_refused() {
    let refused = |label: &NutritionLabel| label::food(label).unwrap_err();
    assert!(matches!(refused(&plain(0.0, 1.0, 0.0, 0.0)), LabelError::Serving { .. }));
    assert!(matches!(refused(&plain(f64::NAN, 1.0, 0.0, 0.0)), LabelError::Serving { .. }));
    assert!(matches!(refused(&plain(30.0, -1.0, 0.0, 0.0)), LabelError::Line { .. }));
    assert!(matches!(refused(&plain(30.0, 5.0, f64::INFINITY, 0.0)), LabelError::Line { .. }));
    for label in [
        plain(30.0, 10.0, 0.0, 12.0),
        plain(30.0, 10.0, 7.0, 6.0),
        plain(30.0, 33.0, 0.0, 0.0),
        NutritionLabel { added_sugars: Some(grams(8.0)), ..plain(30.0, 20.0, 0.0, 5.0) },
        NutritionLabel { fat_g: Some(20.0), ..plain(30.0, 20.0, 0.0, 5.0) },
    ] {
        assert!(matches!(refused(&label), LabelError::PartExceedsWhole { .. }), "{label:?}");
    }
    // Each says which line, what was given, and what may be.
    for (label, said) in [
        (plain(0.0, 1.0, 0.0, 0.0), "a serving of 0 g lies outside 0.1 to 2000 g"),
        (plain(9e6, 1.0, 0.0, 0.0), "a serving of 9000000 g lies outside 0.1 to 2000 g"),
        (plain(30.0, -1.0, 0.0, 0.0), "total carbohydrate of -1 g lies outside 0 to 30 g"),
        (
            NutritionLabel { sodium_mg: Some(-190.0), ..plain(30.0, 20.0, 0.0, 5.0) },
            "sodium of -190 mg lies outside 0 to 30000 mg",
        ),
        (plain(30.0, 10.0, 0.0, 12.0), "total sugars (12 g) exceeds total carbohydrate (10 g)"),
    ] {
        assert!(refused(&label).to_string().starts_with(said), "{}", refused(&label));
    }
    // Rounding alone may make a part a gram larger than its whole.
    assert!(label::food(&plain(30.0, 10.0, 1.0, 10.0)).is_ok());
}

proptest! {
    /// Whatever is typed, the food is possible or the label is refused.
    #[test]
    fn no_label_makes_an_impossible_food(
        serving in prop_oneof![0.0..200.0_f64, any::<f64>()],
        carbohydrate in prop_oneof![0.0..200.0_f64, any::<f64>()],
        fiber in 0.0..20.0_f64,
        sugars in prop_oneof![0.0..200.0_f64, any::<f64>()],
        added in proptest::option::of(0.0..50.0_f64),
        fat in proptest::option::of(0.0..50.0_f64),
        protein in proptest::option::of(0.0..50.0_f64),
        sodium in proptest::option::of(0.0..3000.0_f64),
    ) {
        let typed = NutritionLabel {
            added_sugars: added.map(grams),
            fat_g: fat,
            protein_g: protein,
            sodium_mg: sodium,
            ..plain(serving, carbohydrate, fiber, sugars)
        };
        if let Ok(food) = label::food(&typed) {
            let c = food.composition;
            let all = c.water + c.carbohydrates().iter().sum::<f64>() + c.salt;
            prop_assert!((0.0..=100.0 + 1e-6).contains(&all), "adds up to {all}");
            prop_assert!((0.07..=1.0).contains(&food.content_sd));
        }
    }
}
