//! Bags that do not belong.

use super::dealt::{day, deal, right};
use barm_science::fit::day::fit_day;
use barm_science::prior::Prior;
use barm_science::statistics::chance::Chance;

/// A zip that is not quite shut: what is left of a rise after so many minutes.
pub(crate) fn leaked(rises: Vec<f64>) -> Vec<f64> {
    let left = |minute: u32| libm::exp(-0.06 * f64::from(minute));
    rises.into_iter().zip(0..).map(|(rise, minute)| rise * left(minute)).collect()
}

#[test]
fn a_bag_that_leaks_is_named_and_hardly_counts() {
    let prior = Prior::default();
    let planned = day();
    const LEAKY: [usize; 1] = [6];
    let mut chance = Chance::from_seed(4);
    let mut bags = deal(&planned, &prior, &mut chance, |place, setup, parameters| {
        let rises = right(place, setup, parameters);
        if LEAKY.contains(&place) { leaked(rises) } else { rises }
    })
    .bags;
    let with = fit_day(&bags, &prior).expect("a day");
    for (place, unlike) in with.unlike.iter().enumerate() {
        if LEAKY.contains(&place) {
            assert!(*unlike > 0.5, "bag {place}: {unlike}");
        } else {
            assert!(*unlike < 0.5, "bag {place}: {unlike}");
        }
    }
    for place in LEAKY.into_iter().rev() {
        bags.remove(place);
    }
    let without = fit_day(&bags, &prior).expect("a day");
    for (at, name) in with.learned.names.iter().enumerate() {
        let there = without.learned.place(name).expect("the same numbers");
        let (seen, left_out) = (with.learned.means[at], without.learned.means[there]);
        let sd = without.learned.sd(there);
        assert!((seen - left_out).abs() < 0.5 * sd, "{name}: {seen} {left_out}");
    }
    assert!(with.noise < 1.3, "{}", with.noise);
}

/// On a day without leaks no bag is more likely to leak than not, whatever spoons and jugs did.
#[test]
fn bags_without_a_leak_belong() {
    let prior = Prior::default();
    for seed in 20..22 {
        let bags = deal(&day(), &prior, &mut Chance::from_seed(seed), right).bags;
        let fit = fit_day(&bags, &prior).expect("a day");
        let most = fit.unlike.iter().copied().fold(0.0, f64::max);
        assert!(most < 0.5, "seed {seed}: {most}");
    }
}
