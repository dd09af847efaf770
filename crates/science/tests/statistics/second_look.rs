//! Levels of two looks at one question, for normal estimates: tables, SciPy, simulation.

use crate::size::counts;
use crate::table::{number, rows};
use barm_science::statistics::chance::Chance;
use barm_science::statistics::distribution::multivariate_t::LargestOfSeveral;
use barm_science::statistics::distribution::{normal, two_normals};
use barm_science::statistics::second_look::{
    FIRST_OF_TWO, Levels, Rule, SecondLookError, Sides, TOTAL, TwoLooks, share_of_bags,
};

fn z(level: f64) -> f64 {
    -normal::quantile(0.5 * level)
}

/// SciPy 1.17.1: quadrature over the bivariate normal distribution, and its root.
#[test]
fn levels_agree_with_scipy() {
    let mut seen = 0;
    for row in rows(include_str!("../rows/second_look.csv")) {
        let ask = |name: &str| number(&row[name]);
        let rule = match row["rule"].as_str() {
            "pocock" => Rule::Pocock,
            "obrien_fleming" => Rule::OBrienFleming,
            "spending_pocock" => Rule::SpendingPocock,
            "spending_obrien_fleming" => Rule::SpendingOBrienFleming,
            "first_at" => Rule::FirstAt(ask("first")),
            other => panic!("{other} is not known here"),
        };
        let looks = TwoLooks::new(ask("share"), ask("total")).unwrap();
        let ours = looks.levels(rule);
        for (ours, theirs) in [(ours.first, ask("first")), (ours.pooled, ask("pooled"))] {
            assert!((ours - theirs).abs() < 1e-9 * theirs + 1e-14, "{row:?}: {ours}");
        }
        seen += 1;
    }
    assert_eq!(seen, 147);
}

/// Critical values for two equal rounds at 5 %, as printed (Pocock 1977; O'Brien & Fleming 1979; Jennison &
/// Turnbull 2000, tables 2.1 and 2.3; DeMets & Lan 1994), from memory, to their digits.
#[test]
fn boundaries_are_those_of_the_tables() {
    let looks = TwoLooks::new(0.5, 0.05).unwrap();
    for (rule, first, pooled) in [
        (Rule::Pocock, 2.178, 2.178),
        (Rule::OBrienFleming, 2.797, 1.977),
        (Rule::SpendingOBrienFleming, 2.963, 1.969),
        (Rule::SpendingPocock, 2.157, 2.201),
    ] {
        let levels = looks.levels(rule);
        assert!((z(levels.first) - first).abs() < 0.000_51, "{rule:?}: {}", z(levels.first));
        assert!((z(levels.pooled) - pooled).abs() < 0.000_51, "{rule:?}: {}", z(levels.pooled));
    }
    let pocock = looks.levels(Rule::Pocock);
    assert!((pocock.first - 0.0294).abs() < 0.000_051, "{pocock:?}");
    // Armitage, McPherson & Rowe (1969), J. R. Stat. Soc. A 132, from memory: two looks at 5 % each
    // are wrong 8.3 times in 100.
    let twice = looks.false_clear(Levels { first: 0.05, pooled: 0.05 });
    assert!((twice - 0.083).abs() < 0.000_51, "{twice}");
}

/// The catch: after a verdict at the full 5 % nothing is left, and after none everything is.
#[test]
fn what_the_first_look_used_up_is_gone() {
    for share in [0.01, 0.3, 0.5, 0.9, 0.999] {
        for total in [0.01, 0.05, 0.3] {
            let looks = TwoLooks::new(share, total).unwrap();
            for first in [total, 1.1 * total, 1.0, f64::NAN, f64::INFINITY] {
                assert_eq!(looks.left_after(first).to_bits(), 0.0_f64.to_bits());
            }
            for first in [0.0, -3.0] {
                assert!((looks.left_after(first) / total - 1.0).abs() < 1e-12);
            }
            let mut last = total;
            for tenths in 1..10 {
                let first = 0.1 * f64::from(tenths) * total;
                let left = looks.left_after(first);
                // More than if the looks had nothing to do with each other, less than all.
                assert!(
                    left >= (total - first) / (1.0 - first) * (1.0 - 1e-9),
                    "{share} {first}"
                );
                assert!(left <= last * (1.0 + 1e-12), "{share} {first}: {left}");
                let both = looks.false_clear(Levels { first, pooled: left });
                assert!((both / total - 1.0).abs() < 1e-11, "{share} {first}: {both}");
                last = left;
            }
        }
    }
}

/// Exact: one look is that look; rounds of hardly any or of nearly all information are as if apart or
/// the same.
#[test]
fn the_joint_chance_has_its_limits() {
    let chance = |share, first, pooled| {
        TwoLooks::new(share, TOTAL).unwrap().false_clear(Levels { first, pooled })
    };
    for share in [0.1, 0.5, 0.9] {
        assert!((chance(share, 0.0, 0.04) - 0.04).abs() < 1e-15);
        assert!((chance(share, 0.04, 0.0) - 0.04).abs() < 1e-15);
        assert!((chance(share, 1.0, 0.04) - 1.0).abs() < 1e-15);
        assert!((chance(share, 0.01, 0.04) - chance(share, 0.04, 0.01)).abs() < 1e-14);
    }
    assert!((chance(1e-9, 0.02, 0.03) - (1.0 - 0.98 * 0.97)).abs() < 1e-6);
    assert!((chance(1.0 - 1e-12, 0.02, 0.03) - 0.03).abs() < 1e-6);
    // One comparison in quadrants: for bounds of 0 an either-or is certain.
    assert!((two_normals::either_outside(0.0, 3.0, 0.4) - 1.0).abs() < 1e-13);
    assert!(two_normals::either_outside(-1.0, 3.0, 0.4).is_nan());
    assert!(two_normals::either_outside(1.0, 3.0, 1.0).is_nan());
}

