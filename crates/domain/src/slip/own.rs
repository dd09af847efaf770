//! What a group may be told of its own bag.

use super::{Slip, heights, late};
use crate::code::BagCode;
use crate::record::Bag;
use jiff::Timestamp;

/// All that a group's slips may rest on. Nothing of another bag, of the forecast or of the plan's
/// treatments can be put in here; keep it so.
#[derive(Debug, Clone, Copy)]
pub struct Own<'a> {
    /// Code of the group's own bag.
    pub code: BagCode,
    /// The bag.
    pub bag: &'a Bag,
    /// How high a bag of this size stands when it is as full as can be (mm):
    /// [`crate::result::full_height_mm`].
    pub full_height_mm: f64,
    /// Stretches in which all clocks of the period stood still.
    pub stopped: &'a [(Timestamp, Option<Timestamp>)],
}

/// What is worth a second look in a group's own bag.
#[must_use]
pub fn seen_by_group(own: Own<'_>) -> Vec<Slip> {
    let mut slips = heights::rivals(own.code, own.bag);
    slips.extend(heights::hard_to_believe(&own));
    slips.extend(late::late(&own));
    slips
}
