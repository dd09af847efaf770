//! Can it be done: in the time, with the tools, in bags that hold and cards that show.

mod cut;
mod fill;
mod groups;
mod periods;
mod recipes;
mod time;
mod tools;
mod visible;
mod water;

pub(crate) use fill::too_full_by;

use crate::finding::Finding;
use crate::outlook::Entry;
use crate::plan::Plan;

/// Everything about the plan that cannot work or is likely to disappoint.
pub(super) fn findings(plan: &Plan, outlook: &[Entry]) -> Vec<Finding> {
    let mut found = recipes::findings(plan);
    found.extend(time::findings(plan));
    found.extend(periods::findings(plan));
    found.extend(groups::findings(plan));
    found.extend(tools::findings(plan));
    found.extend(water::findings(plan));
    found.extend(cut::findings(plan));
    found.extend(fill::findings(plan, outlook));
    found.extend(visible::findings(plan, outlook));
    found
}
