//! Invented classes with groups as chance, and what the program makes of them.

use crate::speed::quartiles;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, How, compare};
use serde_json::{Value, json};
use std::hint::black_box;

/// Treatments, the reference counted.
const TREATMENTS: usize = 4;

/// A class of so many periods and groups, every bag of it, with its differences from the reference and the
/// time that one comparison takes (µs), out of `count`.
pub(crate) fn class(periods: usize, groups: usize, count: usize) -> Value {
    let bags = bags(periods, groups);
    let reference = Compared::Reference(0);
    let how = How::default();
    let time = quartiles(count, || {
        black_box(compare(black_box(&bags), &reference, &how));
    });
    let found = compare(&bags, &reference, &how);
    let made = || found.contrasts.iter().filter_map(|one| one.outcome.as_ref().ok());
    let variances = found.variances.expect("groups that tell their variance");
    json!({
        "value": bags.iter().map(|bag| bag.value).collect::<Vec<_>>(),
        "treatment": bags.iter().map(|bag| bag.treatment).collect::<Vec<_>>(),
        "period": bags.iter().map(|bag| bag.block).collect::<Vec<_>>(),
        "group": bags.iter().map(|bag| bag.group).collect::<Vec<_>>(),
        "difference": made().map(|one| one.difference).collect::<Vec<_>>(),
        "sd_bag": variances.bag,
        "sd_group": variances.group,
        "us": time["us"],
    })
}

/// Each group makes one to three bags of a treatment and, every other time, one of the reference.
fn bags(periods: usize, groups: usize) -> Vec<BagValue> {
    let mut chance = Chance::from_seed(11);
    let mut bags = Vec::new();
    for block in 0..periods {
        let day = 20.0 + 5.0 * chance.normal();
        for place in 0..groups {
            let habit = 2.0 * chance.normal();
            let group = groups * block + place;
            let mut add = |treatment: usize, chance: &mut Chance| {
                let value = day + habit + treatment as f64 + 3.0 * chance.normal();
                bags.push(BagValue { value, treatment, block, group });
            };
            for _ in 0..1 + chance.below(3) {
                add(1 + place % (TREATMENTS - 1), &mut chance);
            }
            if chance.uniform() < 0.5 {
                add(0, &mut chance);
            }
        }
    }
    bags
}
