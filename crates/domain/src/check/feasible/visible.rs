//! Differences that can be read before the bell.

use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::outlook::Entry;
use crate::plan::{Plan, Question};

const DOUBT: &str = "a difference of two rises read by ruler carries about ±2 mm (JCGM 100:2008, \
     4.3.7, clause from memory)";

/// Chance that two bags differ readably, below which nobody should count on it (1).
const EVEN: f64 = 0.5;

pub(super) fn findings(plan: &Plan, outlook: &[Entry]) -> Vec<Finding> {
    let questions = plan.questions.iter().enumerate();
    questions.flat_map(|(q, question)| of_question(plan, outlook, q, question)).collect()
}

fn shows(entry: &Entry) -> bool {
    entry.readable_at_min.is_some() && entry.chance_readable.is_none_or(|chance| chance >= EVEN)
}

fn of_question(plan: &Plan, outlook: &[Entry], q: usize, question: &Question) -> Vec<Finding> {
    let own = outlook.iter().filter(|entry| entry.question == question.id);
    let (known, unknown): (Vec<&Entry>, Vec<&Entry>) =
        own.partition(|entry| !entry.lacks_reference());
    // A bag without a forecast may be the one that shows.
    let all_known = unknown.is_empty() && known.len() == plan.answering(question).len();
    let compared: Vec<&Entry> =
        known.into_iter().filter(|entry| entry.beside.is_some()).collect();
    // Shown as people measure it: 1/8 in is 3.2 mm.
    let readable = (10.0 * plan.readable_mm).round() / 10.0;
    if all_known && !compared.is_empty() && !compared.iter().any(|entry| shows(entry)) {
        let message = format!(
            "“{}”: no two bags are likely to differ by {readable} mm before the bell.",
            question.asks
        );
        let fix = "Take warmer water, more food or yeast, a smaller bag or more time.";
        let finding = Finding::new(Severity::Warning, "nothing-shows", message, fix);
        return vec![finding.at(format!("question[{q}]")).says(DOUBT)];
    }
    let quiet = compared.into_iter().filter(|entry| !shows(entry));
    quiet
        .map(|entry| {
            let message = format!(
                "“{}” and “{}” may not differ by {readable} mm before the bell.",
                entry.treatment,
                entry.beside.as_deref().unwrap_or_default()
            );
            let fix = "Keep it if you expect no change: that is a result too.";
            Finding::new(Severity::Note, "may-not-show", message, fix)
                .at(place::treatment(plan, &entry.treatment))
                .says(DOUBT)
        })
        .collect()
}
