//! Laws that a forecast goes beyond.

use super::real;
use barm_domain::outlook::{self, BeyondTogether};
use barm_domain::words::Voice;
use serde::Serialize;

/// A law that a bag goes beyond.
#[derive(Serialize)]
pub(super) struct Beyond {
    law: &'static str,
    quantity: &'static str,
    unit: &'static str,
    known: Range,
    value: Option<f64>,
    from_min: Option<f64>,
    outside: &'static str,
    says: String,
}

#[derive(Serialize)]
struct Range {
    low: f64,
    high: f64,
}

/// The same with those that go beyond it.
#[derive(Serialize)]
pub(super) struct Together<'a> {
    treatments: &'a [String],
    #[serde(flatten)]
    farthest: Beyond,
}

pub(super) fn beyond(of: &outlook::Beyond, voice: Voice) -> Beyond {
    let (low, high) = of.holds;
    Beyond {
        law: of.law,
        quantity: of.quantity,
        unit: of.unit,
        known: Range { low, high },
        value: real(of.value),
        from_min: real(of.from_min),
        outside: of.outside,
        says: voice.beyond(of),
    }
}

pub(super) fn together(of: &BeyondTogether, voice: Voice) -> Together<'_> {
    Together { treatments: &of.treatments, farthest: beyond(&of.farthest, voice) }
}
