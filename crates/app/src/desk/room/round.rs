//! The walk-round page: who is due, who is late, which bag looks wrong by its own readings.
//!
//! It lies open on a tablet among the children. Nothing here can hold a forecast or a mark.

use super::benches::{BenchBag, Benches, after};
use super::doubts::{Doubt, own_slips, own_words};
use super::hour::Hour;
use super::{Kind, Scene};
use crate::desk::Wording;
use barm_domain::board::State;
use barm_domain::record::Lent;
use jiff::Timestamp;

/// What the page shows.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RoundView {
    /// Whether it happens in a class.
    pub(crate) kind: Kind,
    /// The clock.
    pub(crate) hour: Hour,
    /// Bags that look wrong: bag, word, sentence.
    pub(crate) wrong: Vec<(BenchBag, Doubt, String)>,
    /// Groups in the order of their next reading.
    pub(crate) groups: Vec<RoundGroup>,
}

/// One group.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RoundGroup {
    /// Its number; 0 for the teacher's bench.
    pub(crate) group: u32,
    /// What it is to do.
    pub(crate) turn: Turn,
    /// Letters of the bags that this is about.
    pub(crate) letters: String,
    /// Its bags with their last heights.
    pub(crate) bags: Vec<BenchBag>,
}

/// What a group is to do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Turn {
    /// Read, and that since then, over a minute ago.
    Late(Timestamp),
    /// Read, since then.
    Due(Timestamp),
    /// Read, then.
    At(Timestamp),
    /// Take the zero reading.
    Zero,
    /// Wait until the clocks go on.
    Standing,
    /// Nothing: it works with numbers that were lent to it.
    Lent(Lent),
    /// Nothing more.
    Over,
}

/// The page of a period; nothing if the plan has no such period.
pub(crate) fn round_view(
    scene: &Scene<'_>,
    w: Wording,
    period: &str,
    now: Timestamp,
) -> Option<RoundView> {
    let planned = scene.plan.period(period)?;
    let hour = Hour::of(scene, period, now)?;
    let benches = Benches::of(scene, planned, now);
    let wrong = benches.bags.iter().flat_map(|bag| {
        let slips = own_slips(scene, planned, bag).into_iter();
        slips.filter_map(|slip| {
            let (tag, says) = own_words(w, &slip.kind)?;
            Some((bag.clone(), tag, says))
        })
    });
    let wrong = wrong.collect();
    let stand_in = |group| {
        let standing = scene.standing().groups.get(&(period.to_owned(), group));
        standing.and_then(|standing| standing.stand_in)
    };
    let groups = benches.groups().into_iter().map(|group| {
        let row = of_group(&benches, group, now);
        let lent = stand_in(group).map(|given| Turn::Lent(given.lent));
        RoundGroup { turn: lent.unwrap_or(row.turn), ..row }
    });
    let mut groups: Vec<RoundGroup> = groups.collect();
    groups.sort_by_key(|group| order(&group.turn));
    Some(RoundView { kind: scene.kind, wrong, groups, hour })
}

fn of_group(benches: &Benches, group: u32, now: Timestamp) -> RoundGroup {
    let bags = benches.of_group(group);
    let turns: Vec<(Turn, char)> =
        bags.iter().map(|bag| (turn(bag, now), bag.code.letter())).collect();
    let first = turns.iter().map(|(turn, _)| *turn).min_by_key(order).unwrap_or(Turn::Over);
    let same = |turn: &Turn| order(turn).0 == order(&first).0;
    RoundGroup {
        group,
        turn: first,
        letters: turns
            .iter()
            .filter(|(turn, _)| same(turn))
            .map(|(_, letter)| letter.to_string())
            .collect::<Vec<_>>()
            .join(" "),
        bags: bags.into_iter().cloned().collect(),
    }
}

fn turn(bag: &BenchBag, now: Timestamp) -> Turn {
    match bag.state {
        State::Late { late_s, .. } => Turn::Late(after(now, -late_s)),
        State::Due { since_s, .. } => Turn::Due(after(now, -since_s)),
        State::Waiting { in_s, .. } => Turn::At(after(now, in_s)),
        State::NotStarted => Turn::Zero,
        State::Stopped => Turn::Standing,
        State::Done | State::SetAside | State::Vented | State::Lost => Turn::Over,
    }
}

fn order(turn: &Turn) -> (u8, i64) {
    match turn {
        Turn::Late(at) => (0, at.as_second()),
        Turn::Due(at) => (1, at.as_second()),
        Turn::At(at) => (2, at.as_second()),
        Turn::Zero => (3, 0),
        Turn::Standing => (4, 0),
        Turn::Lent(_) => (5, 0),
        Turn::Over => (6, 0),
    }
}
