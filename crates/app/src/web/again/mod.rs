//! The page of another round.

mod answer;
mod page;

pub(super) use answer::{act, show};
