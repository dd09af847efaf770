//! The one place that turns a comparison into a verdict.
//!
//! # The rule
//! - **no rise**: no bag on either side reached the readable difference.
//! - **clear**: the 95 % interval that holds for all comparisons of the question at once leaves 0
//!   out, and not only just (in a class, the 96 % interval does so too), each side has two bags or
//!   more, neither side hangs on one group, how much groups differ can be seen, and the difference is
//!   one that can be read.
//! - **leaning**: that interval leaves 0 out, but one of the other conditions fails; or the 80 %
//!   interval for this comparison alone leaves 0 out.
//! - **unclear**: otherwise.
//!
//! 80 % for leaning: it names a direction, and with 10 % on each side a leaning that points the
//! wrong way comes at most once in ten. With no difference at all it comes once in five, which is
//! why a leaning is no result and a reason to make more bags.

use super::compare::{Contrast, Estimate, NotComparable};
use super::distribution::student;
use std::fmt;

/// Share of comparisons, alike but without a difference, that a leaning's interval leaves 0 in (1).
const LEANING: f64 = 0.80;

/// Heights are read in whole millimeters: what a sum of them is off by more than this (mm) is no
/// rounding. Without it, 2.9999999999999996 would be less than 3.
const ROUNDING: f64 = 1e-9;

/// The verdict on one comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// In one of five words.
    pub code: Code,
    /// What decided it.
    pub reason: Reason,
    /// Which way, where the code is clear or leaning.
    pub direction: Option<Direction>,
}

/// The five verdicts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Code {
    /// Chance hardly makes such a difference.
    Clear,
    /// It points one way, and might still be chance.
    Leaning,
    /// It cannot be told.
    Unclear,
    /// Neither side rose enough to be read.
    NoRise,
    /// The bags do not allow the comparison.
    NotComparable,
}

impl Code {
    /// The one word used in tables and JSON.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clear => "clear",
            Self::Leaning => "leaning",
            Self::Unclear => "unclear",
            Self::NoRise => "no-rise",
            Self::NotComparable => "not-comparable",
        }
    }
}

/// Which side rose more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Direction {
    /// The treatment rose more than its reference.
    More,
    /// The treatment rose less than its reference.
    Less,
}

/// What decided a verdict; lengths in mm.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Reason {
    /// The interval of the question leaves 0 out.
    BeyondChance {
        /// Low end (mm).
        low: f64,
        /// High end (mm).
        high: f64,
    },
    /// It would be clear, but one side has a single bag.
    OneBag {
        /// Bags of the treatment.
        n: usize,
        /// Bags of the reference.
        n_reference: usize,
    },
    /// It would be clear, but all bags of one side come from one group.
    OneGroup {
        /// The group.
        group: usize,
        /// The treatment that it alone made.
        treatment: usize,
    },
    /// It would be clear, but groups and treatments go together, so that how much groups differ had
    /// to be assumed.
    GroupsAssumed,
    /// It would be clear, but the difference is smaller than what counts as readable.
    SmallerThanReadable {
        /// The difference (mm).
        difference: f64,
        /// The smallest difference that counts (mm).
        readable: f64,
    },
    /// The interval of the question leaves 0 out, but only just.
    OnlyJust {
        /// Low end (mm).
        low: f64,
        /// High end (mm).
        high: f64,
    },
    /// Only the 80 % interval for this comparison alone leaves 0 out.
    OnlyAlone {
        /// Low end of that interval (mm).
        low: f64,
        /// High end of that interval (mm).
        high: f64,
    },
    /// The interval takes 0 in.
    WithinChance {
        /// Low end (mm).
        low: f64,
        /// High end (mm).
        high: f64,
    },
    /// No bag reached the readable difference.
    NobodyRose {
        /// The highest bag of both sides (mm).
        highest: f64,
        /// The smallest rise that counts (mm).
        readable: f64,
    },
    /// The bags do not allow the comparison.
    NotComparable(NotComparable),
}

