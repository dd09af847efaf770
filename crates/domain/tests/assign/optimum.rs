//! On small days the answer is as good as the best of all ways, and says so truly.

use crate::brute::least;
use crate::days::{Like, day};
use crate::size::counts;
use barm_domain::assign::{NotAssigned, STEPS, assign, check};

const SMALL: Like = Like {
    periods: 2,
    groups: 3,
    questions: 3,
    bags: 3,
    uneven: false,
    rules: 4,
    stock: false,
};

/// How many days had an answer, and how many of those were said to be proven.
fn held(like: Like, days: u64) -> (u64, u64) {
    let (mut answered, mut proven) = (0, 0);
    for seed in 0..days {
        let day = day(seed, like);
        let best = least(&day, &vec![true; day.rules.len()]);
        match assign(&day, seed, STEPS) {
            Ok(found) => {
                answered += 1;
                proven += u64::from(found.proven);
                assert_eq!(check(&day, &found), Vec::<String>::new(), "seed {seed}");
                let own = &found.worth;
                let own = (own.missing, own.short, own.regret, own.uneven);
                let best = best.unwrap_or_else(|| panic!("seed {seed}: it cannot be done"));
                let three = |all: (u64, u64, u64, u64)| (all.0, all.1, all.2);
                assert!(own >= best || like.uneven && three(own) >= three(best), "seed {seed}");
                let bound = &found.bound;
                let bound = (bound.missing, bound.short, bound.regret, bound.uneven);
                assert!(bound <= best, "seed {seed}: bound {bound:?}, best {best:?}");
                if found.proven {
                    assert_eq!(three(own), three(best), "seed {seed}");
                    if day.groups.windows(2).all(|two| two[0].bags == two[1].bags) {
                        assert_eq!(own, best, "seed {seed}");
                    }
                }
            }
            Err(NotAssigned::Clash(_)) => assert_eq!(best, None, "seed {seed}"),
            Err(other) => panic!("seed {seed}: {other}"),
        }
    }
    assert!(answered * 4 > days, "{answered} of {days} days had an answer");
    (answered, proven)
}

#[test]
fn days_of_groups_with_as_many_bags_each() {
    let (answered, proven) = held(SMALL, counts(60, 150, 3000));
    assert_eq!(answered, proven);
}

#[test]
fn days_of_groups_with_different_numbers_of_bags() {
    let like = Like { uneven: true, groups: 2, ..SMALL };
    let (answered, proven) = held(like, counts(60, 150, 3000));
    assert!(proven * 20 >= answered * 19, "{proven} of {answered} proven");
}

#[test]
fn days_on_which_a_material_is_short() {
    let like = Like { stock: true, groups: 2, rules: 1, ..SMALL };
    let (answered, proven) = held(like, counts(60, 150, 3000));
    assert!(proven * 10 >= answered * 8, "{proven} of {answered} proven");
}
