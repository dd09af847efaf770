//! `barm analyze --json`.

use super::beyond::{Together, together};
use super::day::{Day, day};
use super::meter::{Metered, metered};
use super::predict::{NotForecast, not_forecast};
use super::{FORMAT, real};
use crate::desk::Analysis;
use barm_domain::result::{Answer, BagResult, Compared, Judged, Measured};
use barm_domain::words::Voice;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Analyzed<'a> {
    format: u32,
    bags: Vec<Bag<'a>>,
    questions: Vec<Question<'a>>,
    rejected: Vec<Rejected<'a>>,
    notes: Vec<&'a str>,
    not_forecast: Vec<NotForecast<'a>>,
    beyond: Vec<Together<'a>>,
    meter: Option<Metered<'a>>,
    day: Option<Day<'a>>,
}

#[derive(Serialize)]
struct Bag<'a> {
    bag: &'a str,
    question: &'a str,
    treatment: &'a str,
    period: &'a str,
    minute: Option<f64>,
    height_mm: Value,
    gas_ml: Value,
    ethanol_g: Value,
    steepest_mm_per_min: Option<f64>,
    readable_at_min: Option<f64>,
    set_aside: Option<&'a str>,
    hints: Vec<String>,
}

#[derive(Serialize)]
struct Value {
    value: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
}

#[derive(Serialize)]
struct Question<'a> {
    question: &'a str,
    reference: &'a str,
    comparisons: Vec<Comparison<'a>>,
    interaction_p: Option<f64>,
}

#[derive(Serialize)]
struct Comparison<'a> {
    treatment: &'a str,
    compared_with: &'a str,
    #[serde(flatten)]
    with: Judgement,
    without_set_aside: Judgement,
}

#[derive(Serialize)]
struct Judgement {
    n: usize,
    n_reference: usize,
    difference_mm: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    verdict: &'static str,
    reason: String,
}

#[derive(Serialize)]
struct Rejected<'a> {
    line: u64,
    reason: &'a str,
}

pub(crate) fn analyzed(analysis: &Analysis, voice: Voice) -> Analyzed<'_> {
    let result = &analysis.result;
    Analyzed {
        format: FORMAT,
        bags: result.bags.iter().map(|found| bag(found, voice)).collect(),
        questions: result.questions.iter().map(|answer| question(answer, voice)).collect(),
        rejected: analysis
            .rejected
            .iter()
            .map(|rejected| Rejected { line: rejected.line, reason: &rejected.reason })
            .collect(),
        notes: analysis.above_all.iter().chain(&analysis.notes).map(String::as_str).collect(),
        not_forecast: not_forecast(&analysis.outlook.failed),
        meter: analysis.meter.as_ref().map(|result| metered(result, voice)),
        day: analysis.day.as_ref().map(|taught| day(taught, voice)),
        beyond: analysis.beyond.iter().map(|one| together(one, voice)).collect(),
    }
}

fn value(measured: Option<Measured>) -> Value {
    let part = |of: fn(&Measured) -> f64| measured.as_ref().map(of).and_then(real);
    Value { value: part(|m| m.value), low: part(|m| m.low), high: part(|m| m.high) }
}

fn bag(found: &BagResult, voice: Voice) -> Bag<'_> {
    let summary = found.summary.as_ref();
    Bag {
        bag: &found.bag.code,
        question: &found.bag.question,
        treatment: &found.bag.treatment,
        period: &found.bag.period,
        minute: summary.map(|summary| summary.minute),
        height_mm: value(summary.map(|summary| summary.rise_mm)),
        gas_ml: value(found.contents.map(|contents| contents.gas_ml)),
        ethanol_g: value(found.contents.and_then(|contents| contents.ethanol_g)),
        steepest_mm_per_min: summary.and_then(|summary| summary.steepest_mm_per_min),
        readable_at_min: summary.and_then(|summary| summary.readable_at_min),
        set_aside: found.set_aside.as_deref(),
        hints: found.hints.iter().map(|hint| voice.hint(hint)).collect(),
    }
}

fn question(answer: &Answer, voice: Voice) -> Question<'_> {
    let interaction = answer.crossed.as_ref().map(|crossed| &crossed.with.interaction);
    Question {
        question: &answer.question,
        reference: answer.reference.as_deref().unwrap_or("each its own"),
        comparisons: answer.comparisons.iter().map(|c| comparison(c, voice)).collect(),
        interaction_p: interaction
            .and_then(|test| test.as_ref().ok())
            .and_then(|term| real(term.p)),
    }
}

fn comparison(compared: &Compared, voice: Voice) -> Comparison<'_> {
    Comparison {
        treatment: &compared.treatment,
        compared_with: &compared.reference,
        with: judgement(&compared.with, voice.why(compared)),
        without_set_aside: judgement(&compared.without, voice.why_without(compared)),
    }
}

fn judgement(judged: &Judged, reason: String) -> Judgement {
    let part = |of: fn(&Judged) -> Option<f64>| of(judged).and_then(real);
    Judgement {
        n: judged.n,
        n_reference: judged.n_reference,
        difference_mm: part(|j| j.difference.map(|d| d.difference)),
        low: part(|j| j.difference.map(|d| d.low)),
        high: part(|j| j.difference.map(|d| d.high)),
        verdict: judged.verdict.code.word(),
        reason,
    }
}
