//! Hot and cold water, jugs, and what is left of the warmth in the bag.

use crate::school::{amount, cases, fill, plan, treatment, with_food};
use barm_domain::plan::{BagChoice, Plan};
use barm_domain::prep::facts::JUG_TIME;
use barm_domain::prep::{Hands, Jug, Mix, PrepError, Sources, jug_celsius, prep, prep_with};
use jiff::civil::time;
use proptest::prelude::*;

/// Enthalpy (kJ/kg) and density (kg/m³) of liquid water at 101325 Pa: IAPWS R7-97(2012), regions
/// 1 (worked outside with the Python package iapws; IAPWS-95 by CoolProp agrees within 0.02 %).
const STEAM_TABLE: [(f64, f64, f64); 8] = [
    (5.0, 21.1194, 999.9669),
    (15.0, 63.0790, 999.1011),
    (20.0, 84.0131, 998.2061),
    (40.0, 167.6243, 992.2243),
    (44.5, 186.4280, 990.4314),
    (50.0, 209.4129, 988.0475),
    (60.0, 251.2227, 983.2106),
    (80.0, 334.9916, 971.8029),
];

/// Every mix that can be made of three rows of the table keeps its enthalpy and its mass.
#[test]
fn mixing_agrees_with_the_steam_tables() {
    let mut compared = 0;
    for (cold, h_cold, d_cold) in STEAM_TABLE {
        for (middle, h, d) in STEAM_TABLE {
            for (hot, h_hot, d_hot) in STEAM_TABLE {
                if !(cold < middle && middle < hot) {
                    continue;
                }
                let sources = Sources { hot_celsius: hot, cold_celsius: cold };
                let Mix::Parts { hot: hot_ml, cold: cold_ml } = sources.mix(1000.0, middle)
                else {
                    panic!("{middle} °C of {hot} and {cold} °C");
                };
                let share = (h - h_cold) / (h_hot - h_cold);
                let (theirs_hot, theirs_cold) =
                    (1e3 * share * d / d_hot, 1e3 * (1.0 - share) * d / d_cold);
                let what = format!("{middle} °C of {hot} and {cold} °C");
                // A milliliter in a liter is finer than any jug.
                assert!(
                    (hot_ml.value() - theirs_hot).abs() < 1.0,
                    "{what}: {hot_ml} {theirs_hot}"
                );
                assert!(
                    (cold_ml.value() - theirs_cold).abs() < 1.0,
                    "{what}: {cold_ml} {theirs_cold}"
                );
                compared += 1;
            }
        }
    }
    assert_eq!(compared, 56);
}

/// Newton's law of cooling: after one time constant 36.8 % (1/e) of the warmth is left.
#[test]
fn a_jug_cools_by_newtons_law() {
    let after = jug_celsius(60.0, 20.0, JUG_TIME.value);
    assert!((after - 34.715).abs() < 0.001, "{after}");
    assert!((jug_celsius(after, 20.0, -JUG_TIME.value) - 60.0).abs() < 1e-9);
    assert!((jug_celsius(4.0, 20.0, 1e6) - 20.0).abs() < 1e-9);
}

#[test]
fn waters_that_do_not_reach_are_said() {
    let sources = Sources::default();
    assert_eq!(sources.mix(1000.0, 61.0), Mix::NeedsHotter);
    assert_eq!(sources.mix(1000.0, 14.0), Mix::NeedsColder);
    match sources.mix(1000.0, 60.0) {
        Mix::Parts { hot, cold } => {
            assert!(cold.is_none() && (hot.value() - 1000.0).abs() < 0.01);
        }
        other => panic!("{other:?}"),
    }
    let mut day = plan(1, 1, vec![treatment("any", |_| {})]);
    fill(&mut day, 1);
    for (hot_celsius, cold_celsius) in
        [(15.0, 15.0), (15.0, 60.0), (120.0, 15.0), (f64::NAN, 15.0)]
    {
        let refused = prep_with(&day, &Sources { hot_celsius, cold_celsius }).unwrap_err();
        assert!(
            matches!(refused, PrepError::Water { .. }) && refused.fix().contains("thermometer")
        );
    }
}

fn day_of(groups: u32, celsius: f64) -> Plan {
    let mut day = plan(1, groups, vec![treatment("any", |_| {})]);
    day.base.water_celsius = celsius;
    fill(&mut day, 2);
    day
}

