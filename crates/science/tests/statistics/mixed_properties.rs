//! What holds of a comparison with groups as chance, whatever the bags are.

use crate::bags::bag;
use crate::size::counts;
use barm_science::statistics::compare::{
    BagValue, Compared, Comparison, Estimate, How, NotComparable, compare,
};
use barm_science::statistics::mixed::{Method, Mixed, Policy, Records};
use proptest::prelude::*;

fn finite(answer: &Comparison) -> bool {
    let estimate = |e: &Estimate| {
        let numbers = [
            e.difference,
            e.low,
            e.high,
            e.se,
            e.df,
            answer.p(e),
            e.p_alone,
            e.group_share,
            e.smallest_found,
        ];
        numbers.iter().chain(&e.standardized).chain(&e.ratio).all(|v| v.is_finite())
            && (0.0..=1.0).contains(&answer.p(e))
            && answer.p(e) >= e.p_alone - 1e-12
            && e.low <= e.difference
            && e.difference <= e.high
            && e.df >= 1.0
            && e.se > 0.0
    };
    answer.contrasts.iter().all(|c| {
        c.highest.is_none_or(f64::is_finite)
            && match &c.outcome {
                Ok(found) => estimate(found),
                Err(why) => why.to_string().len() > 20,
            }
    }) && answer.variances.is_none_or(|v| v.bag.is_finite() && v.group.is_finite())
        && answer.joint.is_none_or(|j| {
            j.f.is_finite() && (0.0..=1.0).contains(&j.p) && j.df1 >= 1.0 && j.df2 > 0.0
        })
        && answer.chance_error.is_finite()
}

prop_compose! {
    fn any_bag()(
        value in prop_oneof![
            12 => -5.0_f64..80.0,
            2 => Just(0.0),
            1 => prop::num::f64::ANY,
        ],
        treatment in 0_usize..4,
        block in 0_usize..3,
        group in 0_usize..4,
    ) -> BagValue {
        BagValue { value, treatment, block, group }
    }
}

fn ways() -> Vec<How> {
    let mut ways = Vec::new();
    for method in [Method::KenwardRoger, Method::Satterthwaite] {
        for policy in [Policy::DegreesFromGroups, Policy::LeastShare(0.2)] {
            ways.push(How { method, policy, ..How::default() });
        }
    }
    ways
}

