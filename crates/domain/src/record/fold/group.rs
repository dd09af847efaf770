//! One group.

use super::Refusals;
use crate::record::{Entry, GroupStanding, Guess, Refused, StandIn, What};
use jiff::Timestamp;

/// Stretches in which a group works with numbers that are not its own; the last has no end while
/// it does.
pub(in crate::record) type Stretches = Vec<(Timestamp, Option<Timestamp>)>;

/// When a group works with numbers that are not its own.
pub(in crate::record) fn stands_in(entries: &[Entry]) -> Stretches {
    let mut stretches = Stretches::new();
    for entry in entries {
        match (&entry.what, stretches.last_mut()) {
            // Other numbers in the place of those: it still works with none of its own.
            (What::StandIn(_), Some((_, None))) => {}
            (What::StandIn(_), _) => stretches.push((entry.measured, None)),
            (What::TakenBack, Some((_, end @ None))) => *end = Some(entry.measured),
            _ => {}
        }
    }
    stretches
}

/// When the first zero reading of a group's bags was made, and when one first arrived.
#[derive(Debug, Clone, Copy)]
pub(in crate::record) struct FirstZero {
    /// When it was read.
    pub(in crate::record) measured: Timestamp,
    /// When the program heard of one.
    pub(in crate::record) arrived: Timestamp,
}

impl FirstZero {
    /// Whether a guess comes after it. A device sends in the order in which it was typed, so that
    /// a guess that arrives later than a zero reading was made later, whatever time it claims.
    fn locks(&self, guess: &Entry) -> bool {
        guess.measured >= self.measured || guess.arrived > self.arrived
    }
}

/// The group, and what does not count.
pub(in crate::record) fn group(
    entries: &[Entry],
    first_zero: Option<FirstZero>,
) -> (GroupStanding, Refusals) {
    let mut group = GroupStanding::default();
    let mut refusals = Refusals::default();
    for entry in entries {
        let locked = first_zero.is_some_and(|zero| zero.locks(entry));
        match &entry.what {
            What::Guess { .. } if locked => refusals.add(entry, Refused::GuessLocked),
            What::Guess { expects, .. } if expects.iter().any(|(_, mm)| !mm.is_finite()) => {
                refusals.add(entry, Refused::NotANumber);
            }
            What::Guess { expects, because } => {
                let (at, expects) = (entry.measured, expects.clone());
                group.guess = Some(Guess { at, expects, because: *because });
            }
            What::Here { students } => group.here = Some(*students),
            What::StandIn(lent) => {
                group.stand_in = Some(StandIn { since: entry.measured, lent: *lent });
            }
            What::TakenBack if group.stand_in.is_some() => group.stand_in = None,
            What::TakenBack => refusals.add(entry, Refused::OwnNumbers),
            _ => refusals.add(entry, Refused::WrongSubject),
        }
    }
    (group, refusals)
}