fn only_jug(plan: &Plan) -> Jug {
    let [jug] = prep(plan).unwrap().periods.remove(0).jugs.try_into().unwrap();
    jug
}

/// Mixed 5 min before the bell; 14 min to the zero reading less 3 min of wetting: poured 16 min after
/// mixing. Readings every 5 min fill the 25 min to the last, so all start at once; every 7 min leave 4
/// min, in which nine trays start half a minute apart: poured from 16 to 20 min after mixing, in the
/// middle at 18.
#[test]
fn the_jug_is_right_when_it_is_poured() {
    // 21 + 19 · exp(16/75) and 21 + 19 · exp(18/75)
    for (interval, last, mixed) in
        [(5.0, time(8, 11, 0, 0), 44.518), (7.0, time(8, 15, 0, 0), 45.154)]
    {
        let mut day = day_of(8, 40.0);
        day.timing.interval_min = interval;
        let jug = only_jug(&day);
        assert_eq!(jug.mix_at, time(7, 55, 0, 0));
        assert_eq!(jug.pour, (time(8, 11, 0, 0), last));
        assert!((jug.mixed_celsius - mixed).abs() < 0.001, "{}", jug.mixed_celsius);
        assert_eq!((jug.hands, jug.top_up), (Hands::Students, None));
        assert_eq!(jug.makes, jug.used.plus(jug.spare).up_to_a_mark());
        let Mix::Parts { hot, cold } = jug.mix else { panic!("{:?}", jug.mix) };
        let parts = (60.0 * hot.value() + 15.0 * cold.value()) / (hot.value() + cold.value());
        assert!((parts - mixed).abs() < 0.2, "{parts}");
    }
}

/// US CPSC, Avoiding Tap Water Scalds, publication 5098, from memory: 120 °F, 49 °C.
#[test]
fn water_too_hot_for_hands_is_said() {
    for (celsius, hands) in [
        (35.0, Hands::Students),
        (43.0, Hands::Students),
        (45.0, Hands::Teacher),
        (49.0, Hands::Teacher),
        (50.0, Hands::Nobody),
    ] {
        assert_eq!(only_jug(&day_of(8, celsius)).hands, hands, "{celsius} °C");
    }
}

#[test]
fn a_large_hot_class_tops_its_jug_up() {
    let jug = only_jug(&day_of(20, 45.0));
    let top_up = jug.top_up.unwrap();
    assert!(top_up.hot && top_up.at > jug.pour.0 && top_up.at < jug.pour.1);
    // What is left, a kelvin too cold, with that much of 60 °C: back at 45 °C (to 2 %, for the
    // water added is itself part of what is left).
    let span = jug.pour.1.duration_since(jug.pour.0).as_secs() as f64;
    let left = jug.makes.value() * jug.pour.1.duration_since(top_up.at).as_secs() as f64 / span;
    let mixed = (44.0 * left + 60.0 * top_up.adds.value()) / (left + top_up.adds.value());
    assert!((mixed - 45.0).abs() < 0.1, "{mixed}");
    // Cold water warms up and is topped up with cold.
    let sources = Sources { hot_celsius: 60.0, cold_celsius: 1.0 };
    // Students pour cold water themselves; readings every 13 min leave time for half a minute each.
    let mut cold = day_of(20, 4.0);
    cold.timing.interval_min = 13.0;
    let chilled = prep_with(&cold, &sources).unwrap();
    assert!(!chilled.periods[0].jugs[0].top_up.unwrap().hot);
}

/// By hand: 40 mL of water at 40 °C (39.69 g, 4.179 J/gK) with 2 g of dry yeast at 4 to 6 % water
/// and 2 g of sugar (1.5 J/gK, from memory) in a snack bag of 165 by 83 mm of 38 µm film, 0.96 g of
/// polyethylene (2.3 J/gK), all of which lay in a room of 21 °C: 39.1 °C. Sugar takes 5.4 kJ/mol to
/// dissolve, and dry yeast gives 35 J/g when it is wetted (both from memory): 0.2 K more.
#[test]
fn dry_things_and_film_take_their_share() {
    let mut day = plan(1, 4, vec![with_food("sugar_white", "2 g")]);
    day.base.bag = BagChoice::parse("snack").unwrap();
    day.base.water = amount("40 mL");
    day.base.yeast_amount = amount("2 g");
    fill(&mut day, 1);
    let jug = only_jug(&day);
    let warm = 39.69 * 4.179;
    let room = 4.0 * 1.5 + 0.96 * 2.3;
    let mixing = 2.0 * 35.0 - 5400.0 * 2.0 / 342.3;
    let by_hand = (warm * 40.0 + room * 21.0 + mixing) / (warm + room);
    let (low, high) = jug.in_bag_celsius;
    assert!((low - by_hand).abs() < 0.1, "{low} against {by_hand}");
    // The control has no sugar in it and stays a little warmer.
    assert!(high > low && high < 40.0);
}