/// Simulated classes without a true difference: every rule is wrong as often as it says.
#[test]
fn simulated_classes_are_told_something_false_as_often_as_is_said() {
    let classes = counts(20_000, 100_000, 4_000_000);
    let error = 4.0 * (0.05 * 0.95 / f64::from(classes)).sqrt();
    for (seed, share) in [(1, 0.5), (2, 0.25), (3, 0.8)] {
        let looks = TwoLooks::new(share, TOTAL).unwrap();
        let rules = [
            Rule::Pocock,
            Rule::OBrienFleming,
            Rule::SpendingPocock,
            Rule::FirstAt(FIRST_OF_TWO),
        ];
        let bounds = rules.map(|rule| {
            let levels = looks.levels(rule);
            (z(levels.first), z(levels.pooled))
        });
        let mut chance = Chance::from_seed(seed);
        let mut wrong = [0.0; 4];
        for _ in 0..classes {
            let (first, second) = (chance.normal(), chance.normal());
            let pooled = share.sqrt() * first + (1.0 - share).sqrt() * second;
            for (wrong, (a, b)) in wrong.iter_mut().zip(bounds) {
                *wrong += f64::from(u8::from(first.abs() > a || pooled.abs() > b));
            }
        }
        for (rule, wrong) in rules.iter().zip(wrong) {
            let wrong = wrong / f64::from(classes);
            assert!((wrong - TOTAL).abs() < error, "{share} {rule:?}: {wrong}");
        }
    }
}

/// Simulated questions of three treatments beside one reference, each look by Dunnett's bound: at most
/// as often as is said, though comparisons are taken to be independent.
#[test]
fn several_comparisons_stay_within_what_is_said() {
    let classes = counts(20_000, 50_000, 2_000_000);
    let error = 4.0 * (0.05 * 0.95 / f64::from(classes)).sqrt();
    let alone = TwoLooks::new(0.5, TOTAL).unwrap();
    let looks = alone.over(3).unwrap();
    let mut chance = Chance::from_seed(4);
    for rule in [Rule::Pocock, Rule::OBrienFleming, Rule::FirstAt(FIRST_OF_TWO)] {
        let levels = looks.levels(rule);
        // Independent comparisons, the strictest case, leave a little less than one comparison.
        assert!(looks.left_after(levels.first) < alone.left_after(levels.first), "{rule:?}");
        let largest = LargestOfSeveral::new(&vec![vec![0.5; 3]; 3], 1e6, 1);
        let (a, b) = (largest.bound(1.0 - levels.first), largest.bound(1.0 - levels.pooled));
        let mut wrong = 0.0;
        for _ in 0..classes {
            let mut round = || {
                let reference = chance.normal();
                [0; 3].map(|_| (chance.normal() - reference) * 0.5_f64.sqrt())
            };
            let (first, second) = (round(), round());
            let found = first
                .iter()
                .zip(second)
                .any(|(x, y)| x.abs() > a || ((x + y) * 0.5_f64.sqrt()).abs() > b);
            wrong += f64::from(u8::from(found));
        }
        let wrong = wrong / f64::from(classes);
        assert!(wrong < TOTAL + error && wrong > 0.045 - error, "{rule:?}: {wrong}");
    }
}

/// By hand: 3 and 3 bags, then 3 and 3, are half each; 2 and 4, then 6 and 3, are 4/3 to 2.
#[test]
fn the_share_of_round_one_by_hand() {
    let share = |a, b, c, d| {
        let sides = |bags, bags_reference| Sides { bags, bags_reference };
        share_of_bags(sides(a, b), sides(c, d)).unwrap()
    };
    assert!((share(3.0, 3.0, 3.0, 3.0) - 0.5).abs() < 1e-15);
    assert!((share(2.0, 4.0, 6.0, 3.0) - 0.4).abs() < 1e-15);
}

#[test]
fn what_cannot_be_looked_at_twice_is_told_in_words() {
    for bad in [0.0, 1.0, -0.5, f64::NAN, f64::INFINITY] {
        let why = TwoLooks::new(bad, 0.05).unwrap_err();
        assert!(why.to_string().contains("round one"), "{why}");
        assert!(TwoLooks::new(0.5, bad).is_err());
    }
    let looks = TwoLooks::new(0.5, 0.05).unwrap();
    assert_eq!(looks.over(0), Err(SecondLookError::NoComparison));
    for (first, pooled) in
        [(0.5, 9.0), (6.0, 6.5), (6.0, 3.0), (f64::NAN, 9.0), (6.0, f64::INFINITY)]
    {
        assert!(looks.by_student(first, pooled).is_err(), "{first} {pooled}");
    }
    for bags in [0.0, 0.5, -1.0, f64::NAN, f64::INFINITY] {
        assert!(Sides::even(bags).information().is_err());
        assert!(share_of_bags(Sides::even(2.0), Sides::even(bags)).is_err());
    }
    // Levels that are none count as the nearest that is.
    let odd = looks.false_clear(Levels { first: -1.0, pooled: 2.0 });
    assert!((odd - 1.0).abs() < 1e-12);
    let levels = looks.levels(Rule::FirstAt(f64::NAN));
    assert!((levels.first - 0.05).abs() < 1e-15 && levels.pooled < 1e-300);
}
