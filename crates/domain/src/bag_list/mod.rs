//! The bag list by a plain rule: who makes which bag, in which period.
//!
//! - Bags are dealt around the periods, one treatment after the other, so that those of a treatment
//!   go to different periods first. Within a period the emptiest group takes the bag that does not
//!   make such a one yet, and among equals the one that already makes what it is compared with.
//! - A group that makes two bags or more also makes a reference bag of its own.
//! - The teacher's bench (group 0) makes the shared controls of every period.
//!
//! Labels are printed early and plans change late, so a list that stands is added to, not dealt
//! again: every bag whose period, group and treatment are still in the plan stays as it is.
//!
//! A code is made once. A bag that leaves the list leaves its code in [`BagList::retired`], from
//! where it is never given out again.

mod add;
mod books;
mod deal;
mod give;
mod own;
mod room;

pub use give::{Given, give};

use crate::code::{BagCode, MOST};
use crate::plan::{Plan, PlannedBag};
use books::{Books, named};
use room::Wanted;

/// A bag list with the codes that it must not use again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BagList {
    /// The bags, by period, group and bench place.
    pub bags: Vec<PlannedBag>,
    /// Codes of bags that left the list, in the order in which they left.
    pub retired: Vec<String>,
}

/// Why no bag list can be written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BagListError {
    /// Codes have two digits for the period.
    #[error("the plan has {periods} periods, and bag codes count up to {MOST}; split the plan")]
    Periods {
        /// Periods of the plan.
        periods: usize,
    },
    /// Codes have two digits for the group.
    #[error("period {period} has {groups} groups, and bag codes count up to {MOST}; split it")]
    Groups {
        /// Name of the period.
        period: String,
        /// Its groups.
        groups: u32,
    },
    /// Every letter of a group has been given out.
    #[error(
        "{} of period {period} has no bag code left; give it fewer bags or add groups",
        if *.group == 0 { "the teacher's bench".to_owned() } else { format!("group {group}") }
    )]
    NoCodeLeft {
        /// Name of the period.
        period: String,
        /// The group.
        group: u32,
    },
}

/// Writes what is missing on the bag list of a plan. Every bag whose period, group and treatment
/// are still in the plan stays as it is, also where fewer are asked for now.
///
/// # Errors
/// [`BagListError`] if there are more periods, groups or bags than codes.
pub fn write(plan: &Plan) -> Result<BagList, BagListError> {
    let kept: Vec<PlannedBag> =
        plan.bags.iter().filter_map(|bag| add::still_there(plan, bag)).collect();
    if kept.is_empty() {
        return write_anew(plan);
    }
    can_have_codes(plan)?;
    let missing = add::missing(plan, &kept);
    finish(plan, kept, &missing)
}

/// Writes the whole bag list of a plan by the plain rule, as if there were none. A bag that the
/// rule puts where such a bag stands already keeps its code; the others leave the list.
///
/// # Errors
/// [`BagListError`] if there are more periods, groups or bags than codes.
pub fn write_anew(plan: &Plan) -> Result<BagList, BagListError> {
    can_have_codes(plan)?;
    let mut missing = deal::deal(plan);
    let mut kept = Vec::new();
    for bag in &plan.bags {
        let index = missing.iter().position(|want| {
            want.group == bag.group
                && want.period_name(plan) == bag.period
                && want.question == bag.question
                && want.treatment == bag.treatment
        });
        if let Some(index) = index {
            missing.remove(index);
            kept.push(bag.clone());
        }
    }
    finish(plan, kept, &missing)
}

fn can_have_codes(plan: &Plan) -> Result<(), BagListError> {
    if plan.periods.len() > usize::from(MOST) {
        return Err(BagListError::Periods { periods: plan.periods.len() });
    }
    if let Some(period) = plan.periods.iter().find(|period| period.groups > u32::from(MOST)) {
        let (period, groups) = (period.name.clone(), period.groups);
        return Err(BagListError::Groups { period, groups });
    }
    Ok(())
}

/// The list of the bags that stay and of those that are new, with the codes of those that left.
fn finish(
    plan: &Plan,
    kept: Vec<PlannedBag>,
    missing: &[Wanted<'_>],
) -> Result<BagList, BagListError> {
    let mut books = Books::of(plan, &kept);
    let new = missing.iter().map(|want| books.new_bag(plan, want));
    let new = new.collect::<Result<Vec<_>, _>>()?;
    let mut bags = kept;
    bags.extend(new);
    let position = |bag: &PlannedBag| plan.periods.iter().position(|p| p.name == bag.period);
    bags.sort_by_cached_key(|bag| (position(bag), bag.group, bag.place));
    let mut retired = plan.retired_codes.clone();
    let left = plan.bags.iter().filter(|bag| bags.iter().all(|still| still.code != bag.code));
    retired.extend(left.map(|bag| bag.code.clone()));
    Ok(BagList { bags, retired })
}

/// Bags whose code names another period or group than the one they stand in, because the list or
/// the order of the periods was changed by hand; the label would mislead.
pub fn misleading(plan: &Plan) -> impl Iterator<Item = (usize, &PlannedBag)> {
    plan.bags.iter().enumerate().filter(|(_, bag)| {
        let Ok(code) = bag.code.parse::<BagCode>() else { return true };
        let position = plan.periods.iter().position(|period| period.name == bag.period);
        // A plan whose periods were given other names later keeps its codes.
        let by_position = position.map(|at| at + 1) == Some(usize::from(code.period()));
        let by_name = named(&bag.period) == Some(code.period());
        !(by_position || by_name) || u32::from(code.group()) != bag.group
    })
}
