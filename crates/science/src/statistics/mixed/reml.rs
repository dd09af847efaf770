//! The most likely ratio of variances: one number, found along its whole range.

use super::policy::Expected;
use super::solved::Solved;
use super::sums::Sums;
use crate::statistics::distribution::rising_root;

/// Ratios looked at first (1): the standard deviation between groups from 3 % of that within to a
/// million times it, near together where it matters, with 0 before them.
const LADDER: [f64; 20] = [
    1e-3, 3e-3, 1e-2, 3e-2, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 30.0, 100.0, 1e3, 1e4, 1e5,
    1e6, 1e8, 1e10, 1e12,
];

/// Beyond a ratio that is less likely than the best one by e to half of this, no better one is
/// looked for (1).
const HOPELESS: f64 = 60.0;

/// Solves at the ratio that makes the values most likely (restricted maximum likelihood).
///
/// The best rung of a ladder, 0 among them, brackets the maximum; inside, the slope's root is
/// found, so that the ratio keeps its digits. At 0 a slope downward is the answer 0, exactly. What is
/// `expected` beforehand counts as further values would.
///
/// # Source
/// Patterson & Thompson (1971), *Biometrika* 58, 545–554; the ratio profiled as in Hartley & Rao
/// (1967), *Biometrika* 54, 93–108 (both from memory).
pub(super) fn most_likely(sums: &Sums, df: f64, expected: Option<Expected>) -> Option<Solved> {
    let at = |gamma: f64| Solved::at(sums, gamma, df);
    let criterion = |solved: &Solved| {
        solved.criterion() + expected.map_or(0.0, |known| known.criterion(solved.gamma))
    };
    let slope = |solved: &Solved| {
        solved.slope() + expected.map_or(0.0, |known| known.slope(solved.gamma))
    };
    let mut best = at(0.0)?;
    let (mut low, mut high) = (0.0, LADDER[0]);
    for (rung, &gamma) in LADDER.iter().enumerate() {
        let next = at(gamma)?;
        if criterion(&next) > criterion(&best) + HOPELESS {
            break;
        }
        if criterion(&next) < criterion(&best) {
            best = next;
            low = if rung == 0 { 0.0 } else { LADDER[rung - 1] };
            high = LADDER.get(rung + 1).copied().unwrap_or(gamma);
        }
    }
    if best.gamma <= 0.0 && slope(&best) <= 0.0 {
        return Some(best);
    }
    // Near the root a ladder's rung may be on either side of it.
    let (low, high) = if slope(&best) > 0.0 { (best.gamma, high) } else { (low, best.gamma) };
    let falling = |gamma: f64| at(gamma).map_or(0.0, |solved| -slope(&solved));
    at(rising_root(low, high, falling))
}
