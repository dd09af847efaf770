//! Chances of finding a difference, against R, SciPy, simulation and themselves.

use crate::size::counts;
use crate::table::{number, rows};
use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, How, LEVEL, USED, compare};
use barm_science::statistics::power::{
    Beside, Classes, Deals, Limits, OneDifference, Place, PowerError, SeveralTreatments,
    Spreads, USUAL, bags_needed, effective_bags,
};
use std::collections::BTreeMap;

const PLAIN: Limits = Limits { readable: 0.0, reading_doubt: 0.0 };

fn two_sample(bags: f64, level: f64) -> OneDifference {
    OneDifference::beside(Beside::even(1, bags), level).unwrap()
}

/// The number after `name=` in a call.
fn argument(call: &str, name: &str) -> Option<f64> {
    let after = call.split(&format!("{name}=")).nth(1)?;
    Some(number(after.split([',', ')']).next()?))
}

/// R 4.2.2, `power.t.test`: to 1e-6 at least, in truth to its own accuracy.
#[test]
fn t_tests_agree_with_r() {
    let (mut seen, mut solved) = (0, 0);
    for row in rows(include_str!("../rows/power.csv")) {
        let call = &row["call"];
        if !call.starts_with("power.t.test") {
            continue;
        }
        let ask = |name| argument(call, name).unwrap();
        let (delta, level, value) = (ask("delta"), ask("sig.level"), number(&row["value"]));
        if row["quantity"] == "n" {
            // R counts one side only where it looks for a number of bags.
            let odds = two_sample(value, level).odds(delta, 1.0, PLAIN).unwrap();
            assert!((odds.rightly - ask("power")).abs() < 1e-8, "{call}: {odds:?}");
            let found = |n: u32| {
                let test = OneDifference::beside(Beside::even(1, f64::from(n)), level)?;
                Ok(test.odds(delta, 1.0, PLAIN)?.rightly)
            };
            let needed = bags_needed(1000, ask("power"), found).unwrap();
            assert!((f64::from(needed) - value.ceil()).abs() < 0.5, "{call}: {needed}");
            solved += 1;
            continue;
        }
        let test = if call.contains("two.sample") {
            two_sample(ask("n"), level)
        } else {
            OneDifference::paired(ask("n"), level).unwrap()
        };
        let odds = test.odds(delta, 1.0, PLAIN).unwrap();
        let ours = if call.contains("strict=TRUE") { odds.either() } else { odds.rightly };
        assert!((ours - value).abs() < 1e-10, "{call}: {ours} against {value}");
        seen += 1;
    }
    assert_eq!((seen, solved), (90, 12));
}

/// R 4.2.2, `power.anova.test`.
#[test]
fn analysis_of_variance_agrees_with_r() {
    let (mut seen, mut solved) = (0, 0);
    for row in rows(include_str!("../rows/power.csv")) {
        let call = &row["call"];
        if !call.contains("power.anova.test") {
            continue;
        }
        let ask = |name| argument(call, name).unwrap();
        let (groups, value) = (ask("groups") as usize, number(&row["value"]));
        let (between, within) = (ask("between.var"), ask("within.var"));
        // Means of that variance: two apart, all others midway.
        let mut means = vec![0.0; groups];
        let apart = (0.5 * between * (groups as f64 - 1.0)).sqrt();
        (means[0], means[1]) = (-apart, apart);
        let power = |n| {
            let test = SeveralTreatments::new(groups, n, 1, ask("sig.level")).unwrap();
            let ours = test.odds(&means, within.sqrt()).unwrap();
            let gap = test.odds_of_gap(2.0 * apart, within.sqrt()).unwrap();
            assert!((ours - gap).abs() < 1e-13);
            ours
        };
        if row["quantity"] == "n" {
            let wanted =
                number(call.split("power-").nth(1).unwrap().split(',').next().unwrap());
            assert!((power(value) - wanted).abs() < 1e-8, "{call}: {}", power(value));
            solved += 1;
        } else {
            assert!((power(ask("n")) - value).abs() < 1e-8, "{call}: {}", power(ask("n")));
            seen += 1;
        }
    }
    assert_eq!((seen, solved), (24, 6));
}

