//! The whole job: share out, deal, price, and check.

use super::bench_places::{numbers, order, shuffled};
use super::case::Case;
use super::checked::check;
use super::clash::{Clash, clash};
use super::day::Day;
use super::deal::{Dealt, deal};
use super::price::{Broken, prices};
use super::share::{NoShare, share_well};
use super::worth::Worth;
use barm_science::statistics::chance::Chance;

/// Flows after which a search is broken off and says how far it got: for the whole day, and for each
/// period by itself. Where all groups make the same number of bags one flow is mostly enough.
pub const STEPS: u32 = 250;
/// Flows for the prices of all wishes.
const PRICE_STEPS: u32 = 150;
/// Flows for one dealing.
const DEAL_STEPS: u32 = 400;

/// What one group makes, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Made {
    /// The arm that it works on, by place in [`Day::arms`].
    pub arm: usize,
    /// Its bags in the order in which they are poured: treatments by place in [`Day::treatments`].
    pub bags: Vec<usize>,
    /// Its bench place within the period, from 1.
    pub place: u32,
    /// Its turn to pour within the period, from 1.
    pub turn: u32,
}

/// Who does what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assigned {
    /// What each group makes, in the order of [`Day::groups`].
    pub groups: Vec<Made>,
    /// What is amiss with it.
    pub worth: Worth,
    /// No way to share groups out is better than this.
    pub bound: Worth,
    /// Whether it is proven that none is better: in what is missing, short and regretted, and, where
    /// all groups make the same number of bags, in evenness too.
    pub proven: bool,
    /// Whether the treatments were proven to be dealt as well as these groups can.
    pub dealt: bool,
    /// Wishes that are not served, with the price of serving them.
    pub broken: Vec<Broken>,
    /// Flows that were worked out to share groups out.
    pub steps: u32,
    /// The seed of everything that was left to chance.
    pub seed: u64,
}

/// Why nobody is told what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotAssigned {
    /// There is no group.
    #[error("the day has no group")]
    NoGroups,
    /// There is nothing to make.
    #[error("the plan has no question with a treatment to make")]
    NoQuestions,
    /// Rules clash.
    #[error("it cannot be done")]
    Clash(Clash),
    /// Neither an answer nor a clash was found within the steps.
    #[error("no way was found that keeps all rules, and none was ruled out; take a rule back")]
    NotFound,
    /// The answer did not stand up to being checked again. That would be a mistake of the program.
    #[error("the answer did not stand up to a second check, and is not given: {0}")]
    Wrong(String),
}

/// Decides who does what. Equal seeds give equal answers.
///
/// # Errors
/// [`NotAssigned`] if the rules clash or nothing was found within `steps` flows.
pub fn assign(day: &Day, seed: u64, steps: u32) -> Result<Assigned, NotAssigned> {
    if day.groups.is_empty() {
        return Err(NotAssigned::NoGroups);
    }
    if day.arms.is_empty() {
        return Err(NotAssigned::NoQuestions);
    }
    let mut chance = Chance::from_seed(seed);
    let order = order(day, &mut chance);
    let case = Case::whole(day);
    let shared = match share_well(&case, &order, steps) {
        Ok(shared) => shared,
        Err(NoShare::Impossible) => {
            return Err(clash(day).map_or(NotAssigned::NotFound, NotAssigned::Clash));
        }
        Err(NoShare::NotFound) => return Err(NotAssigned::NotFound),
    };
    // With materials, what stood in the sharing-out has been dealt once already.
    let dealt = deal(&case, &order, &shared.parts, DEAL_STEPS).ok_or(NotAssigned::NotFound)?;
    let (places, turns) = (numbers(day, &mut chance), numbers(day, &mut chance));
    let groups = (0..day.groups.len()).map(|g| {
        let arm = shared.parts[g].arm;
        let bags = bags(&case, g, arm, shared.parts[g].reference, &dealt);
        let order = shuffled(bags.len(), &mut chance);
        let bags = order.into_iter().map(|bag| bags[bag]).collect();
        Made { arm, bags, place: places[g], turn: turns[g] }
    });
    let assigned = Assigned {
        groups: groups.collect(),
        worth: Worth { missing: dealt.missing, ..shared.worth },
        bound: shared.bound,
        proven: shared.proven && dealt.missing == shared.worth.missing,
        dealt: dealt.proven,
        broken: prices(day, &order, &shared, PRICE_STEPS),
        steps: shared.steps,
        seed,
    };
    match check(day, &assigned).into_iter().next() {
        None => Ok(assigned),
        Some(wrong) => Err(NotAssigned::Wrong(wrong)),
    }
}

