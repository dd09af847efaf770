//! What held bags back, and what there would have to be more of.

use crate::outlook::{HeldBackBy, limit};
use crate::plan::{Plan, Variable};

/// What held a treatment's bags back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Held {
    /// Name of the treatment.
    pub(super) treatment: String,
    /// What held them back.
    pub(super) by: HeldBackBy,
}

/// What held every treatment of a question back, by the plan's lots and what a class taught of them; a treatment
/// that cannot be followed is left out.
pub(super) fn held_back(plan: &Plan) -> Vec<Held> {
    let own = plan.questions.iter().flat_map(|question| &question.treatments);
    own.filter_map(|one| {
        let by = limit(plan, one).ok()?.by;
        Some(Held { treatment: one.name.clone(), by })
    })
    .collect()
}

/// Of what there would have to be more, and by which factor, or for water by how many degrees (own rule).
/// What is locked up, or not there at all, no amount brings out.
pub(super) const fn more_of(by: HeldBackBy) -> &'static [(Variable, f64)] {
    match by {
        HeldBackBy::Food => &[(Variable::FoodAmount, 2.0), (Variable::FoodAmount, 1.5)],
        HeldBackBy::Enzyme => &[(Variable::EnzymeAmount, 2.0), (Variable::EnzymeAmount, 3.0)],
        HeldBackBy::Yeast => &[(Variable::YeastAmount, 1.5), (Variable::YeastAmount, 2.0)],
        HeldBackBy::Waking => &[(Variable::WaterTemperature, 5.0)],
        HeldBackBy::NoYeast | HeldBackBy::NoFood | HeldBackBy::Locked => &[],
    }
}
