//! From the recipe in words to grams, milliliters, units and pascal.

use barm_domain::bench::{
    self, BenchError, TEASPOON_ML, enzyme, food_grams, ingredient, other_unit, tools,
    yeast_grams, yeast_per_tsp,
};
use barm_domain::plan::{Extra, LabelFood, Lies, Place, Plan, Recipe};
use barm_domain::testing::{amount, base_plan};
use barm_science::food::label::{Declared, LabelStarch, NaturalSugar, NutritionLabel};
use barm_science::setup::{Composition, Lying, Setup, YeastKind};

fn close(ours: f64, theirs: f64, within: f64, what: &str) {
    assert!((ours - theirs).abs() <= within * theirs.abs(), "{what}: {ours} against {theirs}");
}

/// The label of an invented instant oatmeal.
fn oats() -> NutritionLabel {
    NutritionLabel {
        serving_g: 30.0,
        carbohydrate: Declared::Grams(24.0),
        fiber: Declared::LessThanOne,
        sugars: Declared::Grams(6.0),
        added_sugars: Some(Declared::Grams(6.0)),
        sugar_alcohols: None,
        fat_g: None,
        protein_g: None,
        sodium_mg: None,
        starch: LabelStarch::Cooked,
        natural_sugar: NaturalSugar::Unknown,
    }
}

fn plan() -> Plan {
    Plan {
        label_foods: vec![LabelFood {
            name: "Otter Oats".into(),
            grams_per_tsp: None,
            label: oats(),
            composition: Composition {
                cooked_starch: 60.0,
                sucrose: 20.0,
                ..Default::default()
            },
            content_sd: 0.1,
            allergens: vec!["wheat".into()],
        }],
        ..base_plan()
    }
}

/// What a changed base recipe comes to.
fn setup(change: impl FnOnce(&mut Recipe)) -> Result<Setup, BenchError> {
    let plan = plan();
    let mut recipe = plan.base.clone();
    change(&mut recipe);
    bench::setup(&plan, &recipe, &plan.days[0])
}

fn water(written: &str) -> Result<(f64, f64), BenchError> {
    setup(|recipe| recipe.water = amount(written)).map(|s| (s.water_ml, s.water_dosing_sd))
}

/// Masses of level spoons, packets and cakes: USDA National Nutrient Database for Standard
/// Reference, release 28 (2015), household weights (NDB number beside each); the packet of dry
/// yeast says 1/4 oz (7 g) and 2 1/4 tsp.
#[test]
fn spoons_packets_and_cakes_weigh_what_the_tables_say() {
    let plan = plan();
    for (food, written, grams, within) in [
        ("white sugar", "1 tsp", 4.2, 1e-9),   // 19335
        ("white sugar", "1 cup", 200.0, 0.01), // 19335, a whole cup
        ("maple syrup", "1 tbsp", 20.0, 0.01), // 19353
        ("honey", "1 tbsp", 21.0, 0.01),       // 19296
        ("white sugar", "2.5 g", 2.5, 1e-9),
        ("white sugar", "1 oz", 28.349523125, 1e-9), // NIST SP 811 (2008), appendix B.8
    ] {
        let food = ingredient(&plan, food, "food").unwrap();
        let (ours, _) = food_grams(&food, &amount(written), "food_amount").unwrap();
        close(ours, grams, within, &format!("{written} {}", food.name));
    }
    for (kind, written, grams, within) in [
        (YeastKind::Instant, "1 packet", 7.0, 1e-9),
        (YeastKind::ActiveDry, "2 1/4 tsp", 7.0, 0.002),
        (YeastKind::Instant, "3 tsp", 9.33, 1e-9),
        (YeastKind::Compressed, "1 cake", 17.0, 1e-9), // 18374
        (YeastKind::Compressed, "5 g", 5.0, 1e-9),
    ] {
        let (ours, _) = yeast_grams(kind, &amount(written)).unwrap();
        close(ours, grams, within, written);
    }
}

/// Volumes: NIST SP 811 (2008), appendix B.8; labelling spoons 21 CFR 101.9(b)(5)(viii).
#[test]
fn water_is_poured_by_the_milliliter_the_spoon_or_the_cup() {
    for (written, ml, sd) in [
        ("40 mL", 40.0, tools::WATER_SD.value),
        ("40 g", 40.0, tools::WATER_SD.value),
        ("1/4 cup", 59.147_059, tools::SYRINGE_SD.value),
        ("2 tbsp", 29.573_530, tools::SYRINGE_SD.value),
        ("2 label tbsp", 30.0, tools::SYRINGE_SD.value),
        ("2 fl oz", 59.147_059, tools::WATER_SD.value),
    ] {
        let (ours, our_sd) = water(written).unwrap();
        close(ours, ml, 1e-7, written);
        close(our_sd, sd, 1e-12, written);
    }
    close(TEASPOON_ML, 4.928_921_593_75, 1e-15, "teaspoon");
}

