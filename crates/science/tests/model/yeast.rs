//! Yeast against what bakers, brewers and classes have seen.
//!
//! No peer-reviewed open table of the first hour's gas of dry yeast in sugar water was found; each
//! source is used within what it can bear.

use crate::bench;
use barm_science::bag::StandardBag;
use barm_science::food;
use barm_science::model::balance::carbon_dioxide;
use barm_science::model::course::follow;
use barm_science::model::{Mixture, Moment, Parameters, nominal};
use barm_science::setup::{Setup, YeastKind};
use barm_science::units::Celsius;
use barm_science::yeast::hindrance::{HALF_OSMOTIC, ethanol_factor, osmotic_factor};
use barm_science::yeast::waking::{D60, DEATH_Z, tenfold_kill_min};

pub(crate) fn held(setup: &Setup, celsius: f64, minutes: u32) -> Vec<Moment> {
    let mut setup = setup.clone();
    setup.water_celsius = celsius;
    let mixture = Mixture::new(&setup, &Parameters::median()).held_at(celsius);
    follow(&setup, &mixture, minutes).unwrap().moments
}

pub(crate) fn made(moments: &[Moment], minute: usize) -> f64 {
    carbon_dioxide(&moments[minute].state) - carbon_dioxide(&moments[0].state)
}

/// Common practice, no source: a bag of 1 tsp sugar (4.2 g), 1 tsp yeast (3.1 g) and 50 mL warm
/// water reaches 3 to 25 g/L of ethanol at 30 minutes for starts of 35 to 42 °C.
#[test]
fn a_class_bag_reaches_a_few_grams_of_ethanol_a_litre() {
    for celsius in [35.0, 38.0, 40.0, 42.0] {
        for kind in [YeastKind::ActiveDry, YeastKind::Instant] {
            let mut setup = bench::plain(celsius);
            setup.yeast = Some(bench::yeast(kind, 3.1));
            let g_per_l = nominal(&setup, 30).unwrap().moments[30].ethanol_g_per_l;
            assert!((3.0..25.0).contains(&g_per_l), "{kind:?} at {celsius} °C: {g_per_l} g/L");
        }
    }
}

/// Derived from solubility (Carroll, Slupsky, Mather 1991) and class reports of first visible gas:
/// at 25 to 30 °C next to nothing shows in the first five to ten minutes.
#[test]
fn cool_bags_hide_their_first_gas() {
    for celsius in [25.0, 28.0, 30.0] {
        let moments = nominal(&bench::plain(celsius), 30).unwrap().moments;
        assert!(moments[5].rise_mm < 0.5, "{celsius} °C: {} mm at 5 min", moments[5].rise_mm);
        assert!(
            moments[10].rise_mm < 1.0,
            "{celsius} °C: {} mm at 10 min",
            moments[10].rise_mm
        );
        assert!(
            moments[30].rise_mm > 2.0,
            "{celsius} °C: {} mm at 30 min",
            moments[30].rise_mm
        );
    }
}

/// Bread dough, control strain of Appl. Environ. Microbiol. 67, 4279 (2001), table 3: 1200 mL in
/// 2 h with 2.8 % compressed yeast and 1800 mL with 5 % on 250 g flour at about 28.5 °C, that is
/// 11.5 and 9.7 mmol/(g·h) of dry matter (protocol recalled). Within a factor of 1.5.
#[test]
fn specific_rate_is_that_of_dough() {
    let mut setup = bench::plain(28.5);
    setup.bag = StandardBag::Gallon.bag();
    setup.water_ml = 150.0;
    setup.foods = vec![bench::grams("sugar_white", 8.0)];
    for (compressed_g, expected) in [(7.0, 11.5), (12.5, 9.7)] {
        setup.yeast = Some(bench::yeast(YeastKind::Compressed, compressed_g));
        let rate = made(&held(&setup, 28.5, 120), 120) / (0.30 * compressed_g * 2.0);
        let ratio = rate / expected;
        assert!((1.0 / 1.5..1.5).contains(&ratio), "{rate} against {expected} mmol/(g·h)");
    }
}

