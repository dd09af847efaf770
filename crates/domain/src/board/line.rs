//! One line of the board.

use super::clock::Clock;
use super::{LATE_S, Line, State};
use crate::code::BagCode;
use crate::plan::PlannedBag;
use crate::record::{Bag, Height, Odd};
use std::cmp::Ordering;

/// Where a line stands on the board: what is over stands last; of the others, what is due next
/// stands first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Turn {
    over: u8,
    in_s: f64,
    bench: (u32, u32),
    code: BagCode,
}

impl Turn {
    pub(super) fn compare(&self, other: &Self) -> Ordering {
        self.over
            .cmp(&other.over)
            .then(self.in_s.total_cmp(&other.in_s))
            .then((self.bench, self.code).cmp(&(other.bench, other.code)))
    }
}

/// The line of a bag, and where it stands.
pub(super) fn line(
    clock: &Clock<'_>,
    planned: &PlannedBag,
    code: BagCode,
    bag: Option<&Bag>,
    lent: bool,
) -> (Turn, Line) {
    let (state, in_s) = state(clock, planned.group, bag, lent);
    let over = match state {
        State::Done => 1,
        State::SetAside => 2,
        State::Vented => 3,
        State::Lost => 4,
        _ => 0,
    };
    let height = bag.and_then(|bag| bag.readings.last().or(bag.zero.as_ref()));
    let line = Line {
        bag: planned.clone(),
        code,
        state,
        height_mm: height.map(|height| height.height_mm),
        rises: bag.map(Bag::rises).unwrap_or_default(),
    };
    (Turn { over, in_s, bench: (planned.group, planned.place), code }, line)
}

/// The state of a bag and the seconds until it has to be looked at.
fn state(clock: &Clock<'_>, group: u32, bag: Option<&Bag>, lent: bool) -> (State, f64) {
    if let Some(over) = bag.and_then(over) {
        return (over, f64::INFINITY);
    }
    // Nobody waits for a height that would not count.
    if lent {
        return (State::Done, f64::INFINITY);
    }
    let Some((bag, zero)) = bag.and_then(|bag| Some((bag, bag.zero.as_ref()?))) else {
        return (State::NotStarted, clock.starts_in_s(group).unwrap_or(f64::INFINITY));
    };
    let Some(planned) = next(clock, bag, zero).filter(|_| !clock.over()) else {
        return (State::Done, f64::INFINITY);
    };
    let in_s = clock.falls_in_s(zero.measured, planned);
    let state = if clock.stands() {
        State::Stopped
    } else if in_s > 0.0 {
        State::Waiting { planned, in_s }
    } else if -in_s > LATE_S {
        State::Late { planned, late_s: -in_s }
    } else {
        State::Due { planned, since_s: -in_s }
    };
    (state, in_s)
}

/// What took a bag out of the readings, if anything did.
fn over(bag: &Bag) -> Option<State> {
    if bag.lost.is_some() {
        Some(State::Lost)
    } else if bag.vented.is_some() {
        Some(State::Vented)
    } else {
        bag.set_aside.as_ref().map(|_| State::SetAside)
    }
}

/// The planned minute to be read next: the latest that has come and was not read, or the first
/// that is still to come. One that was missed before the latest stays blank.
fn next(clock: &Clock<'_>, bag: &Bag, zero: &Height) -> Option<u32> {
    let has_come = |planned: &u32| clock.falls_in_s(zero.measured, *planned) <= 0.0;
    let read = bag.readings.iter().filter_map(|reading| reading.planned).max();
    let minutes = clock.schedule.minutes.iter().copied();
    let left: Vec<u32> = minutes
        .filter(|planned| read.is_none_or(|read| *planned > read))
        .filter(|planned| clock.is_before_clearing(zero.measured, *planned))
        .collect();
    let come = left.iter().copied().rfind(has_come);
    let to_come = left.iter().copied().find(|planned| !has_come(planned));
    come.filter(|planned| !given_up(clock, bag, zero, *planned)).or(to_come)
}

/// Whether somebody said, since a planned minute came, that it was not read.
fn given_up(clock: &Clock<'_>, bag: &Bag, zero: &Height, planned: u32) -> bool {
    bag.odd.iter().filter(|tap| tap.odd == Odd::NotRead).any(|tap| {
        tap.at <= clock.now
            && Clock { now: tap.at, ..*clock }.falls_in_s(zero.measured, planned) <= 0.0
    })
}
