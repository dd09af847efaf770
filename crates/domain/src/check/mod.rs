//! What the matter is with a plan: is it a fair test, can it be done, who could be hurt.
//!
//! Every finding has a stable code; all of them stand in [`codes`] and in `docs/findings.md`.

mod cautions;
pub mod codes;
mod fair;
mod feasible;
mod letters;
mod place;

pub use cautions::{
    ANSWER_TO_NOTHING, CAUTION_RULES, CautionRule, LOCAL_RULES, not_by_a_substitute,
    without_answer, without_local_rules,
};
pub use fair::change::{changes, changes_for};
pub(crate) use feasible::too_full_by;
pub use letters::letters_missing;

use crate::finding::{Finding, Severity};
use crate::outlook::{Entry, OutlookError, Overnight, in_words};
use crate::plan::Plan;
use barm_science::forecast::SetupError;

/// Everything there is to say about a plan, faults first, then warnings, notes and cautions.
///
/// `outlook` may be empty when no forecast could be made; what rests on a forecast is then silent.
pub fn check(plan: &Plan, outlook: &[Entry]) -> Vec<Finding> {
    check_overnight(plan, outlook, &[])
}

/// [`check`], and what the bags may hold the next day if they are left sealed.
pub fn check_overnight(
    plan: &Plan,
    outlook: &[Entry],
    overnight: &[Overnight],
) -> Vec<Finding> {
    let mut found = fair::findings(plan);
    found.extend(feasible::findings(plan, outlook));
    found.extend(cautions::cautions(plan, outlook, overnight));
    found.sort_by_key(|finding| finding.severity);
    found
}

/// The fault of a treatment whose forecast failed, where [`check`] does not find it by itself.
pub fn unforeseen(plan: &Plan, error: &OutlookError) -> Option<Finding> {
    match error {
        OutlookError::Setup { treatment, source: source @ SetupError::Unsolved(_) } => {
            Some(refused(plan, treatment, source))
        }
        _ => None,
    }
}

/// The bag model refuses a recipe.
fn refused(plan: &Plan, treatment: &str, source: &SetupError) -> Finding {
    let message = format!("“{treatment}” can not be worked out: {}.", in_words(source));
    let fix = "Check the amounts of this recipe.";
    let finding = Finding::new(Severity::Fault, "cannot-foresee", message, fix);
    finding.at(place::treatment(plan, treatment))
}