/// R's documented examples: `power.t.test(delta = 1, power = .90)` gives n = 22.02110, and
/// `power.anova.test(groups = 4, between.var = 1, within.var = 3, power = .80)` n = 11.92613.
#[test]
fn the_documented_examples_come_out() {
    let odds = two_sample(22.021_10, 0.05).odds(1.0, 1.0, PLAIN).unwrap();
    assert!((odds.rightly - 0.9).abs() < 1e-6, "{odds:?}");
    let test = SeveralTreatments::new(4, 11.926_13, 1, 0.05).unwrap();
    let apart = 1.5_f64.sqrt();
    let found = test.odds(&[-apart, apart, 0.0, 0.0], 3.0_f64.sqrt()).unwrap();
    assert!((found - 0.8).abs() < 1e-6, "{found}");
}

/// SciPy 1.17.1 for F in complete periods and for Dunnett's comparisons.
#[test]
fn blocks_and_comparisons_with_a_reference_agree_with_scipy() {
    let mut seen = 0;
    for row in rows(include_str!("../rows/power_layouts.csv")) {
        let ask = |name: &str| number(&row[name]);
        let (k, bags, gap) = (ask("treatments") as usize, ask("bags"), ask("gap"));
        let ours = if row["layout"] == "blocked_f" {
            let test = SeveralTreatments::new(k, bags, bags as usize, 0.05).unwrap();
            test.odds_of_gap(gap, 1.0).unwrap()
        } else {
            let test = OneDifference::beside(Beside::even(k, bags), 0.05).unwrap();
            test.odds(gap, 1.0, PLAIN).unwrap().rightly
        };
        seen += 1;
        assert!((ours - ask("power")).abs() < 1e-8, "{row:?}: {ours}");
    }
    assert_eq!(seen, 90);
}

/// Rows of a table that was worked out with SciPy, two-sided and rounded to two decimals: the
/// smallest gap that two samples of n find 4 times in 5, in standard deviations.
#[test]
fn the_smallest_difference_usually_found_is_that_of_the_table() {
    for (n, gap) in
        [(2.0, 5.65), (3.0, 3.07), (4.0, 2.38), (5.0, 2.02), (6.0, 1.80), (8.0, 1.51)]
    {
        let test = two_sample(n, 0.05);
        let found = test.found_with(USUAL, 1.0, PLAIN).unwrap();
        assert!((found - gap).abs() < 0.005_001, "{n}: {found}");
        let back = test.odds(found, 1.0, PLAIN).unwrap();
        assert!((back.rightly - USUAL).abs() < 1e-9, "{n}: {back:?}");
    }
}

/// Exact: as many periods as bags make pairs; the F of two treatments is t squared.
#[test]
fn layouts_agree_where_one_is_another() {
    for n in [3.0, 5.0, 9.0] {
        for gap in [0.0, 0.7, 2.0, 4.0] {
            let blocked = Beside::even(1, n).over(n as usize);
            let blocked = OneDifference::beside(blocked, 0.05).unwrap();
            let paired = OneDifference::paired(n, 0.05).unwrap();
            let ours = blocked.odds(gap, 1.0, PLAIN).unwrap();
            let pairs = paired.odds(gap, 2.0_f64.sqrt(), PLAIN).unwrap();
            assert!((ours.rightly - pairs.rightly).abs() < 1e-11, "{n} {gap}");
            let t = two_sample(n, 0.05).odds(gap, 1.0, PLAIN).unwrap();
            let f = SeveralTreatments::new(2, n, 1, 0.05).unwrap();
            let f = f.odds_of_gap(gap, 1.0).unwrap();
            assert!((t.either() - f).abs() < 1e-10, "{n} {gap}: {t:?} {f}");
        }
    }
}

/// Exact: where nothing is to be found, the level is.
#[test]
fn no_difference_is_found_at_the_level() {
    for level in [0.01, 0.05, 0.2] {
        for n in [2.0, 4.0, 12.0] {
            let odds = two_sample(n, level).odds(0.0, 3.0, PLAIN).unwrap();
            assert!((odds.either() - level).abs() < 1e-11, "{n} {level}: {odds:?}");
            assert!((odds.rightly - odds.wrongly).abs() < 1e-12);
            let f = SeveralTreatments::new(5, n, 1, level).unwrap();
            assert!((f.odds(&[2.0; 5], 3.0).unwrap() - level).abs() < 1e-11);
            // Of several comparisons at once, each alone is found less often.
            let one = OneDifference::beside(Beside::even(4, n), level).unwrap();
            assert!(one.odds(0.0, 1.0, PLAIN).unwrap().either() < level);
        }
    }
}

