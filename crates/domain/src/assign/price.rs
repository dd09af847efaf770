//! What each wish that is not served would cost.

use super::case::Case;
use super::clash::{Clash, clash};
use super::day::Day;
use super::rule::Rule;
use super::share::{NoShare, Order, Shared, share};
use super::worth::Worth;

/// A group that does not get what it ranked first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// The group, by place.
    pub group: usize,
    /// What it ranked first, by place of the question.
    pub wanted: usize,
    /// What it gets, by place of the question.
    pub gets: usize,
    /// What serving it would cost.
    pub price: Price,
}

/// What serving a wish would cost, found by sharing out once more with the wish as a rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Price {
    /// It can be served, at this price to all others; below nothing is gain.
    Costs {
        /// Treatments that periods go without, more than now.
        missing: i64,
        /// Bags that the plan asks for and nobody makes, more than now.
        short: i64,
        /// Regret of all other groups, more than now.
        others: i64,
        /// Whether that is proven to be the least it can cost.
        proven: bool,
    },
    /// It clashes with rules, by place in [`Day::rules`].
    Clashes(Clash),
    /// That was not found out within the steps.
    NotFound,
}

/// Every wish that is not served, with its price.
pub(super) fn prices(day: &Day, order: &Order, shared: &Shared, steps: u32) -> Vec<Broken> {
    let mut broken = Vec::new();
    for (group, part) in shared.parts.iter().enumerate() {
        let gets = day.arms[part.arm].question;
        let Some(&wanted) = day.groups[group].ranks.first() else { continue };
        if wanted == gets {
            continue;
        }
        let price = price(day, order, shared, (group, wanted, gets), steps);
        broken.push(Broken { group, wanted, gets, price });
    }
    broken
}

fn price(
    day: &Day,
    order: &Order,
    shared: &Shared,
    (group, wanted, gets): (usize, usize, usize),
    steps: u32,
) -> Price {
    let mut case = Case::whole(day);
    case.only(group, wanted);
    let served = match share(&case, order, steps) {
        Ok(served) => served,
        Err(NoShare::NotFound) => return Price::NotFound,
        Err(NoShare::Impossible) => {
            let mut with = day.clone();
            with.rules.push(Rule::Set { group, question: wanted });
            return clash(&with).map_or(Price::NotFound, |mut clash| {
                clash.rules.retain(|rule| *rule < day.rules.len());
                Price::Clashes(clash)
            });
        }
    };
    let more = |of: fn(&Worth) -> u64| {
        let (then, now) = (of(&served.worth), of(&shared.worth));
        i64::try_from(then).unwrap_or(i64::MAX) - i64::try_from(now).unwrap_or(i64::MAX)
    };
    let own = day.groups[group].regret(gets);
    Price::Costs {
        missing: more(|worth| worth.missing),
        short: more(|worth| worth.short),
        // The group itself regrets less; what is left is the others'.
        others: more(|worth| worth.regret) + i64::from(own),
        proven: served.proven && shared.proven,
    }
}
