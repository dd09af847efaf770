//! What a second round is expected to bring, against simulated second rounds.

use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, How, compare};
use barm_science::statistics::distribution::{noncentral_student, normal, student};
use barm_science::statistics::expected_gain::{
    Added, Belief, Candidate, Gain, Seen, Verdicts, gain,
};
use barm_science::statistics::second_look::Sides;

/// A question after round one with `before` bags a side, and `bags` a side that would be added.
pub(crate) fn candidate(difference: f64, before: f64, bags: f64) -> Candidate {
    Candidate {
        seen: Seen { difference, sd: 2.0, df: 4.0, bags: Sides::even(before) },
        belief: Belief::Normal { mean: difference, sd: 2.0 * (2.0 / before).sqrt() },
        added: Added {
            bags: Sides::even(bags),
            sd: 2.0,
            per_group: 1.0,
            group_share: 0.0,
            dollars: 0.5 * bags,
        },
        verdicts: Verdicts { first: 0.05, pooled: 0.037, readable: 0.0 },
    }
}

/// One simulated second round, bag by bag: whether both rounds are clear, and the squared half width at
/// the level of the first look; `factors` are Student's at the levels of the first and the pooled look.
fn round_two(chance: &mut Chance, candidate: &Candidate, factors: (f64, f64)) -> (bool, f64) {
    let Candidate { seen, belief, added, verdicts } = candidate;
    let truth = match belief {
        Belief::Normal { mean, sd } => mean + sd * chance.normal(),
        Belief::Draws(draws) => draws[chance.below(draws.len())],
    };
    let mut side = |bags: f64, mean: f64| {
        let values: Vec<f64> =
            (0..bags as usize).map(|_| mean + added.sd * chance.normal()).collect();
        let middle = values.iter().sum::<f64>() / bags;
        (middle, values.iter().map(|v| (v - middle) * (v - middle)).sum::<f64>())
    };
    let (treated, reference) =
        (side(added.bags.bags, truth), side(added.bags.bags_reference, 0.0));
    let information = |sides: Sides| 1.0 / (1.0 / sides.bags + 1.0 / sides.bags_reference);
    let (first, second) = (information(seen.bags), information(added.bags));
    let (d1, d2) = (seen.difference, treated.0 - reference.0);
    let pooled = (first * d1 + second * d2) / (first + second);
    let df = seen.df + added.bags.bags + added.bags.bags_reference - 1.0;
    let squares = seen.df * seen.sd * seen.sd
        + treated.1
        + reference.1
        + (d2 - d1) * (d2 - d1) * first * second / (first + second);
    let se = (squares / df / (first + second)).sqrt();
    let half = factors.0 * se;
    (pooled.abs() > factors.1 * se && pooled.abs() >= verdicts.readable, half * half)
}

fn several() -> Vec<Candidate> {
    let draws: Vec<f64> = vec![-1.0, 0.5, 2.0, 2.5, 3.0, 40.0];
    let mut unlike = candidate(2.0, 3.0, 2.0);
    unlike.seen.sd = 0.7;
    unlike.added.sd = 3.0;
    let mut readable = candidate(3.0, 2.0, 3.0);
    readable.verdicts.readable = 3.0;
    let mut uneven = candidate(-4.0, 3.0, 1.0);
    uneven.added.bags = Sides { bags: 2.0, bags_reference: 1.0 };
    vec![
        candidate(3.0, 3.0, 3.0),
        candidate(3.0, 2.0, 1.0),
        candidate(0.0, 2.0, 6.0),
        Candidate { belief: Belief::Normal { mean: 5.0, sd: 0.0 }, ..candidate(1.0, 2.0, 4.0) },
        Candidate { belief: Belief::Draws(draws), ..candidate(2.0, 3.0, 2.0) },
        unlike,
        readable,
        uneven,
    ]
}

/// Brute force: rounds simulated bag by bag and judged by the textbook.
#[test]
fn simulated_second_rounds_are_clear_as_often_as_is_said() {
    let rounds = counts(10_000, 30_000, 1_000_000);
    let mut chance = Chance::from_seed(1);
    for candidate in several() {
        let expected = gain(&candidate).unwrap();
        let df = candidate.seen.df + expected.bags - 1.0;
        let factor = |level: f64| student::upper_quantile(0.5 * level, df);
        let factors = (factor(candidate.verdicts.first), factor(candidate.verdicts.pooled));
        let (mut clear, mut half, mut twice) = (0.0, 0.0, 0.0);
        for _ in 0..rounds {
            let (found, square) = round_two(&mut chance, &candidate, factors);
            clear += f64::from(u8::from(found));
            half += square;
            twice += square * square;
        }
        let n = f64::from(rounds);
        let (clear, half) = (clear / n, half / n);
        let error = 4.0 * (clear * (1.0 - clear) / n).sqrt() + 4.0 / n;
        assert!((clear - expected.clear).abs() < error, "{candidate:?}: {clear} {expected:?}");
        let error = 5.0 * ((twice / n - half * half) / n).sqrt() + 1e-9 * half;
        let ours = expected.half_then * expected.half_then;
        assert!((half - ours).abs() < error, "{candidate:?}: {half} {ours}");
    }
}