#[test]
fn more_bags_and_larger_differences_are_never_found_less() {
    for compared in [1, 3] {
        for readable in [0.0, 2.0] {
            let limits = Limits { readable, reading_doubt: 0.7 };
            let mut last = vec![0.0; 5];
            for n in 2..14 {
                let layout = Beside::even(compared, f64::from(n)).over(2);
                let test = OneDifference::beside(layout, 0.05).unwrap();
                let mut before = 0.0;
                for (gap, last) in [0.5, 1.0, 2.0, 4.0, 8.0].into_iter().zip(&mut last) {
                    let found = test.odds(gap, 1.5, limits).unwrap().rightly;
                    assert!(found >= before, "{n} {gap}");
                    // A gap below what counts is found less often by more bags, as it should be.
                    assert!(found >= *last - 1e-9 || gap < readable, "{n} {gap}: {found}");
                    (before, *last) = (found, found);
                }
            }
        }
    }
}

/// Wider spread, stricter level, a larger readable difference, more comparisons: all find less.
#[test]
fn whatever_asks_for_more_finds_less() {
    let test =
        |compared, level| OneDifference::beside(Beside::even(compared, 4.0), level).unwrap();
    let odds = |test: OneDifference, sd, readable| {
        let limits = Limits { readable, reading_doubt: 0.0 };
        test.odds(5.0, sd, limits).unwrap().rightly
    };
    let base = odds(test(2, 0.05), 2.0, 0.0);
    assert!(odds(test(2, 0.05), 2.5, 0.0) < base);
    assert!(odds(test(2, 0.01), 2.0, 0.0) < base);
    assert!(odds(test(6, 0.05), 2.0, 0.0) < odds(test(1, 0.05), 2.0, 0.0));
    assert!(odds(test(2, 0.05), 2.0, 5.0) < base);
    assert!(odds(test(2, 0.05), 2.0, 5.0) < 0.5);
}

/// Kish's design effect by hand: 8 bags, 4 from each of two groups, half of the variance between
/// groups, are worth 8 / (1 + 3 × 0.5) = 3.2 bags.
#[test]
fn bags_of_one_group_are_worth_less() {
    assert!((effective_bags(8.0, 4.0, 0.5).unwrap() - 3.2).abs() < 1e-12);
    assert!((effective_bags(8.0, 1.0, 0.5).unwrap() - 8.0).abs() < 1e-12);
    assert!((effective_bags(8.0, 4.0, 0.0).unwrap() - 8.0).abs() < 1e-12);
    assert!((effective_bags(6.0, 6.0, 1.0).unwrap() - 1.0).abs() < 1e-12);
    assert!((effective_bags(2.0, 5.0, 1.0).unwrap() - 1.0).abs() < 1e-12);
}

fn place(treatment: usize, block: usize, group: usize) -> Place {
    Place { treatment, block, group }
}

fn spreads(treatments: usize, bag: f64, group: f64) -> BTreeMap<usize, Spreads> {
    (0..treatments).map(|treatment| (treatment, Spreads { bag, group })).collect()
}

fn deals(count: u32, seed: u64) -> Deals {
    Deals { count: count as usize, seed }
}

/// Complete periods of bags that each have a group of their own, judged as a textbook has it, are the even layout:
/// to what so many deals leave open.
#[test]
fn a_complete_design_is_the_even_layout() {
    let places: Vec<Place> =
        (0..3).flat_map(|block| (0..4).map(move |t| place(t, block, 10 * block + t))).collect();
    let pairs = [(1, 0), (2, 0), (3, 0)];
    let even = OneDifference::beside(Beside::even(3, 3.0).over(3), 0.05).unwrap();
    let limits = Limits { readable: 3.0, reading_doubt: 0.7 };
    let count = counts(400, 1000, 20_000);
    for bag in [0.2, 4.0] {
        let how = How::read_with(limits.reading_doubt);
        let spreads = spreads(4, bag, 0.0);
        let classes =
            Classes::new(&places, &pairs, &spreads, (limits.readable, &how), deals(count, 1))
                .unwrap();
        let least = bag.sqrt().max(if bag < 0.49 { 0.7 } else { 0.0 });
        assert!((classes.sd() / least - 1.0).abs() < 0.1, "{} {least}", classes.sd());
        for gap in [0.0, 2.0, 5.0, -9.0] {
            let ours = classes.odds(1, gap).unwrap();
            let theirs = even.odds(gap, bag.sqrt(), limits).unwrap();
            for (ours, theirs) in
                [(ours.rightly, theirs.rightly), (ours.wrongly, theirs.wrongly)]
            {
                let open = four_errors(theirs, count);
                assert!((ours - theirs).abs() < open, "{bag} {gap}: {ours} {theirs} {open}");
            }
        }
        let found = classes.found_with(1, USUAL).unwrap();
        let chance = even.odds(found, bag.sqrt(), limits).unwrap().rightly;
        assert!((chance - USUAL).abs() < four_errors(USUAL, count), "{found} {chance}");
    }
}

