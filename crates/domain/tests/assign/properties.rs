//! What must be true of any day.

use crate::days::{Like, day};
use crate::size::counts;
use barm_domain::assign::day::Day;
use barm_domain::assign::rule::Rule;
use barm_domain::assign::{NotAssigned, Price, STEPS, Worth, assign, check};
use std::collections::BTreeSet;

const CLASS: Like = Like {
    periods: 5,
    groups: 10,
    questions: 4,
    bags: 4,
    uneven: false,
    rules: 6,
    stock: false,
};

/// The worth of a day and whether none is better, if it can be done.
fn found(day: &Day, seed: u64) -> Option<(Worth, bool)> {
    match assign(day, seed, STEPS) {
        Ok(found) => Some((found.worth, found.proven)),
        Err(NotAssigned::Clash(_)) => None,
        Err(other) => panic!("seed {seed}: {other}"),
    }
}

/// The best worth of a day, if it can be done.
fn worth(day: &Day, seed: u64) -> Option<Worth> {
    let (worth, proven) = found(day, seed)?;
    assert!(proven, "seed {seed}");
    Some(worth)
}

fn days() -> impl Iterator<Item = (u64, Day)> {
    (0..counts(50, 60, 600)).map(|seed| (seed, day(seed, CLASS)))
}

#[test]
fn another_order_of_groups_and_another_seed_change_no_worth() {
    for (seed, day) in days() {
        let own = worth(&day, seed);
        assert_eq!(own, worth(&day, seed + 1000), "seed {seed}");
        let mut turned = day.clone();
        turned.groups.reverse();
        let last = day.groups.len() - 1;
        for rule in &mut turned.rules {
            match rule {
                Rule::Set { group, .. } | Rule::Never { group, .. } | Rule::Bags { group } => {
                    *group = last - *group;
                }
                _ => {}
            }
        }
        assert_eq!(own, worth(&turned, seed), "seed {seed}");
    }
}

/// A day that is not proven the best within the limit of steps is held against nothing; there are few.
#[test]
fn more_of_anything_never_makes_it_worse() {
    let (mut all, mut proven) = (0, 0);
    for (seed, day) in days() {
        let own = found(&day, seed);
        let mut more = day.clone();
        for rule in &mut more.rules {
            match rule {
                Rule::Most { groups, .. } => *groups += 1,
                Rule::Least { groups, .. } => *groups -= 1,
                Rule::Tools { bags, .. } => *bags += 3,
                _ => {}
            }
        }
        let then = found(&more, seed);
        all += 1;
        match (own, then) {
            (Some((own, true)), Some((then, true))) => {
                assert!(then <= own, "seed {seed}");
                proven += 1;
            }
            (Some(_), Some(_)) => {}
            (Some(_), None) => panic!("seed {seed}: it could be done with less"),
            (None, _) => proven += 1,
        }
    }
    assert!(20 * (all - proven) <= all, "{proven} of {all} proven");
}

#[test]
fn one_seed_gives_one_answer_and_every_bench_is_taken_once() {
    for (seed, day) in days() {
        let Ok(found) = assign(&day, seed, STEPS) else { continue };
        assert_eq!(found, assign(&day, seed, STEPS).unwrap());
        assert_eq!(check(&day, &found), Vec::<String>::new());
        for period in 0..day.periods.len() {
            let own = found.groups.iter().zip(&day.groups);
            let own: Vec<_> =
                own.filter(|(_, group)| group.period == period).map(|(made, _)| made).collect();
            let all: BTreeSet<u32> = (1..=own.len() as u32).collect();
            assert_eq!(own.iter().map(|made| made.place).collect::<BTreeSet<_>>(), all);
            assert_eq!(own.iter().map(|made| made.turn).collect::<BTreeSet<_>>(), all);
        }
    }
}

/// The second check sees what is wrong: it is not asked in vain.
#[test]
fn an_answer_that_is_tampered_with_is_noticed() {
    let mut tried = 0;
    for (seed, day) in days() {
        let Ok(found) = assign(&day, seed, STEPS) else { continue };
        let mut better = found.clone();
        better.bound.missing += 1;
        better.bound.regret += 1;
        assert!(!check(&day, &better).is_empty(), "seed {seed}: its bound");
        let mut cheaper = found.clone();
        cheaper.worth.regret += 1;
        assert!(!check(&day, &cheaper).is_empty(), "seed {seed}: its worth");
        let mut fewer = found.clone();
        fewer.groups[0].bags.pop();
        assert!(!check(&day, &fewer).is_empty(), "seed {seed}: a bag is gone");
        let g = found.groups.iter().zip(&day.groups).position(|(made, group)| {
            day.arms[made.arm].reference.is_some() && group.bags >= 2
        });
        if let Some(g) = g {
            let arm = &day.arms[found.groups[g].arm];
            let mut without = found.clone();
            for bag in &mut without.groups[g].bags {
                if arm.reference == Some(*bag) {
                    *bag = arm.treatments[0];
                }
            }
            assert!(!check(&day, &without).is_empty(), "seed {seed}: its control is gone");
            tried += 1;
        }
    }
    assert!(tried > 5);
}

/// A price is what the same day is worth once the wish is a rule.
#[test]
fn prices_are_what_a_rule_would_cost() {
    let mut priced = 0;
    for (seed, day) in days().take(30) {
        let Ok(found) = assign(&day, seed, STEPS) else { continue };
        for broken in &found.broken {
            let mut with = day.clone();
            with.rules.push(Rule::Set { group: broken.group, question: broken.wanted });
            let then = worth(&with, seed);
            match (&broken.price, then) {
                (Price::Costs { missing, short, others, proven: true }, Some(then)) => {
                    let own = day.groups[broken.group].regret(broken.gets) as i64;
                    let now = &found.worth;
                    assert_eq!(then.missing as i64 - now.missing as i64, *missing);
                    assert_eq!(then.short as i64 - now.short as i64, *short);
                    assert_eq!(then.regret as i64 - now.regret as i64 + own, *others);
                    // A wish that costs nobody anything is served.
                    assert!((*missing, *short, *others - own) >= (0, 0, 0), "seed {seed}");
                    priced += 1;
                }
                (Price::Costs { proven: false, .. }, Some(_)) => {}
                (Price::Clashes(clash), None) => assert!(!clash.rules.is_empty()),
                (price, then) => panic!("seed {seed}: {price:?} and {then:?}"),
            }
        }
    }
    assert!(priced >= 5, "{priced}");
}
