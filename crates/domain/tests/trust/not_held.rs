//! What today's rules do not keep, cell by cell.
//!
//! Each line is to go once it holds after all: the tests fail as soon as enough classes show that.

use barm_domain::trust::Bar;

/// A bar that a kind of class misses.
pub(crate) struct NotHeld {
    pub(crate) cell: &'static str,
    pub(crate) bar: Bar,
    /// The share that was measured (1), as docs/trust.md has it.
    pub(crate) share: f64,
    /// What is missing.
    pub(crate) why: &'static str,
}

/// Few groups tell how much groups differ; what is expected of them beforehand, half of a bag's variance, is
/// more than there is in these kinds or no more than a guess, and intervals are wider than they need be. Where bags do
/// not tell how much groups differ, no rule keeps both 93 % with groups as unlike as bags and 98 % with groups alike
/// (docs/trust.md).
const EXPECTED: &str = "not held yet: intervals are too wide where few groups tell of groups";

/// All of them, as measured over 2,000 classes of each kind.
pub(crate) const NOT_HELD: &[NotHeld] = &[
    missed("b4-p1-t6-pairs-g0.5-wide", Bar::Together, 0.992, EXPECTED),
    missed("b4-p5-t5-pairs-g0", Bar::Together, 0.996, EXPECTED),
    missed("b4-p1-t3-tied-g1", Bar::Together, 1.0, EXPECTED),
];

const fn missed(cell: &'static str, bar: Bar, share: f64, why: &'static str) -> NotHeld {
    NotHeld { cell, bar, share, why }
}
