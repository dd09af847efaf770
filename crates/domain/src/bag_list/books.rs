//! What has been given out and may not be given again.

use super::BagListError;
use super::room::Wanted;
use crate::code::{BagCode, MOST};
use crate::plan::{Plan, PlannedBag};
use std::collections::BTreeSet;

/// What has been given out: codes, bench places, replicate numbers.
pub(super) struct Books<'p> {
    codes: BTreeSet<&'p str>,
    places: BTreeSet<(&'p str, u32, u32)>,
    replicates: BTreeSet<(&'p str, u32)>,
    fresh: BTreeSet<BagCode>,
}

impl<'p> Books<'p> {
    pub(super) fn of(plan: &'p Plan, kept: &'p [PlannedBag]) -> Self {
        let listed = plan.bags.iter().map(|bag| bag.code.as_str());
        Self {
            codes: listed.chain(plan.retired_codes.iter().map(String::as_str)).collect(),
            places: kept.iter().map(|b| (b.period.as_str(), b.group, b.place)).collect(),
            replicates: kept.iter().map(|b| (b.treatment.as_str(), b.replicate)).collect(),
            fresh: BTreeSet::new(),
        }
    }

    /// The bag with a code, a bench place and a replicate number that no other has or had.
    pub(super) fn new_bag(
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

/// The number of a period in bag codes: that of the codes it has already; else its own name where
/// every period of the plan is named by a number of its own, so that period 4 has codes P4; else its
/// position, from 1, or the first number after it that no other period has.
fn number_of(plan: &Plan, position: usize) -> u8 {
    let name = plan.periods.get(position).map_or("", |period| period.name.as_str());
    let of = |bag: &PlannedBag| bag.code.parse::<BagCode>().ok().map(BagCode::period);
    let (own, others): (Vec<_>, Vec<_>) = plan.bags.iter().partition(|bag| bag.period == name);
    if let Some(number) = own.into_iter().find_map(of) {
        return number;
    }
    let others: BTreeSet<u8> = others.into_iter().filter_map(of).collect();
    let usual = usual_number(plan, position);
    let free = (usual..=MOST).chain(1..usual).find(|number| !others.contains(number));
    free.unwrap_or(usual)
}

fn usual_number(plan: &Plan, position: usize) -> u8 {
    let names: Vec<Option<u8>> =
        plan.periods.iter().map(|period| named(&period.name)).collect();
    let distinct: BTreeSet<u8> = names.iter().flatten().copied().collect();
    let own = names.get(position).copied().flatten();
    let by_name = distinct.len() == names.len();
    // Positions were compared with MOST at the start.
    own.filter(|_| by_name).unwrap_or_else(|| u8::try_from(position + 1).unwrap_or(u8::MAX))
}

pub(super) fn named(name: &str) -> Option<u8> {
    name.trim().parse().ok().filter(|number| (1..=MOST).contains(number))
}
