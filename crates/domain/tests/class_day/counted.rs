//! From the record to results.

use crate::day::{about, bag, by, correct, entry, known, plan, read, zero};
use barm_domain::reading::{Reading, SetAside};
use barm_domain::record::{
    Bound, Counted, Entry, Ledger, Odd, Subject, Truth, What, Who, replay,
};
use barm_domain::result::analyze;
use std::collections::BTreeMap;
use std::sync::Arc;

fn counted(entries: &[Entry]) -> Counted {
    Counted::of(&known(), &replay(&known(), entries))
}

fn heights(counted: &Counted) -> Vec<(f64, f64)> {
    counted.readings.iter().map(|reading| (reading.minute, reading.height_mm)).collect()
}

fn remarks(counted: &Counted) -> Vec<(Option<f64>, &str)> {
    counted.remarks.iter().map(|remark| (remark.minute, remark.says.as_str())).collect()
}

#[test]
fn minutes_are_true_minutes_from_the_own_zero() {
    let found = counted(&[
        entry(1, 840, zero(8.0)),
        entry(2, 1095, read(4, 9.0)),
        entry(3, 1200, correct(2, 10.0)),
        entry(4, 1110, What::Odd(Odd::Foam)),
        entry(5, 600, What::Odd(Odd::Spill)),
    ]);
    assert_eq!(heights(&found), [(0.0, 8.0), (4.25, 10.0)]);
    assert!(found.readings.iter().all(|r| r.bag == bag(1, 1, 0).to_string() && r.line == 0));
    assert_eq!(remarks(&found), [(Some(-4.0), "spill"), (Some(4.5), "foam")]);
}

#[test]
fn the_yeast_does_not_stop_in_a_fire_drill() {
    let period = |number, second, what| {
        by(Who::Teacher, about(Subject::Period("1".into()), entry(number, second, what)))
    };
    let found = counted(&[
        entry(1, 840, zero(8.0)),
        period(2, 960, What::Stopped),
        period(3, 1320, What::WentOn),
        entry(4, 1440, read(4, 12.0)),
    ]);
    assert_eq!(heights(&found), [(0.0, 8.0), (10.0, 12.0)], "planned for 4, read at 10");
    let says = "all clocks stood still for 6 min; the yeast went on";
    assert_eq!(remarks(&found), [(Some(2.0), says)]);
}

#[test]
fn rivals_count_only_where_a_ruler_cannot_tell_them_apart() {
    let mut story = vec![
        entry(1, 840, zero(8.0)),
        entry(2, 1080, read(4, 9.0)),
        entry(3, 1086, read(4, 11.0)),
        entry(4, 1320, read(8, 12.0)),
        entry(5, 1326, read(8, 21.0)),
    ];
    let found = counted(&story);
    assert_eq!(heights(&found), [(0.0, 8.0), (4.0, 9.0)]);
    let says =
        "two heights for one reading, 12 mm and 21 mm: neither counts until one is chosen";
    assert_eq!(remarks(&found), [(Some(8.0), says)]);
    story.push(by(Who::Teacher, entry(6, 2000, correct(5, 12.0))));
    let found = counted(&story);
    assert_eq!(heights(&found), [(0.0, 8.0), (4.0, 9.0), (8.1, 12.0)]);
    assert!(found.remarks.is_empty());
}

#[test]
fn a_zero_in_doubt_gives_no_readings() {
    let mut story =
        vec![entry(1, 840, zero(8.0)), entry(2, 850, zero(18.0)), entry(3, 1080, read(4, 9.0))];
    let found = counted(&story);
    assert!(found.readings.is_empty());
    assert_eq!(found.remarks.len(), 1);
    story.push(by(Who::Teacher, entry(4, 2000, correct(1, 8.0))));
    assert_eq!(heights(&counted(&story)), [(0.0, 8.0), (4.0, 9.0)]);
}

#[test]
fn a_bag_set_aside_is_handed_on_with_its_rule() {
    let rule = || "leak".to_owned();
    let aside = by(Who::Teacher, entry(2, 2000, What::SetAside { rule: rule() }));
    let found = counted(&[entry(1, 840, zero(8.0)), aside]);
    let expected = SetAside { bag: bag(1, 1, 0).to_string(), rule: rule(), line: 0 };
    assert_eq!(found.set_aside, [expected]);
}

#[test]
fn labels_that_were_swapped_are_set_right() {
    let truth = Truth { treatment: Some("starch".into()), group: Some(2) };
    let ledger = Ledger::of(known(), [entry(1, 2000, What::SetRight(truth))]);
    let plan = Arc::new(plan());
    let versions = BTreeMap::from([(1, plan.clone())]);
    let right = Bound::of(&versions, &plan, &ledger).plan_in_truth();
    let code = bag(1, 1, 0).to_string();
    for (before, after) in plan.bags.iter().zip(&right.bags) {
        if before.code == code {
            assert_eq!((after.treatment.as_str(), after.group), ("starch", 2));
            assert_eq!(after.question, "q");
        } else {
            assert_eq!(before, after);
        }
    }
}

/// A record and a readings file with the same heights give the same results.
#[test]
fn a_record_is_analyzed_exactly_as_a_file() {
    let plan = plan();
    let mut entries = Vec::new();
    let mut file = Vec::new();
    let mut number = 0;
    for (nth, planned) in plan.bags.iter().enumerate() {
        let code = planned.code.parse().expect("a code");
        let start = 840 + 30 * i64::try_from(nth).expect("few bags");
        for minute in [0u32, 4, 8, 12, 16, 20, 24] {
            number += 1;
            let sugar = planned.treatment == "sugar";
            let per_minute = if sugar { 1.25 } else { 0.25 };
            let height_mm = 8.0 + nth as f64 + per_minute * f64::from(minute);
            let what = if minute == 0 { zero(height_mm) } else { read(minute, height_mm) };
            let second = start + 60 * i64::from(minute);
            entries.push(about(Subject::Bag(code), entry(number, second, what)));
            file.push(Reading {
                bag: planned.code.clone(),
                minute: f64::from(minute),
                height_mm,
                line: 0,
                event: None,
            });
        }
    }
    let found = counted(&entries);
    let of_record = analyze(&plan, &[], &found.readings, &found.set_aside);
    let of_file = analyze(&plan, &[], &file, &[]);
    assert_eq!(of_record, of_file);
    assert_eq!(of_record.minute, Some(24.0));
    assert!(of_record.rejected.is_empty());
}
