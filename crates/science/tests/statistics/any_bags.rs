//! What holds of a comparison whatever the bags are.

use crate::bags::{bag, finite};
use barm_science::statistics::compare::{BagValue, Compared, How, compare};
use proptest::prelude::*;

prop_compose! {
    fn any_bag()(
        value in prop_oneof![
            8 => -5.0_f64..80.0,
            1 => Just(0.0),
            1 => prop::num::f64::ANY,
        ],
        treatment in 0_usize..5,
        block in 0_usize..4,
        group in 0_usize..6,
    ) -> BagValue {
        BagValue { value, treatment, block, group }
    }
}

/// Beside a value beyond all reason the reading doubt is nothing, and the ratio of the two beyond all numbers.
#[test]
fn a_value_beyond_all_reason_leaves_numbers() {
    for absurd in [-2.7e78, 1e60, -4e98] {
        let list = [
            bag(3, 1, 1, 0.0),
            bag(0, 0, 0, absurd),
            bag(3, 1, 1, 0.0),
            bag(0, 0, 1, 0.0),
            bag(2, 0, 0, 0.0),
        ];
        let answer = compare(&list, &Compared::Reference(0), &How::read_with(0.7));
        assert!(finite(&answer), "{absurd:e}: {answer:?}");
        assert!(answer.contrasts.iter().any(|contrast| contrast.outcome.is_ok()));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(
        crate::size::counts(32, 96, 1000)
    ))]

    #[test]
    fn no_answer_is_ever_nan(
        list in prop::collection::vec(any_bag(), 0..24),
        pairs in prop::collection::vec((0_usize..6, 0_usize..6), 0..5),
        doubt in prop_oneof![Just(0.0), Just(0.7), Just(f64::NAN)],
    ) {
        for reference in [Compared::Reference(0), Compared::Pairs(pairs)] {
            let answer = compare(&list, &reference, &How::read_with(doubt));
            prop_assert!(finite(&answer) , "{:?}", answer);
            for contrast in &answer.contrasts {
                if let Ok(e) = &contrast.outcome {
                    prop_assert!(e.low <= e.difference && e.difference <= e.high && e.df >= 1.0);
                } else {
                    let words = contrast.outcome.as_ref().unwrap_err().to_string();
                    prop_assert!(words.len() > 20);
                }
            }
        }
    }

    #[test]
    fn numbering_and_order_do_not_matter(
        values in prop::collection::vec(0.0_f64..40.0, 12..13),
        turn in 0_usize..12,
    ) {
        let list: Vec<BagValue> =
            values.iter().enumerate().map(|(i, &v)| bag(i % 3, i / 6, i, v)).collect();
        let mut other: Vec<BagValue> = list
            .iter()
            .map(|b| bag(b.treatment * 7 + 3, 9 - b.block, 100 + b.group, b.value))
            .collect();
        other.rotate_left(turn);
        let ours = compare(&list, &Compared::Reference(0), &How::read_with(0.7));
        let theirs = compare(&other, &Compared::Reference(3), &How::read_with(0.7));
        for (a, b) in ours.contrasts.iter().zip(&theirs.contrasts) {
            let (a, b) = (a.outcome.clone().unwrap(), b.outcome.clone().unwrap());
            prop_assert!((a.difference - b.difference).abs() < 1e-10);
            prop_assert!((a.low - b.low).abs() < 1e-6 && (a.high - b.high).abs() < 1e-6);
        }
    }
}