fn four_errors(chance: f64, count: u32) -> f64 {
    let chance = chance.clamp(0.01, 0.99);
    4.0 * (chance * (1.0 - chance) / f64::from(count)).sqrt()
}

/// Two groups make two bags of each treatment. One group a treatment: its way of working may be the difference,
/// and no verdict is clear. Where each makes one of both, what it has in common falls out: were it without bounds, only the
/// differences within groups would tell, as in the paired t; where it is small, more is known of how bags differ.
#[test]
fn what_a_group_has_in_common_counts_for_all_or_nothing() {
    let apart = [place(0, 0, 1), place(0, 0, 1), place(1, 0, 2), place(1, 0, 2)];
    let both = |group: f64| {
        let places: Vec<Place> =
            (0..6).flat_map(|group| [place(0, 0, group), place(1, 0, group)]).collect();
        chance_of(&places, group)
    };
    assert!(chance_of(&apart, 0.25) == 0.0);
    let (little, much) = (both(1.0), both(400.0));
    let paired = OneDifference::paired(6.0, LEVEL * USED).unwrap();
    let paired = paired.odds(2.0, 2.0_f64.sqrt(), PLAIN).unwrap().rightly;
    assert!((much - paired).abs() < 0.03, "{much} {paired}");
    assert!(little > much && little < much + 0.1, "{little} {much}");
}

fn chance_of(places: &[Place], group: f64) -> f64 {
    let how = How::of_a_class(0.0);
    let made = (0.0, &how);
    let classes =
        Classes::new(places, &[(1, 0)], &spreads(2, 1.0, group), made, deals(400, 2)).unwrap();
    classes.odds(0, 2.0).unwrap().rightly
}

/// The comparison that judges the day, on simulated days of an uneven design whose groups make several bags and whose
/// treatments spread differently: to the sampling error and what setting every estimate beside every width costs.
#[test]
fn deals_say_how_often_the_comparison_of_the_day_finds_it() {
    const COST: f64 = 0.01;
    let places = [
        place(0, 0, 1),
        place(1, 0, 1),
        place(2, 0, 1),
        place(0, 0, 2),
        place(1, 0, 2),
        place(0, 1, 3),
        place(2, 1, 3),
        place(1, 1, 3),
        place(2, 1, 4),
        place(0, 1, 4),
        place(0, 2, 5),
        place(1, 2, 5),
        place(2, 2, 6),
        place(0, 2, 6),
        place(1, 2, 6),
    ];
    let pairs = [(1, 0), (2, 0)];
    let (readable, how) = (1.2, How::of_a_class(0.4));
    let days = counts(400, 1000, 40_000);
    for (seed, sizes) in
        [(1, [(1.0, 0.0), (1.0, 0.0), (1.0, 0.0)]), (2, [(1.0, 0.4), (1.6, 0.4), (0.8, 0.2)])]
    {
        let spreads: BTreeMap<usize, Spreads> =
            sizes.iter().map(|&(bag, group)| Spreads { bag, group }).enumerate().collect();
        let dealt = counts(400, 1000, 4000);
        let classes =
            Classes::new(&places, &pairs, &spreads, (readable, &how), deals(dealt, seed + 10))
                .unwrap();
        let means = [0.0, 2.5, -4.0];
        let mut chance = Chance::from_seed(seed);
        let mut found = [0_u32; 2];
        for _ in 0..days {
            let habits: Vec<f64> = (0..7).map(|_| chance.normal()).collect();
            let bags: Vec<BagValue> = places
                .iter()
                .map(|&Place { treatment, block, group }| {
                    let own = spreads[&treatment];
                    let value = means[treatment]
                        + 3.0 * block as f64
                        + own.bag.sqrt() * chance.normal()
                        + own.group.sqrt() * habits[group];
                    BagValue { value, treatment, block, group }
                })
                .collect();
            let told = compare(&bags, &Compared::Pairs(pairs.to_vec()), &how);
            for (contrast, found) in told.contrasts.iter().zip(&mut found) {
                let estimate = contrast.outcome.as_ref().unwrap();
                let apart = estimate.low > 0.0 || estimate.high < 0.0;
                *found += u32::from(apart && estimate.difference.abs() >= readable);
            }
        }
        for (pair, found) in found.into_iter().enumerate() {
            let share = f64::from(found) / f64::from(days);
            let said = classes.odds(pair, means[pair + 1]).unwrap().either();
            let open = four_errors(said, days).hypot(four_errors(said, dealt));
            assert!(
                (share - said).abs() < open + COST,
                "{seed} {pair}: {share} against {said}"
            );
        }
    }
}

