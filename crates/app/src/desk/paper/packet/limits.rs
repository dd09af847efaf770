//! What holds each treatment back, for the talk after the day.

use super::super::looks;
use barm_documents::sheet::LimitRow;
use barm_domain::outlook::{HeldBackBy, Limit, limit};
use barm_domain::plan::Plan;

/// A row for each treatment that can be followed, in the order of the plan.
pub(super) fn limits(plan: &Plan) -> Vec<LimitRow> {
    let found = plan.treatments().filter_map(|(_, treatment)| limit(plan, treatment).ok());
    found.map(|limit| row(plan, limit)).collect()
}

fn row(plan: &Plan, limit: Limit) -> LimitRow {
    let (by, why) = why_held_back(limit.by);
    LimitRow {
        look: looks::look(plan, &limit.treatment),
        treatment: limit.treatment,
        by: by.to_owned(),
        why: why.to_owned(),
        gains: [limit.more_food, limit.more_yeast, limit.more_enzyme, limit.more_time],
    }
}

/// What it is held back by, in a word or two, and why, in a sentence.
const fn why_held_back(by: HeldBackBy) -> (&'static str, &'static str) {
    match by {
        HeldBackBy::NoYeast => {
            ("no yeast", "Nothing in it makes gas. It shows what the bag does by itself.")
        }
        HeldBackBy::NoFood => {
            ("no food", "Yeast lives on what it has stored, and that makes next to no gas.")
        }
        HeldBackBy::Locked => (
            "closed food",
            "There is food, but yeast cannot take in starch or milk sugar before an enzyme has \
             cut them.",
        ),
        HeldBackBy::Enzyme => {
            ("the enzyme", "The enzyme frees sugar more slowly than the yeast could use it.")
        }
        HeldBackBy::Food => (
            "the food",
            "The sugar that yeast can use is gone, or nearly, by the last reading.",
        ),
        HeldBackBy::Yeast => (
            "yeast and time",
            "There is sugar to spare. How much yeast there is, how warm and for how long, decides.",
        ),
    }
}
