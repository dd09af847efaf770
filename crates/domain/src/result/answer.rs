//! The answer to one question: each treatment against what the plan sets beside it.

use super::bags::BagResult;
use super::crossed::Crossed;
use super::ladder::Ladder;
use super::sample::Sample;
use crate::plan::{Plan, Question};
use barm_science::ruler;
use barm_science::statistics::compare::{
    Compared as Asked, Comparison, Estimate, How, LEVEL, NotComparable, compare,
};
use barm_science::statistics::mixed::Variances;
use barm_science::statistics::verdict::{Code, Reason, Verdict, verdict};

/// What a question's bags say.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// Id of the question.
    pub question: String,
    /// The question's own reference, if it has one for all.
    pub reference: Option<String>,
    /// The chance with which all its comparisons together may come out clear where there is no
    /// difference (1); nothing where no verdict may be told of them.
    pub level: Option<f64>,
    /// Every comparison that the plan asks for.
    pub comparisons: Vec<Compared>,
    /// How much bags alike and groups differed, with all bags (mm).
    pub variances: Option<Variances>,
    /// What a crossed question shows beyond its comparisons.
    pub crossed: Option<Crossed>,
    /// The same bags in the words of school statistics, with all bags.
    pub ladder: Ladder,
    /// The ladder without the bags that are set aside, if there are such bags.
    pub ladder_without: Option<Ladder>,
}

/// One treatment against its reference, with the bags that are set aside and without them.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The treatment.
    pub treatment: String,
    /// What it is compared with.
    pub reference: String,
    /// Bags of the treatment on the list that gave no rise to compare.
    pub left_out: usize,
    /// Bags of the reference on the list that gave no rise to compare.
    pub left_out_reference: usize,
    /// With all bags.
    pub with: Judged,
    /// Without the bags that are set aside.
    pub without: Judged,
}

impl Compared {
    /// Whether setting bags aside changes the verdict.
    pub fn hangs_on_set_aside(&self) -> bool {
        self.with.verdict.code != self.without.verdict.code
            || self.with.verdict.direction != self.without.verdict.direction
    }
}

/// One comparison, judged.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// Bags of the treatment.
    pub n: usize,
    /// Bags of the reference.
    pub n_reference: usize,
    /// Treatment minus reference in rise (mm), adjusted for periods and groups; its interval holds together
    /// with those of all comparisons of the question.
    pub difference: Option<Estimate>,
    /// The verdict.
    pub verdict: Verdict,
}

impl Answer {
    /// The answer to one question, judged at a level; without verdicts where there is none.
    pub(super) fn of(
        plan: &Plan,
        question: &Question,
        bags: &[BagResult],
        level: Option<f64>,
    ) -> Self {
        let answering = plan.answering(question);
        let sample = Sample::of(&answering, bags);
        let pairs: Vec<(&str, &str)> = answering
            .iter()
            .filter_map(|t| Some((t.name.as_str(), plan.beside(question, t)?)))
            .collect();
        let with = judge(plan, &sample, &pairs, (true, level));
        let without = judge(plan, &sample, &pairs, (false, level));
        let left_out = |name: &str| {
            bags.iter().filter(|b| b.bag.treatment == name && b.summary.is_none()).count()
        };
        let comparisons = pairs
            .iter()
            .zip(with.1.into_iter().zip(without.1))
            .map(|(&(treatment, reference), (with, without))| Compared {
                treatment: treatment.to_owned(),
                reference: reference.to_owned(),
                left_out: left_out(treatment),
                left_out_reference: left_out(reference),
                with,
                without,
            })
            .collect();
        let names: Vec<&str> = answering.iter().map(|t| t.name.as_str()).collect();
        let ladder = |and_set_aside| Ladder::of(&names, &pairs, &sample, and_set_aside);
        Self {
            question: question.id.clone(),
            reference: question.reference.clone(),
            level,
            comparisons,
            variances: with.0.variances,
            crossed: level
                .and_then(|level| Crossed::of(plan, question, &pairs, &sample, level)),
            ladder: ladder(true),
            ladder_without: sample.has_set_aside().then(|| ladder(false)),
        }
    }
}

/// All comparisons of a question at once.
fn judge(
    plan: &Plan,
    sample: &Sample<'_>,
    pairs: &[(&str, &str)],
    (and_set_aside, level): (bool, Option<f64>),
) -> (Comparison, Vec<Judged>) {
    let number = |name: &str| sample.number(name).unwrap_or(usize::MAX);
    let numbered = pairs.iter().map(|(a, b)| (number(a), number(b))).collect();
    let values = sample.values(and_set_aside);
    let how = How::of_a_class(ruler::usual_difference_sd_mm()).at(level.unwrap_or(LEVEL));
    let comparison = compare(&values, &Asked::Pairs(numbered), &how);
    let judged = comparison
        .contrasts
        .iter()
        .map(|contrast| Judged {
            n: contrast.n,
            n_reference: contrast.n_reference,
            difference: contrast.outcome.as_ref().ok().copied(),
            verdict: told(verdict(contrast, plan.readable_mm), level),
        })
        .collect();
    (comparison, judged)
}

/// A verdict, as far as one may be told: without a level nothing is said of a difference.
fn told(verdict: Verdict, level: Option<f64>) -> Verdict {
    match verdict.code {
        Code::Clear | Code::Leaning | Code::Unclear if level.is_none() => Verdict {
            code: Code::NotComparable,
            reason: Reason::NotComparable(NotComparable::NotByItself),
            direction: None,
        },
        _ => verdict,
    }
}
