//! The JSON answers: twin types of what the desk says, so that inner types stay free to change.
//!
//! The shapes are promised in `docs/json.md`.

mod analyze;
mod assign;
mod beyond;
mod check;
mod compare;
mod day;
mod facts;
mod fit;
mod meter;
mod pilot;
mod power;
mod predict;
mod prep;
mod round_two;
mod schedule;
mod trust;
mod years;

pub(crate) use analyze::analyzed;
pub(crate) use assign::assigned;
pub(crate) use check::findings;
pub(crate) use compare::compared;
pub(crate) use facts::facts;
pub(crate) use fit::fitted;
pub(crate) use pilot::{lesson, protocol};
pub(crate) use power::powers;
pub(crate) use predict::prediction;
pub(crate) use prep::prepared;
pub(crate) use round_two::{pooled, proposed};
pub(crate) use schedule::scheduled;
pub(crate) use trust::trusted;
pub(crate) use years::over_years;

use serde::Serialize;
use std::io::{self, Write};

/// Version of the shapes that carry a `format` field.
const FORMAT: u32 = 1;

/// Writes one answer and a line end.
pub(crate) fn write(out: &mut impl Write, answer: &impl Serialize) -> io::Result<()> {
    serde_json::to_writer(&mut *out, answer)?;
    writeln!(out)
}

/// A number, or `null` where there is none: JSON has no NaN.
fn real(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}
