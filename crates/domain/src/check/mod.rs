//! What is the matter with a plan: what could hurt someone.

mod cautions;

pub use cautions::{ANSWER_TO_NOTHING, CAUTION_RULES, CautionRule, LOCAL_RULES};

use crate::finding::Finding;
use crate::outlook::Entry;
use crate::plan::Plan;

/// Everything there is to say about a plan.
///
/// `outlook` may be empty when no forecast could be made; what rests on a forecast is then silent.
pub fn check(plan: &Plan, outlook: &[Entry]) -> Vec<Finding> {
    cautions::cautions(plan, outlook)
}
