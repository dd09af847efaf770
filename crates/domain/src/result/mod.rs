//! From a class's readings to an honest answer, question by question.
//!
//! The bag is the unit: however often it was read, it gives one number, its rise at one minute
//! that nearly all bags share. The period is the block. Treatments are compared with what the
//! plan sets beside them, and nothing else. Bags set aside by a rule of the plan are shown both
//! with and without.

mod answer;
mod aside;
mod bags;
mod contents;
mod crossed;
mod curve;
mod hint;
mod ladder;
pub mod meter;
mod sample;
mod shared_minute;
mod summary;
pub mod taught;

pub use answer::{Answer, Compared, Judged};
pub use bags::{BagResult, full_height_mm};
pub use contents::Contents;
pub use crossed::Crossed;
pub use curve::{Curve, Rise};
pub use hint::Hint;
pub(crate) use hint::{FALL_MM, JUMP_SHARE};
pub use ladder::{Dot, Ladder, LadderGap, TreatmentDots};
pub use summary::Summary;

use crate::outlook::Treated;
use crate::plan::{Plan, Question};
use crate::reading::{Reading, Rejected, SetAside};
use std::collections::BTreeMap;

/// A value with the interval that holds it 95 times in 100.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The value.
    pub value: f64,
    /// Low end.
    pub low: f64,
    /// High end.
    pub high: f64,
}

/// What a class found.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassResult {
    /// The minute at which bags are compared; `None` if nearly no bag has a zero reading and a
    /// later one.
    pub minute: Option<f64>,
    /// Every bag of the plan, in the plan's order.
    pub bags: Vec<BagResult>,
    /// Every question of the plan, in the plan's order.
    pub questions: Vec<Answer>,
    /// What was handed in and could not be used.
    pub rejected: Vec<Rejected>,
}

impl ClassResult {
    /// What one period alone found: its own bags, compared with its own references, at the same
    /// minute.
    #[must_use]
    pub fn of_period(&self, plan: &Plan, period: &str) -> Self {
        let own = self.bags.iter().filter(|bag| bag.bag.period == period);
        let bags: Vec<BagResult> = own.cloned().collect();
        Self {
            minute: self.minute,
            questions: answers(plan, &bags, &|_| plan.round.level()),
            bags,
            rejected: Vec::new(),
        }
    }

    /// The same bags with every question judged at a level of its own, by its id (1); without verdicts
    /// where there is none.
    #[must_use]
    pub fn judged_at(self, plan: &Plan, level: &dyn Fn(&str) -> Option<f64>) -> Self {
        let questions = answers(plan, &self.bags, level);
        Self { questions, ..self }
    }
}

/// Analyzes a class's readings, every question at the level of the plan's round.
///
/// `forecasts` are those of the plan's treatments, as [`crate::outlook::forecast`] makes them, and,
/// for each of [`crate::outlook::further_days`], as [`crate::outlook::forecast_on`] does: gas and
/// ethanol of a bag rest on the one for its own day and are left out for a bag that has none.
///
/// Readings of bags that the plan does not have, second readings of a bag at the same minute and
/// wishes to set a bag aside by a rule that the plan does not have come back under
/// [`ClassResult::rejected`].
pub fn analyze(
    plan: &Plan,
    forecasts: &[Treated],
    readings: &[Reading],
    set_aside: &[SetAside],
) -> ClassResult {
    let shared = |curves: &[Curve], aside: &_| bags::common_minute(plan, curves, aside);
    analyzed(plan, forecasts, (readings, set_aside), shared)
}

/// The same at that minute after the zero reading, such as one that several classes have in common;
/// without forecasts, so that gas and ethanol are left out.
pub fn analyze_at(
    plan: &Plan,
    readings: &[Reading],
    set_aside: &[SetAside],
    minute: f64,
) -> ClassResult {
    analyzed(plan, &[], (readings, set_aside), |_, _| Some(minute))
}

fn analyzed(
    plan: &Plan,
    forecasts: &[Treated],
    (readings, set_aside): (&[Reading], &[SetAside]),
    minute: impl FnOnce(&[Curve], &BTreeMap<String, String>) -> Option<f64>,
) -> ClassResult {
    let mut rejected = Vec::new();
    let aside = aside::accept(plan, set_aside, &mut rejected);
    let curves = bags::curves(plan, readings, &mut rejected);
    let minute = minute(&curves, &aside);
    let bags = bags::results(plan, forecasts, curves, &aside, minute);
    let questions = answers(plan, &bags, &|_| plan.round.level());
    rejected.sort_by_key(|rejected| rejected.line);
    ClassResult { minute, bags, questions, rejected }
}

/// The answers to all questions, each judged at its level.
fn answers(
    plan: &Plan,
    bags: &[BagResult],
    level: &dyn Fn(&str) -> Option<f64>,
) -> Vec<Answer> {
    let answer = |one: &Question| Answer::of(plan, one, bags, level(&one.id));
    plan.questions.iter().map(answer).collect()
}
