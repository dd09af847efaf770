//! The door through which the program compares treatments.

use crate::bags::{bag, bags, finite};
use crate::experiments::{by_treatment, experiment, near};
use barm_science::statistics::compare::{BagValue, Compared, How, NotComparable, compare};
use barm_science::statistics::distribution::multivariate_t::LargestOfSeveral;
use barm_science::statistics::two_sample;

/// One treatment and one reference are Student's t; two bags a period are the paired t: Box,
/// Hunter & Hunter's boys' shoes, 95 % from −0.687 to −0.133.
#[test]
fn the_smallest_questions_are_students_t() {
    let groups = by_treatment(&experiment("t_sleep"));
    let (a, b) = (&groups[0].1, &groups[1].1);
    let both: Vec<BagValue> = a
        .iter()
        .map(|&v| (1, v))
        .chain(b.iter().map(|&v| (0, v)))
        .enumerate()
        .map(|(group, (treatment, v))| bag(treatment, 0, group, v))
        .collect();
    let ours = compare(&both, &Compared::Reference(0), &How::read_with(0.0)).contrasts[0]
        .outcome
        .clone()
        .unwrap();
    let t = two_sample::equal_spread(a, b).unwrap();
    near("low", ours.low, t.low, 1e-12, 0.0);
    near("high", ours.high, t.high, 1e-12, 0.0);
    let shoes = bags(&experiment("shoes"));
    let ours = compare(&shoes, &Compared::Reference(1), &How::read_with(0.0)).contrasts[0]
        .outcome
        .clone()
        .unwrap();
    near("low", ours.low, -0.686_953_9, 2e-7, 0.0);
    near("high", ours.high, -0.133_046_0, 1e-6, 0.0);
    near("df", ours.df, 9.0, 1e-12, 0.0);
}

/// A complete block design (penicillin): adjusted differences are differences of means, with the
/// published error of 226 on 12 degrees of freedom.
#[test]
fn complete_blocks_need_no_adjustment() {
    let answer = compare(
        &bags(&experiment("penicillin")),
        &Compared::Reference(0),
        &How::read_with(0.0),
    );
    for (contrast, wanted) in answer.contrasts.iter().zip([1.0, 5.0, 2.0]) {
        let ours = contrast.outcome.clone().unwrap();
        near("difference", ours.difference, wanted, 1e-12, 0.0);
        near("se", ours.se, (2.0 / 5.0 * 226.0 / 12.0_f64).sqrt(), 1e-12, 0.0);
        assert_eq!((contrast.n, contrast.n_reference, contrast.shared_blocks), (5, 5, 5));
    }
}

/// An incomplete design worked by hand: in period 1 the treatment is 4 above a go-between, in
/// period 2 the go-between is 3 above the reference, each seen twice with a spread of ±1.
#[test]
fn treatments_that_never_met_are_linked_through_a_third() {
    let list = [
        bag(2, 1, 0, 13.0),
        bag(2, 1, 1, 15.0),
        bag(1, 1, 2, 9.0),
        bag(1, 1, 3, 11.0),
        bag(1, 2, 4, 32.0),
        bag(1, 2, 5, 34.0),
        bag(0, 2, 6, 29.0),
        bag(0, 2, 7, 31.0),
    ];
    let answer = compare(&list, &Compared::Reference(0), &How::read_with(0.0));
    let linked = &answer.contrasts[1];
    let ours = linked.outcome.clone().unwrap();
    near("difference", ours.difference, 7.0, 1e-13, 0.0);
    near("se", ours.se, (8.0 / 4.0 * 2.0_f64).sqrt(), 1e-13, 0.0);
    assert_eq!(linked.shared_blocks, 0);
    near("df", ours.df, 4.0, 1e-12, 0.0);
}

