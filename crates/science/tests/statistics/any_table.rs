//! What holds of a table of levels whatever its values are.

use crate::levels::asked;
use barm_science::statistics::levels::{Levels, Measured, levels};
use proptest::prelude::*;

prop_compose! {
    fn any_row()(
        value in prop_oneof![
            8 => -5.0_f64..80.0,
            1 => (0_i8..4).prop_map(f64::from),
            1 => prop::num::f64::ANY,
        ],
        level in 0_usize..4,
        block in 0_usize..4,
    ) -> Measured {
        Measured { value, level, block }
    }
}

/// An answer's numbers, all of them.
fn numbers(ours: &Levels) -> Vec<f64> {
    let mut all = vec![ours.anova.f, ours.anova.p, ours.rest.ms, ours.randomization.p];
    all.extend(ours.welch.iter().flat_map(|w| [w.f, w.df1, w.df2, w.p]));
    all.extend(ours.by_ranks.iter().flat_map(|r| [r.h, r.p]));
    for group in &ours.groups {
        all.extend([group.summary.mean, group.summary.mad, group.adjusted_mean]);
        all.extend(group.summary.sd);
    }
    let against = ours.against.iter().flat_map(|a| &a.together.differences);
    for d in ours.pairs.iter().chain(against) {
        all.extend([d.difference, d.low, d.high, d.p]);
    }
    all
}

/// Every level in every block at least once, so that nothing is refused for its design.
fn whole(values: &[f64]) -> Vec<Measured> {
    let row = |(at, &value): (usize, &f64)| Measured { value, level: at % 3, block: at / 6 };
    values.iter().enumerate().map(row).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::size::counts(32, 96, 1000)))]

    #[test]
    fn an_answer_is_whole_or_says_why_there_is_none(
        rows in prop::collection::vec(any_row(), 0..30),
        in_blocks: bool,
        control in prop::option::of(0_usize..5),
    ) {
        match levels(&rows, asked(in_blocks, control)) {
            Ok(ours) => {
                let all = numbers(&ours);
                prop_assert!(all.iter().all(|v| v.is_finite()), "{all:?}");
                let k = ours.groups.len();
                prop_assert_eq!(ours.pairs.len(), k * (k - 1) / 2);
                for d in &ours.pairs {
                    prop_assert!(d.low <= d.difference && d.difference <= d.high);
                    prop_assert!((0.0..=1.0).contains(&d.p));
                }
                prop_assert_eq!(ours.against.is_some(), control.is_some());
            }
            Err(why) => prop_assert!(why.to_string().len() > 20),
        }
    }

    /// Another unit and another zero of the scale change differences with them, and no chance.
    #[test]
    fn unit_and_zero_do_not_matter(
        values in prop::collection::vec(0.0_f64..40.0, 18..19),
        unit in prop_oneof![Just(25.4), Just(-0.1), Just(1e30), Just(1e-30)],
        zero in -100.0_f64..100.0,
        in_blocks: bool,
    ) {
        let rows = whole(&values);
        let other: Vec<Measured> =
            rows.iter().map(|r| Measured { value: unit * (r.value + zero), ..*r }).collect();
        let (a, b) =
            (levels(&rows, asked(in_blocks, Some(1))), levels(&other, asked(in_blocks, Some(1))));
        let (a, b) = (a.unwrap(), b.unwrap());
        prop_assert!((a.anova.f / b.anova.f - 1.0).abs() < 1e-9);
        let close = |x: f64, y: f64| (x * unit - y).abs() < 1e-9 * unit.abs() * 100.0;
        let lists = |l: &Levels| [l.pairs.clone(), l.against.clone().unwrap().together.differences];
        for (x, y) in lists(&a).iter().flatten().zip(lists(&b).iter().flatten()) {
            prop_assert!(close(x.difference, y.difference));
            prop_assert!(close(x.high - x.difference, (y.high - y.difference) * unit.signum()));
            prop_assert!((x.p - y.p).abs() < 1e-8);
        }
        if unit > 0.0 {
            prop_assert_eq!(a.randomization.draws, b.randomization.draws);
            prop_assert!((a.randomization.p - b.randomization.p).abs() < 1e-3);
        }
    }

    /// The order of rows and the numbers of blocks do not matter; other numbers of the levels move
    /// the answers with them.
    #[test]
    fn names_and_order_do_not_matter(
        values in prop::collection::vec(0.0_f64..40.0, 18..19),
        turn in 0_usize..18,
        in_blocks: bool,
    ) {
        let rows = whole(&values);
        let mut other: Vec<Measured> = rows
            .iter()
            .map(|r| Measured { level: 2 - r.level, block: 90 - r.block, ..*r })
            .collect();
        other.rotate_left(turn);
        let a = levels(&rows, asked(in_blocks, Some(2))).unwrap();
        let b = levels(&other, asked(in_blocks, Some(0))).unwrap();
        prop_assert!((a.anova.p - b.anova.p).abs() < 1e-10);
        prop_assert_eq!(a.by_ranks.map(|r| (r.h * 1e9).round()), b.by_ranks.map(|r| (r.h * 1e9).round()));
        let a = a.against.unwrap().together.differences;
        let mut b = b.against.unwrap().together.differences;
        b.reverse();
        for (x, y) in a.iter().zip(&b) {
            prop_assert_eq!(x.level, 2 - y.level);
            prop_assert!((x.difference - y.difference).abs() < 1e-9);
            prop_assert!((x.p - y.p).abs() < 1e-8);
        }
    }

    /// What is added to whole blocks changes nothing where blocks count.
    #[test]
    fn blocks_take_up_what_is_added_to_them(
        values in prop::collection::vec(0.0_f64..40.0, 18..19),
        added in prop::collection::vec(-500.0_f64..500.0, 3..4),
    ) {
        let rows = whole(&values);
        let other: Vec<Measured> = rows
            .iter()
            .map(|r| Measured { value: r.value + added[r.block], ..*r })
            .collect();
        let a = levels(&rows, asked(true, None)).unwrap();
        let b = levels(&other, asked(true, None)).unwrap();
        prop_assert!((a.anova.p - b.anova.p).abs() < 1e-9);
        for (x, y) in a.pairs.iter().zip(&b.pairs) {
            prop_assert!((x.difference - y.difference).abs() < 1e-9);
        }
    }
}
