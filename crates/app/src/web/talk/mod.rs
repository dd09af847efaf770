//! The page to talk from.

mod answer;
mod page;

pub(super) use answer::{act, first, show};
