//! Who is due, late or waiting.

use crate::day::{about, at, bag, by, entry, known, plan, read, zero};
use barm_domain::board::{Board, LATE_S, State, board};
use barm_domain::code::BagCode;
use barm_domain::plan::{Period, Plan};
use barm_domain::record::{Entry, Odd, Subject, What, Who, replay};
use barm_domain::schedule::schedule;
use barm_domain::testing::period;
use proptest::prelude::*;

fn at_second(plan: &Plan, entries: &[Entry], second: i64) -> Board {
    let standing = replay(&known(), entries);
    let period = Period { groups: 2, ..period("1") };
    let schedule = schedule(plan, &period, standing.periods.get("1"));
    board(plan, &schedule, &standing, &period, at(second))
}

/// The state of the first bag of group 1.
fn state(entries: &[Entry], second: i64) -> State {
    let board = at_second(&plan(), entries, second);
    board.lines.iter().find(|line| line.code == bag(1, 1, 0)).expect("the bag").state
}

fn codes(board: &Board) -> Vec<BagCode> {
    board.lines.iter().map(|line| line.code).collect()
}

fn period_1(number: u128, second: i64, what: What) -> Entry {
    by(Who::Teacher, about(Subject::Period("1".into()), entry(number, second, what)))
}

/// The bell at second 0, the zero reading at minute 14.
fn started() -> Vec<Entry> {
    vec![period_1(1, 0, What::Began), entry(2, 840, zero(8.0))]
}

const fn waiting(planned: u32, in_s: f64) -> State {
    State::Waiting { planned, in_s }
}

#[test]
fn a_reading_waits_falls_due_and_is_late() {
    let mut story = started();
    assert_eq!(state(&story[..1], 100), State::NotStarted);
    assert_eq!(state(&story, 840), waiting(4, 240.0));
    assert_eq!(state(&story, 1079), waiting(4, 1.0));
    assert_eq!(state(&story, 1080), State::Due { planned: 4, since_s: 0.0 });
    assert_eq!(state(&story, 1140), State::Due { planned: 4, since_s: 60.0 });
    assert_eq!(state(&story, 1141), State::Late { planned: 4, late_s: 61.0 });
    story.push(entry(3, 1150, read(4, 10.0)));
    assert_eq!(state(&story, 1150), waiting(8, 170.0));
}

#[test]
fn a_missed_reading_stays_blank_once_the_next_is_due() {
    let story = started();
    assert_eq!(state(&story, 1319), State::Late { planned: 4, late_s: 239.0 });
    assert_eq!(state(&story, 1320), State::Due { planned: 8, since_s: 0.0 });
}

#[test]
fn whoever_says_not_read_waits_for_the_next() {
    let mut story = started();
    story.push(entry(3, 1100, What::Odd(Odd::NotRead)));
    assert_eq!(state(&story, 1110), waiting(8, 210.0));
    assert_eq!(state(&story, 1320), State::Due { planned: 8, since_s: 0.0 });
}

#[test]
fn a_reading_a_little_early_is_no_second_one() {
    let mut story = started();
    story.push(entry(3, 1070, read(4, 10.0)));
    assert_eq!(state(&story, 1080), waiting(8, 240.0));
}

#[test]
fn in_a_fire_drill_nothing_falls_due() {
    let mut story = started();
    story.push(period_1(3, 1000, What::Stopped));
    assert_eq!(state(&story, 1200), State::Stopped);
    story.push(period_1(4, 1500, What::WentOn));
    assert_eq!(state(&story, 1200), State::Stopped, "then is not now");
    // 80 s were left when the clocks stopped.
    assert_eq!(state(&story, 1500), waiting(4, 80.0));
    assert_eq!(state(&story, 1580), State::Due { planned: 4, since_s: 0.0 });
}

/// The drill of 500 s takes readings away from the end: clearing starts at minute 39 of the bell.
#[test]
fn nothing_is_read_after_clearing_starts() {
    let mut story = started();
    let all = [(4, 10.0), (8, 12.0), (12, 14.0), (16, 16.0), (20, 18.0)];
    story.push(period_1(3, 900, What::Stopped));
    story.push(period_1(4, 1400, What::WentOn));
    for (number, (planned, height)) in (10..).zip(&all[..4]) {
        let second = 840 + 500 + 60 * i64::from(*planned);
        story.push(entry(number, second, read(*planned, *height)));
    }
    // Minute 16 was read at second 2300; minute 20 would fall at 2540, after 2340.
    assert_eq!(state(&story, 2300), State::Done);
    // Without the drill it would have been read, and minute 24 as well.
    let mut calm = started();
    calm.push(entry(9, 2040, read(20, 18.0)));
    assert_eq!(state(&calm, 2100), waiting(24, 180.0));
}

