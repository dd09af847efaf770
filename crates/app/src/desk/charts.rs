//! Charts in plain letters for the command line.

use super::paper::{look, strand};
use super::plan_file::OpenPlan;
use barm_documents::chart::{Estimate, IntervalRow, Terminal};
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
    let rows: Vec<IntervalRow> =
        answer.comparisons.iter().map(|compared| interval(open, answer, compared)).collect();
    let one = answer.reference.as_deref().filter(|reference| {
        answer.comparisons.iter().all(|compared| compared.reference == *reference)
    });
    terminal.intervals(one.unwrap_or("its reference"), &rows)
}

fn interval(open: &OpenPlan, answer: &Answer, compared: &Compared) -> IntervalRow {
    let voice = voice(&open.plan);
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
        look: look(&open.plan, &compared.treatment),
        difference: compared.with.difference.as_ref().map(|d| Estimate {
            value: d.difference,
            low: d.low,
            high: d.high,
        }),
        verdict: voice.verdict(compared.with.verdict.code).to_owned(),
    }
}
