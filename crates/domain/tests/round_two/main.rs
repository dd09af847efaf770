//! Second rounds: what is proposed, the plan of it, and what both rounds say together.

// What was foretold stands beside what was simulated.
#![allow(clippy::print_stdout)]

mod bad_input;
mod class;
mod false_clear;
mod levels;
mod plans;
mod ranking;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod stories;