proptest! {
    // Uneven questions are sampled, three kinds of them a case.
    #![proptest_config(ProptestConfig::with_cases(counts(8, 20, 300)))]

    #[test]
    fn no_answer_is_ever_nan(
        list in prop::collection::vec(any_bag(), 0..20),
        pairs in prop::collection::vec((0_usize..5, 0_usize..5), 0..4),
        reading_doubt in prop_oneof![Just(0.0), Just(0.7), Just(f64::NAN), Just(1e200)],
    ) {
        for how in ways() {
            let how = How { reading_doubt, ..how };
            for compared in
                [Compared::Reference(0), Compared::Pairs(pairs.clone()), Compared::AllPairs]
            {
                let found = compare(&list, &compared, &how);
                prop_assert!(finite(&found), "{:?}", found);
            }
        }
    }

}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(counts(24, 80, 1_000)))]

    /// Another zero, another unit, other numbers for the same things, another order of rows.
    #[test]
    fn zero_unit_names_and_order_do_not_matter(
        values in prop::collection::vec(0.0_f64..40.0, 18),
        shift in -1e4_f64..1e4,
        exponent in -30_i32..30,
        turn in 0_usize..18,
    ) {
        let list: Vec<BagValue> = values
            .iter()
            .enumerate()
            .map(|(i, &v)| bag((i + i / 4) % 3, i / 9, i % 9 / 2, v))
            .collect();
        let size = 2.0_f64.powi(exponent);
        let mut other: Vec<BagValue> = list
            .iter()
            .map(|b| bag(b.treatment * 5 + 2, 9 - b.block, 40 - b.group, size * (b.value + shift)))
            .collect();
        other.rotate_left(turn);
        for how in ways() {
            let ours = compare(&list, &Compared::Reference(0), &how);
            let theirs = compare(&other, &Compared::Reference(2), &how);
            let (a, b) = (ours.variances.unwrap(), theirs.variances.unwrap());
            prop_assert_eq!(a.source, b.source);
            prop_assert!((a.group - b.group / size).abs() < 1e-6 * (a.bag + a.group));
            for (a, b) in ours.contrasts.iter().zip(&theirs.contrasts) {
                let (a, b) = (a.outcome.as_ref().unwrap(), b.outcome.as_ref().unwrap());
                let near = |x: f64, y: f64, within: f64| (x - y / size).abs() < within * a.se;
                prop_assert!(near(a.difference, b.difference, 1e-6), "{a:?} {b:?}");
                prop_assert!(near(a.se, b.se, 1e-6), "{a:?} {b:?}");
                prop_assert!((a.df - b.df).abs() < 1e-5 * a.df, "{a:?} {b:?}");
                prop_assert!(near(a.low, b.low, 1e-3), "{a:?} {b:?}");
                prop_assert!((ours.p(a) - theirs.p(b)).abs() < 1e-4, "{a:?} {b:?}");
            }
        }
    }

    /// Blocks taken out are the same as a column for each.
    #[test]
    fn blocks_taken_out_are_columns(
        values in prop::collection::vec(0.0_f64..40.0, 24),
        places in prop::collection::vec((0_usize..4, 0_usize..3, 0_usize..3), 24),
    ) {
        let column = |of: &dyn Fn(&(usize, usize, usize)) -> bool| -> Vec<f64> {
            places.iter().map(|p| f64::from(u8::from(of(p)))).collect()
        };
        let blocks: Vec<usize> = places.iter().map(|p| p.1).collect();
        let groups: Vec<usize> = places.iter().map(|p| 10 * p.1 + p.2).collect();
        let treatments: Vec<Vec<f64>> = (0..4).map(|t| column(&|p| p.0 == t)).collect();
        let mut explicit: Vec<Vec<f64>> = (0..3).map(|b| column(&|p| p.1 == b)).collect();
        explicit.extend(treatments.clone());
        let fit = |columns: &[Vec<f64>], blocks: Option<&[usize]>| {
            let records = Records::new(&values, columns, blocks, &groups).unwrap();
            Mixed::fit(&records, 0.0, Policy::DegreesFromGroups, Method::default())
        };
        let (absorbed, whole) = (fit(&treatments, Some(&blocks)), fit(&explicit, None));
        let (absorbed, whole) = match (absorbed, whole) {
            (Ok(a), Ok(b)) => (a, b),
            (a, b) => {
                prop_assert_eq!(a.err(), b.err());
                return Ok(());
            }
        };
        prop_assert_eq!(absorbed.variances().df_between, whole.variances().df_between);
        for (a, b) in (0..4).flat_map(|a| (0..a).map(move |b| (a, b))) {
            let mut weights = vec![0.0; 4];
            weights[a] = 1.0;
            weights[b] = -1.0;
            let mut longer = vec![0.0; 3];
            longer.extend(&weights);
            match (absorbed.told(&weights), whole.told(&longer)) {
                (Some(x), Some(y)) => {
                    prop_assert!((x.value - y.value).abs() < 1e-6 * x.se, "{x:?} {y:?}");
                    prop_assert!((x.se - y.se).abs() < 1e-6 * x.se, "{x:?} {y:?}");
                    prop_assert!((x.df - y.df).abs() < 1e-5 * x.df, "{x:?} {y:?}");
                }
                (x, y) => prop_assert_eq!(x.is_some(), y.is_some()),
            }
        }
    }
}

