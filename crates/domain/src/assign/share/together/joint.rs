//! What periods have in common: bags that the plan asks for, and limits for the whole day.

use crate::assign::case::Case;
use crate::assign::flow::Cost;
use crate::assign::worth::{Weights, Worth};

/// What is counted of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Of {
    /// Bags of an arm's treatments.
    Arm(usize),
    /// Groups that work on a question.
    Question(usize),
}

/// What its number is held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Against {
    /// Each one fewer than the plan asks for costs so much.
    Asked(Cost),
    Least,
    Most,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Thing {
    of: Of,
    against: Against,
    number: u32,
}

/// Everything that periods have in common.
pub(super) struct Joint {
    things: Vec<Thing>,
    /// Whether any day that keeps the rules will do, so that nothing else is counted.
    pub(super) any: bool,
}

impl Joint {
    pub(super) fn of(case: &Case<'_>, weights: Weights, any: bool) -> Self {
        let arms = case.day.arms.iter().enumerate();
        let arms = arms.map(|(arm, asks)| Thing {
            of: Of::Arm(arm),
            against: Against::Asked(weights.short),
            number: asks.asked_in_all(),
        });
        let mut things: Vec<Thing> = arms.filter(|thing| thing.number > 0 && !any).collect();
        for count in case.counts.iter().filter(|count| count.period.is_none()) {
            let of = Of::Question(count.question);
            if count.least > 0 {
                things.push(Thing { of, against: Against::Least, number: count.least });
            }
            if count.most < u32::MAX {
                things.push(Thing { of, against: Against::Most, number: count.most });
            }
        }
        Self { things, any }
    }

    /// What an answer costs; unevenness counts only where it is searched for.
    pub(super) fn worth(&self, case: &Case<'_>, weights: Weights, worth: &Worth) -> Cost {
        if self.any {
            return 0;
        }
        let uneven = if case.is_even() { worth.uneven } else { 0 };
        weights.one(Worth { uneven, ..*worth })
    }

    pub(super) fn len(&self) -> usize {
        self.things.len()
    }

    /// What a group that works so counts in each thing.
    pub(super) fn counts(&self, arm: usize, question: usize, slots: u32) -> Vec<u32> {
        let counts = self.things.iter().map(|thing| match thing.of {
            Of::Arm(of) => {
                if of == arm {
                    slots
                } else {
                    0
                }
            }
            Of::Question(of) => u32::from(of == question),
        });
        counts.collect()
    }

    /// The number that each thing is held against.
    pub(super) fn number(&self, thing: usize) -> u32 {
        self.things[thing].number
    }

    /// The nearest price that proves something.
    pub(super) fn price(&self, thing: usize, near: f64) -> f64 {
        match self.things[thing].against {
            Against::Asked(weight) => near.clamp(0.0, weight as f64),
            Against::Least => near.max(0.0),
            Against::Most => near.min(0.0),
        }
    }

    /// The price from which on nothing more is gained, where there is one.
    pub(super) fn highest(&self, thing: usize) -> Option<Cost> {
        match self.things[thing].against {
            Against::Asked(weight) => Some(weight),
            Against::Least | Against::Most => None,
        }
    }

    /// What is given for keeping to every number at these prices.
    pub(super) fn given(&self, prices: &[Cost]) -> Cost {
        let all = self.things.iter().zip(prices);
        all.map(|(thing, price)| price * Cost::from(thing.number)).sum()
    }

    /// Adds numbers, none farther than it makes a difference; nothing if one is too great.
    pub(super) fn add(&self, to: &[u32], more: &[u32]) -> Option<Vec<u32>> {
        let all = self.things.iter().zip(to.iter().zip(more));
        all.map(|(thing, (to, more))| {
            let sum = to + more;
            match thing.against {
                Against::Most => (sum <= thing.number).then_some(sum),
                Against::Asked(_) | Against::Least => Some(sum.min(thing.number)),
            }
        })
        .collect()
    }

    /// What the numbers of a whole day cost; nothing if one of them cannot stand.
    pub(super) fn cost(&self, sums: &[u32]) -> Option<Cost> {
        let all = self.things.iter().zip(sums);
        all.map(|(thing, sum)| match thing.against {
            Against::Asked(weight) => {
                Some(weight * Cost::from(thing.number.saturating_sub(*sum)))
            }
            Against::Least => (*sum >= thing.number).then_some(0),
            Against::Most => (*sum <= thing.number).then_some(0),
        })
        .sum()
    }
}
