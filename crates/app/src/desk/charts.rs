//! Charts in plain letters for the command line.

use super::paper::{look, strand};
use super::plan_file::OpenPlan;
use barm_documents::chart::{Estimate, Frame, IntervalChart, IntervalRow, Terminal};
use barm_domain::outlook::Entry;
use barm_domain::plan::Plan;
use barm_domain::result::{Answer, Compared};
use barm_domain::words::Voice;

/// The voice that speaks to the plan's grade.
pub(crate) const fn voice(plan: &Plan) -> Voice {
    Voice::english(plan.grade)
}

/// Curves and bands of one question's treatments.
pub(crate) fn forecast_chart(terminal: Terminal, plan: &Plan, entries: &[&Entry]) -> String {
    let strands: Vec<_> = entries.iter().map(|entry| strand(plan, entry)).collect();
    terminal.forecast(&strands)
}

/// Differences of one question's treatments from their references.
pub(crate) fn interval_chart(terminal: Terminal, open: &OpenPlan, answer: &Answer) -> String {
    let (reference, rows) = intervals(&open.plan, answer);
    terminal.intervals(reference, &rows)
}

/// The same as a picture of that width.
pub(crate) fn interval_picture(plan: &Plan, asks: &str, answer: &Answer, width: f64) -> String {
    let (reference, rows) = intervals(plan, answer);
    IntervalChart { title: asks, reference, rows: &rows }.svg(&Frame::screen(width))
}

/// The one reference of an answer, in words, and a row for each comparison.
fn intervals<'a>(plan: &Plan, answer: &'a Answer) -> (&'a str, Vec<IntervalRow>) {
    let rows: Vec<IntervalRow> =
        answer.comparisons.iter().map(|compared| interval(plan, answer, compared)).collect();
    let one = answer.reference.as_deref().filter(|reference| {
        answer.comparisons.iter().all(|compared| compared.reference == *reference)
    });
    (one.unwrap_or("its reference"), rows)
}

fn interval(plan: &Plan, answer: &Answer, compared: &Compared) -> IntervalRow {
    let voice = voice(plan);
    // "Oat flour + glucoamylase" beside "Oat flour" names its reference already.
    let named = answer.reference.as_ref() == Some(&compared.reference)
        || compared.treatment.starts_with(&compared.reference);
    let name = if named {
        compared.treatment.clone()
    } else {
        format!("{} beside {}", compared.treatment, compared.reference)
    };
    IntervalRow {
        name,
        look: look(plan, &compared.treatment),
        difference: compared.with.difference.as_ref().map(|d| Estimate {
            value: d.difference,
            low: d.low,
            high: d.high,
        }),
        verdict: voice.verdict(compared.with.verdict.code).to_owned(),
    }
}