#[test]
fn each_temperature_of_a_period_has_its_jug() {
    let at = |celsius: f64| {
        treatment(&format!("{celsius}"), |difference| difference.water_celsius = Some(celsius))
    };
    let mut day = plan(2, 6, vec![at(20.0), at(30.0), at(45.0)]);
    fill(&mut day, 3);
    let prep = prep(&day).unwrap();
    for period in &prep.periods {
        let jugs: Vec<(f64, u32)> =
            period.jugs.iter().map(|jug| (jug.poured_celsius, jug.bags)).collect();
        assert_eq!(jugs, [(20.0, 6), (30.0, 6), (40.0, 1), (45.0, 6)]);
        let whose: Vec<&[String]> =
            period.jugs.iter().map(|jug| jug.treatments.as_slice()).collect();
        assert_eq!(whose, [["20"], ["30"], ["Yeast alone"], ["45"]], "whom it is for");
    }
}

proptest! {
    #![proptest_config(cases(300))]

    /// Whatever the class, the room and the taps: the jug has the plan's temperature in the middle
    /// of the pouring and is within a kelvin of it, or topped up, to the end.
    #[test]
    fn the_plan_s_temperature_is_what_is_poured(
        celsius in 5.0..49.0_f64,
        room in 10.0..32.0_f64,
        groups in 1_u32..=20,
        mixing in 5.0..20.0_f64,
        hot in 50.0..95.0_f64,
        cold in 1.0..20.0_f64,
    ) {
        let mut day = day_of(groups, celsius);
        day.days[0].room_celsius = room;
        day.timing.mixing_min = mixing;
        let sources = Sources { hot_celsius: hot, cold_celsius: cold };
        let [jug]: [Jug; 1] =
            prep_with(&day, &sources).unwrap().periods.remove(0).jugs.try_into().unwrap();
        let since = |clock: jiff::civil::Time| {
            clock.duration_since(jug.mix_at).as_secs_f64() / 60.0
        };
        let (first, last) = (since(jug.pour.0), since(jug.pour.1));
        // Clock times are whole seconds.
        let middle = jug_celsius(jug.mixed_celsius, room, f64::midpoint(first, last));
        prop_assert!((middle - celsius).abs() < 0.02, "{middle}");
        let end = jug_celsius(jug.mixed_celsius, room, last);
        let strays = (end - celsius).abs() > 1.01;
        prop_assert!(!strays || jug.top_up.is_some() || (celsius - room) * (hot - celsius) < 0.0
            || (celsius - room) * (celsius - cold) < 0.0);
        prop_assert!((end - celsius).abs() >= 0.99 || jug.top_up.is_none());
        match jug.mix {
            Mix::NeedsHotter => prop_assert!(jug.mixed_celsius > hot),
            Mix::NeedsColder => prop_assert!(jug.mixed_celsius < cold),
            Mix::Parts { hot: h, cold: c } => {
                let (h, c) = (h.value(), c.value());
                // Warm water is thinner: two volumes make up to 1 % less or more than their sum.
                prop_assert!(((h + c) / jug.makes.value() - 1.0).abs() < 0.02);
                let mixed = (h * hot + c * cold) / (h + c);
                // Volumes are not masses: at 95 °C water is 4 % thinner than at 1 °C.
                let within = 0.1 + 0.25 * 0.04 * (hot - cold);
                prop_assert!((mixed - jug.mixed_celsius).abs() < within, "{mixed}");
            }
        }
        let (low, high) = jug.in_bag_celsius;
        prop_assert!(low <= high);
        // Dissolving and wetting move it by half a kelvin at most: 3.1 g of yeast give 110 J, a spoon of
        // sugar takes 66 J, and 50 mL of water hold 209 J/K.
        prop_assert!(low >= celsius.min(room) - 0.4 && high <= celsius.max(room) + 0.6);
    }
}
