//! A code typed or scanned at a bench where the bag does not belong.

use super::{Mend, Slip, SlipKind};
use crate::code::BagCode;

/// What is the matter with a code at the bench of a group with these bags, if anything. It rests
/// on the group's own codes and on what can be read on the label; whether another group has such a
/// bag cannot be told from it.
#[must_use]
pub fn seen_in_code(typed: BagCode, own: &[BagCode]) -> Option<Slip> {
    let first = own.first()?;
    if own.contains(&typed) {
        return None;
    }
    let kind = if own.iter().all(|code| code.period() != typed.period()) {
        SlipKind::OtherPeriod
    } else if first.group() != typed.group() {
        SlipKind::OtherGroup
    } else {
        SlipKind::NoSuchBag
    };
    Some(Slip {
        bag: typed,
        kind,
        reading: None,
        mends: vec![Mend::AskAgain],
        probability: None,
    })
}
