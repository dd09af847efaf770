//! The pages in a real browser, against the real program on a loopback port.
//!
//! Where Chromium or its driver is missing, each test says so in the file that `BARM_SKIPS` names
//! and returns.

mod after_the_day;
mod again;
mod asked;
mod away;
mod bench;
mod browser;
mod class;
mod clocks;
mod eyes;
mod fetched;
mod first_fifteen;
mod foresight;
mod forget;
mod from_afar;
mod handed_round;
mod jars;
mod keyboard;
mod language;
mod looks;
mod moved;
mod nu;
mod older_plan;
mod paper;
mod pilot;
mod rules;
mod school;
mod weight;
mod whole_day;
mod wire;

/// How often something is tried, by the size of the suite: quick, ci, long.
fn times(quick: usize, ci: usize, long: usize) -> usize {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => quick,
        Ok("long") => long,
        _ => ci,
    }
}

/// Says that a test could not run, on the error stream and in the file named by `BARM_SKIPS`.
#[allow(clippy::print_stderr)]
fn skip(name: &str, why: &str) {
    eprintln!("{name}: {why}");
    if let Some(list) = std::env::var_os("BARM_SKIPS") {
        use std::io::Write;
        let file = std::fs::OpenOptions::new().create(true).append(true).open(list);
        if let Ok(mut file) = file {
            let _ = writeln!(file, "{name}: {why}");
        }
    }
}
