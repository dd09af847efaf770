//! What a class was told.

use super::cell::Cell;
use super::class::Truth;
use super::lesson::name;
use crate::result::{Answer, ClassResult, Compared};
use barm_science::statistics::verdict::{Code, Direction};

/// What a class was told of its one question, beside what is true.
///
/// Where bags are set aside, both results stand on the page, and either counts as told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Said {
    /// "Clear" was said of a comparison without a true difference, or of one with it the wrong way
    /// round.
    pub false_clear: bool,
    /// The school's rule called a gap large enough where there is no true difference, or the wrong
    /// way round.
    pub false_large: bool,
    /// "Clear" was said of the true difference, and rightly which way.
    pub true_clear: bool,
    /// The school's rule called the true difference large enough, and rightly which way.
    pub true_large: bool,
    /// Every comparison came with an interval, with all bags.
    pub intervals: bool,
    /// All of these hold what is true.
    pub held: bool,
}

impl Said {
    pub(super) fn of(cell: &Cell, result: &ClassResult, truth: Truth) -> Self {
        let Some(answer) = result.questions.first() else { return Self::default() };
        let mut said = Self { intervals: true, held: true, ..Self::default() };
        for treatment in 1..cell.treatments {
            let (treatment, difference) =
                (name(treatment), truth.difference_mm(treatment, cell));
            let compared = answer.comparisons.iter().find(|one| one.treatment == treatment);
            let interval = compared.and_then(|one| one.with.difference);
            said.intervals &= interval.is_some();
            said.held &=
                interval.is_some_and(|one| one.low <= difference && difference <= one.high);
            for more in compared.into_iter().flat_map(clear) {
                let right = difference > 0.0 && more;
                said.true_clear |= right;
                said.false_clear |= !right;
            }
            for more in large(answer, &treatment) {
                let right = difference > 0.0 && more;
                said.true_large |= right;
                said.false_large |= !right;
            }
        }
        said
    }

    /// What a class was told in two rounds: a word of either counts. Intervals that narrow from one
    /// level to another are not asked to hold together.
    pub(super) const fn or_later(self, later: Self) -> Self {
        Self {
            false_clear: self.false_clear || later.false_clear,
            false_large: self.false_large,
            true_clear: self.true_clear || later.true_clear,
            true_large: self.true_large,
            intervals: false,
            held: false,
        }
    }
}

/// For each "clear" of a comparison whether it says that the treatment rose more.
fn clear(compared: &Compared) -> impl Iterator<Item = bool> {
    let both = [&compared.with, &compared.without].map(|judged| &judged.verdict);
    let clear = both.into_iter().filter(|verdict| verdict.code == Code::Clear);
    clear.map(|verdict| verdict.direction == Some(Direction::More))
}

/// For each gap that the school's rule calls large enough whether the treatment rose more.
fn large<'a>(answer: &'a Answer, treatment: &'a str) -> impl Iterator<Item = bool> + 'a {
    let ladders = std::iter::once(&answer.ladder).chain(&answer.ladder_without);
    let gaps =
        ladders.flat_map(|ladder| &ladder.gaps).filter(move |gap| gap.treatment == treatment);
    gaps.filter_map(|gap| gap.gap).filter(|gap| gap.stands_out()).map(|gap| gap.gap > 0.0)
}
