//! Readings that cannot be taken: all of them at once, each with its line and what to do.

use super::school::{self, DAY, TRUTH};
use barm_domain::pilot::{
    BagHeights, Height, Lots, Part, PilotFault, PilotReadings, Seen, Shown, Temperature,
    Volume, learn,
};

fn faults(change: impl Fn(&mut PilotReadings)) -> Vec<PilotFault> {
    let plan = school::plan();
    let (protocol, mut readings) = school::readings(&plan, TRUTH, 7);
    change(&mut readings);
    learn(&plan, &protocol, &readings, &Lots::default(), DAY).expect_err("a fault")
}

fn height(minute: f64, height_mm: f64, line: u64) -> Seen<Height> {
    Seen { value: Height { minute, height_mm }, line }
}

#[test]
fn everything_wrong_is_said_at_once_by_line() {
    let found = faults(|readings| {
        readings.bags = vec![
            BagHeights { bag: "Q".into(), heights: vec![height(0.0, 5.0, 3)] },
            BagHeights {
                bag: "A".into(),
                heights: vec![height(5.0, 9.0, 4), height(5.0, 10.0, 5)],
            },
            BagHeights { bag: "B".into(), heights: vec![height(0.0, 5.0, 6)] },
        ];
        let volume = |air_ml, line| Seen { value: Volume { air_ml, height_mm: 9.0 }, line };
        readings.syringe = vec![volume(30.0, 8), volume(3000.0, 9)];
        let value = Temperature { minute: 0.0, celsius: 40.0 };
        readings.dummy = vec![Seen { value, line: 12 }];
    });
    let lines: Vec<u64> = found.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [3, 4, 5, 6, 8, 9, 12], "{found:#?}");
    assert!(found.iter().all(|fault| !fault.what.is_empty() && !fault.fix.is_empty()));
    assert!(found[0].fix.contains("A, B, C"));
}

#[test]
fn nothing_at_all_is_said_too() {
    let found = faults(|readings| *readings = PilotReadings::default());
    assert_eq!(found.len(), 1);
    assert!(found[0].what.contains("no reading"));
}

#[test]
fn a_meter_reading_that_cannot_be_names_its_line() {
    let found = faults(|readings| {
        let value = Shown { strength: 0.5, celsius: None, percent: 7.0 };
        readings.meter.push(Seen { value, line: 44 });
    });
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].line, 44);
}

#[test]
fn half_of_a_day_does_not_take_the_place_of_the_whole() {
    let plan = school::plan();
    let (protocol, readings) = school::readings(&plan, TRUTH, 7);
    let whole = learn(&plan, &protocol, &readings, &Lots::default(), DAY).expect("readings");
    let half = school::only(&readings, &[Part::Bags]);
    let found = learn(&plan, &protocol, &half, &whole.lots, DAY).expect_err("a fault");
    assert_eq!(found.len(), 2, "{found:#?}");
    assert!(found[0].what.contains("weighed spoons"), "{found:#?}");
    assert!(found[1].what.contains("syringe"), "{found:#?}");
}