#[test]
fn what_cannot_be_told_is_said_in_words() {
    let beside = OneDifference::beside;
    let none = beside(Beside::even(1, 4.0), 0.0).unwrap_err();
    assert!(none.to_string().contains("the level is 0"), "{none}");
    assert!(matches!(beside(Beside::even(1, 4.0), f64::NAN), Err(PowerError::NoChance { .. })));
    assert_eq!(beside(Beside::even(1, 1.0), 0.05), Err(PowerError::NoSpreadSeen));
    assert!(matches!(beside(Beside::even(0, 4.0), 0.05), Err(PowerError::TooFew { .. })));
    assert!(matches!(
        beside(Beside::even(1, f64::NAN), 0.05),
        Err(PowerError::Unusable { .. })
    ));
    let few = Beside::even(1, 2.0).over(3);
    assert_eq!(beside(few, 0.05), Err(PowerError::NoSpreadSeen));
    let test = two_sample(4.0, 0.05);
    for sd in [0.0, -1.0, f64::NAN, 1e308] {
        assert!(test.odds(1.0, sd, PLAIN).is_err(), "{sd}");
    }
    for gap in [f64::NAN, f64::INFINITY, 1e308] {
        assert!(test.odds(gap, 1.0, PLAIN).is_err(), "{gap}");
    }
    assert!(test.odds(1.0, 1.0, Limits { readable: -1.0, ..PLAIN }).is_err());
    assert!(test.found_with(1.0, 1.0, PLAIN).is_err());
    assert!((test.odds(1e99, 1e-90, PLAIN).unwrap().rightly - 1.0).abs() < 1e-9);
    assert!(matches!(effective_bags(0.5, 1.0, 0.1), Err(PowerError::TooFew { .. })));
    assert!(effective_bags(2.0, 1.0, 1.5).is_err());
    let hopeless = bags_needed(8, 0.8, |n| {
        let test = OneDifference::beside(Beside::even(1, f64::from(n)), 0.05)?;
        Ok(test.odds(0.1, 1.0, PLAIN)?.rightly)
    });
    assert_eq!(hopeless, Err(PowerError::TooMany { most: 8 }));
    let lonely = [place(0, 0, 1), place(1, 1, 2), place(0, 0, 3), place(1, 1, 4)];
    let how = How::default();
    let classes = |places: &[Place], bag: f64, count: u32| {
        Classes::new(places, &[(1, 0)], &spreads(2, bag, 0.0), (0.0, &how), deals(count, 1))
    };
    let told = classes(&lonely, 1.0, 3).unwrap().odds(0, 1.0);
    assert_eq!(told, Err(PowerError::NoSharedBlock));
    assert!(matches!(classes(&[], 1.0, 3), Err(PowerError::NoSpreadSeen)));
    assert!(matches!(classes(&lonely, 0.0, 3), Err(PowerError::NoSuchSpread { .. })));
    assert!(matches!(classes(&lonely, f64::NAN, 3), Err(PowerError::Unusable { .. })));
    assert!(matches!(classes(&lonely, 1.0, 0), Err(PowerError::TooFew { .. })));
}
