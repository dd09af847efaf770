//! The record: what entries add up to.

mod day;
mod properties;
mod stories;