#[test]
fn what_cannot_be_compared_says_why() {
    let only = |list: &[BagValue]| {
        let answer = compare(list, &Compared::Reference(0), &How::read_with(0.0));
        assert!(finite(&answer), "{answer:?}");
        answer.contrasts[0].outcome.clone()
    };
    let apart =
        [bag(0, 0, 0, 10.0), bag(0, 0, 1, 12.0), bag(1, 1, 2, 20.0), bag(1, 1, 3, 21.0)];
    assert_eq!(only(&apart), Err(NotComparable::NoSharedBlock));
    let single = [bag(0, 0, 0, 10.0), bag(1, 0, 1, 20.0)];
    assert_eq!(only(&single), Err(NotComparable::TooFewBags { n: 1, n_reference: 1 }));
    let alike = [bag(0, 0, 0, 0.1), bag(0, 0, 1, 0.1), bag(1, 0, 2, 0.1), bag(1, 0, 3, 0.1)];
    assert_eq!(only(&alike), Err(NotComparable::NoSpread));
    let none = [bag(1, 0, 0, 10.0), bag(1, 0, 1, 20.0)];
    assert_eq!(only(&none), Err(NotComparable::NoBags { n: 2, n_reference: 0 }));
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308] {
        let wild =
            [bag(0, 0, 0, 1.0), bag(0, 0, 1, 2.0), bag(1, 0, 2, value), bag(1, 0, 3, 4.0)];
        let Err(NotComparable::Unusable { bag: 2, value: found }) = only(&wild) else {
            panic!("{:?}", only(&wild));
        };
        assert_eq!(found.to_bits(), value.to_bits());
    }
    let nothing = compare(&[], &Compared::Pairs(vec![(1, 0), (2, 2)]), &How::read_with(0.0));
    assert_eq!(
        nothing.contrasts[0].outcome,
        Err(NotComparable::NoBags { n: 0, n_reference: 0 })
    );
    assert_eq!(nothing.contrasts[1].outcome, Err(NotComparable::Itself));
    assert!(compare(&[], &Compared::Reference(0), &How::read_with(0.0)).contrasts.is_empty());
}

/// Bags that all read alike still have the reading doubt: with the spread taken as 0.7 mm, four
/// bags each and 6 degrees of freedom the half width is 2.4469 · 0.7 · √(1/2) (t from tables).
#[test]
fn the_reading_doubt_stands_in_for_a_spread_that_is_too_small() {
    let list: Vec<BagValue> = (0..8).map(|i| bag(i % 2, 0, i, (i % 2) as f64 * 9.0)).collect();
    let answer = compare(&list, &Compared::Reference(0), &How::read_with(0.7));
    let ours = answer.contrasts[0].outcome.clone().unwrap();
    assert!(answer.variances.unwrap().from_reading_doubt);
    near("low", ours.low, 9.0 - 2.4469 * 0.7 * 0.5_f64.sqrt(), 1e-5, 0.0);
}

#[test]
fn a_side_made_by_one_group_is_marked() {
    let tie = |list: &[BagValue]| {
        compare(list, &Compared::Reference(0), &How::read_with(0.0)).contrasts[0]
            .tied_to_one_group
            .map(|tie| (tie.group, tie.treatment))
    };
    let split = [bag(0, 0, 5, 1.0), bag(0, 0, 6, 2.0), bag(1, 0, 5, 3.0), bag(1, 0, 6, 4.5)];
    assert_eq!(tie(&split), None);
    let treatment =
        [bag(0, 0, 5, 1.0), bag(0, 0, 6, 2.0), bag(1, 0, 7, 3.0), bag(1, 0, 7, 4.5)];
    assert_eq!(tie(&treatment), Some((7, 1)));
    let reference =
        [bag(0, 0, 5, 1.0), bag(0, 0, 5, 2.0), bag(1, 0, 6, 3.0), bag(1, 0, 7, 4.5)];
    assert_eq!(tie(&reference), Some((5, 0)));
    // One group made everything: its way of working is on both sides.
    let all = [bag(0, 0, 5, 1.0), bag(0, 0, 5, 2.0), bag(1, 0, 5, 3.0), bag(1, 0, 5, 4.5)];
    assert_eq!(tie(&all), None);
}

/// Pairs of a crossed question that share no bag hold together as independent estimates over one
/// spread: the multiplier is that of uncorrelated values.
#[test]
fn pairs_with_their_own_references_hold_together() {
    let list: Vec<BagValue> = (0..16)
        .map(|i| bag(i % 4, 0, i, [3.0, 9.0, 4.0, 12.0][i % 4] + (i / 4) as f64))
        .collect();
    let answer = compare(&list, &Compared::Pairs(vec![(1, 0), (3, 2)]), &How::read_with(0.0));
    let apart = LargestOfSeveral::new(&[vec![1.0], vec![0.0, 1.0]], 12.0, 1).bound(0.95);
    near("multiplier", answer.contrasts[0].outcome.clone().unwrap().factor, apart, 1e-12, 0.0);
    let differences: Vec<f64> =
        answer.contrasts.iter().map(|c| c.outcome.clone().unwrap().difference).collect();
    near("first", differences[0], 6.0, 1e-13, 0.0);
    near("second", differences[1], 8.0, 1e-13, 0.0);
}
