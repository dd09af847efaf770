//! Bags that a group asked for and got.

use super::books::Books;
use super::room::Wanted;
use super::{BagList, BagListError, can_have_codes};
use crate::plan::{Plan, PlannedBag};

/// So many bags of a treatment for a group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Given {
    /// Name of the period.
    pub period: String,
    /// The group.
    pub group: u32,
    /// Id of the question.
    pub question: String,
    /// Name of the treatment.
    pub treatment: String,
    /// How many.
    pub bags: u32,
}

/// Gives groups the bags they are to make, in place of all that these groups had; bags that they
/// had already keep their codes. Nothing else on the list changes.
///
/// # Errors
/// [`BagListError`] if there are no codes left. A period that the plan does not have is left out.
pub fn give(plan: &Plan, given: &[Given]) -> Result<BagList, BagListError> {
    can_have_codes(plan)?;
    let ours = |bag: &PlannedBag| {
        given.iter().any(|one| one.period == bag.period && one.group == bag.group)
    };
    let (mut old, mut kept): (Vec<PlannedBag>, Vec<PlannedBag>) =
        plan.bags.iter().cloned().partition(ours);
    let mut wanted = Vec::new();
    for one in given {
        let Some(period) = plan.periods.iter().position(|period| period.name == one.period)
        else {
            continue;
        };
        for _ in 0..one.bags {
            let same = old.iter().position(|bag| {
                (&bag.period, bag.group, &bag.treatment)
                    == (&one.period, one.group, &one.treatment)
            });
            if let Some(same) = same {
                let bag = old.remove(same);
                kept.push(PlannedBag { question: one.question.clone(), ..bag });
                continue;
            }
            wanted.push(Wanted {
                period,
                group: one.group,
                question: &one.question,
                treatment: &one.treatment,
                reference: None,
            });
        }
    }
    let mut books = Books::of(plan, &kept);
    let new = wanted.iter().map(|want| books.new_bag(plan, want));
    let new = new.collect::<Result<Vec<_>, _>>()?;
    kept.extend(new);
    let position = |bag: &PlannedBag| plan.periods.iter().position(|p| p.name == bag.period);
    kept.sort_by_cached_key(|bag| (position(bag), bag.group, bag.place));
    let mut retired = plan.retired_codes.clone();
    retired.extend(old.into_iter().map(|bag| bag.code));
    Ok(BagList { bags: kept, retired })
}
