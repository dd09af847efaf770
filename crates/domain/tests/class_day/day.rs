//! A small class day to write entries for.

use barm_domain::code::BagCode;
use barm_domain::plan::{CONTROLS, Difference, Plan, PlannedBag, SetAsideRule};
use barm_domain::record::{Entry, Key, Known, Subject, What, Who};
use barm_domain::testing::{base_plan, period, question, treatment};
use jiff::{SignedDuration, Timestamp};

/// Two periods of two groups, two bags each, and a control of the teacher's in each period.
pub(crate) fn plan() -> Plan {
    let mut bags = Vec::new();
    for number in [1, 2] {
        for group in [0, 1, 2] {
            let made = if group == 0 { 1 } else { 2 };
            for (code, place) in BagCode::all_of(number, group).take(made).zip(1..) {
                bags.push(PlannedBag {
                    code: code.to_string(),
                    period: number.to_string(),
                    group: u32::from(group),
                    place,
                    question: if group == 0 { CONTROLS } else { "q" }.into(),
                    treatment: if place == 1 { "sugar" } else { "starch" }.into(),
                    replicate: u32::from(number),
                });
            }
        }
    }
    let difference = Difference::default;
    let treatments = vec![treatment("sugar", difference()), treatment("starch", difference())];
    let says = "A bag that leaks is set aside.".into();
    Plan {
        periods: vec![period("1"), period("2")],
        questions: vec![question("q", treatments)],
        set_aside_rules: vec![SetAsideRule { id: "leak".into(), says }],
        bags,
        ..base_plan()
    }
}

pub(crate) fn known() -> Known {
    Known::of([&plan()])
}

/// The nth bag of a group.
pub(crate) fn bag(period: u8, group: u8, nth: usize) -> BagCode {
    BagCode::all_of(period, group).nth(nth).expect("a code")
}

/// Seconds after the first bell.
pub(crate) fn at(second: i64) -> Timestamp {
    let bell: Timestamp = "2027-03-09T15:10:00Z".parse().expect("a time");
    bell + SignedDuration::from_secs(second)
}

pub(crate) fn key(number: u128) -> Key {
    Key(number)
}

pub(crate) fn one() -> Who {
    Who::Group { period: "1".into(), group: 1 }
}

/// An entry of group 1 in period 1 about its first bag.
pub(crate) fn entry(number: u128, second: i64, what: What) -> Entry {
    Entry {
        key: key(number),
        subject: Subject::Bag(bag(1, 1, 0)),
        what,
        measured: at(second),
        arrived: at(second + 1),
        who: one(),
    }
}

pub(crate) fn by(who: Who, entry: Entry) -> Entry {
    Entry { who, ..entry }
}

pub(crate) fn about(subject: Subject, entry: Entry) -> Entry {
    Entry { subject, ..entry }
}

pub(crate) const fn zero(height_mm: f64) -> What {
    What::Zero { height_mm }
}

pub(crate) const fn read(planned: u32, height_mm: f64) -> What {
    What::Reading { planned: Some(planned), height_mm }
}

pub(crate) const fn correct(of: u128, height_mm: f64) -> What {
    What::Correction { of: Key(of), height_mm }
}
