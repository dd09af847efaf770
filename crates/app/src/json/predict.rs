//! `barm predict --json`.

use super::beyond::{Beyond, beyond};
use super::{FORMAT, real};
use crate::desk::Outlook;
use barm_domain::outlook::{Curve, HeldBackBy, Limit, OutlookError};
use barm_domain::words::Voice;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Prediction<'a> {
    format: u32,
    bags: Vec<Bag<'a>>,
    not_forecast: Vec<NotForecast<'a>>,
    held_back: Vec<HeldBack<'a>>,
    by_pilot: Option<String>,
}

/// What holds a treatment back.
#[derive(Serialize)]
struct HeldBack<'a> {
    treatment: &'a str,
    by: &'static str,
    along: Vec<Stretch>,
    dissolved_to_min: u32,
}

#[derive(Serialize)]
struct Stretch {
    from_min: u32,
    to_min: u32,
    by: &'static str,
}

const fn key(by: HeldBackBy) -> &'static str {
    match by {
        HeldBackBy::NoYeast => "no yeast",
        HeldBackBy::NoFood => "no food",
        HeldBackBy::Waking => "waking",
        HeldBackBy::Locked => "locked",
        HeldBackBy::Enzyme => "enzyme",
        HeldBackBy::Food => "food",
        HeldBackBy::Yeast => "yeast",
    }
}

fn held_back(limit: &Limit) -> HeldBack<'_> {
    let stretch = |of: &barm_domain::outlook::Stretch| Stretch {
        from_min: of.from_min,
        to_min: of.to_min,
        by: key(of.by),
    };
    HeldBack {
        treatment: &limit.treatment,
        by: key(limit.by),
        along: limit.along.iter().map(stretch).collect(),
        dissolved_to_min: limit.dissolved_to_min,
    }
}

/// A treatment without a forecast.
#[derive(Serialize)]
pub(super) struct NotForecast<'a> {
    treatment: &'a str,
    reason: String,
}

pub(super) fn not_forecast(failed: &[OutlookError]) -> Vec<NotForecast<'_>> {
    failed
        .iter()
        .filter_map(|error| {
            Some(NotForecast { treatment: error.treatment()?, reason: error.reason() })
        })
        .collect()
}

#[derive(Serialize)]
struct Bag<'a> {
    question: &'a str,
    treatment: &'a str,
    reference: bool,
    control: bool,
    compared_with: Option<&'a str>,
    minutes: Vec<f64>,
    height_mm: Band<'a>,
    gas_ml: Band<'a>,
    ethanol_g: Band<'a>,
    temperature_c: &'a [f64],
    peak_fill: Option<f64>,
    vent_by_min: Option<f64>,
    readable_at_min: Option<f64>,
    chance_readable: Option<f64>,
    beyond: Vec<Beyond>,
}

#[derive(Serialize)]
struct Band<'a> {
    median: &'a [f64],
    low: &'a [f64],
    high: &'a [f64],
}

fn band(curve: &Curve) -> Band<'_> {
    Band { median: &curve.median, low: &curve.low, high: &curve.high }
}

pub(crate) fn prediction<'a>(
    outlook: &'a Outlook,
    limits: &'a [Limit],
    by_pilot: Option<String>,
    voice: Voice,
) -> Prediction<'a> {
    let bags = outlook.entries.iter().map(|entry| Bag {
        question: &entry.question,
        treatment: &entry.treatment,
        reference: entry.reference,
        control: entry.control,
        compared_with: entry.beside.as_deref(),
        minutes: (0..=entry.last_minute()).map(f64::from).collect(),
        height_mm: band(&entry.rise_mm),
        gas_ml: band(&entry.gas_ml),
        ethanol_g: band(&entry.ethanol_g),
        temperature_c: &entry.celsius,
        peak_fill: real(entry.peak_fill),
        vent_by_min: entry.vent_by_min,
        readable_at_min: entry.readable_at_min.map(f64::from),
        chance_readable: entry.chance_readable,
        beyond: entry.beyond.iter().map(|one| beyond(one, voice)).collect(),
    });
    Prediction {
        format: FORMAT,
        bags: bags.collect(),
        not_forecast: not_forecast(&outlook.failed),
        held_back: limits.iter().map(held_back).collect(),
        by_pilot,
    }
}