fn bags(case: &Case<'_>, g: usize, arm: usize, reference: bool, dealt: &Dealt) -> Vec<usize> {
    let own = case.arm(arm).reference;
    let of_treatments =
        dealt.made[g].iter().flat_map(|(t, bags)| std::iter::repeat_n(*t, *bags as usize));
    let mut bags: Vec<usize> = of_treatments.collect();
    let references = if reference { 1 } else { case.bags[g] - case.slots(g, arm) };
    bags.extend(own.into_iter().flat_map(|t| std::iter::repeat_n(t, references as usize)));
    bags
}

impl Assigned {
    /// Bags of a treatment of an arm, period by period, as groups make them; references that groups
    /// make for themselves are not among them.
    pub fn spread(&self, day: &Day, arm: usize, treatment: usize) -> Vec<usize> {
        let mut bags = vec![0; day.periods.len()];
        for (made, group) in self.groups.iter().zip(&day.groups) {
            if made.arm == arm {
                bags[group.period] += made.bags.iter().filter(|bag| **bag == treatment).count();
            }
        }
        bags
    }

    /// Whether all treatments of a question can be compared with each other within periods: their
    /// bags and the periods hang together (connected design).
    pub fn connected(&self, day: &Day, question: usize) -> bool {
        let mut sets: Vec<(Vec<usize>, Vec<usize>)> = Vec::new();
        for period in 0..day.periods.len() {
            let all = self.groups.iter().zip(&day.groups);
            let here = all.filter(|(made, group)| {
                group.period == period && day.arms[made.arm].question == question
            });
            let kinds: Vec<usize> = here.flat_map(|(made, _)| made.bags.clone()).collect();
            if kinds.is_empty() {
                continue;
            }
            let (meet, apart): (Vec<_>, Vec<_>) = sets
                .into_iter()
                .partition(|(known, _)| known.iter().any(|kind| kinds.contains(kind)));
            let mut joined = (kinds, vec![period]);
            for (known, periods) in meet {
                joined.0.extend(known);
                joined.1.extend(periods);
            }
            sets = apart;
            sets.push(joined);
        }
        sets.len() <= 1
    }

    /// By how much a better answer could be better, as a share of the best there can be, in the first
    /// aim in which that is open (1); 0 where the answer is proven.
    pub fn gap(&self, day: &Day) -> f64 {
        if self.proven {
            return 0.0;
        }
        gap(day, self.worth, self.bound)
    }
}

/// By how much something better than `worth` could be better if nothing is better than `bound`: see
/// [`Assigned::gap`].
pub(super) fn gap(day: &Day, worth: Worth, bound: Worth) -> f64 {
    let whole = |count: u32| u64::from(count);
    let kinds: usize = day.arms.iter().map(|arm| arm.treatments.len()).sum();
    let most = [
        (kinds * day.periods.len()) as u64,
        day.arms.iter().map(|arm| whole(arm.asked_in_all())).sum(),
        day.groups
            .iter()
            .map(|group| {
                let steps = group.ranks.len() as u32;
                whole(steps * (steps + 1) / 2)
            })
            .sum(),
    ];
    let pairs = [
        (worth.missing, bound.missing),
        (worth.short, bound.short),
        (worth.regret, bound.regret),
    ];
    let open = pairs.iter().zip(most).find(|((own, least), _)| own != least);
    open.map_or(0.0, |((own, least), most)| {
        let best = most.saturating_sub(*least).max(1);
        own.saturating_sub(*least) as f64 / best as f64
    })
}
