//! The bag list by a plain rule: who makes which bag, in which period.
//!
//! - Bags are dealt around the periods, one treatment after the other, so that those of a treatment
//!   go to different periods first. Within a period the emptiest group takes the bag that does not
//!   make such a one yet, and among equals the one that already makes what it is compared with.
//! - A group that makes two bags or more also makes a reference bag of its own.
//! - The teacher's bench (group 0) makes the shared controls of every period.
//!
//! A code is made once. A bag that stays in its place keeps its code; a bag that leaves the list
//! leaves its code in [`BagList::retired`], from where it is never given out again.

mod deal;

use crate::code::{BagCode, MOST};
use crate::plan::{Plan, PlannedBag};
use deal::Wanted;
use std::collections::{BTreeMap, BTreeSet};

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

/// Writes the bag list of a plan. Bags that the plan lists already and still needs keep their
/// codes.
///
/// # Errors
/// [`BagListError`] if there are more periods, groups or bags than codes.
pub fn write(plan: &Plan) -> Result<BagList, BagListError> {
    if plan.periods.len() > usize::from(MOST) {
        return Err(BagListError::Periods { periods: plan.periods.len() });
    }
    if let Some(period) = plan.periods.iter().find(|period| period.groups > u32::from(MOST)) {
        let (period, groups) = (period.name.clone(), period.groups);
        return Err(BagListError::Groups { period, groups });
    }
    let wanted = deal::deal(plan);
    let mut kept = kept(plan, &wanted);
    let mut books = Books::of(plan, &kept);
    let mut bags = Vec::new();
    for (index, want) in wanted.iter().enumerate() {
        let bag = match kept.remove(&index) {
            Some(bag) => bag.clone(),
            None => books.new_bag(plan, want)?,
        };
        bags.push(bag);
    }
    let position = |bag: &PlannedBag| plan.periods.iter().position(|p| p.name == bag.period);
    bags.sort_by_cached_key(|bag| (position(bag), bag.group, bag.place));
    let mut retired = plan.retired_codes.clone();
    let left = plan.bags.iter().filter(|bag| bags.iter().all(|still| still.code != bag.code));
    retired.extend(left.map(|bag| bag.code.clone()));
    Ok(BagList { bags, retired })
}

/// The listed bags that are still wanted where they are, by their index among the wanted.
fn kept<'p>(plan: &'p Plan, wanted: &[Wanted<'_>]) -> BTreeMap<usize, &'p PlannedBag> {
    let mut kept = BTreeMap::new();
    for bag in &plan.bags {
        let index = wanted.iter().enumerate().position(|(index, want)| {
            !kept.contains_key(&index)
                && want.group == bag.group
                && want.period_name(plan) == bag.period
                && want.question == bag.question
                && want.treatment == bag.treatment
        });
        if let Some(index) = index {
            kept.insert(index, bag);
        }
    }
    kept
}

/// What has been given out: codes, bench places, replicate numbers.
struct Books<'p> {
    codes: BTreeSet<&'p str>,
    places: BTreeSet<(&'p str, u32, u32)>,
    replicates: BTreeSet<(&'p str, u32)>,
    fresh: BTreeSet<BagCode>,
}

impl<'p> Books<'p> {
    fn of(plan: &'p Plan, kept: &BTreeMap<usize, &'p PlannedBag>) -> Self {
        let listed = plan.bags.iter().map(|bag| bag.code.as_str());
        Self {
            codes: listed.chain(plan.retired_codes.iter().map(String::as_str)).collect(),
            places: kept.values().map(|b| (b.period.as_str(), b.group, b.place)).collect(),
            replicates: kept.values().map(|b| (b.treatment.as_str(), b.replicate)).collect(),
            fresh: BTreeSet::new(),
        }
    }

    fn new_bag(
        &mut self,
        plan: &'p Plan,
        want: &Wanted<'p>,
    ) -> Result<PlannedBag, BagListError> {
        let period = want.period_name(plan);
        let number = number_of(plan, want.period);
        // Compared with MOST at the start.
        let group = u8::try_from(want.group).unwrap_or(u8::MAX);
        let code = BagCode::all_of(number, group)
            .find(|code| {
                !self.fresh.contains(code) && !self.codes.contains(code.to_string().as_str())
            })
            .ok_or_else(|| BagListError::NoCodeLeft {
                period: period.into(),
                group: want.group,
            })?;
        self.fresh.insert(code);
        let place = (1..).find(|place| self.places.insert((period, want.group, *place)));
        let replicate = (1..).find(|number| self.replicates.insert((want.treatment, *number)));
        Ok(PlannedBag {
            code: code.to_string(),
            period: period.to_owned(),
            group: want.group,
            place: place.unwrap_or(1),
            question: want.question.to_owned(),
            treatment: want.treatment.to_owned(),
            replicate: replicate.unwrap_or(1),
        })
    }
}

/// The number of a period in bag codes: its own name where every period of the plan is named by a
/// number of its own, so that period 4 has codes P4; otherwise its position, from 1.
fn number_of(plan: &Plan, position: usize) -> u8 {
    let names: Vec<Option<u8>> =
        plan.periods.iter().map(|period| named(&period.name)).collect();
    let distinct: BTreeSet<u8> = names.iter().flatten().copied().collect();
    let own = names.get(position).copied().flatten();
    let by_name = distinct.len() == names.len();
    // Positions were compared with MOST at the start.
    own.filter(|_| by_name).unwrap_or_else(|| u8::try_from(position + 1).unwrap_or(u8::MAX))
}

fn named(name: &str) -> Option<u8> {
    name.trim().parse().ok().filter(|number| (1..=MOST).contains(number))
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
