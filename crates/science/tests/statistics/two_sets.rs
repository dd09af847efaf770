//! Student's, Welch's and the paired t.

use crate::experiments::{by_treatment, experiment, near, r_values};
use barm_science::statistics::two_sample::{TTest, TTestError, equal_spread, paired, welch};
use proptest::prelude::*;

/// R 4.2.2, `t.test` in its three forms.
#[test]
fn t_tests_agree_with_r() {
    for set in ["t_sleep", "t_chick_casein_linseed"] {
        let r = r_values(set);
        let groups = by_treatment(&experiment(set));
        let (a, b) = (&groups[0].1, &groups[1].1);
        let forms: [(&str, TTest); 3] = [
            ("t.test(A,B,var.equal=TRUE)", equal_spread(a, b).unwrap()),
            ("t.test(A,B,var.equal=FALSE)", welch(a, b).unwrap()),
            ("t.test(A,B,paired=TRUE)", paired(a, b).unwrap()),
        ];
        for (call, ours) in forms {
            let wanted = |what: &str| r[&(call.to_owned(), what.to_owned())];
            near(call, ours.t, wanted("t"), 1e-13, 0.0);
            near(call, ours.df, wanted("df"), 1e-13, 0.0);
            near(call, ours.p, wanted("p"), 1e-12, 0.0);
            near(call, ours.low, wanted("ci lo"), 1e-12, 0.0);
            near(call, ours.high, wanted("ci hi"), 1e-12, 0.0);
        }
    }
}

/// Box, Hunter & Hunter (1978), chapter 4, boys' shoes: mean difference −0.41, t −3.35 with 9
/// degrees of freedom, p 0.0085; by R the unpaired tests see nothing (Welch p 0.7165).
#[test]
fn pairing_finds_what_ignoring_the_pairs_hides() {
    let groups = by_treatment(&experiment("shoes"));
    let (a, b) = (&groups[0].1, &groups[1].1);
    let together = paired(a, b).unwrap();
    near("difference", together.difference, -0.41, 1e-12, 0.0);
    near("t", together.t, -3.348_876_5, 2e-8, 0.0);
    near("p", together.p, 0.008_538_781, 1e-7, 0.0);
    near("low", together.low, -0.686_953_9, 1e-7, 0.0);
    let apart = welch(a, b).unwrap();
    near("t", apart.t, -0.368_910_55, 1e-7, 0.0);
    near("df", apart.df, 17.986_874, 1e-7, 0.0);
    near("p", apart.p, 0.716_501_1, 1e-6, 0.0);
}

#[test]
fn sets_that_cannot_be_tested_say_why() {
    assert_eq!(welch(&[1.0], &[1.0, 2.0]), Err(TTestError::TooFew { first: 1, second: 2 }));
    assert_eq!(welch(&[0.1, 0.1], &[0.1, 0.1]), Err(TTestError::NoSpread));
    assert_eq!(paired(&[1.0, 2.0], &[1.0]), Err(TTestError::Unpaired { first: 2, second: 1 }));
    for wild in [f64::NAN, f64::NEG_INFINITY, 1e308] {
        assert!(welch(&[1.0, wild], &[1.0, 2.0]).is_err());
        assert!(paired(&[1.0, wild], &[1.0, 2.0]).is_err());
    }
}

proptest! {
    #[test]
    fn a_shift_changes_no_difference(
        a in prop::collection::vec(-50.0_f64..50.0, 2..8),
        b in prop::collection::vec(-50.0_f64..50.0, 2..8),
        by in -1000.0_f64..1000.0,
    ) {
        let moved = |v: &[f64]| -> Vec<f64> { v.iter().map(|x| x + by).collect() };
        if let (Ok(here), Ok(there)) = (welch(&a, &b), welch(&moved(&a), &moved(&b))) {
            prop_assert!((here.difference - there.difference).abs() < 1e-9);
            prop_assert!((here.se - there.se).abs() < 1e-9);
        }
    }
}