/// The comparison that judges a class, given the bags of both rounds with the round as block, has the
/// difference, standard error and degrees of freedom that the simulated rounds rest on.
#[test]
fn both_rounds_are_compared_as_a_class_is() {
    let rounds = [([4.0, 7.0, 5.5], [1.0, 3.0, 2.5]), ([9.0, 8.0, 6.0], [4.5, 2.0, 4.0])];
    let mut bags = Vec::new();
    for (block, (treated, reference)) in rounds.iter().enumerate() {
        for (treatment, values) in [(1, treated), (0, reference)] {
            for &value in values {
                bags.push(BagValue { value, treatment, block, group: bags.len() });
            }
        }
    }
    let told = compare(&bags, &Compared::Reference(0), &How::default());
    let told = told.contrasts[0].outcome.clone().unwrap();
    let mean = |values: &[f64; 3]| values.iter().sum::<f64>() / 3.0;
    let squares =
        |values: &[f64; 3]| values.iter().map(|v| (v - mean(values)).powi(2)).sum::<f64>();
    let d: Vec<f64> = rounds.iter().map(|(t, r)| mean(t) - mean(r)).collect();
    let inside: f64 = rounds.iter().map(|(t, r)| squares(t) + squares(r)).sum();
    let df = 9.0;
    let se = ((inside + (d[1] - d[0]).powi(2) * 0.75) / df / 3.0).sqrt();
    assert!((told.difference - 0.5 * (d[0] + d[1])).abs() < 1e-12, "{told:?}");
    assert!((told.df - df).abs() < 1e-9 && (told.se - se).abs() < 1e-12, "{told:?} {se}");
}

/// Exact: a spread as good as known makes assurance a sum of two normal chances (Spiegelhalter &
/// Freedman 1986).
#[test]
fn with_a_known_spread_assurance_is_a_normal_chance() {
    for (seen, mean, sd, n) in
        [(1.0, 1.0, 0.8, 5.0), (0.0, 0.4, 0.3, 9.0), (-2.0, -1.0, 0.0, 3.0)]
    {
        let mut candidate = candidate(seen, 4.0, n);
        candidate.seen.df = 1e6;
        candidate.belief = Belief::Normal { mean, sd };
        let (first, second) = (2.0, 0.5 * n);
        let follows = second / (first + second);
        let middle = seen + follows * (mean - seen);
        let spread = follows * (sd * sd + 4.0 / second).sqrt();
        let bound = -normal::quantile(0.5 * 0.037) * 2.0 / (first + second).sqrt();
        let exact =
            normal::cdf((middle - bound) / spread) + normal::cdf((-bound - middle) / spread);
        let ours = gain(&candidate).unwrap().clear;
        assert!((ours - exact).abs() < 2e-6, "{seen}: {ours} {exact}");
    }
}

/// Exact: where round one weighs nothing beside round two and the truth is known, the chance is the
/// power of round two's own t.
#[test]
fn a_round_one_that_weighs_nothing_leaves_the_power_of_round_two() {
    let mut candidate = candidate(0.0, 1.0, 4000.0);
    let truth = 0.15;
    candidate.belief = Belief::Normal { mean: truth, sd: 0.0 };
    let ours = gain(&candidate).unwrap().clear;
    // Round one's difference of 0 draws the pooled one down by a 4001st part.
    let se = 2.0 * (2.0 / 4001.0_f64).sqrt();
    let delta = truth * 4000.0 / 4001.0 / se;
    let c = student::upper_quantile(0.5 * 0.037, 8003.0);
    let (above, below) = noncentral_student::beyond(c, 0.0, 8003.0, delta);
    assert!((ours - above - below).abs() < 5e-4, "{ours} {above}");
}

