//! What holds each treatment back, for the talk after the day.

use super::super::looks;
use crate::desk::{held_back, held_back_along, what_holds, why_it_holds};
use barm_documents::sheet::LimitRow;
use barm_domain::outlook::Limit;
use barm_domain::plan::Plan;

/// A row for each treatment that can be followed, in the order of the plan.
pub(super) fn limits(plan: &Plan) -> Vec<LimitRow> {
    held_back(plan).into_iter().map(|limit| row(plan, limit)).collect()
}

fn row(plan: &Plan, limit: Limit) -> LimitRow {
    let along = (limit.along.len() > 1).then(|| held_back_along(&limit));
    LimitRow {
        look: looks::look(plan, &limit.treatment),
        treatment: limit.treatment,
        by: what_holds(limit.by).to_owned(),
        why: why_it_holds(limit.by).to_owned(),
        along,
        gains: [limit.more_food, limit.more_yeast, limit.more_enzyme, limit.more_time],
    }
}
