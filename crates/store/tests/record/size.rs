//! How much the tests do, and what they could not try.

/// Says that something was not tried, and why, where the run collects it.
pub(crate) fn skip(name: &str, why: &str) {
    use std::io::Write as _;
    let Ok(path) = std::env::var("BARM_SKIPS") else { return };
    let file = std::fs::File::options().append(true).create(true).open(path);
    file.and_then(|mut file| writeln!(file, "{name}: {why}")).expect("the list of skips");
}
