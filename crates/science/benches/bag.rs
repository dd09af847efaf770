//! One bag: a call of its rates, its solution at the tolerances in use, and the way from the setup.
//!
//! `cargo bench -p barm-science --bench bag`

#[path = "../examples/contest/bags.rs"]
mod bags;
#[path = "../examples/contest/cases.rs"]
mod cases;

use barm_science::model::Mixture;
use barm_science::model::course::{sample, tolerance};
use barm_science::model::state::State;
use barm_science::ode::System;
use cases::{Case, cases};
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

/// Bags that race in the contest, by name.
const BAGS: [&str; 4] = ["maple", "flakes", "soda", "short"];

fn case(name: &str) -> Case {
    cases().into_iter().find(|case| case.name == name && case.timed).expect("a bag")
}

fn follow(case: &Case, mixture: &Mixture, relative: f64) -> State {
    let end = sample(mixture, case.wet_min, case.last_minute, &tolerance(relative), |_, y| {
        black_box(y);
    });
    end.expect("a solution").y
}

/// The rates at the start, half an hour after it.
#[divan::bench(args = BAGS)]
fn rates(bencher: Bencher, name: &str) {
    let case = case(name);
    let y = follow(&case, &case.mixture, 1e-6);
    bencher.bench_local(|| case.mixture.rates(black_box(30.0), black_box(&y)));
}

/// Half an hour as in a single run, at 1e-7.
#[divan::bench(args = BAGS)]
fn fine(bencher: Bencher, name: &str) {
    let case = case(name);
    bencher.bench_local(|| follow(black_box(&case), &case.mixture, 1e-7));
}

/// Half an hour as in a draw of a forecast, at 1e-4, put together first.
#[divan::bench(args = BAGS)]
fn draw(bencher: Bencher, name: &str) {
    let case = case(name);
    bencher.bench_local(|| {
        let mixture = Mixture::new(black_box(&case.setup), &case.parameters);
        follow(&case, &mixture, 1e-4)
    });
}
