//! What round one left of a comparison.

use super::idea::Pair;
use crate::result::{Answer, ClassResult, Compared, Judged};
use barm_science::ruler;
use barm_science::statistics::compare::Estimate;
use barm_science::statistics::verdict::Code;

/// What round one left of a comparison.
#[derive(Debug, Clone, Copy)]
pub(super) struct Before<'a> {
    /// The question's answer.
    pub(super) answer: &'a Answer,
    /// The comparison as it counts.
    pub(super) judged: &'a Judged,
    /// Comparisons of the question.
    pub(super) comparisons: usize,
}

/// The comparison as it counts: without the bags that are set aside by a rule.
pub(super) fn counts(compared: &Compared) -> &Judged {
    &compared.without
}

impl<'a> Before<'a> {
    /// What is known of a pair; nothing of one that round one did not compare.
    pub(super) fn of(result: &'a ClassResult, pair: &Pair) -> Option<Self> {
        let answer = result.questions.iter().find(|one| one.question == pair.question)?;
        let compared = answer
            .comparisons
            .iter()
            .find(|one| one.treatment == pair.treatment && one.reference == pair.reference)?;
        let judged = counts(compared);
        Some(Self { answer, judged, comparisons: answer.comparisons.len() })
    }

    /// The difference that it saw, if it saw one.
    pub(super) fn estimate(&self) -> Option<&'a Estimate> {
        let seen = self.judged.difference.as_ref()?;
        let usable = seen.difference.is_finite() && seen.se > 0.0 && seen.df >= 1.0;
        (self.judged.verdict.code != Code::NotComparable && usable).then_some(seen)
    }

    /// What bags of one group differ by (mm), never less than what reading them leaves open.
    pub(super) fn bag_sd_mm(&self) -> Option<f64> {
        let seen = self.answer.variances.as_ref()?.bag;
        seen.is_finite().then(|| seen.max(ruler::usual_difference_sd_mm()))
    }
}
