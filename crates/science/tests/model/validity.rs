//! No law is used beyond its range in silence.

use crate::any_bag::{cases, setup};
use crate::bench::{grams, plain, served, yeast};
use barm_science::bag::StandardBag;
use barm_science::carbon_dioxide::salt_factor;
use barm_science::card_height;
use barm_science::forecast::{Span, Streams, forecast, possible};
use barm_science::model::validity::{Beyond, beyond, laws};
use barm_science::model::{Parameters, nominal};
use barm_science::setup::{Acids, Composition, EnzymeDose, Lying, Setup, YeastKind};
use barm_science::stoichiometry::SALT;
use barm_science::units::Celsius;
use barm_science::water::vapour_pressure;
use proptest::prelude::{ProptestConfig, proptest};

fn marks(setup: &Setup) -> Vec<Beyond> {
    beyond(setup, &Parameters::median(), 30).expect("a bag that can be worked out")
}

fn warm(celsius: f64, change: impl Fn(&mut Setup)) -> Setup {
    let mut setup = plain(celsius);
    change(&mut setup);
    setup
}

/// Where the laws end was read off their sources by hand; here each is met once on either side.
#[test]
fn every_law_is_marked_outside_its_range_and_not_inside() {
    let old = |kind: YeastKind, celsius: f64| {
        warm(38.0, |s| {
            let mut dose = yeast(kind, 3.1);
            (dose.age_months, dose.stored_celsius) = (6.0, celsius);
            s.yeast = Some(dose);
        })
    };
    let with = |celsius: f64, key: &str| warm(celsius, |s| s.enzymes = vec![served(key)]);
    let salty = |celsius: f64, grams_of_salt: f64| {
        warm(celsius, |s| s.foods.push(grams("salt", grams_of_salt)))
    };
    // Vinegar of 5 % has pH 2.4 (handbook); of yeast there is little, for it takes up acid.
    let sour = |soda: f64, vinegar: f64| {
        warm(38.0, |s| {
            s.water_ml = 20.0;
            s.yeast = Some(yeast(YeastKind::ActiveDry, 0.3));
            s.foods = vec![grams("baking_soda", soda), grams("vinegar", vinegar)];
            s.enzymes = vec![served("amylase-powder")];
        })
    };
    let in_tray = |mut setup: Setup| {
        setup.lying = Lying::WarmTray { celsius: 35.0 };
        setup
    };
    let in_snack_bag =
        |air: f64| warm(40.0, |s| (s.bag, s.trapped_air_ml) = (StandardBag::Snack.bag(), air));
    let with_soda =
        |grams_of_soda: f64| warm(35.0, |s| s.foods.push(grams("baking_soda", grams_of_soda)));
    let aged = |months: f64| {
        warm(38.0, |s| {
            let mut dose = yeast(YeastKind::Instant, 3.1);
            (dose.age_months, dose.stored_celsius) = (months, 10.0);
            s.yeast = Some(dose);
        })
    };
    let stood = |minutes: f64| {
        warm(40.0, |s| {
            let dose = served("glucoamylase-powder");
            s.enzymes = vec![EnzymeDose { stock_age_min: minutes, ..dose }];
        })
    };
    let starchy = |grams_of_starch: f64| {
        warm(99.0, |s| {
            s.water_ml = 20.0;
            s.foods = vec![grams("corn_starch", grams_of_starch)];
        })
    };
    // A tenth of a mole of acid in 20 mL.
    let lemon = |acid: f64| {
        warm(38.0, |s| {
            s.water_ml = 20.0;
            s.yeast = Some(yeast(YeastKind::ActiveDry, 0.3));
            let acids = Acids::citric(acid);
            s.foods[0].composition = Composition { acids, ..Composition::NONE };
        })
    };
    let hot_soda = |celsius: f64| {
        warm(celsius, |s| (s.water_ml, s.foods) = (100.0, vec![grams("baking_soda", 1.0)]))
    };
    let fizzing = |celsius: f64| {
        warm(celsius, |s| {
            s.foods = vec![grams("baking_soda", 1.0), grams("vinegar", 10.0)];
            s.lying = Lying::WarmTray { celsius: celsius.min(70.0) };
        })
    };
    let sized = |width_mm: f64, height_mm: f64| {
        warm(40.0, |s| (s.bag.width_mm, s.bag.height_mm) = (width_mm, height_mm))
    };
    let thin_air = |celsius: f64| warm(celsius, |s| s.pressure_pa = 60_000.0);
    let cases: Vec<(&str, Setup, Setup)> = vec![
        ("yeast.response", warm(45.0, |_| ()), warm(75.0, |_| ())),
        ("yeast.slow_loss", warm(45.0, |_| ()), warm(57.0, |_| ())),
        ("yeast.osmotic", salty(40.0, 3.0), salty(40.0, 9.0)),
        ("yeast.acidity", lemon(0.005), lemon(2.5)),
        (
            "yeast.storage of dry yeast",
            old(YeastKind::Instant, 20.0),
            old(YeastKind::Instant, -18.0),
        ),
        (
            "yeast.storage of compressed yeast",
            old(YeastKind::Compressed, 4.0),
            old(YeastKind::Compressed, 25.0),
        ),
        ("yeast.storage by age", aged(18.0), aged(40.0)),
        (
            "enzyme.heat of starch's enzymes",
            with(40.0, "glucoamylase-powder"),
            with(85.0, "glucoamylase-powder"),
        ),
        (
            "enzyme.heat of lactase and invertase",
            with(40.0, "lactase-drops"),
            with(75.0, "lactase-drops"),
        ),
        ("enzyme.acidity", sour(0.5, 1.0), sour(0.005, 40.0)),
        ("enzyme.stock", stood(120.0), stood(600.0)),
        ("starch.cooking", starchy(5.0), starchy(30.0)),
        ("carbon_dioxide.salting by temperature", in_tray(salty(35.0, 1.0)), salty(30.0, 1.0)),
        ("carbon_dioxide.salting by salt", salty(35.0, 5.0), salty(35.0, 13.0)),
        ("carbonate.activity", with_soda(1.0), with_soda(4.0)),
        ("carbonate.constants", hot_soda(60.0), hot_soda(100.0)),
        ("gas.most_steam", thin_air(40.0), thin_air(98.0)),
        ("permeation.activation", fizzing(45.0), fizzing(90.0)),
        ("card_height.family", in_snack_bag(8.0), in_snack_bag(210.0)),
        ("card_height.family by size", sized(150.0, 160.0), sized(400.0, 400.0)),
        ("card_height.family by shape", sized(150.0, 160.0), sized(100.0, 300.0)),
        (
            "card_height.family by card",
            warm(40.0, |s| s.card.grams = 4.0),
            warm(40.0, |s| s.card.grams = 20.0),
        ),
    ];
    let names: Vec<&str> = cases.iter().map(|(law, ..)| *law).collect();
    assert_eq!(names, laws().map(|law| law.name).collect::<Vec<_>>());
    for (law, inside, outside) in cases {
        let found = |setup: &Setup| marks(setup).into_iter().find(|mark| mark.law.name == law);
        assert_eq!(found(&inside), None, "{law} holds there");
        let mark = found(&outside).unwrap_or_else(|| panic!("{law} does not hold there"));
        let (low, high) = mark.law.holds;
        assert!(!(low..=high).contains(&mark.value), "{mark}");
        assert!((-30.0..=30.0).contains(&mark.from_min), "{mark}");
        let said = mark.to_string();
        assert!(said.contains(law) && said.contains(mark.law.outside), "{said}");
    }
}