/// 20 drops to a milliliter (from memory); 1 g of powder in 100 mL of stock, and one tablet in
/// 100 mL (common practice, no source).
#[test]
fn enzymes_are_dosed_as_they_stand_on_the_bench() {
    for (name, written, called, measures, ml) in [
        ("glucoamylase solution", "2 mL", "glucoamylase solution", 0.02, Some(2.0)),
        ("glucoamylase solution", "40 drops", "glucoamylase solution", 0.02, Some(2.0)),
        ("lactase tablet", "10 mL", "lactase solution", 0.1, Some(10.0)),
        ("lactase drops", "1 mL", "lactase drops", 20.0, Some(1.0)),
        ("lactase drops", "5 drops", "lactase drops", 5.0, Some(0.25)),
        ("glucoamylase powder", "100 mg", "glucoamylase powder", 0.1, None),
    ] {
        let written = amount(written);
        let found = enzyme(name, &written).unwrap();
        assert_eq!(found.name(), called);
        close(found.measures(&written).unwrap(), measures, 1e-12, called);
        assert_eq!(found.ml(&written).is_some(), ml.is_some(), "{called}");
        close(found.ml(&written).unwrap_or(1.0), ml.unwrap_or(1.0), 1e-12, called);
    }
}

/// A stock solution brings the same units and the same carrier as the powder that is in it, and
/// the rest is water that fills the bag.
#[test]
fn a_stock_solution_is_its_powder_in_water() {
    let dosed = |name: &str, written: &str| {
        setup(|recipe| {
            recipe.enzyme = Some(name.into());
            recipe.enzyme_amount = Some(amount(written));
        })
        .unwrap()
        .enzymes[0]
    };
    let stock = dosed("glucoamylase solution", "10 mL");
    let powder = dosed("glucoamylase powder", "0.1 g");
    close(stock.units, powder.units, 1e-12, "units");
    let (wet, dry) = (stock.carrier.unwrap(), powder.carrier.unwrap());
    close(wet.grams, 10.0, 1e-9, "a thin solution weighs a gram a milliliter");
    let glucose =
        |portion: &barm_science::setup::Portion| portion.grams * portion.composition.glucose;
    close(glucose(&wet), glucose(&dry), 1e-9, "sugar of the carrier");
    close(wet.composition.water, 99.05, 1e-9, "99 g of water and 5 % of the powder");
}

/// Equation 33a of the U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562), worked outside; its table
/// of geopotential altitudes prints 845.56 hPa at 1500 m (from memory).
#[test]
fn altitude_becomes_the_standard_atmosphere_s_pressure() {
    let mut plan = plan();
    for (place, pascal) in [
        (Place::Altitude(0.0), 101_325.0),
        (Place::Altitude(1400.0), 85_598.8),
        (Place::Altitude(1500.0), 84_556.0),
        (Place::Pressure(85_600.0), 85_600.0),
    ] {
        plan.days[0].place = place;
        close(bench::pressure(&plan.days[0]).unwrap(), pascal, 1e-6, "pressure");
        let made = bench::setup(&plan, &plan.base, &plan.days[0]).unwrap();
        close(made.pressure_pa, pascal, 1e-6, "pressure of the setup");
    }
}

#[test]
fn everything_of_the_recipe_reaches_the_bench() {
    let made = setup(|recipe| {
        recipe.food = Some("oat flour".into());
        recipe.food_amount = Some(amount("2 g"));
        recipe.extras = vec![Extra { item: "Otter Oats".into(), amount: amount("1.5 g") }];
        recipe.enzyme = Some("lactase drops".into());
        recipe.enzyme_amount = Some(amount("5 drops"));
        recipe.lies = Lies::WarmTray(38.0);
        recipe.water_celsius = 35.0;
    })
    .unwrap();
    let grams: Vec<f64> = made.foods.iter().map(|food| food.grams).collect();
    assert!(
        grams.len() == 2 && (grams[0] - 2.0).abs() < 1e-12 && (grams[1] - 1.5).abs() < 1e-12
    );
    close(made.foods[1].composition.cooked_starch, 60.0, 1e-12, "the label's food");
    assert_eq!(made.lying, Lying::WarmTray { celsius: 38.0 });
    assert_eq!(made.enzymes.len(), 1);
    assert_eq!(made.yeast.unwrap().kind, YeastKind::Instant);
    close(made.water_celsius, 35.0, 1e-12, "water");
    close(made.room_celsius, 21.0, 1e-12, "room");
    close(made.wet_before_zero_min, 3.0, 1e-12, "wetting");
    let bare = setup(|recipe| recipe.yeast = None).unwrap();
    assert!(bare.yeast.is_none() && bare.foods.is_empty() && bare.enzymes.is_empty());
}

