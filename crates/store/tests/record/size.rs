//! How much the tests do: `BARM_TEST_SIZE` is `quick`, `ci` (also when unset) or `long`.

/// The count for this size.
pub(crate) fn count(quick: u32, ci: u32, long: u32) -> u32 {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => quick,
        Ok("long") => long,
        _ => ci,
    }
}

/// Says that something was not tried, and why, where the run collects it.
pub(crate) fn skip(name: &str, why: &str) {
    use std::io::Write as _;
    let Ok(path) = std::env::var("BARM_SKIPS") else { return };
    let file = std::fs::File::options().append(true).create(true).open(path);
    file.and_then(|mut file| writeln!(file, "{name}: {why}")).expect("the list of skips");
}

/// Numbers that look random and are the same in every run (xorshift, Marsaglia 2003).
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    /// A number below `end`.
    pub(crate) fn below(&mut self, end: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % end
    }
}
