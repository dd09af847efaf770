//! How far the squares and gauges of a class reach: what the whole class may need, never what
//! one treatment does.

use crate::desk::print::Job;
use barm_documents::sheet::Squares;
use barm_domain::plan::Period;
use barm_domain::result::full_height_mm;
use barm_domain::schedule::schedule;

/// Height of a card before anything rises (mm), on the high side; common practice with up to 60 mL in
/// a small bag, no source.
const ZERO_MM: f64 = 10.0;

/// More strong lines than this stand too close for a figure each.
const MOST_STEPS: usize = 9;

/// The squares on which a group of that period draws its heights; nothing if it reads none.
pub(super) fn squares(job: &Job<'_>, period: &Period) -> Option<Squares> {
    let minutes = schedule(job.plan, period, None).minutes;
    let last = *minutes.last()?;
    let nth = minutes.len().div_ceil(MOST_STEPS);
    // Counted from the end, so that the last reading has its line.
    let mut steps: Vec<u32> = minutes.into_iter().rev().step_by(nth).collect();
    steps.reverse();
    let top = tens(highest_rise(job).map_or_else(|| fullest(job), |rise| rise + ZERO_MM));
    let major = if top > 120 { 20 } else { 10 };
    Some(Squares { last, steps, top: top.div_ceil(major) * major, major })
}

/// The end of the scale of a gauge (mm): no bag of the plan stands higher.
pub(super) fn gauge_to(job: &Job<'_>) -> u32 {
    tens(fullest(job)).clamp(40, 170)
}

/// The highest upper edge of all forecasts at the last reading (mm); nothing without a forecast.
fn highest_rise(job: &Job<'_>) -> Option<f64> {
    let outlook = job.outlook().ok()?;
    let edges = outlook.entries.iter().map(|entry| entry.rise_mm.last().2);
    edges.filter(|edge| edge.is_finite()).max_by(f64::total_cmp)
}

/// How high the largest bag of the plan stands when it is full (mm).
fn fullest(job: &Job<'_>) -> f64 {
    let heights = job.plan.bags.iter().map(|bag| full_height_mm(job.plan, bag));
    heights.fold(ZERO_MM, f64::max)
}

/// Rounded up to whole tens, 20 at least.
fn tens(mm: f64) -> u32 {
    (10.0 * (mm / 10.0).ceil().clamp(2.0, 30.0)) as u32
}
