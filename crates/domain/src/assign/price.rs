//! What each wish that is not served would cost.

use super::case::Case;
use super::clash::{Clash, clash_within};
use super::day::Day;
use super::improve::{improved, keeps};
use super::rule::Rule;
use super::share::{NoShare, Order, Shared, share};
use super::worth::{Part, Worth, worth};

/// Flows for the price of one wish at least.
const LEAST: u32 = 3;

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

/// Every wish that is not served, with its price, over at most so many flows for all of them together
/// and at least [`LEAST`] for each.
pub(super) fn prices(day: &Day, order: &Order, shared: &Shared, steps: u32) -> Vec<Broken> {
    let first = |group: usize| day.groups[group].ranks.first().copied();
    let gets = |group: usize| day.arms[shared.parts[group].arm].question;
    let count =
        (0..shared.parts.len()).filter(|g| first(*g).is_some_and(|q| q != gets(*g))).count();
    let steps = steps / u32::try_from(count.max(1)).unwrap_or(u32::MAX);
    let mut broken = Vec::new();
    for (group, part) in shared.parts.iter().enumerate() {
        let gets = day.arms[part.arm].question;
        let Some(&wanted) = day.groups[group].ranks.first() else { continue };
        if wanted == gets {
            continue;
        }
        let price = price(day, order, shared, (group, wanted, gets), steps.max(LEAST));
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
    let found = share(&case, order, steps);
    if found == Err(NoShare::Impossible) {
        let mut with = day.clone();
        with.rules.push(Rule::Set { group, question: wanted });
        return clash_within(&with, 0).map_or(Price::NotFound, |mut clash| {
            clash.rules.retain(|rule| *rule < day.rules.len());
            Price::Clashes(clash)
        });
    }
    // Where a search may be broken off, the answer with the wish put into it is a good beginning.
    let mended = (!case.is_even()).then(|| beside(&case, shared, group)).flatten();
    let found = found.ok();
    let proven = shared.proven && found.as_ref().is_some_and(|found| found.proven);
    let Some(served) = found.map(|found| found.worth).into_iter().chain(mended).min() else {
        return Price::NotFound;
    };
    let more = |of: fn(&Worth) -> u64| {
        let (then, now) = (of(&served), of(&shared.worth));
        i64::try_from(then).unwrap_or(i64::MAX) - i64::try_from(now).unwrap_or(i64::MAX)
    };
    let own = day.groups[group].regret(gets);
    Price::Costs {
        missing: more(|worth| worth.missing),
        short: more(|worth| worth.short),
        // The group itself regrets less; what is left is the others'.
        others: more(|worth| worth.regret) + i64::from(own),
        proven,
    }
}

/// What the answer is worth once a group has its wish and others have made room for it.
fn beside(case: &Case<'_>, shared: &Shared, group: usize) -> Option<Worth> {
    let arm = case.allowed[group].iter().position(|allowed| *allowed)?;
    let mut parts = shared.parts.clone();
    parts[group] = Part { arm, reference: false };
    let parts = improved(case, parts);
    (case.stocks.is_empty() && keeps(case, &parts)).then(|| worth(case, &parts))
}
