//! The page of every bag.

mod answer;
mod curves;
mod page;

pub(super) use answer::{picture, show, table};
pub(in crate::web) use curves::curves;
