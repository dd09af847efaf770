//! The page of every bag.

mod answer;
mod page;

pub(super) use answer::{picture, show};
