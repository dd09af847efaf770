//! What stands on the bench: grams, milliliters and scatter of what a plan names.

use crate::Dice;
use crate::school::{Asks, amount, food, sound};
use barm_domain::bench::{self, food_grams, ingredient, yeast_grams};
use barm_domain::outlook;
use barm_domain::plan::{Difference, Extra, Lies, Place, Plan};
use barm_science::setup::{EnzymeKind, Grain, Lying, Setup, YeastKind};

fn plan() -> Plan {
    sound(Asks::Food, &mut Dice::of(1))
}

fn made(plan: &Plan, difference: &Difference) -> Setup {
    bench::setup(plan, &plan.base.with(difference), &plan.days[0]).unwrap()
}

fn near(value: f64, wanted: f64, tolerance: f64, what: &str) {
    assert!((value - wanted).abs() <= tolerance, "{what}: {value}, not {wanted} ± {tolerance}");
}

/// Household weights of the USDA National Nutrient Database, Release 28 (2015), table WEIGHT.
#[test]
fn spoons_and_cups_weigh_what_the_food_table_says() {
    let plan = plan();
    for (name, much, grams) in [
        ("sugar_white", "1 tsp", 4.2),
        ("sugar_white", "1 cup", 200.0),
        ("honey", "1 tbsp", 21.0),
        ("honey", "1 cup", 339.0),
        ("maple_syrup", "1 tbsp", 20.0),
        ("wheat_flour_white", "1 cup", 125.0),
        ("corn_starch", "1 cup", 128.0),
        ("oat_flour", "1 cup", 104.0),
        ("milk_skim", "1 cup", 245.0),
    ] {
        let found = ingredient(&plan, name, "food").unwrap();
        let (got, _) = food_grams(&found, &amount(much), "food_amount").unwrap();
        // Teaspoons in the table are given to a tenth of a gram, and a cup is 48 of them.
        near(got, grams, 0.025 * grams, &format!("{much} of {name}"));
    }
}

/// 7 g a packet and 2 1/4 tsp to the packet (on the packet); 17 g a cake (USDA SR28, NDB 18374).
#[test]
fn yeast_comes_in_spoons_packets_and_cakes() {
    let grams = |kind, much: &str| yeast_grams(kind, &amount(much)).unwrap().0;
    near(grams(YeastKind::ActiveDry, "2 1/4 tsp"), 7.0, 0.01, "a packet by the spoon");
    near(grams(YeastKind::Instant, "1 packet"), 7.0, 1e-12, "a packet");
    near(grams(YeastKind::Compressed, "1 cake"), 17.0, 1e-12, "a cake");
    for (kind, much) in [(YeastKind::Compressed, "1 tsp"), (YeastKind::Instant, "5 drops")] {
        let error = yeast_grams(kind, &amount(much)).unwrap_err();
        assert_eq!(error.key, "yeast_amount");
    }
}

#[test]
fn every_tool_has_its_scatter() {
    let plan = plan();
    let scatter = |much: &str| made(&plan, &food("honey", much)).foods[0].dosing_sd;
    assert!(scatter("2 g") < scatter("1/2 tsp"), "a balance is finer than a spoon");
    assert!(scatter("2 mL") < scatter("1/2 tsp"), "a syringe is finer than a spoon");
    // Common practice, no source: about 10 % for a level spoon and about 1 K at pouring.
    near(scatter("1/2 tsp"), 0.10, 0.02, "level spoon");
    let setup = made(&plan, &Difference::default());
    near(setup.water_celsius_sd, 1.0, 0.5, "pouring");
    assert!(setup.water_dosing_sd > 0.0 && setup.trapped_air_ml > 0.0);
}

/// U.S. Standard Atmosphere 1976, table I, by geopotential height (from memory).
#[test]
fn pressure_is_that_of_the_altitude_or_of_the_barometer() {
    let mut plan = plan();
    for (place, pascal) in [
        (Place::Altitude(0.0), 101_325.0),
        (Place::Altitude(1000.0), 89_875.0),
        (Place::Altitude(2000.0), 79_495.0),
        (Place::Pressure(98_765.0), 98_765.0),
    ] {
        plan.days[0].place = place;
        near(made(&plan, &Difference::default()).pressure_pa, pascal, 5.0, "pressure");
    }
    plan.days[0].place = Place::Altitude(50_000.0);
    let recipe = plan.base.clone();
    assert_eq!(bench::setup(&plan, &recipe, &plan.days[0]).unwrap_err().key, "altitude");
}

