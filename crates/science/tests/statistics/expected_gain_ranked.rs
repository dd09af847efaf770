//! Candidates for a second round ranked, and absurd ones refused.

use crate::expected_gain::candidate;
use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::expected_gain::{
    Belief, By, Candidate, Gain, GainError, gain, rank,
};

/// Two hundred candidates with a thousand draws each are ranked in far less than 5 s.
#[test]
fn two_hundred_candidates_are_ranked_at_once() {
    let mut chance = Chance::from_seed(2);
    let candidates: Vec<Candidate> = (0..200)
        .map(|at| {
            let difference = 3.0 * chance.normal();
            let draws = (0..1000).map(|_| difference + 1.6 * chance.normal()).collect();
            let belief = Belief::Draws(draws);
            Candidate { belief, ..candidate(difference, 3.0, f64::from(1 + at % 6)) }
        })
        .collect();
    let start = std::time::Instant::now();
    let gains: Vec<Gain> = candidates.iter().map(|c| gain(c).unwrap()).collect();
    let order = rank(&gains, By::ClearPerBag);
    let took = start.elapsed().as_secs_f64();
    assert!(took < 5.0, "{took} s");
    let worth: Vec<f64> = order.iter().map(|&at| gains[at].clear_per_bag()).collect();
    assert!(worth.windows(2).all(|pair| pair[0] >= pair[1]));
    let mut all = order;
    all.sort_unstable();
    assert_eq!(all, (0..200).collect::<Vec<_>>());
}

/// By hand: what costs nothing comes first, equals stay in order.
#[test]
fn ranks_by_hand() {
    let made = |clear, half_then, bags, dollars| Gain {
        half_now: 5.0,
        half_then,
        clear,
        bags,
        dollars,
    };
    let gains = [
        made(0.5, 4.0, 4.0, 1.0),
        made(0.9, 3.0, 12.0, 9.0),
        made(0.5, 4.0, 4.0, 1.0),
        made(0.1, 4.9, 2.0, 0.0),
    ];
    for (by, order) in [
        (By::Clear, [1, 0, 2, 3]),
        (By::ClearPerBag, [0, 2, 1, 3]),
        (By::ClearPerDollar, [3, 0, 2, 1]),
        (By::ShrinksPerBag, [0, 2, 1, 3]),
        (By::ShrinksPerDollar, [3, 0, 2, 1]),
    ] {
        assert_eq!(rank(&gains, by), order, "{by:?}");
    }
    assert!(rank(&[], By::Clear).is_empty());
}

/// What cannot be used is refused in words; the rest never gives what is no number.
#[test]
fn absurd_numbers_have_words_or_a_chance() {
    type Spoil = fn(&mut Candidate, f64);
    let spoils: [(Spoil, &[f64]); 10] = [
        (|c, x| c.seen.difference = x, &[f64::NAN, 1e308, -1e308, f64::INFINITY]),
        (|c, x| c.seen.sd = x, &[f64::NAN, -1.0, 1e308]),
        (|c, x| c.seen.df = x, &[f64::NAN, 0.0, -1.0, 1e308]),
        (|c, x| c.seen.bags.bags = x, &[f64::NAN, 0.0, -1.0, 1e308]),
        (|c, x| c.added.bags.bags_reference = x, &[f64::NAN, 0.0, -1.0, 1e308]),
        (|c, x| c.added.sd = x, &[f64::NAN, 0.0, -1.0, 1e308, 1e-308]),
        (|c, x| c.added.group_share = x, &[f64::NAN, -0.1, 1.1]),
        (|c, x| c.added.per_group = x, &[f64::NAN, 0.0, 1e308]),
        (|c, x| c.verdicts.pooled = x, &[f64::NAN, -0.1, 1.0]),
        (|c, x| c.verdicts.readable = x, &[f64::NAN, -0.1, 1e308]),
    ];
    for (spoil, values) in spoils {
        for &value in values {
            let mut candidate = candidate(3.0, 3.0, 3.0);
            spoil(&mut candidate, value);
            let why = gain(&candidate).unwrap_err().to_string();
            assert!(why.len() > 20, "{value}: {why}");
        }
    }
    let mut empty = candidate(3.0, 3.0, 3.0);
    empty.belief = Belief::Draws(Vec::new());
    assert_eq!(gain(&empty), Err(GainError::NoDraws));
    let mut chance = Chance::from_seed(3);
    for _ in 0..counts(100, 500, 20_000) {
        let mut size = || 10.0_f64.powf(10.0 * chance.uniform() - 5.0);
        let mut candidate = candidate(size(), 3.0, 1.0 + size().min(50.0).floor());
        candidate.seen.sd = size().min(9e5);
        candidate.added.sd = 1.0;
        candidate.belief = Belief::Draws(vec![size(), -size(), 0.0]);
        candidate.verdicts.readable = size();
        let told = gain(&candidate).unwrap();
        assert!((0.0..=1.0).contains(&told.clear), "{candidate:?} {told:?}");
        assert!(told.half_now > 0.0 && told.half_now.is_finite(), "{candidate:?} {told:?}");
        assert!(told.half_then > 0.0 && told.half_then.is_finite(), "{candidate:?} {told:?}");
    }
}
