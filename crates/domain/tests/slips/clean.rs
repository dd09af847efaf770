//! Bags with which nothing is wrong.

use crate::share::Share;
use crate::trial::{is_called, name};
use crate::{bags, classes, full, size};
use barm_domain::slip::Slip;
use std::collections::BTreeMap;
use std::time::Instant;

#[test]
fn clean_bags_are_left_alone() {
    // One run of 5,000 bags may have a third more or less than another: days are few. So the full size draws four times
    // as many.
    let count = if full() { 4 * bags() } else { bags() };
    let classes = classes("clean bags", count, &|_| 0.0);
    let (mut called, mut asked) = (Share::default(), Share::default());
    let mut kinds = BTreeMap::<String, u32>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        let all: Vec<&Slip> = bag.said.iter().flat_map(|(_, slips)| slips).collect();
        let first = all.iter().find(|slip| is_called(slip));
        called.count(first.is_some());
        asked.count(all.iter().any(|slip| !is_called(slip)));
        if let Some(slip) = first {
            *kinds.entry(name(&slip.kind)).or_default() += 1;
        }
    }
    println!("| clean bags of which anything is called in six readings | {called} |");
    println!("first called: {kinds:?}");
    println!("| clean bags whose own group alone is asked | {asked} |");
    called.under(0.02, full(), "clean bags called");
}

/// Five classes a day of 26 bags, each with seven heights.
#[test]
fn a_day_is_weighed_in_no_time() {
    let made = crate::school::treatments(Some(crate::KNOWN));
    let day = classes("a day", size::counts(26, 130, 130), &|_| 0.0);
    let bags: Vec<Vec<_>> = day
        .iter()
        .map(|class| class.bags.iter().map(|bag| bag.read.clone()).collect())
        .collect();
    let began = Instant::now();
    let weighed: usize =
        bags.iter().map(|bags| crate::watch::look(bags, &made, 24, false).0.len()).sum();
    println!("{weighed} bags weighed in {:.1} ms", 1000.0 * began.elapsed().as_secs_f64());
    assert!(weighed >= 26);
}
