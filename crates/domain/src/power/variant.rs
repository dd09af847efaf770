//! A plan with its own bags, or with so many of each treatment.

use super::{NoPower, Trial};
use crate::bag_list;
use crate::outlook::OutlookError;
use crate::plan::Plan;
use crate::rehearsal::{Truth, followed_to_min};

/// The bags that are tried.
#[derive(Debug, Clone)]
pub struct Variant {
    /// Bags of each treatment; nothing for the plan's own bags.
    pub each: Option<u32>,
    /// The plan with these bags.
    pub(super) plan: Plan,
}

/// The plan's own bags first, then 1 to `most` bags of each treatment.
///
/// A plan without a bag list is taken with the list that it would be given. Numbers of bags for which
/// there are not enough codes are left out, and so are bags of treatments that cannot be followed,
/// whose names are `left_out`.
///
/// # Errors
/// [`NoPower`] where nothing is compared or no bag can be listed.
pub fn variants(plan: &Plan, most: u32, left_out: &[&str]) -> Result<Vec<Variant>, NoPower> {
    let compares = plan
        .questions
        .iter()
        .any(|question| !super::by_spreads::pairs(plan, question).is_empty());
    if !compares {
        return Err(NoPower::NothingCompared);
    }
    let mut own = plan.clone();
    if own.bags.is_empty() {
        own.bags = bag_list::write(plan)?.bags;
    }
    let own = Variant::of(own, None, left_out);
    if own.plan.bags.is_empty() {
        return Err(NoPower::NoBags);
    }
    let mut all = vec![own];
    for each in 1..=most {
        let mut dealt = plan.clone();
        dealt.bags.clear();
        dealt.retired_codes.clear();
        for question in &mut dealt.questions {
            question.replicates = each;
            for treatment in &mut question.treatments {
                treatment.replicates = None;
            }
        }
        match bag_list::write(&dealt) {
            Ok(list) => dealt.bags = list.bags,
            // More bags have no codes either.
            Err(_) => break,
        }
        all.push(Variant::of(dealt, Some(each), left_out));
    }
    Ok(all)
}

impl Variant {
    fn of(mut plan: Plan, each: Option<u32>, left_out: &[&str]) -> Self {
        plan.bags.retain(|bag| !left_out.contains(&bag.treatment.as_str()));
        Self { each, plan }
    }

    /// Number of classes to try: all of the trial for the plan's own bags, half of them otherwise.
    pub fn classes(&self, trial: &Trial) -> usize {
        if self.each.is_none() { trial.classes } else { trial.classes.div_ceil(2) }
    }

    /// Number of bags.
    pub fn bags(&self) -> usize {
        self.plan.bags.len()
    }

    /// One bag's courses, a day each, by its place on the list.
    ///
    /// # Errors
    /// [`OutlookError`] says why it cannot be followed.
    pub fn follow(
        &self,
        bag: usize,
        days: usize,
        seed: u64,
    ) -> Result<Vec<Truth>, OutlookError> {
        let plan = &self.plan;
        let Some(bag) = plan.bags.get(bag) else { return Ok(Vec::new()) };
        let last = plan.period(&bag.period).map_or(0, |period| followed_to_min(plan, period));
        Truth::many(plan, bag, last, seed, days)
    }
}
