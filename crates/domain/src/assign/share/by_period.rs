//! Groups with different numbers of bags, period by period.
//!
//! Periods hang together only by the bags that the plan asks for on the whole day, and by limits for
//! the whole day. Without those each period is a small day of its own, which is searched to its end in
//! no time; all together they are a bound for the whole, and mostly, after small changes, an answer.

use super::{NoShare, Order, Shared, share};
use crate::assign::case::{Case, Count};
use crate::assign::day::{Arm, Day, Group};
use crate::assign::improve::{improved, keeps};
use crate::assign::worth::{Part, Worth, worth};

/// Flows for what a period goes without at least.
const FLOWS: u32 = 10;

/// What periods say, each by itself.
pub(super) struct Apart {
    /// An answer for the whole day, if there is one near by.
    pub(super) answer: Option<(Vec<Part>, Worth)>,
    /// No answer is better than this.
    pub(super) bound: Worth,
    pub(super) steps: u32,
}

/// Shares the groups of each period out by themselves, over at most so many flows for each.
///
/// # Errors
/// [`NoShare`] if a period cannot be shared out, so that the day cannot, or was not in the steps.
pub(super) fn by_period(case: &Case<'_>, order: &Order, steps: u32) -> Result<Apart, NoShare> {
    let day = case.day;
    let mut parts = vec![Part { arm: 0, reference: false }; day.groups.len()];
    let mut bound = Worth::default();
    let mut flows = 0;
    for period in 0..day.periods.len() {
        let own: Vec<usize> =
            (0..day.groups.len()).filter(|g| day.groups[*g].period == period).collect();
        if own.is_empty() {
            bound.missing +=
                day.arms.iter().map(|arm| arm.treatments.len() as u64).sum::<u64>();
            continue;
        }
        let shared = alone(case, order, (period, &own), steps)?;
        for (group, part) in own.iter().zip(&shared.parts) {
            parts[*group] = *part;
        }
        bound.missing += shared.bound.missing;
        bound.regret += shared.bound.regret;
        flows += shared.steps;
    }
    // Whatever groups work on, they make no more bags than this.
    let most = (0..day.groups.len()).map(|g| {
        let arms = (0..day.arms.len()).filter(|arm| case.allowed[g][*arm]);
        u64::from(arms.map(|arm| case.slots(g, arm)).max().unwrap_or(0))
    });
    let asked: u64 = day.arms.iter().map(|arm| u64::from(arm.asked_in_all())).sum();
    bound.short = asked.saturating_sub(most.sum());
    let better = improved(case, parts);
    let stands = case.stocks.is_empty() && keeps(case, &better);
    let answer = stands.then(|| {
        let own = worth(case, &better);
        (better, own)
    });
    Ok(Apart { answer, bound, steps: flows })
}

/// Treatments that a period goes without, whatever others do: no fewer than this, after a few flows.
pub(super) fn missing_alone(
    case: &Case<'_>,
    order: &Order,
    (period, own): (usize, &[usize]),
) -> Result<u64, NoShare> {
    match alone(case, order, (period, own), FLOWS) {
        Ok(shared) => Ok(shared.bound.missing),
        Err(NoShare::NotFound) => Ok(0),
        Err(NoShare::Impossible) => Err(NoShare::Impossible),
    }
}

/// One period as a day of its own, that asks for no number of bags.
fn alone(
    case: &Case<'_>,
    order: &Order,
    (period, own): (usize, &[usize]),
    steps: u32,
) -> Result<Shared, NoShare> {
    let day = case.day;
    let alone = Day {
        periods: vec![day.periods[period].clone()],
        arms: (day.arms.iter())
            .map(|arm| Arm { asked: vec![0; arm.asked.len()], ..arm.clone() })
            .collect(),
        groups: own.iter().map(|g| Group { period: 0, ..day.groups[*g].clone() }).collect(),
        rules: Vec::new(),
        ..day.clone()
    };
    let counts = case.counts.iter().filter(|count| count.period == Some(period));
    let case = Case {
        day: &alone,
        bags: own.iter().map(|g| case.bags[*g]).collect(),
        allowed: own.iter().map(|g| case.allowed[*g].clone()).collect(),
        counts: counts.map(|count| Count { period: Some(0), ..*count }).collect(),
        stocks: Vec::new(),
        tools_suffice: true,
    };
    let place = |g: &usize| own.iter().position(|one| one == g);
    let order = Order {
        groups: order.groups.iter().filter_map(place).collect(),
        arms: order.arms.clone(),
    };
    share(&case, &order, steps)
}
