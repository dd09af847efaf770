//! What falls when.

use super::{What, When, agenda, school_day};
use crate::prep;
use crate::testing::{base_plan, period};
use jiff::civil::{date, time};

#[test]
fn things_come_in_order_and_none_before_three_weeks() {
    let mut plan = base_plan();
    plan.days[0].date = date(2027, 3, 16);
    plan.periods.push(period("1"));
    let prep = prep::prep(&plan).expect("it can be prepared");
    let tasks = agenda(&plan, &prep);
    assert_eq!(tasks[0].when, When::On(date(2027, 2, 23)));
    let starts: Vec<_> = tasks.iter().map(|task| task.when.starts()).collect();
    assert!(starts.is_sorted(), "{starts:?}");
    assert_eq!(tasks.last().map(|task| &task.what), Some(&What::Results));
    let of = |wanted: What| tasks.iter().find(|task| task.what == wanted).expect("it is there");
    let start = of(What::Period(0)).when.starts();
    assert_eq!(start, date(2027, 3, 16).to_datetime(plan.periods[0].start));
    let When::At { to, .. } = &of(What::Period(0)).when else { panic!("a period has a time") };
    assert_eq!(of(What::Clear(plan.days[0].name.clone())).when.starts(), *to);
    assert!(start.time() > time(0, 0, 0, 0));
}

/// 6 and 7 March 2027 are a Saturday and a Sunday (Gregorian calendar).
#[test]
fn nothing_is_done_on_a_weekend() {
    assert_eq!(school_day(date(2027, 3, 6), -1), date(2027, 3, 5));
    assert_eq!(school_day(date(2027, 3, 7), -1), date(2027, 3, 5));
    assert_eq!(school_day(date(2027, 3, 6), 1), date(2027, 3, 8));
    assert_eq!(school_day(date(2027, 3, 5), -1), date(2027, 3, 5));
}

#[test]
fn a_plan_without_days_asks_nothing() {
    let mut plan = base_plan();
    let prep = prep::prep(&plan).expect("it can be prepared");
    plan.days.clear();
    assert!(agenda(&plan, &prep).is_empty());
}
