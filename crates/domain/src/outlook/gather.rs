//! Each forecast beside its reference, question by question.

use super::Treated;
use super::entry::{Curve, Entry, Upper};
use super::overnight::high_percent;
use crate::plan::{CONTROLS, Plan, Question, Treatment};
use barm_science::forecast::{Band, Forecast};

/// One entry for each treatment of each question, references included, then the shared controls
/// that no question compares with. Treatments without a forecast are left out.
pub fn gather(plan: &Plan, treated: &[Treated]) -> Vec<Entry> {
    let mut entries = Vec::new();
    for question in &plan.questions {
        for treatment in plan.answering(question) {
            entries.extend(entry(plan, treated, Some(question), treatment));
        }
    }
    for control in &plan.controls {
        let name = &control.treatment.name;
        if entries.iter().all(|entry: &Entry| entry.treatment != *name) {
            entries.extend(entry(plan, treated, None, &control.treatment));
        }
    }
    entries
}

fn entry(
    plan: &Plan,
    treated: &[Treated],
    question: Option<&Question>,
    treatment: &Treatment,
) -> Option<Entry> {
    let find = |name: &str| treated.iter().find(|t| t.treatment == name);
    let own = find(&treatment.name)?;
    let forecast = &own.forecast;
    let beside = question.and_then(|question| plan.beside(question, treatment));
    let difference = beside
        .and_then(find)
        // All forecasts of a plan have the same draws and minutes.
        .and_then(|reference| forecast.minus(&reference.forecast).ok());
    Some(Entry {
        question: question.map_or(CONTROLS, |question| &question.id).to_owned(),
        treatment: treatment.name.clone(),
        reference: question
            .is_some_and(|question| plan.is_reference(question, &treatment.name)),
        control: plan.is_control(&treatment.name),
        beside: beside.map(str::to_owned),
        rise_mm: curve(forecast.rise_mm().band()),
        gas_ml: curve(forecast.gas_ml().band()),
        ethanol_g: curve(forecast.ethanol_g().band()),
        celsius: forecast.celsius().band().median,
        peak_fill: forecast.peak_fill(),
        vent_by_min: forecast.vent_by_min(),
        readable_at_min: difference.as_ref().and_then(|d| d.readable_at_min(plan.readable_mm)),
        chance_readable: difference.map(|d| d.chance_readable(plan.readable_mm)),
        upper: upper(forecast),
        beyond: own.beyond(),
    })
}

fn curve(band: Band) -> Curve {
    Curve { median: band.median, low: band.low, high: band.high }
}

fn upper(forecast: &Forecast) -> Upper {
    let warmest = forecast.celsius().band_of(0.025, 0.975).high;
    Upper {
        ethanol_percent_last: high_percent(forecast),
        hottest_celsius: warmest.into_iter().fold(f64::MIN, f64::max),
    }
}
