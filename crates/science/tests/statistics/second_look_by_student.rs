//! Levels of two looks by Student's t with few degrees of freedom, against simulated classes.

use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::distribution::multivariate_t::LargestOfSeveral;
use barm_science::statistics::distribution::student;
use barm_science::statistics::distribution::two_students::TwoStudents;
use barm_science::statistics::second_look::{
    FIRST_OF_TWO, Levels, Rule, Sides, TOTAL, TwoLooks, share_of_bags,
};

/// Bags of each side in round one and in round two.
type Rounds = (u32, u32);

/// Two rounds of one treatment beside its reference, in t of the first look, of round two alone and of
/// the pooled look, and their degrees of freedom.
struct Class {
    first: f64,
    second: f64,
    pooled: f64,
}

fn degrees((n, m): Rounds) -> (f64, f64) {
    (f64::from(2 * n - 2), f64::from(2 * n + 2 * m - 3))
}

/// The bags themselves, and from them the textbook's sums; `gap` in standard deviations of a bag.
fn class(chance: &mut Chance, rounds: Rounds, gap: f64) -> Class {
    let mut round = |bags: u32| {
        let mut side = |mean: f64| {
            let values: Vec<f64> = (0..bags).map(|_| mean + chance.normal()).collect();
            let middle = values.iter().sum::<f64>() / f64::from(bags);
            (middle, values.iter().map(|v| (v - middle) * (v - middle)).sum::<f64>())
        };
        let (treated, reference) = (side(gap), side(0.0));
        (treated.0 - reference.0, treated.1 + reference.1, 0.5 * f64::from(bags))
    };
    let ((d1, s1, i1), (d2, s2, i2)) = (round(rounds.0), round(rounds.1));
    let (df1, df) = degrees(rounds);
    let both = i1 + i2;
    let squares = s1 + s2 + (d2 - d1) * (d2 - d1) * i1 * i2 / both;
    Class {
        first: d1 / (s1 / df1 / i1).sqrt(),
        second: d2 / (s2 / f64::from((2 * rounds.1).saturating_sub(2)) / i2).sqrt(),
        pooled: (i1 * d1 + i2 * d2) / both / (squares / df / both).sqrt(),
    }
}

fn looks(rounds: Rounds) -> TwoLooks {
    let even = |n: u32| Sides::even(f64::from(n));
    let share = share_of_bags(even(rounds.0), even(rounds.1)).unwrap();
    TwoLooks::new(share, TOTAL).unwrap()
}

fn by_student(rounds: Rounds) -> TwoLooks {
    let (first, pooled) = degrees(rounds);
    looks(rounds).by_student(first, pooled).unwrap()
}

fn bounds(levels: Levels, (first, pooled): (f64, f64)) -> (f64, f64) {
    let bound = |level: f64, df| {
        if level > 0.0 { student::upper_quantile(0.5 * level, df) } else { f64::INFINITY }
    };
    (bound(levels.first, first), bound(levels.pooled, pooled))
}

/// NumPy 2.4.6, 4 million classes for each: how often two looks with t at nominal levels of normal
/// values are wrong, for 2 to 16 bags a side and round.
#[test]
fn nominal_levels_with_t_are_wrong_as_often_as_numpy_counts() {
    let error = 4.0 * (0.05 * 0.95 / 4e6_f64).sqrt();
    for (n, both, pocock, fleming, four, two, one) in [
        (2, 0.08921, 0.05396, 0.05183, 0.05259, 0.05398, 0.05293),
        (3, 0.08650, 0.05246, 0.05123, 0.05136, 0.05263, 0.05200),
        (4, 0.08570, 0.05190, 0.05115, 0.05118, 0.05209, 0.05168),
        (5, 0.08513, 0.05154, 0.05102, 0.05080, 0.05171, 0.05146),
        (6, 0.08469, 0.05118, 0.05067, 0.05061, 0.05132, 0.05108),
        (8, 0.08425, 0.05086, 0.05066, 0.05045, 0.05100, 0.05093),
        (16, 0.08360, 0.05044, 0.05023, 0.05019, 0.05050, 0.05035),
    ] {
        let (normal, student) = (looks((n, n)), by_student((n, n)));
        let at = |first| normal.levels(Rule::FirstAt(first));
        for (levels, counted) in [
            (Levels { first: 0.05, pooled: 0.05 }, both),
            (Levels { first: 0.0294, pooled: 0.0294 }, pocock),
            (Levels { first: 0.00518, pooled: 0.04798 }, fleming),
            (at(0.04), four),
            (at(0.02), two),
            (at(0.01), one),
        ] {
            let ours = student.false_clear(levels);
            assert!((ours - counted).abs() < error, "{n} {levels:?}: {ours} against {counted}");
        }
    }
}

