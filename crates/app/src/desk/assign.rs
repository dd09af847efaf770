//! Who does what: a plan and a file of wishes in, an answer and a plan with its bags out.

use super::{DeskError, open_plan, write_new};
use barm_documents::{plan_text, wishes};
use barm_domain::assign::day::Day;
use barm_domain::assign::{
    Assigned, Clash, NotAssigned, NotPrepared, STEPS, Taken, assign, prepare, with_bags,
};
use barm_domain::plan::Plan;
use std::path::Path;

/// What came of it.
#[derive(Debug)]
pub(crate) struct Assignment {
    /// The plan as it was read.
    pub(crate) plan: Plan,
    /// The day with its wishes and rules.
    pub(crate) day: Day,
    /// Bags of each group without a number of its own.
    pub(crate) bags: u32,
    /// What is worth knowing about the wishes.
    pub(crate) notes: Vec<String>,
    /// Who does what, with the plan that says so; or the rules that clash.
    pub(crate) outcome: Result<(Assigned, Plan), Clash>,
}

/// Decides who does what.
pub(crate) fn assignment(
    plan: &Path,
    wishes: &Path,
    seed: u64,
    taken: Taken,
) -> Result<Assignment, DeskError> {
    let open = open_plan(plan)?;
    let bytes = super::plan_file::bytes(wishes)?;
    let bad = |bad| DeskError::Wishes { path: wishes.to_owned(), bad, unreadable: false };
    let rows = wishes::read(&bytes).map_err(|bad| DeskError::Wishes {
        path: wishes.to_owned(),
        bad,
        unreadable: true,
    })?;
    let prepared = prepare(&open.plan, &rows, taken).map_err(|why| match why {
        NotPrepared::Rows(rows) => bad(rows),
        NotPrepared::Prep(error) => DeskError::Prep(error),
    })?;
    let outcome = match assign(&prepared.day, seed, STEPS) {
        Ok(found) => {
            let with = with_bags(&open.plan, &prepared.day, &found)?;
            Ok((found, with))
        }
        Err(NotAssigned::Clash(clash)) => Err(clash),
        Err(other) => return Err(DeskError::NotAssigned(other)),
    };
    Ok(Assignment {
        plan: open.plan,
        day: prepared.day,
        bags: prepared.bags,
        notes: prepared.notes,
        outcome,
    })
}

/// Writes the plan with its bags into a file that must not be there yet, with the notes and the order
/// of the file that it was read from.
pub(crate) fn write_assigned(read: &Path, with: &Plan, into: &Path) -> Result<(), DeskError> {
    let old = String::from_utf8_lossy(&super::plan_file::bytes(read)?).into_owned();
    write_new(into, plan_text::write(with, &old).as_bytes())
}
