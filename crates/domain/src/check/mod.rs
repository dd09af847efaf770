//! What is the matter with a plan: what could hurt someone.

mod cautions;

pub use cautions::{ANSWER_TO_NOTHING, CAUTION_RULES, CautionRule, LOCAL_RULES};

use crate::finding::Finding;
use crate::outlook::{Entry, Overnight};
use crate::plan::Plan;

/// Everything there is to say about a plan.
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
    cautions::cautions(plan, outlook, overnight)
}
