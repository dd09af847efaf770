//! A group's planning page: what it wants to find out, before the day.
//!
//! It knows no forecast. What the checks say comes as a question, never as the answer.

mod answer;
mod page;
mod sheet;

pub(super) use answer::{post, show};
pub(super) use sheet::{sheet, typed_in};