#[test]
fn a_bag_that_is_over() {
    let with = |what| [started(), vec![entry(5, 1000, what)]].concat();
    let teacher = |what| by(Who::Teacher, entry(5, 1000, what));
    assert_eq!(state(&with(What::Lost), 1200), State::Lost);
    assert_eq!(state(&with(What::Vented), 1200), State::Vented);
    let rule = What::SetAside { rule: "leak".into() };
    assert_eq!(state(&[started(), vec![teacher(rule)]].concat(), 1200), State::SetAside);
    assert_eq!(state(&with(read(24, 30.0)), 1200), State::Done);
    let ended = [started(), vec![period_1(5, 1000, What::Ended)]].concat();
    assert_eq!(state(&ended, 1200), State::Done);
}

#[test]
fn the_board_is_in_the_order_of_what_is_due_next() {
    let of = |group, nth, number, second, what| {
        about(Subject::Bag(bag(1, group, nth)), entry(number, second, what))
    };
    let story = [
        period_1(1, 0, What::Began),
        of(0, 0, 2, 840, zero(8.0)),
        of(1, 0, 3, 880, zero(8.0)),
        of(1, 1, 4, 870, zero(8.0)),
        of(1, 1, 5, 1100, What::Lost),
        of(2, 0, 6, 900, zero(8.0)),
        of(0, 0, 7, 1085, read(4, 9.0)),
    ];
    let board = at_second(&plan(), &story, 1130);
    let expected = [
        bag(1, 2, 1), // should have started at second 900
        bag(1, 1, 0), // due since 1120
        bag(1, 2, 0), // due at 1140
        bag(1, 0, 0), // read; next at 1320
        bag(1, 1, 1), // lost
    ];
    assert_eq!(codes(&board), expected);
    let control = &board.lines[3];
    assert_eq!(control.height_mm, Some(9.0));
    assert_eq!(control.rises.len(), 2);
}

#[test]
fn before_the_bell_the_board_is_in_the_order_of_the_benches() {
    let board = at_second(&plan(), &[], -100);
    let expected = [bag(1, 0, 0), bag(1, 1, 0), bag(1, 1, 1), bag(1, 2, 0), bag(1, 2, 1)];
    assert_eq!(codes(&board), expected);
    assert!(board.lines.iter().all(|line| line.state == State::NotStarted));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(64) })]

    /// Whatever happened, every bag stands on the board once, and what it says about time is true.
    #[test]
    fn any_day_has_a_board(
        zeros in prop::collection::vec(prop::option::of(800i64..1000), 5),
        reads in prop::collection::vec((0usize..5, 1u32..7, 0i64..300), 0..12),
        stop in prop::option::of((800i64..2500, 0i64..600)),
        now in -100i64..3000,
    ) {
        let plan = plan();
        let bags = [bag(1, 0, 0), bag(1, 1, 0), bag(1, 1, 1), bag(1, 2, 0), bag(1, 2, 1)];
        let mut story = vec![period_1(1, 0, What::Began)];
        let mut numbers = 2u128..;
        let mut number = || numbers.next().expect("endless");
        for (code, second) in bags.iter().zip(&zeros) {
            if let Some(second) = second {
                story.push(about(Subject::Bag(*code), entry(number(), *second, zero(8.0))));
            }
        }
        for (at, nth, late) in reads {
            let Some(zero) = zeros[at] else { continue };
            let second = zero + 240 * i64::from(nth) + late;
            let reading = entry(number(), second, read(4 * nth, 12.0));
            story.push(about(Subject::Bag(bags[at]), reading));
        }
        if let Some((from, long)) = stop {
            story.push(period_1(number(), from, What::Stopped));
            story.push(period_1(number(), from + long, What::WentOn));
        }
        let board = at_second(&plan, &story, now);
        let mut found = codes(&board);
        found.sort();
        let mut expected = bags;
        expected.sort();
        prop_assert_eq!(&found[..], &expected[..]);
        prop_assert_eq!(&board, &at_second(&plan, &story, now));
        for line in &board.lines {
            match line.state {
                State::Due { since_s, .. } => prop_assert!((0.0..=LATE_S).contains(&since_s)),
                State::Late { late_s, .. } => prop_assert!(late_s > LATE_S),
                State::Waiting { in_s, .. } => prop_assert!(in_s > 0.0),
                _ => {}
            }
            let zero = bags.iter().position(|code| *code == line.code).and_then(|at| zeros[at]);
            prop_assert_eq!(zero.is_none(), line.state == State::NotStarted);
        }
    }
}