/// Judges one comparison of rises (mm); `readable` is the smallest difference in rise that counts
/// as readable (mm).
pub fn verdict(contrast: &Contrast, readable: f64) -> Verdict {
    let estimate = match &contrast.outcome {
        Ok(estimate) => estimate,
        Err(why) => {
            let reason = Reason::NotComparable(why.clone());
            return Verdict { code: Code::NotComparable, reason, direction: None };
        }
    };
    let (code, reason) = match contrast.highest {
        Some(highest) if highest < readable - ROUNDING => {
            (Code::NoRise, Reason::NobodyRose { highest, readable })
        }
        _ => judged(contrast, estimate, readable),
    };
    let direction = match code {
        Code::Clear | Code::Leaning if estimate.difference < 0.0 => Some(Direction::Less),
        Code::Clear | Code::Leaning => Some(Direction::More),
        Code::Unclear | Code::NoRise | Code::NotComparable => None,
    };
    Verdict { code, reason, direction }
}

fn judged(contrast: &Contrast, estimate: &Estimate, readable: f64) -> (Code, Reason) {
    let &Estimate { difference, low, high, se, df, clear_beyond, .. } = estimate;
    if low <= 0.0 && high >= 0.0 {
        let half = se * student::upper_quantile(0.5 * (1.0 - LEANING), df);
        return if difference.abs() > half {
            let (low, high) = (difference - half, difference + half);
            (Code::Leaning, Reason::OnlyAlone { low, high })
        } else {
            (Code::Unclear, Reason::WithinChance { low, high })
        };
    }
    if let Some(reason) = barred(contrast, estimate) {
        (Code::Leaning, reason)
    } else if difference.abs() < readable - ROUNDING {
        (Code::Leaning, Reason::SmallerThanReadable { difference, readable })
    } else if difference.abs() <= clear_beyond * se {
        (Code::Leaning, Reason::OnlyJust { low, high })
    } else {
        (Code::Clear, Reason::BeyondChance { low, high })
    }
}

/// What keeps a comparison from ever being clear, however large the difference.
pub(in crate::statistics) fn barred(
    contrast: &Contrast,
    estimate: &Estimate,
) -> Option<Reason> {
    let (n, n_reference) = (contrast.n, contrast.n_reference);
    if n < 2 || n_reference < 2 {
        Some(Reason::OneBag { n, n_reference })
    } else if let Some(tie) = contrast.tied_to_one_group {
        Some(Reason::OneGroup { group: tie.group, treatment: tie.treatment })
    } else {
        estimate.assumes_groups.then_some(Reason::GroupsAssumed)
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::BeyondChance { low, high } => {
                write!(f, "chance alone hardly makes such a difference: it lies between {low:.1} and {high:.1} mm")
            }
            Self::OneBag { n, n_reference } => {
                write!(f, "with {n} of these and {n_reference} to compare with, one odd bag could make the difference; two of each are needed")
            }
            Self::OneGroup { .. } => {
                f.write_str("one group made all bags of one kind, so the difference may be the group's way of working")
            }
            Self::GroupsAssumed => {
                f.write_str("too few groups made bags to see how much groups differ, so the difference may be theirs")
            }
            Self::SmallerThanReadable { difference, readable } => {
                write!(f, "the difference of {:.1} mm is smaller than the {readable} mm that can be read on a bag", difference.abs())
            }
            Self::OnlyJust { low, high } => {
                write!(f, "it lies between {low:.1} and {high:.1} mm, which only just leaves 0 out; more bags would tell")
            }
            Self::OnlyAlone { low, high } => {
                write!(f, "it points one way ({low:.1} to {high:.1} mm, right 8 times in 10), but chance may still have made it; more bags would tell")
            }
            Self::WithinChance { low, high } => {
                write!(f, "the bags differ so much among themselves that anything from {low:.1} to {high:.1} mm is possible")
            }
            Self::NobodyRose { highest, readable } => {
                write!(f, "no bag of either kind rose by the {readable} mm that can be read; the highest reached {highest:.1} mm")
            }
            Self::NotComparable(why) => why.fmt(f),
        }
    }
}
