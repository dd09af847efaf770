//! The class day: what entries add up to, and what follows from it by the clock.

mod board;
mod calls;
mod counted;
mod day;
mod paper;
mod properties;
mod schedule;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod slip;
mod slip_properties;
mod stories;
