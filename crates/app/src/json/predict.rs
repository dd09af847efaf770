//! `barm predict --json`.

use super::{FORMAT, real};
use crate::desk::Outlook;
use barm_domain::outlook::Curve;
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Prediction<'a> {
    format: u32,
    bags: Vec<Bag<'a>>,
    not_forecast: Vec<NotForecast<'a>>,
}

/// A treatment without a forecast.
#[derive(Serialize)]
pub(super) struct NotForecast<'a> {
    treatment: &'a str,
    reason: String,
}

pub(super) fn not_forecast(outlook: &Outlook) -> Vec<NotForecast<'_>> {
    outlook
        .failed
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

pub(crate) fn prediction(outlook: &Outlook) -> Prediction<'_> {
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
    });
    Prediction { format: FORMAT, bags: bags.collect(), not_forecast: not_forecast(outlook) }
}
