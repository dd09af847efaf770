//! What many classes of one kind were told.

use super::class::Truth;
use super::lesson::Lesson;
use super::said::Said;
use barm_science::statistics::share::{share_at_least, share_at_most};
use std::ops::AddAssign;

/// Confidence of the bounds of a count, each by itself (1).
const CONFIDENCE: f64 = 0.99;

/// How often something was so.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Count {
    /// Classes in which it was.
    pub found: usize,
    /// Classes in which it could be.
    pub of: usize,
}

impl Count {
    /// The share that was found (1), where there were classes.
    pub fn share(self) -> Option<f64> {
        (self.of > 0).then(|| self.found as f64 / self.of as f64)
    }

    /// Lower 99 % bound on the true share (1), by Clopper and Pearson.
    pub fn at_least(self) -> f64 {
        share_at_least(self.found, self.of, CONFIDENCE)
    }

    /// Upper 99 % bound on the true share (1), by Clopper and Pearson.
    pub fn at_most(self) -> f64 {
        share_at_most(self.found, self.of, CONFIDENCE)
    }

    const fn add(&mut self, found: bool) {
        self.found += found as usize;
        self.of += 1;
    }
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.found += other.found;
        self.of += other.of;
    }
}

/// What many classes were told, each with no true difference and again with one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// "Clear" of any comparison, with no true difference.
    pub false_clear: Count,
    /// A gap large enough by the school's rule in any comparison, with no true difference.
    pub false_large: Count,
    /// All intervals of the question hold that there is no difference, of classes in which every
    /// comparison came with one.
    pub held: Count,
    /// "Clear" of a true difference of twice the spread of bags.
    pub true_clear: Count,
    /// The school's rule of the same.
    pub true_large: Count,
}

impl Tally {
    /// One class of a lesson, by its number.
    pub fn of(lesson: &Lesson, number: u64, seed: u64) -> Self {
        let told = |truth| lesson.class(number, seed, truth);
        Self::of_class(told(Truth::Same), told(Truth::Twice))
    }

    fn of_class(same: Said, twice: Said) -> Self {
        let mut tally = Self::default();
        tally.false_clear.add(same.false_clear);
        tally.false_large.add(same.false_large);
        if same.intervals {
            tally.held.add(same.held);
        }
        tally.true_clear.add(twice.true_clear);
        tally.true_large.add(twice.true_large);
        tally
    }
}

impl AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.false_clear += other.false_clear;
        self.false_large += other.false_large;
        self.held += other.held;
        self.true_clear += other.true_clear;
        self.true_large += other.true_large;
    }
}