/// Simulated classes from their bags: with levels for their own degrees of freedom, 5 in 100; with those
/// of normal values carried over, what the formula says, and from 6 degrees of freedom on never more
/// than 5.25.
#[test]
fn simulated_classes_with_few_bags_are_told_something_false_as_often_as_is_said() {
    let classes = counts(8000, 30_000, 1_500_000);
    let error = 4.0 * (0.05 * 0.95 / f64::from(classes)).sqrt();
    let mut chance = Chance::from_seed(11);
    for rounds in [(2, 2), (4, 4), (4, 1), (3, 6), (6, 3), (8, 8), (16, 16)] {
        let rules = [Rule::Pocock, Rule::OBrienFleming, Rule::FirstAt(FIRST_OF_TWO)];
        let exact = by_student(rounds);
        let (mut told, mut expected) = (Vec::new(), Vec::new());
        for rule in rules {
            let carried = looks(rounds).levels(rule);
            for levels in [exact.levels(rule), carried] {
                told.push(bounds(levels, degrees(rounds)));
                expected.push(exact.false_clear(levels));
            }
            assert!(expected[expected.len() - 1] < 0.0525 || degrees(rounds).0 < 6.0);
            assert!((expected[expected.len() - 2] - TOTAL).abs() < 1e-9);
        }
        let mut wrong = vec![0.0; told.len()];
        for _ in 0..classes {
            let class = class(&mut chance, rounds, 0.0);
            for (wrong, (a, b)) in wrong.iter_mut().zip(&told) {
                *wrong +=
                    f64::from(u8::from(class.first.abs() > *a || class.pooled.abs() > *b));
            }
        }
        for (wrong, expected) in wrong.iter().zip(&expected) {
            let wrong = wrong / f64::from(classes);
            assert!((wrong - expected).abs() < error, "{rounds:?}: {wrong} {expected}");
        }
    }
}

/// With many degrees of freedom t is normal; with one look it is that look.
#[test]
fn the_joint_chance_has_its_limits() {
    for share in [0.2, 0.5, 0.8] {
        let normal = TwoLooks::new(share, TOTAL).unwrap();
        let many = normal.by_student(3000.0, 6000.0).unwrap();
        for levels in [
            Levels { first: 0.02, pooled: 0.04 },
            Levels { first: 0.001, pooled: 0.05 },
            Levels { first: 0.05, pooled: 0.001 },
        ] {
            let (ours, theirs) = (many.false_clear(levels), normal.false_clear(levels));
            assert!((ours - theirs).abs() < 2e-5, "{share} {levels:?}: {ours} {theirs}");
        }
        for (first, pooled) in [(1.0, 2.0), (2.0, 5.0), (6.0, 30.5)] {
            let looks = TwoStudents::new(share, first, pooled).unwrap();
            let alone = looks.either_outside(2.5, f64::INFINITY);
            assert!((alone - student::two_sided(2.5, first)).abs() < 1e-14);
            let alone = looks.either_outside(f64::INFINITY, 2.5);
            assert!((alone - student::two_sided(2.5, pooled)).abs() < 1e-14);
            // A first look that never lets go leaves the pooled one as it is.
            let late = looks.either_outside(1e7, 2.5);
            assert!((late - student::two_sided(2.5, pooled)).abs() < 1e-6, "{late}");
            assert!((looks.either_outside(0.0, 3.0) - 1.0).abs() < 1e-12);
            let both = looks.either_outside(2.5, 2.0);
            let sum = student::two_sided(2.5, first) + student::two_sided(2.0, pooled);
            assert!(both < sum && both > student::two_sided(2.0, pooled), "{both} {sum}");
        }
    }
}

/// Exact by hand: with one degree of freedom at first and two together, and so on, levels leave what
/// makes the joint chance whole again.
#[test]
fn levels_left_fall_and_make_the_total_whole() {
    for rounds in [(2, 1), (2, 2), (3, 5), (5, 2)] {
        let looks = by_student(rounds);
        let mut last = TOTAL;
        for first in [0.001, 0.01, 0.03, 0.045, 0.0499] {
            let pooled = looks.left_after(first);
            assert!(pooled < last && pooled > 0.0, "{rounds:?} {first}: {pooled}");
            let whole = looks.false_clear(Levels { first, pooled });
            assert!((whole - TOTAL).abs() < 1e-10, "{rounds:?} {first}: {whole}");
            last = pooled;
        }
        assert_eq!(looks.left_after(0.05).to_bits(), 0.0_f64.to_bits());
    }
}

