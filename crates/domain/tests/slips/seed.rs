//! A fresh seed for every run, printed so that a failure can be repeated.

use std::time::{SystemTime, UNIX_EPOCH};

/// A seed of this run: that of `BARM_TEST_SEED`, or else the clock's.
pub(crate) fn fresh(what: &str) -> u64 {
    let given = std::env::var("BARM_TEST_SEED").ok().and_then(|text| text.parse().ok());
    let clock = || {
        let since = SystemTime::now().duration_since(UNIX_EPOCH);
        since.map_or(1, |since| since.as_nanos() as u64 & 0xffff_ffff)
    };
    let seed = given.unwrap_or_else(clock);
    println!("{what}: to repeat it, BARM_TEST_SEED={seed}");
    seed
}
