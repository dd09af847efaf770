//! The fit of a whole day: 120 bags of 24 kinds in five periods, seven readings each, on one thread.
//!
//! `cargo bench -p barm-science --bench fit`

#[path = "../examples/contest/bags.rs"]
mod bags;
#[path = "../examples/contest/day.rs"]
mod day;
#[expect(dead_code, reason = "the tests deal more than a day")]
#[path = "../tests/fit/day/dealt.rs"]
mod dealt;
#[expect(dead_code, reason = "the bands are another benchmark")]
#[path = "../examples/contest/plan.rs"]
mod plan;

use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

/// All numbers of the day with their covariance.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn day_of_120_bags(bencher: Bencher) {
    let bags = day::seen();
    bencher.bench_local(|| day::fit(black_box(&bags)));
}