#[test]
fn a_mark_tells_when_and_how_far() {
    let mut hot = plain(70.0);
    hot.wet_before_zero_min = 4.0;
    let mark = marks(&hot).into_iter().find(|mark| mark.law.name == "yeast.response").unwrap();
    let course = nominal(&hot, 30).unwrap();
    assert!((mark.from_min + 4.0).abs() < 1e-12, "hottest when it is wetted");
    assert!(mark.value > course.moments[0].celsius && mark.value < 70.0, "{mark}");
    // A bag that fills itself slowly leaves the range of the card's law at the minute that its course
    // shows.
    let mut small = plain(40.0);
    (small.bag, small.trapped_air_ml) = (StandardBag::Snack.bag(), 160.0);
    let mark =
        marks(&small).into_iter().find(|mark| mark.law.name == "card_height.family").unwrap();
    let curve = card_height::prior(&small.bag, &small.card, 50.0).mean;
    assert!(mark.from_min > 2.0 && mark.from_min < 30.0 && mark.value > 0.93, "{mark}");
    let moment = nominal(&small, 30).unwrap().moments[mark.from_min as usize];
    // Trapped air, warmed and wetted; liquid without what is dissolved in it, so a little low.
    let warmer = (moment.celsius + 273.15) / (small.room_celsius + 273.15);
    let dry = 1.0 - vapour_pressure(Celsius(moment.celsius)).0 / small.pressure_pa;
    let share = (moment.gas_ml + small.trapped_air_ml * warmer / dry) / curve.room_ml();
    assert!((0.88..1.0).contains(&share), "{share} of the room at {}", mark.from_min);
}

#[test]
fn a_forecast_carries_the_marks_of_its_best_guess() {
    let span = Span { draws: 8, ..Span::to(30) };
    let drawn = |setup: &Setup| forecast(setup, &span, &Streams::alone(1, 2)).unwrap();
    assert!(drawn(&plain(40.0)).beyond().is_empty());
    let hot = plain(75.0);
    assert_eq!(drawn(&hot).beyond(), marks(&hot));
    assert!(!drawn(&hot).beyond().is_empty());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    /// Whatever is held at an end somewhere in the laws leaves a mark.
    #[test]
    fn nothing_is_held_in_silence(setup in setup()) {
        if possible(&setup).is_err() {
            return Ok(());
        }
        let marks = marks(&setup);
        let marked = |law: &str| marks.iter().any(|mark| mark.law.name.starts_with(law));
        for mark in &marks {
            let (low, high) = mark.law.holds;
            assert!(!(low..=high).contains(&mark.value), "{mark}");
        }
        let grams: f64 =
            setup.foods.iter().map(|f| 0.01 * f.grams * f.composition.salt).sum();
        // Less water than this is in no bag.
        let salt = 1e3 * grams / SALT.value / (setup.water_ml + 100.0);
        for moment in nominal(&setup, 30).unwrap().moments {
            let (celsius, minute) = (moment.celsius, moment.minute);
            let at = Celsius(celsius);
            if setup.yeast.is_some_and(|yeast| yeast.grams > 0.0) && celsius > 60.1 {
                assert!(marked("yeast.response"), "{celsius} °C at minute {minute}");
            }
            if !(24.9..=60.1).contains(&celsius) && salt_factor(salt, at) < 0.98 {
                assert!(marked("carbon_dioxide.salting by temperature"), "{celsius} °C");
            }
            if vapour_pressure(at).0 > 0.951 * setup.pressure_pa {
                assert!(marked("gas.most_steam"), "{celsius} °C");
            }
            if moment.fill > 1.0 {
                assert!(marked("card_height.family"), "fill {} at {minute}", moment.fill);
            }
        }
    }
}
