//! What the detector does not keep, bar by bar.
//!
//! Each line is to go once its bar holds after all: the tests fail as soon as a run shows that.

use crate::share::Share;

/// A bar that is missed.
pub(crate) struct NotHeld {
    pub(crate) what: &'static str,
    /// The share that is asked for (1).
    pub(crate) asked: f64,
    /// The share that was measured (1), as docs/slips.md has it.
    pub(crate) share: f64,
    /// What is missing.
    pub(crate) why: &'static str,
}

/// All of them.
pub(crate) const NOT_HELD: &[NotHeld] = &[NotHeld {
    what: "leaks",
    asked: 0.90,
    share: 0.867,
    why: "not held yet: who knows the generator's laws, the day and the group finds about 95 %; the \
          detector has to learn them from the class, and nearly all that it misses loses 3 to 6 \
          times the reading doubt",
}];

/// Leaks of one day have its law in common: shares of several runs differ up to so many times as far as those of bags
/// that were drawn one by one would (1; five runs of 5,000 bags: a standard deviation of 1.9 % for 1.3 %).
const OF_A_DAY: f64 = 1.5;

/// Asks for at least so much, or, where that is known to be missed, for what was measured, as far
/// as a sample can say, and that it is missed still.
pub(crate) fn at_least(share: Share, wanted: f64, full: bool, what: &str) {
    let Some(missed) = NOT_HELD.iter().find(|missed| missed.what == what) else {
        share.at_least(wanted, full, what);
        return;
    };
    println!("{what}: {share}, {:.0} % asked: {}", 100.0 * missed.asked, missed.why);
    assert!((missed.asked - wanted).abs() < 1e-9, "{what}: another bar is listed");
    let sampling = OF_A_DAY * share.sampling(missed.share);
    assert!(
        share.value() >= missed.share - sampling,
        "{what}: {share}, and {:.1} % was measured",
        100.0 * missed.share
    );
    let holds = share.value() >= wanted + OF_A_DAY * share.sampling(wanted);
    assert!(!holds, "{what}: {share}: it holds, so take it from the list of what is not held");
}