/// Herrera, Peterson, Cooper and Peppler (1956), Arch. Biochem. Biophys. 63, 131: active dry yeast
/// wetted at 4 to 15 °C makes weak doughs afterwards; instant yeast suffers less (US patent
/// 4,764,472).
#[test]
fn cold_wetting_weakens_active_dry_yeast() {
    let after = |kind: YeastKind, wetted: f64| {
        let mut setup = bench::plain(wetted);
        setup.yeast = Some(bench::yeast(kind, 3.1));
        setup.room_celsius = wetted;
        let mixture = Mixture::new(&setup, &Parameters::median()).held_at(30.0);
        let moments = follow(&setup, &mixture, 60).unwrap().moments;
        made(&moments, 60) - made(&moments, 50)
    };
    let (cold, warm) = (after(YeastKind::ActiveDry, 5.0), after(YeastKind::ActiveDry, 35.0));
    assert!(cold < 0.8 * warm, "{cold} against {warm} mmol");
    let instant = after(YeastKind::Instant, 5.0) / after(YeastKind::Instant, 35.0);
    assert!(instant > cold / warm, "instant yeast suffers less: {instant}");
}

/// Pyler (1988), as cited by a baking reference: yeast begins to die at 55.5 °C and is all dead at
/// 60 °C. Elizondo and Labuza (1974): z of 3.8 to 4.5 K, so 5 K make a tenfold difference.
#[test]
fn water_above_60_degrees_kills_and_50_does_not() {
    let alive = |celsius: f64| {
        let moments = nominal(&bench::plain(celsius), 30).unwrap().moments;
        moments[30].state[barm_science::model::state::ALIVE]
    };
    assert!(alive(50.0) > 0.8, "{} alive after 50 °C water", alive(50.0));
    assert!(alive(65.0) < 0.001, "{} alive after 65 °C water", alive(65.0));
    let kill = |celsius: f64| tenfold_kill_min(Celsius(celsius), D60.value, DEATH_Z.value);
    assert!((kill(55.0) - 1.29).abs() < 0.005, "D at 55 °C {}", kill(55.0));
    assert!((kill(45.0) / 215.0 - 1.0).abs() < 0.01, "D at 45 °C {}", kill(45.0));
}

/// Warren, Hill and Macdonald (1990): 20 g/L leave 0.96 of the rate, 37 g/L 0.86, 45 g/L 0.80.
/// Salt (from memory): 1 % −10 %, 3 % −40 %, 5 % −70 %, 10 % −95 %, each ±10 points.
#[test]
fn ethanol_and_salt_slow_yeast_down() {
    for (g_per_l, left) in [(20.0, 0.96), (37.0, 0.86), (45.0, 0.80)] {
        let ours = ethanol_factor(g_per_l, 101.6);
        assert!((ours - left).abs() < 0.006, "{g_per_l} g/L leaves {ours}");
    }
    for (percent, left) in [(1.0, 0.90), (3.0, 0.60), (5.0, 0.30), (10.0, 0.05)] {
        let osmol_per_l = 2.0 * 10.0 * percent / 58.44;
        let ours = osmotic_factor(osmol_per_l, HALF_OSMOTIC.value);
        assert!((ours - left).abs() < 0.10, "{percent} % salt leaves {ours}");
    }
}

/// Class data and common knowledge: baker's yeast makes nothing of milk sugar, starch, pure
/// sweeteners or salt; what little comes is its own reserve (2 to 8 % of the sugar rate, memory).
#[test]
fn foods_that_yeast_cannot_use_do_no_better_than_none() {
    let gas = |foods: Vec<barm_science::setup::Portion>| {
        let mut setup = bench::plain(38.0);
        setup.foods = foods;
        made(&held(&setup, 38.0, 30), 30)
    };
    let (none, sugar) = (gas(Vec::new()), gas(vec![bench::grams("sugar_white", 4.2)]));
    let share = none / sugar;
    assert!((0.01..0.10).contains(&share), "plain water makes {share} of sugar's gas");
    for id in ["erythritol", "stevia_powder", "corn_starch", "milk_powder_nonfat"] {
        let ratio = gas(vec![bench::grams(id, 3.0)]) / none;
        assert!((0.6..1.05).contains(&ratio), "{id}: {ratio} of plain water");
    }
    // USDA SR28: sweetener packets are four fifths dextrose; a college class saw them ferment.
    let packets = gas(vec![bench::grams("sucralose_packet", 3.0)]) / sugar;
    assert!(packets > 0.8, "three packets make {packets} of sugar's gas");
    assert!(food::by_id("salt").is_some());
    let salty = gas(vec![bench::grams("sugar_white", 4.2), bench::grams("salt", 6.0)]);
    assert!(salty < 0.05 * sugar, "a teaspoon of salt leaves {}", salty / sugar);
}
