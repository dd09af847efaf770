//! Heights that are those of another group's bag.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// So many heights must be the same, and so many of them unlike one another: two bags that hardly
/// rise agree anyway (own rule).
const SAME: usize = 5;
const UNLIKE: usize = 3;

/// Probability that a number is copied as it stands (1; own judgement).
const AS_IT_STANDS: f64 = 0.97;

pub(super) fn weigh(
    bags: &[Followed],
    alone: &[Option<(Sound, Weighed)>],
    rates: &Rates,
    weighed: &mut [Option<Weighed>],
) {
    for (at, bag) in bags.iter().enumerate() {
        let (Some(_), Some(own)) = (&alone[at], &mut weighed[at]) else { continue };
        let others = bags.iter().filter(|other| other.group != bag.group).count();
        for (of, other) in bags.iter().enumerate().filter(|(_, one)| one.group != bag.group) {
            let Some((same, unlike)) = same(bag, other) else { continue };
            if same < SAME || unlike < UNLIKE {
                continue;
            }
            let log = same as f64 * libm::log(AS_IT_STANDS);
            // It takes two: either may have been copied from the other.
            own.add(What::Copied { of }, 2.0 * rates.copied / others as f64, log);
        }
    }
}

/// How many heights of two bags are the same, and how many of those unlike one another; nothing
/// if any that both have differs.
fn same(bag: &Followed, other: &Followed) -> Option<(usize, usize)> {
    let mut heights: Vec<f64> = Vec::new();
    for height in &bag.heights {
        let planned = height.planned?;
        let theirs = other.heights.iter().find(|one| one.planned == Some(planned))?;
        if (theirs.mm - height.mm).abs() > 0.01 {
            return None;
        }
        heights.push(height.mm);
    }
    let count = heights.len();
    heights.sort_by(f64::total_cmp);
    heights.dedup();
    Some((count, heights.len()))
}
