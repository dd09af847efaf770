//! What the class found, in the plainest words.

use super::amounts::{Amounts, amounts};
use crate::desk::room::Scene;
use crate::desk::room::results::{has_run, not_run, waiting_for, what_counts};
use barm_domain::result::{Compared, Judged, analyze};
use barm_science::statistics::verdict::{Code, Direction};

/// What the class found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Found {
    /// Question by question.
    pub(crate) answers: Vec<Answered>,
    /// Treatment by treatment: height, and gas and ethanol as far as forecasts are there.
    pub(crate) amounts: Vec<Amounts>,
}

impl Found {
    /// The treatments that are named in it.
    pub(super) fn treatments(&self) -> impl Iterator<Item = &str> {
        let answers = self.answers.iter().flat_map(Answered::treatments);
        answers.chain(self.amounts.iter().flat_map(Amounts::treatments))
    }
}

/// A question with what the class found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Answered {
    /// The question in words.
    pub(crate) asks: String,
    /// Each treatment, what it stands beside, what is told, and whether bags that are set aside
    /// would change it.
    pub(crate) told: Vec<(String, String, Told, bool)>,
    /// Treatments of which nothing is told, since no bag of them was read yet and a
    /// period that makes them is not over.
    pub(crate) not_run: Vec<String>,
}

impl Answered {
    /// The treatments that are named in it.
    pub(super) fn treatments(&self) -> impl Iterator<Item = &str> {
        let told = self.told.iter().flat_map(|(one, other, ..)| [one, other]);
        told.chain(&self.not_run).map(String::as_str)
    }
}

/// A verdict for a group.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Told {
    /// Clear: it rose more.
    ClearMore,
    /// Clear: it rose less.
    ClearLess,
    /// Leaning: it seems to rise more.
    LeansMore,
    /// Leaning: it seems to rise less.
    LeansLess,
    /// Nobody can tell.
    Unclear,
    /// Nothing rose enough to be read.
    NoRise,
    /// The two cannot be compared.
    NotComparable,
}

impl Told {
    /// The word in keys of texts.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::ClearMore => "clear-more",
            Self::ClearLess => "clear-less",
            Self::LeansMore => "leans-more",
            Self::LeansLess => "leans-less",
            Self::Unclear => "unclear",
            Self::NoRise => "no-rise",
            Self::NotComparable => "not-comparable",
        }
    }

    fn of(judged: &Judged) -> Self {
        let verdict = &judged.verdict;
        match (verdict.code, verdict.direction) {
            (Code::Clear, Some(Direction::More)) => Self::ClearMore,
            (Code::Clear, Some(Direction::Less)) => Self::ClearLess,
            (Code::Leaning, Some(Direction::More)) => Self::LeansMore,
            (Code::Leaning, Some(Direction::Less)) => Self::LeansLess,
            (Code::NoRise, _) => Self::NoRise,
            (Code::NotComparable, _) => Self::NotComparable,
            (Code::Clear | Code::Leaning | Code::Unclear, _) => Self::Unclear,
        }
    }
}

/// The answers as the record stands. Gas and ethanol rest on forecasts, those that the teacher's page has by now; none
/// is worked out for a group.
pub(super) fn found(scene: &Scene<'_>) -> Found {
    let (plan, counted) = what_counts(scene);
    let forecasts = scene.outlook.map(|outlook| outlook.treated.as_slice());
    let forecasts = forecasts.unwrap_or_default();
    let result = analyze(&plan, forecasts, &counted.readings, &counted.set_aside);
    let waits = not_run(scene, &plan);
    let told = |compared: &Compared| {
        let (treatment, reference) = (compared.treatment.clone(), compared.reference.clone());
        (treatment, reference, Told::of(&compared.with), compared.hangs_on_set_aside())
    };
    let questions = plan.questions.iter().filter_map(|question| {
        let answer = result.questions.iter().find(|answer| answer.question == question.id)?;
        let run = answer.comparisons.iter().filter(|compared| has_run(compared, &waits));
        let told = run.map(told).collect();
        let not_run = waiting_for(&plan, &question.id, &waits);
        Some(Answered { asks: question.asks.clone(), told, not_run })
    });
    Found { answers: questions.collect(), amounts: amounts(&plan, &result) }
}
