//! What the breath meter says of bags.

use super::real;
use barm_domain::result::meter::{MeterCompared, MeterResult, MeteredBag, Told};
use barm_domain::words::Voice;
use serde::Serialize;

/// All that it says.
#[derive(Serialize)]
pub(super) struct Metered<'a> {
    note: &'static str,
    compared: Vec<Compared<'a>>,
    bags: Vec<Bag<'a>>,
    not_used: Vec<&'a str>,
}

#[derive(Serialize)]
struct Compared<'a> {
    question: &'a str,
    treatment: &'a str,
    compared_with: &'a str,
    n: usize,
    n_reference: usize,
    outcome: &'static str,
    times: Range,
    shown_times: Option<f64>,
    order_in_doubt: bool,
    says: String,
    warning: Option<String>,
}

#[derive(Serialize)]
struct Bag<'a> {
    bag: &'a str,
    treatment: &'a str,
    shown_percent: f64,
    percent: Option<f64>,
    temperature_c: Option<f64>,
    ethanol_g_per_l: Range,
    at_least: bool,
    set_aside: Option<&'a str>,
}

#[derive(Serialize)]
struct Range {
    value: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
}

pub(super) fn metered(result: &MeterResult, voice: Voice) -> Metered<'_> {
    Metered {
        note: result.note,
        compared: result.comparisons.iter().map(|one| compared(one, voice)).collect(),
        bags: result.bags.iter().map(bag).collect(),
        not_used: result.rejected.iter().map(|one| one.reason.as_str()).collect(),
    }
}

fn compared(one: &MeterCompared, voice: Voice) -> Compared<'_> {
    let Told { outcome, times: [value, low, high], shown, order_in_doubt } = one.told();
    Compared {
        question: &one.question,
        treatment: &one.treatment,
        compared_with: &one.reference,
        n: one.n,
        n_reference: one.n_reference,
        outcome,
        times: Range { value, low, high },
        shown_times: shown,
        order_in_doubt,
        says: voice.metered(one),
        warning: voice.metered_warning(one),
    }
}

fn bag(one: &MeteredBag) -> Bag<'_> {
    let ethanol = &one.ethanol_g_per_l;
    Bag {
        bag: &one.bag.code,
        treatment: &one.bag.treatment,
        shown_percent: one.shown_percent,
        percent: real(one.percent),
        temperature_c: real(one.celsius),
        ethanol_g_per_l: Range {
            value: real(ethanol.value),
            low: real(ethanol.low),
            high: real(ethanol.high),
        },
        at_least: one.at_least,
        set_aside: one.set_aside.as_deref(),
    }
}