/// A balance scatters less than a spoon, and a spoon no more than drops.
#[test]
fn the_tool_decides_how_far_doses_scatter() {
    let plan = plan();
    let sugar = ingredient(&plan, "white sugar", "food").unwrap();
    let sd = |written: &str| food_grams(&sugar, &amount(written), "food_amount").unwrap().1;
    assert!(
        sd("2 g") < sd("2 mL") && sd("2 mL") < sd("1/2 tsp") && sd("1/2 tsp") <= sd("9 drops")
    );
}

#[test]
fn errors_name_the_key_and_the_way_out() {
    let plan = plan();
    let key_and_fix = |result: Result<Setup, BenchError>| {
        let error = result.unwrap_err();
        assert!(error.to_string() == error.problem && !error.problem.is_empty());
        (error.key, error.fix)
    };
    let eats = |food: &str, how_much: Option<&str>| {
        setup(|recipe| {
            recipe.food = Some(food.into());
            recipe.food_amount = how_much.map(amount);
        })
    };
    let enzymed = |name: &str, how_much: Option<&str>| {
        setup(|recipe| {
            recipe.enzyme = Some(name.into());
            recipe.enzyme_amount = how_much.map(amount);
        })
    };
    let also = |item: &str, how_much: &str| {
        setup(|recipe| {
            recipe.extras = vec![Extra { item: item.into(), amount: amount(how_much) }];
        })
    };
    let yeast = |kind, how_much: &str| {
        setup(|recipe| {
            recipe.yeast = Some(kind);
            recipe.yeast_amount = amount(how_much);
        })
    };
    for (result, key, fix) in [
        (eats("oat flour", None), "food_amount", "2 g"),
        (eats("oat flour", Some("2 packets")), "food_amount", "grams"),
        (eats("Otter Oats", Some("1 tsp")), "food_amount", "grams"),
        (eats("oat flou", Some("2 g")), "food", "did you mean"),
        (eats("moon dust", Some("2 g")), "food", "label_food"),
        (also("moon dust", "2 g"), "also", "label_food"),
        (also("Otter Oats", "3 drops"), "also", "grams"),
        (enzymed("lactase drops", None), "enzyme_amount", "mL"),
        (enzymed("lactase drops", Some("1 g")), "enzyme_amount", "drops"),
        (enzymed("glucoamylase powder", Some("1/8 tsp")), "enzyme_amount", "mL"),
        (enzymed("catalase", Some("1 mL")), "enzyme", "glucoamylase"),
        (yeast(YeastKind::Instant, "3 drops"), "yeast_amount", "grams"),
        (yeast(YeastKind::Compressed, "1 tsp"), "yeast_amount", "grams"),
        (setup(|recipe| recipe.water = amount("9 drops")), "water", "40 mL"),
    ] {
        let (ours, way_out) = key_and_fix(result);
        assert_eq!(ours, key, "{way_out}");
        assert!(way_out.contains(fix), "{key}: {way_out}");
    }
    let mut day = plan.days[0].clone();
    day.place = Place::Altitude(14_000.0);
    let (key, fix) = key_and_fix(bench::setup(&plan, &plan.base, &day));
    assert!(key == "altitude" && fix.contains("1400 m"));
}

/// The other kind of unit, worked out by hand with the US customary teaspoon of 4.92892 mL (NIST
/// Handbook 44, appendix C): 40 mL are 8.12 of them, 2 mL 0.41, and 2 g of yeast at 3.11 g 0.64.
#[test]
fn an_amount_is_told_in_the_other_kind_of_unit() {
    let yeast = yeast_per_tsp(YeastKind::Instant);
    for (written, grams_per_tsp, other) in [
        ("40 mL", None, Some("2 tbsp + 2 tsp")),
        ("2 mL", None, Some("1/4 tsp + 1/8 tsp")),
        ("2 g", yeast, Some("1/2 tsp + 1/8 tsp")),
        ("4.2 g", Some(4.2), Some("1 tsp")),
        ("1 tsp", Some(4.2), Some("4.2 g")),
        ("1/4 cup", None, Some("59 mL")),
        // 0.32 of a teaspoon lies below 3/8, 0.17 above 1/8, both by more than a level spoon may.
        ("0.8 g", Some(2.5), Some("almost 1/4 tsp + 1/8 tsp")),
        ("0.8 g", Some(4.69), Some("over 1/8 tsp")),
        // Nothing where no spoon comes near, and nothing for what is counted.
        ("0.1 g", yeast, None),
        ("2 g", None, None),
        ("5 drops", None, None),
        ("1 tablet", None, None),
    ] {
        assert_eq!(other_unit(&amount(written), grams_per_tsp).as_deref(), other, "{written}");
    }
    assert_eq!(yeast_per_tsp(YeastKind::Compressed), None);
}
