//! How good a sharing-out is: four aims, each before the next.

use super::case::Case;
use super::flow::Cost;

/// What a group works on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Part {
    /// The arm, by place.
    pub arm: usize,
    /// Whether its single bag is the reference that others of its period need.
    pub reference: bool,
}

/// What is amiss with a sharing-out, the weightiest first: of two, that is better which is less in
/// the first of these in which they differ.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Worth {
    /// Treatments that a period goes without, summed over periods: a treatment that stands in every
    /// period can be compared free of what periods differ in.
    pub missing: u64,
    /// Bags that the plan asks for and nobody makes, arm by arm.
    pub short: u64,
    /// What groups regret, summed: see [`super::day::Group::regret`].
    pub regret: u64,
    /// How unevenly bags lie over periods: bags of an arm in a period, squared and summed.
    pub uneven: u64,
}

/// Makes one number of the four aims, and four of one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Weights {
    pub(super) missing: Cost,
    pub(super) short: Cost,
    pub(super) regret: Cost,
}

impl Weights {
    /// Weights such that all of an aim together weighs less than a step of the one before.
    pub(super) fn of(case: &Case<'_>) -> Self {
        let day = case.day;
        let bags: Cost = case.bags.iter().map(|bags| Cost::from(*bags)).sum();
        let regrets = day.groups.iter().map(|group| {
            let questions = 0..day.questions.len();
            Cost::from(questions.map(|question| group.regret(question)).max().unwrap_or(0))
        });
        let asked: Cost = day.arms.iter().map(|arm| Cost::from(arm.asked_in_all())).sum();
        let regret = 1 + bags * bags;
        let short = regret * (1 + regrets.sum::<Cost>());
        Self { missing: short * (1 + asked), short, regret }
    }

    pub(super) fn one(self, worth: Worth) -> Cost {
        self.missing * Cost::from(worth.missing)
            + self.short * Cost::from(worth.short)
            + self.regret * Cost::from(worth.regret)
            + Cost::from(worth.uneven)
    }

    pub(super) fn four(self, cost: Cost) -> Worth {
        let whole = |of: Cost| u64::try_from(of.max(0)).unwrap_or(u64::MAX);
        Worth {
            missing: whole(cost.div_euclid(self.missing)),
            short: whole(cost.rem_euclid(self.missing).div_euclid(self.short)),
            regret: whole(cost.rem_euclid(self.short).div_euclid(self.regret)),
            uneven: whole(cost.rem_euclid(self.regret)),
        }
    }
}

/// Bags of each arm's treatments in each period: arm by arm.
pub(super) fn slots(case: &Case<'_>, parts: &[Part]) -> Vec<Vec<u32>> {
    let mut made = vec![vec![0; case.day.periods.len()]; case.day.arms.len()];
    for (g, part) in parts.iter().enumerate().filter(|(_, part)| !part.reference) {
        made[part.arm][case.day.groups[g].period] += case.slots(g, part.arm);
    }
    made
}

/// What is amiss with a sharing-out, if treatments are dealt as well as their number allows.
pub(super) fn worth(case: &Case<'_>, parts: &[Part]) -> Worth {
    let mut worth = Worth::default();
    for (arm, made) in case.day.arms.iter().zip(slots(case, parts)) {
        let kinds = u32::try_from(arm.treatments.len()).unwrap_or(u32::MAX);
        for bags in &made {
            worth.missing += u64::from(kinds.saturating_sub(*bags));
            worth.uneven += u64::from(*bags).pow(2);
        }
        worth.short += u64::from(arm.asked_in_all().saturating_sub(made.iter().sum()));
    }
    for (group, part) in case.day.groups.iter().zip(parts) {
        worth.regret += u64::from(group.regret(case.arm(part.arm).question));
    }
    worth
}
