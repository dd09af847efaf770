//! `barm schedule --json`.

use crate::invented::{answer, bag_codes, plan, schedule, tables, word};
use crate::shape::*;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

const COUNT_OR_NULL: Kind = |value| value.is_u64() || value.is_null();

#[test]
fn what_happens_when_has_the_promised_shape() {
    shaped("schedule", schedule(), &[("format", COUNT), ("periods", LIST)]);
    for period in list(schedule(), "periods") {
        let promised = [
            ("period", TEXT),
            ("starts", TEXT),
            ("bell_min", NUMBER),
            ("pours", TEXT),
            ("waves", LIST),
            ("turns", LIST),
            ("does_not_fit", LIST),
            ("advice", LIST),
            ("load", NUMBERS),
            ("peak", OBJECT_OR_NULL),
            ("in_one_wave", COUNT),
            ("changeover", OBJECT_OR_NULL),
        ];
        shaped("period", period, &promised);
        assert!(["groups", "teacher"].contains(&text(period, "pours")));
        for wave in list(period, "waves") {
            let promised = [("minute", NUMBER), ("clock", TEXT), ("groups", NUMBERS)];
            shaped("wave", wave, &promised);
        }
        for turn in list(period, "turns") {
            let promised = [
                ("minute", NUMBER),
                ("bag", TEXT),
                ("group", COUNT),
                ("task", TEXT),
                ("planned", COUNT_OR_NULL),
                ("meter", COUNT_OR_NULL),
                ("done", FLAG),
                ("moved_min", NUMBER),
            ];
            shaped("turn", turn, &promised);
            assert_eq!(turn["planned"].is_u64(), text(turn, "task") == "reading", "{turn}");
            assert_eq!(turn["meter"].is_u64(), text(turn, "task") == "meter", "{turn}");
        }
        for unfit in list(period, "does_not_fit") {
            let promised = [
                ("bag", TEXT),
                ("group", COUNT),
                ("task", TEXT),
                ("planned", COUNT_OR_NULL),
                ("why", TEXT),
            ];
            shaped("what does not fit", unfit, &promised);
        }
        for advice in list(period, "advice") {
            let promised = [
                ("change", TEXT),
                ("amount", COUNT_OR_NULL),
                ("readings_lost", COUNT),
                ("runs_lost", COUNT),
                ("says", TEXT),
            ];
            shaped("advice", advice, &promised);
        }
        shaped("peak", &period["peak"], &[("minute", COUNT), ("bags", COUNT)]);
        if !period["changeover"].is_null() {
            let promised = [("next", TEXT), ("minutes", NUMBER), ("enough", FLAG)];
            shaped("changeover", &period["changeover"], &promised);
        }
    }
}

/// Minutes by hand from the plan's own: 14 to mix, 6 to clear, a reading every 4, of 45.
#[test]
fn every_bag_of_the_plan_has_its_six_readings_before_bags_are_opened() {
    let base = plan();
    let base = base["base"].as_table().expect("a base recipe");
    for (key, says) in
        [("mixing", "14 min"), ("clearing", "6 min"), ("reading_interval", "4 min")]
    {
        assert_eq!(word(base, key), says);
    }
    assert!(tables(&plan(), "period").iter().all(|period| word(period, "length") == "45 min"));
    let mut read: BTreeMap<&str, BTreeSet<u64>> = BTreeMap::new();
    for period in list(schedule(), "periods") {
        for turn in list(period, "turns").iter().filter(|turn| text(turn, "task") != "meter") {
            let minute = turn["planned"].as_u64().unwrap_or(0);
            assert!(number(turn, "minute") <= 39.0, "{turn}");
            read.entry(text(turn, "bag")).or_default().insert(minute);
        }
        let most = period["peak"]["bags"].as_u64();
        assert!(most < period["in_one_wave"].as_u64(), "waves even the load: {period}");
    }
    assert_eq!(
        read.keys().map(|code| (*code).to_owned()).collect::<BTreeSet<_>>(),
        bag_codes()
    );
    assert!(read.values().all(|minutes| *minutes == BTreeSet::from([0, 4, 8, 12, 16, 20, 24])));
}

/// 10:40 and 20 minutes; back at 11:08, eight minutes later.
#[test]
fn a_drill_keeps_moves_and_names() {
    let stop = ["schedule", "plan.toml", "--json", "--from", "11:00", "--stop", "8"];
    let found = answer(&stop);
    let [period] = list(&found, "periods") else { panic!("one period is going on: {found}") };
    assert_eq!(text(period, "period"), "4");
    let of = |turn: &Value| (number(turn, "minute"), number(turn, "moved_min"));
    for turn in list(period, "turns") {
        let (minute, moved) = of(turn);
        if turn["done"] == true {
            assert!(minute < 20.0 && moved.abs() < 1e-9, "{turn}");
        } else if text(turn, "task") == "reading" {
            assert!(minute >= 28.0 && (moved - 8.0).abs() < 1e-9, "{turn}");
        }
    }
    let missed = list(period, "does_not_fit").iter().filter(|one| one["why"] == "stopped");
    let minutes: BTreeSet<u64> = missed.filter_map(|one| one["planned"].as_u64()).collect();
    assert_eq!(minutes, BTreeSet::from([20, 24]), "16 is read at 38 and a little after");
}