/// Draws from the normal distribution believed say what it says; so do equally likely ends of its
/// quantiles.
#[test]
fn draws_say_what_their_distribution_says() {
    let normal = candidate(3.0, 3.0, 3.0);
    let Belief::Normal { mean, sd } = normal.belief else { panic!("a normal belief") };
    let draws: Vec<f64> = (0..1000)
        .map(|i| mean + sd * normal::quantile((f64::from(i) + 0.5) / 1000.0))
        .collect();
    let by_draws = Candidate { belief: Belief::Draws(draws), ..normal };
    let (a, b) = (gain(&normal).unwrap(), gain(&by_draws).unwrap());
    assert!((a.clear - b.clear).abs() < 1e-3, "{a:?} {b:?}");
    assert!((a.half_then / b.half_then - 1.0).abs() < 1e-3);
    // The order of draws is nothing.
    let one =
        |draws| gain(&Candidate { belief: Belief::Draws(draws), ..normal.clone() }).unwrap();
    assert_eq!(one(vec![1.0, 5.0, 2.0]), one(vec![2.0, 1.0, 5.0]));
    // One draw is a difference taken as known.
    let known = Candidate { belief: Belief::Normal { mean: 2.0, sd: 0.0 }, ..normal.clone() };
    assert!((one(vec![2.0]).clear - gain(&known).unwrap().clear).abs() < 1e-12);
}

/// More bags, a surer level, less spread: all bring more. No second verdict is never clear.
#[test]
fn whatever_tells_more_brings_more() {
    let brings = |candidate: &Candidate| gain(candidate).unwrap();
    let mut last = Gain { half_then: f64::INFINITY, clear: 0.0, ..brings(&several()[0]) };
    // One further bag a side: the most room is at 0.25 e + 1.5 with e = 1.61, and falls short.
    assert_eq!(brings(&candidate(3.0, 3.0, 1.0)).clear.to_bits(), 0.0_f64.to_bits());
    for bags in 2..12 {
        let now = brings(&candidate(3.0, 3.0, f64::from(bags)));
        assert!(now.clear > last.clear && now.half_then < last.half_then, "{bags}: {now:?}");
        assert!((now.half_now - last.half_now).abs() < 1e-12);
        // By hand: Student's 2.776 for 4 degrees of freedom, times 2 √(2/3).
        assert!((now.half_now - 2.776_445_105 * 2.0 * (2.0_f64 / 3.0).sqrt()).abs() < 1e-8);
        assert!((now.shrinks_per_bag() * 2.0 * f64::from(bags) - now.shrinks()).abs() < 1e-12);
        let per_dollar = now.clear_per_dollar().unwrap();
        assert!((per_dollar * 0.5 * f64::from(bags) - now.clear).abs() < 1e-12);
        last = now;
    }
    let base = candidate(3.0, 3.0, 3.0);
    let mut stricter = base.clone();
    stricter.verdicts.pooled = 0.01;
    let mut wider = base.clone();
    wider.added.sd = 4.0;
    let mut grouped = base.clone();
    (grouped.added.per_group, grouped.added.group_share) = (3.0, 0.4);
    for less in [&stricter, &wider, &grouped] {
        assert!(brings(less).clear < brings(&base).clear, "{less:?}");
    }
    let mut none = base.clone();
    none.verdicts.pooled = 0.0;
    assert_eq!(brings(&none).clear.to_bits(), 0.0_f64.to_bits());
    let mut free = base;
    free.added.dollars = 0.0;
    assert_eq!(
        (brings(&free).clear_per_dollar(), brings(&free).shrinks_per_dollar()),
        (None, None)
    );
}

/// The unit changes nothing.
#[test]
fn the_unit_does_not_matter() {
    for candidate in several() {
        let first = gain(&candidate).unwrap();
        for scale in [1e-40, 25.4, -1.0, 1e60] {
            let size = f64::abs(scale);
            let mut other = candidate.clone();
            other.seen.difference *= scale;
            other.seen.sd *= size;
            other.added.sd *= size;
            other.verdicts.readable *= size;
            other.belief = match other.belief {
                Belief::Normal { mean, sd } => {
                    Belief::Normal { mean: mean * scale, sd: sd * size }
                }
                Belief::Draws(draws) => {
                    Belief::Draws(draws.iter().map(|d| d * scale).collect())
                }
            };
            let other = gain(&other).unwrap();
            assert!((other.clear - first.clear).abs() < 1e-9, "{candidate:?} {scale}");
            assert!((other.half_then / size / first.half_then - 1.0).abs() < 1e-12);
            assert!((other.half_now / size / first.half_now - 1.0).abs() < 1e-12);
        }
    }
}
