//! A whole day of a school, to be fitted.

use super::dealt::{Planned, deal, right};
use super::plan::kinds;
use barm_science::fit::day::{BagSeen, DayFit, fit_day};
use barm_science::prior::Prior;
use barm_science::statistics::chance::Chance;

/// Kinds of bag in each period.
const KINDS: usize = 24;

/// Periods of the day.
const PERIODS: usize = 5;

/// Bags of one group.
const BAGS: usize = 3;

/// 120 bags with seven readings each: in each of five periods eight groups with three bags of 24 kinds. The
/// day is invented: what is not known is dealt from the table.
pub(crate) fn seen() -> Vec<BagSeen> {
    let kinds = kinds(KINDS);
    let planned: Vec<Planned> = (0..PERIODS * KINDS)
        .map(|place| Planned {
            setup: kinds[place % KINDS].clone(),
            period: (place / KINDS) as u32,
            group: (place % KINDS / BAGS) as u32,
        })
        .collect();
    deal(&planned, &Prior::default(), &mut Chance::from_seed(2027), right).bags
}

/// What that day says, from the table on.
pub(crate) fn fit(bags: &[BagSeen]) -> DayFit {
    fit_day(bags, &Prior::default()).expect("a day that can be fitted")
}
