//! A fire drill in the middle of a period.

use crate::school::{as_planned, plan, readings, runs, stopped, waves};
use barm_domain::schedule::{Change, Stop, Task, Upset, Why, course};
use std::collections::BTreeSet;

/// Out at 12, back at 20, two minutes of mixing left: the first zero at 22, the last reading by 39.
#[test]
fn a_drill_before_the_first_zero_moves_every_start() {
    let course = stopped(&plan(0, &[3; 6]), 12.0, 8.0);
    assert_eq!(waves(&course), [(22.0, vec![1, 2]), (22.5, vec![3, 4]), (23.0, vec![5, 6])]);
    assert_eq!(readings(&course, 6), [(4, 27.0), (8, 31.0), (12, 35.0), (16, 39.0)]);
    assert_eq!(course.lost(), (2 * 18, 0), "minutes 20 and 24 of 18 bags");
    assert!(course.unfit.iter().all(|one| one.why == Why::Stopped));
    assert!(course.turns.iter().all(|turn| !turn.done));
}

/// Out at 20, back at 26: what was due at 22 is read at 28, when the bags' own clocks show it.
#[test]
fn a_drill_while_bags_are_read_keeps_what_was_done_and_moves_the_rest() {
    let plan = plan(0, &[3, 3]);
    let course = stopped(&plan, 20.0, 6.0);
    assert_eq!(readings(&course, 1), [(4, 18.0), (8, 28.0), (12, 32.0), (16, 36.0)]);
    assert_eq!(readings(&course, 2), [(4, 18.5), (8, 28.5), (12, 32.5), (16, 36.5)]);
    let done: Vec<f64> =
        course.turns.iter().filter(|turn| turn.done).map(|turn| turn.at_min).collect();
    assert_eq!(done, [14.0, 14.0, 14.0, 14.5, 14.5, 14.5, 18.0, 18.0, 18.0, 18.5, 18.5, 18.5]);
    let mut moved = course.turns.iter().filter(|turn| !turn.done);
    assert!(moved.all(|turn| (turn.moved_min - 6.0).abs() < 1e-9));
    assert_eq!(course.lost(), (2 * 6, 0));
    assert!(course.load.bags[20..26].iter().all(|bags| *bags == 0), "nobody is in the room");
}

/// A reading that was due and is not on the list is missed, and a bag without a zero reading starts after
/// the drill.
#[test]
fn what_nobody_took_is_missed_and_never_made_up() {
    let plan = plan(0, &[2, 2]);
    let codes: Vec<String> = plan.bags.iter().map(|bag| bag.code.clone()).collect();
    let done: BTreeSet<(String, u32)> = [(0, 0), (0, 4), (1, 0), (2, 0), (2, 4)]
        .map(|(bag, at)| (codes[bag].clone(), at))
        .into();
    let stop = Some(Stop { from_min: 20.0, for_min: 6.0, done: Some(done) });
    let course = course(&plan, &plan.periods[0], &Upset { stop, length_min: None });
    let missed: Vec<(&str, Task)> = course
        .unfit
        .iter()
        .filter(|one| one.why == Why::NotTaken)
        .map(|one| (one.bag.as_str(), one.task))
        .collect();
    assert_eq!(missed, [(codes[1].as_str(), Task::Reading { planned: 4 })]);
    let fourth: Vec<(Task, f64)> = course
        .turns
        .iter()
        .filter(|turn| turn.bag == codes[3])
        .map(|turn| (turn.task, turn.at_min))
        .collect();
    let read = |planned| Task::Reading { planned };
    let by_hand = [(Task::Zero, 26.0), (read(4), 30.0), (read(8), 34.0), (read(12), 38.0)];
    assert_eq!(fourth, by_hand, "it was to start at 14:30, and starts when the class is back");
    // Bag 4 ends at 12, the others at 16: all compare at 12.
    assert!(course.advice.iter().any(|one| one.change == Change::LastReading(12)));
}

/// Out at 39:00 with one run over and one begun.
#[test]
fn a_push_that_was_cut_short_is_made_again() {
    let mut plan = plan(0, &[2]);
    plan.equipment.meters = Some(1);
    assert_eq!(runs(&as_planned(&plan)).len(), 2);
    let course = stopped(&plan, 39.6, 1.0);
    let found: Vec<(f64, bool)> =
        runs(&course).iter().map(|run| (run.at_min, run.done)).collect();
    assert_eq!(found, [(38.5, true), (40.6, false)]);
    let late = stopped(&plan, 39.6, 2.0);
    assert_eq!((runs(&late).len(), late.lost()), (1, (0, 1)), "back too late for another");
}

#[test]
fn a_drill_to_the_bell_leaves_what_was_done() {
    let plan = plan(1, &[3, 3]);
    let course = stopped(&plan, 20.0, 60.0);
    assert!(course.turns.iter().all(|turn| turn.done));
    assert_eq!(course.turns.len() + course.unfit.len(), 7 * 7);
    let none = stopped(&plan, 20.0, 0.0);
    assert_eq!(none, as_planned(&plan), "a stop of no time is none");
}
