//! Is it a fair test: one thing changed, something to compare with, more than one bag of each.

pub(super) mod change;
mod control;
mod levels;
mod liquid;
mod list;
mod measurable;
mod replicate;
mod spoons;
mod spread;
mod variables;

use crate::finding::Finding;
use crate::plan::Plan;

/// Everything about the plan that is not a fair test.
pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found = variables::findings(plan);
    found.extend(levels::findings(plan));
    found.extend(spoons::findings(plan));
    found.extend(liquid::findings(plan));
    found.extend(measurable::findings(plan));
    found.extend(control::findings(plan));
    found.extend(replicate::findings(plan));
    found.extend(spread::findings(plan));
    found.extend(list::findings(plan));
    found
}
