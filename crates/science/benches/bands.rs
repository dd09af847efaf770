//! Bands of a whole plan: 24 kinds of bag, 512 draws each, on one thread and on two.
//!
//! `cargo bench -p barm-science --bench bands`

#[path = "../examples/contest/bags.rs"]
mod bags;
#[path = "../examples/contest/plan.rs"]
mod plan;

fn main() {
    divan::main();
}

/// All bands of the plan.
#[divan::bench(args = [1, 2], sample_count = 10, sample_size = 1)]
fn bands(threads: usize) {
    plan::forecast_all(24, 512, threads);
}
