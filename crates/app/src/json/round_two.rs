//! `barm round-two --json`.

use super::predict::{NotForecast, not_forecast};
use super::{FORMAT, real};
use crate::desk::{BothRounds, Next, why_stricter};
use barm_domain::result::{ClassResult, Compared};
use barm_domain::round_two::{By, Pair, Proposal, Reason, Told};
use barm_domain::words::Voice;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Proposed<'a> {
    format: u32,
    by: &'static str,
    round: &'static str,
    tried: usize,
    notes: Vec<&'a str>,
    proposals: Vec<One<'a>>,
    not_forecast: Vec<NotForecast<'a>>,
    by_pilot: Option<String>,
}

#[derive(Serialize)]
struct One<'a> {
    rank: usize,
    kind: &'static str,
    makes: String,
    why: String,
    each: u32,
    bags: usize,
    clear: f64,
    half_now_mm: Option<f64>,
    half_then_mm: Option<f64>,
    dollars: f64,
    without_price: Vec<String>,
    comparisons: Vec<Comparison<'a>>,
    forecast: Vec<Foreseen<'a>>,
    shares: Shares<'a>,
}

#[derive(Serialize)]
struct Comparison<'a> {
    question: &'a str,
    treatment: &'a str,
    compared_with: &'a str,
    n: usize,
    n_reference: usize,
    difference_mm: Band,
    half_now_mm: Option<f64>,
    half_then_mm: Option<f64>,
    clear: f64,
    pooled: bool,
}

#[derive(Serialize)]
struct Band {
    low: f64,
    median: f64,
    high: f64,
}

#[derive(Serialize)]
struct Foreseen<'a> {
    treatment: &'a str,
    rise_mm: Band,
}

#[derive(Serialize)]
struct Shares<'a> {
    treatments: &'a [String],
    references: &'a [String],
    new: &'a [String],
    lots: &'a [String],
}

const fn band((low, median, high): (f64, f64, f64)) -> Band {
    Band { low, median, high }
}

const fn by(by: By) -> &'static str {
    match by {
        By::Clear => "clear",
        By::ClearPerBag => "clear-per-bag",
        By::ClearPerDollar => "clear-per-dollar",
        By::ShrinksPerBag => "narrower-per-bag",
        By::ShrinksPerDollar => "narrower-per-dollar",
    }
}

const fn kind(reason: &Reason) -> &'static str {
    match reason {
        Reason::Open { .. } => "more-bags",
        Reason::Between { .. } => "between",
        Reason::Beyond { .. } => "beyond",
        Reason::HeldBack { .. } => "held-back",
    }
}

fn comparison(told: &Told) -> Comparison<'_> {
    Comparison {
        question: &told.pair.question,
        treatment: &told.pair.treatment,
        compared_with: &told.pair.reference,
        n: told.bags.0,
        n_reference: told.bags.1,
        difference_mm: band(told.apart_mm),
        half_now_mm: real(told.half_now_mm),
        half_then_mm: real(told.half_then_mm),
        clear: told.clear,
        pooled: told.pooled,
    }
}

fn one(at: usize, one: &Proposal, voice: Voice) -> One<'_> {
    One {
        rank: at + 1,
        kind: kind(&one.reason),
        makes: voice.proposal(one),
        why: voice.proposal_why(one),
        each: one.each,
        bags: one.plan.bags.len(),
        clear: one.gain.clear,
        half_now_mm: real(one.gain.half_now),
        half_then_mm: real(one.gain.half_then),
        dollars: one.worth.dollars,
        without_price: one.worth.without_price.iter().map(|item| item.name()).collect(),
        comparisons: one.told.iter().map(comparison).collect(),
        forecast: one
            .foreseen
            .iter()
            .map(|seen| Foreseen { treatment: &seen.treatment, rise_mm: band(seen.rise_mm) })
            .collect(),
        shares: Shares {
            treatments: &one.shared.treatments,
            references: &one.shared.controls,
            new: &one.shared.new,
            lots: &one.shared.lots,
        },
    }
}

pub(crate) fn proposed(next: &Next, by_pilot: Option<String>, voice: Voice) -> Proposed<'_> {
    let all = &next.proposals;
    Proposed {
        format: FORMAT,
        by: by(all.by),
        round: all.round.words(),
        tried: all.tried,
        notes: next.notes.iter().map(String::as_str).collect(),
        proposals: all.ranked.iter().enumerate().map(|(at, p)| one(at, p, voice)).collect(),
        not_forecast: not_forecast(&all.failed),
        by_pilot,
    }
}

#[derive(Serialize)]
pub(crate) struct Pooled<'a> {
    format: u32,
    round: &'static str,
    questions: Vec<Question<'a>>,
    rejected: Vec<Row<'a>>,
    notes: Vec<&'a str>,
    students: Vec<String>,
}

#[derive(Serialize)]
struct Question<'a> {
    question: &'a str,
    first_level: Option<f64>,
    pooled_level: Option<f64>,
    comparisons: Vec<Again<'a>>,
}

#[derive(Serialize)]
struct Again<'a> {
    treatment: &'a str,
    compared_with: &'a str,
    first: Option<Judgement>,
    second: Option<Judgement>,
    both: Option<Judgement>,
}

#[derive(Serialize)]
struct Judgement {
    n: usize,
    n_reference: usize,
    difference_mm: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
    verdict: Option<&'static str>,
    says: Option<String>,
}

#[derive(Serialize)]
struct Row<'a> {
    round: u8,
    line: u64,
    reason: &'a str,
}

/// A comparison of a result; its verdict only where the question has a level.
fn judged(result: &ClassResult, pair: &Pair, voice: Voice) -> Option<Judgement> {
    let answer = result.questions.iter().find(|one| one.question == pair.question)?;
    let same = |c: &&Compared| c.treatment == pair.treatment && c.reference == pair.reference;
    let compared = answer.comparisons.iter().find(same)?;
    let seen = compared.with.difference.as_ref();
    let told = answer.level.is_some();
    Some(Judgement {
        n: compared.with.n,
        n_reference: compared.with.n_reference,
        difference_mm: seen.and_then(|seen| real(seen.difference)),
        low: seen.and_then(|seen| real(seen.low)),
        high: seen.and_then(|seen| real(seen.high)),
        verdict: told.then(|| compared.with.verdict.code.word()),
        says: told.then(|| voice.comparison(compared)),
    })
}

pub(crate) fn pooled(both: &BothRounds, voice: Voice) -> Pooled<'_> {
    let all = &both.pooled;
    let again = |pair| -> Again<'_> {
        let pair: &Pair = pair;
        Again {
            treatment: &pair.treatment,
            compared_with: &pair.reference,
            first: judged(&all.first, pair, voice),
            second: judged(&all.second, pair, voice),
            both: judged(&all.both, pair, voice),
        }
    };
    let question = |looks| -> Question<'_> {
        let looks: &barm_domain::round_two::Looks = looks;
        Question {
            question: &looks.question,
            first_level: looks.first,
            pooled_level: looks.pooled,
            comparisons: looks.again.iter().map(again).collect(),
        }
    };
    Pooled {
        format: FORMAT,
        round: all.round.words(),
        questions: all.looks.iter().map(question).collect(),
        rejected: both
            .rejected
            .iter()
            .map(|(round, row)| Row { round: *round, line: row.line, reason: &row.reason })
            .collect(),
        notes: both.notes.iter().map(String::as_str).collect(),
        students: why_stricter(),
    }
}
