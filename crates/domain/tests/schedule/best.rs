//! Waves and queues against every other way of doing it, on sizes where all ways can be tried.

use crate::school::{as_planned, plan};
use crate::size::counts;
use barm_domain::schedule::{Queue, RUN_MIN, Task, Waiting, queue};
use proptest::prelude::*;
use proptest::test_runner::TestCaseResult;

fn config(quick: u32, ci: u32, long: u32) -> ProptestConfig {
    let cases = counts(quick, ci, long);
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

/// All orders of some things.
fn orders(of: &[usize]) -> Vec<Vec<usize>> {
    if of.is_empty() {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for (place, first) in of.iter().enumerate() {
        let mut rest = of.to_vec();
        rest.remove(place);
        all.extend(orders(&rest).into_iter().map(|mut order| {
            order.insert(0, *first);
            order
        }));
    }
    all
}

/// Whether bags can all have a turn in this order, each at the meter that is free first.
fn can(order: &[usize], waiting: &[Waiting], meters: usize, end: f64) -> bool {
    let mut free = vec![0.0_f64; meters];
    order.iter().all(|bag| {
        free.sort_by(f64::total_cmp);
        free[0] = free[0].max(waiting[*bag].ready_min) + RUN_MIN;
        free[0] <= end + 1e-6
    })
}

/// Bags of each tier in the best set of all.
fn best(waiting: &[Waiting], meters: usize, end: f64) -> [usize; 3] {
    let sets = 0..(1_usize << waiting.len());
    let of = |set: usize| (0..waiting.len()).filter(|bag| (set >> bag) & 1 == 1).collect();
    let sets = sets.map(of).filter(|set: &Vec<usize>| {
        orders(set).iter().any(|order| can(order, waiting, meters, end))
    });
    sets.map(|set| tiers(set.into_iter(), waiting)).max().unwrap_or_default()
}

fn tiers(set: impl Iterator<Item = usize>, waiting: &[Waiting]) -> [usize; 3] {
    let mut counted = [0; 3];
    set.for_each(|bag| counted[waiting[bag].tier as usize] += 1);
    counted
}

fn queue_is_best(waiting: &[Waiting], meters: u32, end: f64) -> TestCaseResult {
    let found = queue(waiting, meters, end);
    let got = tiers(found.runs.iter().map(|(bag, ..)| *bag), waiting);
    prop_assert_eq!(got, best(waiting, meters as usize, end), "{:?}", found);
    let mut all: Vec<usize> = found.runs.iter().map(|(bag, ..)| *bag).collect();
    all.extend(&found.left);
    all.sort_unstable();
    prop_assert_eq!(all, (0..waiting.len()).collect::<Vec<_>>(), "each once");
    for (place, (bag, meter, at)) in found.runs.iter().enumerate() {
        prop_assert!(*at >= waiting[*bag].ready_min - 1e-9 && at + RUN_MIN <= end + 1e-5);
        prop_assert!((1..=meters).contains(meter));
        for (_, other, later) in &found.runs[place + 1..] {
            prop_assert!(other != meter || *later >= at + RUN_MIN - 1e-9, "{:?}", found);
        }
    }
    Ok(())
}

/// The least largest sum of neighbors in so many runs, by trying every cut.
fn least_largest(bags: &[usize], runs: usize) -> usize {
    if runs <= 1 || bags.len() <= 1 {
        return bags.iter().sum();
    }
    (1..=bags.len())
        .map(|cut| {
            let first: usize = bags[..cut].iter().sum();
            if cut == bags.len() {
                first
            } else {
                first.max(least_largest(&bags[cut..], runs - 1))
            }
        })
        .min()
        .unwrap_or_default()
}

proptest! {
    #![proptest_config(config(40, 150, 1000))]

    /// No set of bags with more of the first tiers could have had its turn.
    #[test]
    fn no_other_queue_loses_less(
        bags in prop::collection::vec((0u32..12, 0u32..3), 0..6),
        meters in 1u32..3,
        end in 0u32..16,
    ) {
        // Half minutes, as bags come from their readings.
        let waiting: Vec<Waiting> = bags
            .iter()
            .map(|(ready, tier)| Waiting { ready_min: 0.5 * f64::from(*ready), tier: *tier })
            .collect();
        queue_is_best(&waiting, meters, 0.5 * f64::from(end))?;
    }

    /// Where groups pour, nothing is lost by waves, and no other split into as many neighbors has a
    /// smaller largest wave.
    #[test]
    fn no_other_waves_are_more_even(
        bench in 0usize..4,
        groups in prop::collection::vec(1usize..5, 1..9),
        length in 30u32..60,
        interval in 2u32..9,
    ) {
        let mut plan = plan(bench, &groups);
        plan.periods[0].length_min = f64::from(length);
        plan.timing.interval_min = f64::from(interval);
        let course = as_planned(&plan);
        let window = f64::from(length) - 20.0;
        let last = f64::from(interval) * (window / f64::from(interval)).floor();
        let waves = (0..20)
            .filter(|wave| {
                let later = 0.5 * f64::from(*wave);
                later + last <= window && later < f64::from(interval)
            })
            .count();
        prop_assert_eq!(course.lost(), (0, 0));
        let bags: Vec<usize> =
            Some(bench).into_iter().filter(|bags| *bags > 0).chain(groups).collect();
        let own = |groups: &Vec<u32>| {
            let zero = |group: &u32| {
                let of = course.turns.iter();
                of.filter(|turn| turn.task == Task::Zero && turn.group == *group).count()
            };
            groups.iter().map(zero).sum::<usize>()
        };
        let largest = course.waves.iter().map(|wave| own(&wave.groups)).max();
        prop_assert_eq!(largest, Some(least_largest(&bags, waves)));
    }

    /// Where the teacher pours bench by bench, no other order behind the controls loses fewer readings.
    #[test]
    fn no_other_order_at_the_jug_loses_less(
        groups in prop::collection::vec(1usize..5, 1..7),
        length in 30u32..50,
        interval in 2u32..6,
    ) {
        let mut plan = plan(2, &groups);
        plan.base.water_celsius = 46.0;
        plan.periods[0].length_min = f64::from(length);
        plan.timing.interval_min = f64::from(interval);
        let lost = |order: &[usize]| -> usize {
            let window = f64::from(length) - 20.0;
            let step = f64::from(interval);
            let planned = (window / step).floor() as u32;
            let late = |start: f64| {
                (0..=planned).filter(|n| start + step * f64::from(*n) > window + 1e-6).count()
            };
            let benches = (1..).zip(order);
            benches.map(|(wave, bench)| groups[*bench] * late(0.5 * f64::from(wave))).sum()
        };
        let all: Vec<usize> = (0..groups.len()).collect();
        let least = orders(&all).iter().map(|order| lost(order)).min();
        prop_assert_eq!(Some(as_planned(&plan).lost().0), least);
    }
}

#[test]
fn a_queue_without_meters_time_or_bags() {
    let one = [Waiting { ready_min: 5.0, tier: 0 }];
    assert_eq!(queue(&one, 0, 60.0).left, [0]);
    assert_eq!(queue(&one, 4, 5.9).left, [0]);
    assert_eq!(queue(&one, 4, f64::NAN).left, [0]);
    assert_eq!(queue(&one, u32::MAX, 6.0).runs, [(0, 1, 5.0)]);
    assert_eq!(queue(&[], 1, 60.0), Queue::default());
}
