//! Other places to search from: a day may have several tops, and a search finds one.

use super::arrived::Arrived;
use super::gathered::Day;
use super::stand::Stand;

/// Numbers that the day moved most, on whose either side is searched again.
const NUMBERS: usize = 2;
/// How far from what is known beforehand (standard deviations of that).
const ASIDE: f64 = 1.5;

/// Places to either side of what is known beforehand, along the numbers of which a day left least open: where one
/// of them bends what bags do, as an enzyme does that may be so strong that all starch is sugar before yeast is
/// awake, there are tops to both sides of the bend. Other numbers go along as far as they are known to.
pub(super) fn beside(day: &Day, found: &Arrived) -> Vec<Stand> {
    let mut numbers: Vec<usize> = (0..day.keys.len()).collect();
    numbers.sort_by(|a, b| found.left[*a].total_cmp(&found.left[*b]));
    let to_either_side = |number: usize| {
        let along = day.along_number(number);
        [-ASIDE, ASIDE].map(|by| Stand::open(along.iter().map(|part| by * part).collect()))
    };
    numbers.into_iter().take(NUMBERS).flat_map(to_either_side).collect()
}
