//! Lots on a shelf: which is in use, another in its place, one taken out.

use barm_domain::pilot::{Lot, LotNames, Lots, Numbers, Part, Thing, YeastLot};
use barm_domain::plan::YeastKind;
use barm_science::meter::MeterPosterior;
use jiff::civil::{Date, date};

fn jar(name: &str, on: Date, kind: YeastKind, parts: &[Part]) -> Lot<YeastLot> {
    let found = YeastLot { kind, teaspoon: None, numbers: Numbers::default() };
    Lot { name: name.into(), date: on, in_use: false, parts: parts.to_vec(), found }
}

fn shelf() -> Lots {
    let (monday, friday) = (date(2027, 3, 1), date(2027, 3, 5));
    let mut lots = Lots {
        yeast: vec![
            jar("old", monday, YeastKind::Instant, &[Part::Spoons]),
            jar("old", friday, YeastKind::Instant, &[Part::Bags]),
            jar("new", date(2027, 3, 4), YeastKind::Instant, &[Part::Spoons]),
            jar("dry", monday, YeastKind::ActiveDry, &[Part::Spoons]),
        ],
        ..Lots::default()
    };
    lots.yeast[2].in_use = true;
    lots.yeast[3].in_use = true;
    lots
}

fn used(lots: &Lots) -> Vec<(String, Date)> {
    let used = lots.yeast.iter().filter(|lot| lot.in_use);
    used.map(|lot| (lot.name.clone(), lot.date)).collect()
}

#[test]
fn a_lot_is_one_line_whatever_days_it_was_tried_on() {
    let mut lots = shelf();
    let meter = Lot {
        name: "old".into(),
        date: date(2027, 3, 1),
        in_use: true,
        parts: vec![Part::Meter],
        found: MeterPosterior::UNCHECKED,
    };
    lots.meters.push(meter);
    let lines = lots.lines();
    let names: Vec<_> = lines.iter().map(|line| (line.thing, line.name.as_str())).collect();
    let yeast = ["old", "new", "dry"].map(|name| (Thing::Yeast, name));
    assert_eq!(names[..3], yeast);
    assert_eq!(names[3..], [(Thing::Meter, "old")]);
    assert_eq!(lines[0].dates, [date(2027, 3, 1), date(2027, 3, 5)]);
    assert_eq!(lines[0].parts, [Part::Spoons, Part::Bags]);
    assert!(!lines[0].in_use && lines[1].in_use);
}

#[test]
fn choosing_and_leaving_out_touch_one_sort_only() {
    let mut lots = shelf();
    let dry = ("dry".to_owned(), date(2027, 3, 1));
    let old = lots.lines()[0].clone();
    lots.choose(&old);
    assert_eq!(used(&lots), [("old".to_owned(), date(2027, 3, 5)), dry.clone()]);
    lots.leave_out(&old);
    assert_eq!(used(&lots), [dry]);
}

#[test]
fn what_was_tried_last_takes_the_place_of_a_lot_that_was_taken_out() {
    let mut lots = shelf();
    let dry = ("dry".to_owned(), date(2027, 3, 1));
    let new = lots.lines()[1].clone();
    lots.take_out(&new);
    assert_eq!(used(&lots), [("old".to_owned(), date(2027, 3, 5)), dry]);
    let dry = lots.lines()[1].clone();
    lots.take_out(&dry);
    assert_eq!(used(&lots).len(), 1);
    assert_eq!(lots.yeast.len(), 2);
}

#[test]
fn a_pilot_takes_back_only_what_is_its_own() {
    let names = LotNames { yeast: Some("new".into()), ..LotNames::default() };
    let day = date(2027, 3, 4);
    let without = |parts: &[Part]| shelf().without(day, &names, parts).yeast.len();
    assert_eq!(without(&[Part::Spoons, Part::Syringe]), 3);
    assert_eq!(without(&[Part::Syringe]), 4, "another pilot of that day weighed the spoons");
    assert_eq!(shelf().without(date(2027, 3, 3), &names, &[Part::Spoons]).yeast.len(), 4);
}
