//! One group.

use super::Refusals;
use crate::record::{Entry, GroupStanding, Guess, Refused, What};
use jiff::Timestamp;

/// Since when a group works with data that are not its own.
pub(in crate::record) fn stand_in_since(entries: &[Entry]) -> Option<Timestamp> {
    let first = entries.iter().find(|entry| entry.what == What::StandIn);
    first.map(|entry| entry.measured)
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
    let mut group =
        GroupStanding { stand_in: stand_in_since(entries), ..GroupStanding::default() };
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
            What::StandIn => {}
            _ => refusals.add(entry, Refused::WrongSubject),
        }
    }
    (group, refusals)
}
