//! Taking the time.

use super::cases::Case;
use super::{day, follow, plan};
use barm_science::model::state::STATES;
use barm_science::model::{Mixture, course};
use barm_science::ode::{System, Tolerance};
use serde_json::{Value, json};
use std::hint::black_box;
use std::time::Instant;

/// Quartiles of the time that `count` runs take, each in µs.
pub(crate) fn quartiles(count: usize, mut run: impl FnMut()) -> Value {
    for _ in 0..count.div_ceil(20) {
        run();
    }
    let mut all: Vec<f64> = (0..count)
        .map(|_| {
            let start = Instant::now();
            run();
            1e6 * start.elapsed().as_secs_f64()
        })
        .collect();
    all.sort_by(f64::total_cmp);
    let at = |share: f64| all[((count - 1) as f64 * share) as usize];
    json!({ "us": [at(0.25), at(0.5), at(0.75)] })
}

/// One solution with its whole minutes.
pub(crate) fn one(case: &Case, tolerance: &Tolerance<STATES>, count: usize) -> Value {
    quartiles(count, || {
        black_box(follow(black_box(case), tolerance));
    })
}

/// From the setup to the rises, as a draw of a forecast does it.
pub(crate) fn whole(case: &Case, count: usize) -> Value {
    let tolerance = course::tolerance(1e-4);
    quartiles(count, || {
        let mixture = Mixture::new(black_box(&case.setup), &case.parameters);
        let mut gas_ml = 0.0;
        let end =
            course::sample(&mixture, case.wet_min, case.last_minute, &tolerance, |_, y| {
                gas_ml += mixture.gas_with_air_ml(y);
            });
        black_box((end.expect("a solution").y, gas_ml));
    })
}

/// One call of the rates: the middle of 31 batches of ten thousand, at the states of the bag's
/// own course.
pub(crate) fn call(case: &Case) -> Value {
    let (states, _) = follow(case, &course::tolerance(1e-6));
    let mut batches: Vec<f64> = (0..31)
        .map(|_| {
            let start = Instant::now();
            for k in 0..10_000 {
                let y = &states[k % states.len()];
                black_box(case.mixture.rates(black_box(1.0), black_box(y)));
            }
            1e5 * start.elapsed().as_secs_f64()
        })
        .collect();
    batches.sort_by(f64::total_cmp);
    json!({ "ns": batches[15] })
}

/// Time of the forecasts of so many kinds of bag.
pub(crate) fn bands(kinds: usize, draws: usize, threads: usize) -> Value {
    let start = Instant::now();
    plan::forecast_all(kinds, draws, threads);
    json!({ "seconds": start.elapsed().as_secs_f64() })
}

/// Time of the fit of a whole day, without making up that day, and how many bags it has.
pub(crate) fn fit() -> Value {
    let bags = day::seen();
    let readings: usize = bags.iter().map(|bag| bag.readings.len()).sum();
    let start = Instant::now();
    let fit = day::fit(black_box(&bags));
    json!({
        "seconds": start.elapsed().as_secs_f64(),
        "bags": bags.len(),
        "readings": readings,
        "numbers": fit.learned.len(),
    })
}

/// Most memory that this process ever held (KiB); nothing where the system does not tell.
pub(crate) fn most_memory_kib() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    line.split_whitespace().next()?.parse().ok()
}