/// What the choices cost (NumPy 2.4.6, 2 million classes for each): how often two equal rounds are clear
/// where the pooled test at the full 5 % would be in 80 of 100 classes, and round one alone at its level.
#[test]
fn the_choices_cost_what_the_page_says() {
    let classes = counts(10_000, 25_000, 1_000_000);
    let error = 4.0 * (0.25 / f64::from(classes) + 0.25 / 2e6_f64).sqrt() + 0.000_5;
    let mut chance = Chance::from_seed(12);
    // Bags a side and round, gap in standard deviations; told at 5 % and no second look; each round
    // alone at 2.53 %; first at 4 %, Pocock, 2 %, 1 %, O'Brien & Fleming; round one not judged.
    for (n, gap, costs) in [
        (2, 2.485, [0.297, 0.302, 0.605, 0.705, 0.753, 0.784, 0.794, 0.800]),
        (3, 1.818, [0.398, 0.447, 0.655, 0.729, 0.764, 0.787, 0.795, 0.800]),
        (4, 1.516, [0.437, 0.511, 0.674, 0.738, 0.769, 0.790, 0.796, 0.800]),
        (5, 1.330, [0.457, 0.544, 0.684, 0.743, 0.772, 0.791, 0.797, 0.801]),
        (6, 1.200, [0.468, 0.564, 0.690, 0.746, 0.773, 0.791, 0.797, 0.800]),
    ] {
        let normal = looks((n, n));
        let levels = [
            Levels { first: 0.05, pooled: 0.0 },
            Levels { first: 0.025_320_6, pooled: 0.0 },
            normal.levels(Rule::FirstAt(0.04)),
            normal.levels(Rule::Pocock),
            normal.levels(Rule::FirstAt(0.02)),
            normal.levels(Rule::FirstAt(0.01)),
            normal.levels(Rule::OBrienFleming),
            Levels { first: 0.0, pooled: 0.05 },
        ]
        .map(|levels| bounds(levels, degrees((n, n))));
        let mut found = [0.0; 8];
        for _ in 0..classes {
            let class = class(&mut chance, (n, n), gap);
            for (at, (found, (a, b))) in found.iter_mut().zip(levels).enumerate() {
                let again = at == 1 && class.second.abs() > a;
                let clear = class.first.abs() > a || class.pooled.abs() > b || again;
                *found += f64::from(u8::from(clear));
            }
        }
        for (at, (found, cost)) in found.iter().zip(costs).enumerate() {
            let found = found / f64::from(classes);
            assert!((found - cost).abs() < error, "{n} bags, choice {at}: {found} {cost}");
        }
    }
}

/// NumPy 2.4.6, 4 million classes for each of 2 to 16 bags a side and round, after a first look at 2 %: the
/// level of the pooled look that finds 3 further ones in 100.
#[test]
fn levels_left_are_those_that_numpy_counts() {
    let error = 5.0 * (0.03 * 0.97 / 4e6_f64).sqrt();
    for (n, counted) in [
        (2, 0.033_544),
        (3, 0.034_923),
        (4, 0.035_667),
        (5, 0.036_157),
        (6, 0.036_509),
        (8, 0.037_057),
        (16, 0.037_491),
    ] {
        let left = by_student((n, n)).left_after(FIRST_OF_TWO);
        assert!((left - counted).abs() < error, "{n}: {left} against {counted}");
    }
}

/// Three treatments beside one reference, all bags together telling the spread, each look by Dunnett's
/// bound: at most 5 in 100, though comparisons are taken to be independent.
#[test]
fn several_comparisons_with_few_bags_stay_within_what_is_said() {
    let classes = counts(10_000, 30_000, 1_000_000);
    let error = 4.0 * (0.05 * 0.95 / f64::from(classes)).sqrt();
    let mut chance = Chance::from_seed(13);
    for n in [2_u32, 3] {
        let bags = f64::from(n);
        let (first, pooled) = (4.0 * (bags - 1.0), 4.0 * (2.0 * bags - 1.0) - 1.0);
        let student = looks((n, n)).by_student(first, pooled).unwrap().over(3).unwrap();
        let levels = student.levels(Rule::FirstAt(FIRST_OF_TWO));
        let largest = LargestOfSeveral::new(&vec![vec![0.5; 3]; 3], first, 1);
        let a = largest.bound(1.0 - levels.first);
        let b = largest.with_df(pooled).bound(1.0 - levels.pooled);
        let mut wrong = 0.0;
        for _ in 0..classes {
            // Means of the reference and of three treatments, and squares inside them.
            let mut round = || {
                let means = [0; 4].map(|_| chance.normal() / bags.sqrt());
                let squares: f64 = (0..first as u32).map(|_| chance.normal().powi(2)).sum();
                (means, squares)
            };
            let (one, two) = (round(), round());
            let gaps: Vec<f64> = one.0.iter().zip(two.0).map(|(x, y)| x - y).collect();
            let middle = gaps.iter().sum::<f64>() / 4.0;
            let apart: f64 = gaps.iter().map(|g| (g - middle).powi(2)).sum();
            let squares = one.1 + two.1 + 0.5 * bags * apart;
            let found = (1..4).any(|at| {
                let (x, y) = (one.0[at] - one.0[0], two.0[at] - two.0[0]);
                x.abs() > a * (2.0 * one.1 / first / bags).sqrt()
                    || (0.5 * (x + y)).abs() > b * (squares / pooled / bags).sqrt()
            });
            wrong += f64::from(u8::from(found));
        }
        let wrong = wrong / f64::from(classes);
        assert!(wrong < TOTAL + error && wrong > 0.045 - error, "{n}: {wrong}");
    }
}
