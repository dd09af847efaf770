//! The investigation as a whole: versions of the plan, and what is open to whom.

use super::Refusals;
use crate::record::{Audience, Entry, Face, Refused, What};
use std::collections::BTreeSet;

/// What the entries about the whole investigation add up to.
#[derive(Debug, Default)]
pub(in crate::record) struct Whole {
    pub(in crate::record) open: BTreeSet<(Face, Audience)>,
    pub(in crate::record) plan_version: u32,
}

/// The whole, and what does not count.
pub(in crate::record) fn whole(entries: &[Entry]) -> (Whole, Refusals) {
    let mut whole = Whole::default();
    let mut refusals = Refusals::default();
    for entry in entries {
        match &entry.what {
            What::PlanSaved { version } => {
                whole.plan_version = whole.plan_version.max(*version);
            }
            What::Opened { face, to } => {
                whole.open.insert((*face, to.clone()));
            }
            What::Closed { face, to } => {
                whole.open.remove(&(*face, to.clone()));
            }
            _ => refusals.add(entry, Refused::WrongSubject),
        }
    }
    (whole, refusals)
}