#[test]
fn everything_of_the_recipe_gets_into_the_bag() {
    let plan = plan();
    let difference = Difference {
        water: Some(amount("1/4 cup")),
        water_celsius: Some(37.0),
        yeast: Some(Some(YeastKind::ActiveDry)),
        yeast_amount: Some(amount("2.5 g")),
        enzyme: Some(Some("lactase-drops".into())),
        enzyme_amount: Some(amount("6 drops")),
        extras: Some(vec![Extra { item: "salt".into(), amount: amount("0.5 g") }]),
        lies: Some(Lies::WarmTray(41.0)),
        ..food("milk_powder_nonfat", "3 g")
    };
    let setup = made(&plan, &difference);
    near(setup.water_ml, 59.147, 1e-3, "a quarter cup of 236.588 mL (NIST SP 811)");
    assert_eq!(setup.yeast.map(|y| (y.kind, y.grams)), Some((YeastKind::ActiveDry, 2.5)));
    assert_eq!(setup.foods.iter().map(|f| f.grams).collect::<Vec<_>>(), [3.0, 0.5]);
    assert!(
        setup.foods[0].composition.lactose > 40.0 && setup.foods[1].composition.salt > 90.0
    );
    assert_eq!(setup.enzymes[0].kind, EnzymeKind::NeutralLactase);
    assert_eq!(setup.lying, Lying::WarmTray { celsius: 41.0 });
    let stock = Difference {
        enzyme: Some(Some("glucoamylase-powder".into())),
        enzyme_amount: Some(amount("2 mL")),
        ..Difference::default()
    };
    let carried = made(&plan, &stock).enzymes[0].carrier.unwrap();
    // 2 mL of 1 g in 100 mL.
    near(carried.grams * (1.0 - carried.composition.water / 100.0), 0.02, 2e-3, "dry powder");
}

/// Malt is flour with its enzymes alive: as a food it brings beta- and alpha-amylase, and as an enzyme
/// the same of each gram; no other flour brings any. A solution is some hours old, what comes out of
/// a jar is not. Raw starch knows its plant.
#[test]
fn malt_brings_its_enzymes_and_starch_its_plant() {
    let plan = plan();
    let kinds = |setup: &Setup| setup.enzymes.iter().map(|e| e.kind).collect::<Vec<_>>();
    let malt = made(&plan, &food("barley_malt_flour", "1 g"));
    assert_eq!(kinds(&malt), [EnzymeKind::BetaAmylase, EnzymeKind::BacterialAlphaAmylase]);
    assert!(kinds(&made(&plan, &food("wheat_flour_white", "1 g"))).is_empty());
    let of = |amount: &str| Difference {
        enzyme: Some(Some("diastatic-malt".into())),
        enzyme_amount: Some(crate::school::amount(amount)),
        ..food("corn_starch", "1 g")
    };
    let jar = made(&plan, &of("1 g"));
    assert_eq!(kinds(&jar), kinds(&malt));
    for (ours, theirs) in jar.enzymes.iter().zip(&malt.enzymes) {
        near(ours.units, theirs.units, 1e-9 * theirs.units, "a gram of malt");
        near(ours.stock_age_min, 0.0, 1e-12, "age of what comes out of a jar");
    }
    // 5 g in 100 mL.
    let infusion = made(&plan, &of("20 mL"));
    near(infusion.enzymes[1].units, jar.enzymes[1].units, 1e-6, "malt's second enzyme");
    assert!(infusion.enzymes.iter().all(|e| e.stock_age_min > 0.0 && e.shaken));
    let grains = |setup: &Setup| setup.foods.iter().map(|f| f.grain).collect::<Vec<_>>();
    assert_eq!(grains(&jar), [Some(Grain::Corn)]);
    assert_eq!(grains(&made(&plan, &food("honey", "1 g"))), [None]);
}

#[test]
fn what_is_left_out_or_unknown_names_its_key() {
    let plan = plan();
    let no_amount = Difference { food_amount: None, ..food("honey", "2 g") };
    for (difference, key) in [
        (no_amount, "food_amount"),
        (food("unobtainium", "2 g"), "food"),
        (food("banana", "1 packet"), "food_amount"),
        (
            Difference { enzyme: Some(Some("lactase-drops".into())), ..Difference::default() },
            "enzyme_amount",
        ),
        (
            Difference {
                enzyme: Some(Some("catalase".into())),
                enzyme_amount: Some(amount("1 mL")),
                ..Difference::default()
            },
            "enzyme",
        ),
    ] {
        let recipe = plan.base.with(&difference);
        let error = bench::setup(&plan, &recipe, &plan.days[0]).unwrap_err();
        assert_eq!(error.key, key, "{error}");
        assert!(!error.fix.is_empty());
    }
}

#[test]
fn a_plan_without_a_day_has_no_bench() {
    let mut plan = plan();
    plan.days.clear();
    let error = outlook::setup(&plan, &plan.controls[0].treatment).unwrap_err();
    assert_eq!(error, outlook::OutlookError::NoDay);
}
