//! `barm power --json`.

use super::predict::{NotForecast, not_forecast};
use super::{FORMAT, real};
use crate::desk::Power;
use barm_domain::power::{Chances, LEVEL, Pair, USUAL};
use barm_domain::words::Voice;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Powers<'a> {
    format: u32,
    classes: usize,
    seed: u64,
    level: f64,
    usually: f64,
    questions: Vec<Question<'a>>,
    not_forecast: Vec<NotForecast<'a>>,
    by_pilot: Option<String>,
}

#[derive(Serialize)]
struct Question<'a> {
    question: &'a str,
    minute: Option<f64>,
    bag_sd_mm: Option<f64>,
    any_clear: AnyClear,
    comparisons: Vec<Comparison<'a>>,
    advice: String,
}

#[derive(Serialize)]
struct AnyClear {
    tried: f64,
    with_slips: f64,
}

#[derive(Serialize)]
struct Comparison<'a> {
    treatment: &'a str,
    compared_with: &'a str,
    difference_mm: Option<Range>,
    plan: Chance<'a>,
    by_bags: Vec<Chance<'a>>,
}

#[derive(Serialize)]
struct Range {
    median: f64,
    low: f64,
    high: f64,
}

#[derive(Serialize)]
struct Chance<'a> {
    each: Option<u32>,
    n: usize,
    n_reference: usize,
    by_spreads: Option<f64>,
    tried: Option<f64>,
    with_slips: f64,
    usually_found_mm: Option<f64>,
    never: Option<&'a str>,
}

fn chance(chances: &Chances) -> Chance<'_> {
    Chance {
        each: chances.each,
        n: chances.bags,
        n_reference: chances.bags_reference,
        by_spreads: chances.by_spreads.and_then(real),
        tried: chances.tried,
        with_slips: chances.with_slips,
        usually_found_mm: chances.usually_found_mm.and_then(real),
        never: chances.never.as_deref(),
    }
}

fn comparison(pair: &Pair) -> Comparison<'_> {
    Comparison {
        treatment: &pair.treatment,
        compared_with: &pair.reference,
        difference_mm: pair.apart_mm.map(|(low, median, high)| Range { median, low, high }),
        plan: chance(&pair.own),
        by_bags: pair.by_bags.iter().map(chance).collect(),
    }
}

pub(crate) fn powers(power: &Power, by_pilot: Option<String>, voice: Voice) -> Powers<'_> {
    let questions = power.questions.iter().map(|one| Question {
        question: &one.question,
        minute: one.minute,
        bag_sd_mm: one.bag_sd_mm.and_then(real),
        any_clear: AnyClear { tried: one.any_clear.0, with_slips: one.any_clear.1 },
        comparisons: one.pairs.iter().map(comparison).collect(),
        advice: voice.power(one),
    });
    Powers {
        format: FORMAT,
        classes: power.trial.classes,
        seed: power.trial.seed,
        level: LEVEL,
        usually: USUAL,
        questions: questions.collect(),
        not_forecast: not_forecast(&power.failed),
        by_pilot,
    }
}
