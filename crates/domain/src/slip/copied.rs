//! Series of heights that are the same in two groups.

use crate::code::BagCode;
use crate::record::{Bag, Height};
use std::collections::{BTreeMap, BTreeSet};

/// So many heights in a row must be the same, the zero reading included: two bags made alike
/// differ by some millimeters, so that one height in about five is the same by chance, and five
/// in a row about one time in three thousand (own estimate, taking readings for independent).
const SAME: usize = 5;

/// And so many of them must differ from one another, for two bags that hardly rise agree anyway.
const DISTINCT: usize = 3;

/// A bag of another group with the same heights wherever both were read, and how many they are.
pub(super) fn copied(
    code: BagCode,
    bag: &Bag,
    sisters: &[(BagCode, &Bag)],
) -> Option<(BagCode, usize)> {
    let own = heights(bag);
    let bench = |code: BagCode| (code.period(), code.group());
    sisters.iter().filter(|(other, _)| bench(*other) != bench(code)).find_map(|(other, bag)| {
        let others = heights(bag);
        let both: Vec<(i64, i64)> = own
            .iter()
            .filter_map(|(minute, height)| Some((*height, *others.get(minute)?)))
            .collect();
        let distinct: BTreeSet<i64> = both.iter().map(|(height, _)| *height).collect();
        let same = both.iter().all(|(a, b)| a == b);
        (same && both.len() >= SAME && distinct.len() >= DISTINCT)
            .then_some((*other, both.len()))
    })
}

/// Heights in tenths of a millimeter by planned minute, the zero reading at 0.
fn heights(bag: &Bag) -> BTreeMap<u32, i64> {
    let zero = bag.zero.iter().map(|zero| (0, zero));
    let readings = bag.readings.iter().filter_map(|reading| Some((reading.planned?, reading)));
    let sure = |(_, height): &(u32, &Height)| !height.rival;
    let tenths =
        |(minute, height): (u32, &Height)| (minute, (10.0 * height.height_mm).round() as i64);
    zero.chain(readings).filter(sure).map(tenths).collect()
}
