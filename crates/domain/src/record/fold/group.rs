//! One group.

use super::Refusals;
use crate::record::{Entry, GroupStanding, Guess, Refused, What};
use jiff::Timestamp;

/// Since when a group works with data that are not its own.
pub(in crate::record) fn stand_in_since(entries: &[Entry]) -> Option<Timestamp> {
    let first = entries.iter().find(|entry| entry.what == What::StandIn);
    first.map(|entry| entry.measured)
}

/// The group, and what does not count. `first_zero` is the earliest zero reading of its bags.
pub(in crate::record) fn group(
    entries: &[Entry],
    first_zero: Option<Timestamp>,
) -> (GroupStanding, Refusals) {
    let mut group =
        GroupStanding { stand_in: stand_in_since(entries), ..GroupStanding::default() };
    let mut refusals = Refusals::default();
    for entry in entries {
        let locked = first_zero.is_some_and(|zero| entry.measured >= zero);
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
