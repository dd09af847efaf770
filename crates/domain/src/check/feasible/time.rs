//! Enough minutes between the bells.

use crate::finding::{Finding, Severity};
use crate::plan::{Period, Plan};

/// Readings after the zero reading without which there is no curve.
const FEWEST_READINGS: u32 = 3;
/// Minutes from the bell to the zero reading in which no class has done it; common practice.
const LEAST_MIXING: f64 = 8.0;
/// Minutes that venting, emptying and wiping take at least; common practice.
const LEAST_CLEARING: f64 = 4.0;

const PRACTICE: &str = "common practice, no source";

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let periods = plan.periods.iter().enumerate();
    let mut found: Vec<Finding> =
        periods.filter_map(|(p, period)| readings(plan, p, period)).collect();
    let timing = &plan.timing;
    if timing.mixing_min < LEAST_MIXING {
        found.push(warning(
            "hurried-start",
            format!("{} min is not much time to mix and seal.", short(timing.mixing_min)),
            "Plan at least 8 min from the bell to the zero reading.",
            "base.mixing",
        ));
    }
    if timing.clearing_min < LEAST_CLEARING {
        found.push(warning(
            "hurried-end",
            format!(
                "{} min is not much time to vent, pour out and wipe.",
                short(timing.clearing_min)
            ),
            "Plan at least 4 min for it before the bell.",
            "base.clearing",
        ));
    }
    if timing.wet_before_zero_min > timing.mixing_min {
        found.push(warning(
            "wet-too-soon",
            "The yeast gets wet before the bell has rung.".into(),
            "Make wet_before_zero shorter than mixing.",
            "base.wet_before_zero",
        ));
    }
    found
}

fn readings(plan: &Plan, p: usize, period: &Period) -> Option<Finding> {
    let interval = plan.timing.interval_min;
    let last = f64::from(plan.last_reading_min(period));
    let readings = if interval > 0.0 { (last / interval).round() as u32 } else { 0 };
    (readings < FEWEST_READINGS).then(|| {
        Finding::new(
            Severity::Fault,
            "too-few-readings",
            format!(
                "Period “{}” has time for {readings} readings, and a curve needs 3.",
                period.name
            ),
            "Read more often, or plan less time to mix and to clear.",
        )
        .at(format!("period[{p}].length"))
        .says(PRACTICE)
    })
}

fn warning(code: &'static str, message: String, fix: &str, at: &str) -> Finding {
    Finding::new(Severity::Warning, code, message, fix).at(at).says(PRACTICE)
}

fn short(minutes: f64) -> String {
    let rounded = (minutes * 10.0).round() / 10.0;
    format!("{rounded}")
}
