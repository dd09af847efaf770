//! The answer as a bag list.

use super::answer::Assigned;
use super::day::Day;
use crate::bag_list::{BagListError, Given, give};
use crate::plan::{CONTROLS, Plan};

/// The plan with the bags that the answer gives to its groups, in the order in which they are
/// poured, and with its shared controls on the teacher's bench.
///
/// A bag that its group had already keeps its code; codes of bags that leave the list are never given
/// out again.
///
/// # Errors
/// [`BagListError`] if there are more periods, groups or bags than codes.
pub fn with_bags(plan: &Plan, day: &Day, assigned: &Assigned) -> Result<Plan, BagListError> {
    let mut given = Vec::new();
    for period in &plan.periods {
        given.extend(plan.controls.iter().map(|control| Given {
            period: period.name.clone(),
            group: 0,
            question: CONTROLS.to_owned(),
            treatment: control.treatment.name.clone(),
            bags: control.per_period,
        }));
    }
    for (group, made) in day.groups.iter().zip(&assigned.groups) {
        let mut kinds = made.bags.clone();
        kinds.sort_unstable();
        kinds.dedup();
        for kind in kinds {
            let bags = made.bags.iter().filter(|bag| **bag == kind).count();
            given.push(Given {
                period: day.periods[group.period].clone(),
                group: group.number,
                question: day.questions[day.arms[made.arm].question].clone(),
                treatment: day.treatments[kind].clone(),
                bags: u32::try_from(bags).unwrap_or(u32::MAX),
            });
        }
    }
    let list = give(plan, &given)?;
    let mut new = plan.clone();
    new.bags = list.bags;
    new.retired_codes = list.retired;
    for (group, made) in day.groups.iter().zip(&assigned.groups) {
        let period = &day.periods[group.period];
        let mut left: Vec<Option<&str>> =
            made.bags.iter().map(|bag| Some(day.treatments[*bag].as_str())).collect();
        let own = new.bags.iter_mut();
        for bag in own.filter(|bag| bag.period == *period && bag.group == group.number) {
            let at = left.iter().position(|kind| *kind == Some(bag.treatment.as_str()));
            if let Some(at) = at {
                left[at] = None;
                bag.place = u32::try_from(at + 1).unwrap_or(u32::MAX);
            }
        }
    }
    let position = |name: &str| plan.periods.iter().position(|period| period.name == name);
    new.bags.sort_by_cached_key(|bag| (position(&bag.period), bag.group, bag.place));
    Ok(new)
}
