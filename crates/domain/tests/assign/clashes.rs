//! Days on which it cannot be done: the rules that are named clash, and no fewer do.

use crate::brute::least;
use crate::days::{Like, day};
use crate::size::counts;
use barm_domain::assign::{NotAssigned, STEPS, assign};

#[test]
fn what_is_named_clashes_and_every_part_of_it_does_not() {
    let like = Like {
        periods: 2,
        groups: 2,
        questions: 2,
        bags: 3,
        uneven: true,
        rules: 9,
        stock: false,
    };
    let (mut clashes, mut seed) = (0, 0);
    while clashes < counts(20, 100, 600) {
        seed += 1;
        let day = day(seed, Like { stock: seed % 3 == 0, ..like });
        let Err(NotAssigned::Clash(clash)) = assign(&day, seed, STEPS) else { continue };
        clashes += 1;
        assert!(clash.minimal && clash.smallest, "seed {seed}");
        let all = day.rules.len();
        let only = |rules: &[usize]| {
            let active: Vec<bool> = (0..all).map(|rule| rules.contains(&rule)).collect();
            least(&day, &active).is_some()
        };
        assert!(!only(&clash.rules), "seed {seed}: {:?} can be kept", clash.rules);
        for away in &clash.rules {
            let rest: Vec<usize> = clash.rules.iter().copied().filter(|r| r != away).collect();
            assert!(only(&rest), "seed {seed}: {rest:?} of {:?} clash", clash.rules);
        }
        // No set with fewer rules clashes; of those with one less it is enough to look at all.
        let fewer = clash.rules.len().saturating_sub(1);
        for bits in 0..1_u32 << all {
            if bits.count_ones() as usize == fewer {
                let rules: Vec<usize> = (0..all).filter(|rule| bits >> rule & 1 == 1).collect();
                assert!(only(&rules), "seed {seed}: {rules:?} clash, too");
            }
        }
        for rule in &clash.rules {
            let words = day.rules[*rule].words(&day);
            assert!(words.len() > 15 && !words.ends_with('.'), "{words}");
        }
    }
    assert!(seed < 40 * clashes, "{clashes} clashes on {seed} days");
}
