//! How often slips are found, and how often what is called one is one: by classes from a generator
//! that is not the detector's model.
//!
//! Seeds are fresh in every run and printed. At full size (`BARM_TEST_SIZE=long`, 5,000 bags) the
//! bars are those of `docs/slips.md`; at smaller ones they are wider by what 99 of 100 samples of
//! that size differ.

// What is printed are the tables of the docs.
#![allow(clippy::print_stdout)]

mod class;
mod clean;
mod could;
mod days;
mod found;
mod ideal;
mod law;
mod likely;
mod mishap;
mod not_held;
mod school;
mod seed;
mod share;
#[path = "../../../science/tests/statistics/size.rs"]
mod size;
mod trial;
mod watch;

use class::{Failure, PILOT};
use mishap::Mishap;
use trial::{Class, Trial};

/// Bags of each trial.
fn bags() -> usize {
    size::counts(400, 1000, 5000)
}

/// Whether the bars are those of the docs.
fn full() -> bool {
    size::counts(false, false, true)
}

/// How well the level of a day is known from a pilot of the same lots (standard deviation of its
/// logarithm).
const KNOWN: f64 = 0.3;

/// Classes of so many bags on ordinary days after a pilot, with mishaps that come so often.
fn classes(what: &str, count: usize, chances: &dyn Fn(Mishap) -> f64) -> Vec<Class> {
    let made = school::treatments(Some(KNOWN));
    let mut chance = barm_science::statistics::chance::Chance::from_seed(seed::fresh(what));
    let trial =
        Trial { made: &made, width: PILOT, failure: Failure::None, chances, class_only: false };
    trial.run(count, &mut chance)
}