#[test]
fn what_cannot_be_compared_says_why() {
    let only = |list: &[BagValue], how: &How| {
        let found = compare(list, &Compared::Reference(0), how);
        assert!(finite(&found), "{found:?}");
        found.contrasts[0].outcome.clone()
    };
    let plain = How::default();
    let apart =
        [bag(0, 0, 0, 10.0), bag(0, 0, 1, 12.0), bag(1, 1, 2, 20.0), bag(1, 1, 3, 21.0)];
    assert_eq!(only(&apart, &plain), Err(NotComparable::NoSharedBlock));
    let single = [bag(0, 0, 0, 10.0), bag(1, 0, 1, 20.0)];
    assert_eq!(only(&single, &plain), Err(NotComparable::TooFewBags { n: 1, n_reference: 1 }));
    let alike = [bag(0, 0, 0, 0.1), bag(0, 0, 1, 0.1), bag(1, 0, 2, 0.1), bag(1, 0, 3, 0.1)];
    assert_eq!(only(&alike, &plain), Err(NotComparable::NoSpread));
    let twins = [bag(0, 0, 0, 1.1), bag(1, 0, 0, 2.1), bag(0, 0, 1, 3.1), bag(1, 0, 1, 4.1)];
    assert_eq!(only(&twins, &plain), Err(NotComparable::NoSpread));
    assert!(only(&alike, &How { reading_doubt: 0.7, ..plain }).is_ok());
    assert!(only(&twins, &How { reading_doubt: 0.7, ..plain }).is_ok());
    let none = [bag(1, 0, 0, 10.0), bag(1, 0, 1, 20.0)];
    assert_eq!(only(&none, &plain), Err(NotComparable::NoBags { n: 2, n_reference: 0 }));
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308] {
        let wild =
            [bag(1, 1, 5, 1.0), bag(0, 0, 1, 2.0), bag(1, 0, 2, value), bag(0, 0, 3, 4.0)];
        let Err(NotComparable::Unusable { bag: 2, value: found }) = only(&wild, &plain) else {
            panic!("{:?}", only(&wild, &plain));
        };
        assert_eq!(found.to_bits(), value.to_bits());
    }
    assert!(compare(&[], &Compared::AllPairs, &plain).contrasts.is_empty());
    let nothing = compare(&[], &Compared::Pairs(vec![(1, 0), (2, 2)]), &plain);
    let why: Vec<_> = nothing.contrasts.iter().map(|c| c.outcome.clone()).collect();
    assert_eq!(
        why,
        [Err(NotComparable::NoBags { n: 0, n_reference: 0 }), Err(NotComparable::Itself)]
    );
}

/// One period, a group a treatment: what the treatment did cannot be told from what the group did.
#[test]
fn a_group_and_its_treatment_cannot_be_told_apart() {
    let list: Vec<BagValue> =
        (0..6).map(|i| bag(i % 2, 0, i % 2, [4.0, 9.0, 5.0, 11.0, 6.0, 10.0][i])).collect();
    let found = compare(&list, &Compared::Reference(0), &How::default());
    assert_eq!(found.contrasts[0].outcome, Err(NotComparable::GroupsNotTold));
    assert_eq!(
        found.contrasts[0].tied_to_one_group.map(|t| (t.group, t.treatment)),
        Some((1, 1))
    );
    // By a share that is assumed there is a number, and the tie is said beside it.
    let assumed = How { policy: Policy::LeastShare(0.3), ..How::default() };
    let found = compare(&list, &Compared::Reference(0), &assumed);
    let wider = found.contrasts[0].outcome.clone().unwrap();
    assert!(found.contrasts[0].tied_to_one_group.is_some() && wider.group_share > 0.5);
    // Where each group makes both, nothing is tied and nothing hangs on groups.
    let both: Vec<BagValue> = (0..8)
        .map(|i| bag(i % 2, 0, i / 4, [4.0, 9.0, 5.0, 11.0, 8.0, 12.0, 9.0, 14.5][i]))
        .collect();
    let found = compare(&both, &Compared::Reference(0), &How::default());
    assert!(found.contrasts[0].tied_to_one_group.is_none());
    assert!(found.contrasts[0].outcome.as_ref().unwrap().group_share < 1e-9);
}
