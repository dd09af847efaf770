//! The program's side of `bench/compare.py`: tells another program everything about a few bags,
//! solves them at any tolerance, and takes the time.
//!
//! Reads one command a line and answers each with one line of JSON:
//!
//! | command | answer |
//! |---|---|
//! | `about` | facts, names of states, and every bag with numbers, start, and rates at random states |
//! | `solve BAG RELATIVE ABSOLUTE…` | states at every whole minute, steps, rejected, evaluations |
//! | `time BAG COUNT RELATIVE ABSOLUTE…` | quartiles of the time of one solution (µs) |
//! | `whole BAG COUNT` | the same from the setup to the rises, at the tolerance of a draw |
//! | `call BAG` | time of one call of the rates (ns) |
//! | `bands TREATMENTS DRAWS THREADS` | time of that many forecasts (s) |
//! | `fit` | time of the fit of a day of 120 bags with seven readings each (s) |
//! | `class PERIODS GROUPS COUNT` | an invented class, its differences, and the time of comparing them (µs) |
//! | `memory` | most memory that this process ever held (KiB), where the system tells |
//!
//! `cargo run --release -p barm-science --example contest`
#![allow(clippy::print_stdout)]

mod about;
mod bags;
mod cases;
mod classes;
mod day;
#[expect(dead_code, reason = "the tests deal more than a day")]
#[path = "../../tests/fit/day/dealt.rs"]
mod dealt;
mod plan;
mod speed;

use barm_science::model::course::sample;
use barm_science::model::state::{STATES, State};
use barm_science::ode::{End, Tolerance};
use cases::Case;
use serde_json::{Value, json};
use std::io::{BufRead, stdin};

fn main() {
    let cases = cases::cases();
    for line in stdin().lock().lines() {
        let line = line.expect("a line of text");
        let words: Vec<&str> = line.split_whitespace().collect();
        let answer = match words.as_slice() {
            ["about"] => about::everything(&cases),
            ["solve", bag, numbers @ ..] => solve(named(&cases, bag), &tolerance(numbers)),
            ["time", bag, count, numbers @ ..] => {
                speed::one(named(&cases, bag), &tolerance(numbers), number(count))
            }
            ["whole", bag, count] => speed::whole(named(&cases, bag), number(count)),
            ["call", bag] => speed::call(named(&cases, bag)),
            ["bands", treatments, draws, threads] => {
                speed::bands(number(treatments), number(draws), number(threads))
            }
            ["fit"] => speed::fit(),
            ["class", periods, groups, count] => {
                classes::class(number(periods), number(groups), number(count))
            }
            ["memory"] => json!({ "kib": speed::most_memory_kib() }),
            _ => panic!("no command: {line}"),
        };
        println!("{answer}");
    }
}

fn named<'a>(cases: &'a [Case], name: &str) -> &'a Case {
    cases.iter().find(|case| case.name == name).unwrap_or_else(|| panic!("no bag {name}"))
}

fn number<T: std::str::FromStr>(word: &str) -> T {
    word.parse().unwrap_or_else(|_| panic!("no number: {word}"))
}

/// One relative tolerance, then an absolute one for each state.
fn tolerance(words: &[&str]) -> Tolerance<STATES> {
    assert_eq!(words.len(), STATES + 1, "a relative tolerance and one for each state");
    Tolerance {
        relative: number(words[0]),
        absolute: core::array::from_fn(|i| number(words[i + 1])),
    }
}

/// The states at every whole minute, and what it took.
fn follow(case: &Case, tolerance: &Tolerance<STATES>) -> (Vec<State>, End<STATES>) {
    let mut states = Vec::with_capacity(case.last_minute as usize + 1);
    let end = sample(&case.mixture, case.wet_min, case.last_minute, tolerance, |_, y| {
        states.push(*y);
    })
    .expect("a solution");
    (states, end)
}

fn solve(case: &Case, tolerance: &Tolerance<STATES>) -> Value {
    let (states, end) = follow(case, tolerance);
    json!({
        "states": states,
        "steps": end.effort.steps,
        "rejected": end.effort.rejected,
        "evaluations": end.effort.evaluations,
    })
}
