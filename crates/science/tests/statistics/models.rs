//! The general linear model: what it can tell and what not.

use crate::experiments::near;
use crate::outside::nist;
use barm_science::statistics::linear::{FitError, fit};
use proptest::prelude::*;

/// NIST StRD Longley (seven nearly dependent columns), certified to 15 digits, where the data are
/// at hand.
#[test]
fn nists_nearly_dependent_columns_are_told_apart() {
    let Some(text) = nist("linreg/Longley.dat") else { return };
    let after =
        text.lines().skip_while(|l| !l.starts_with("Data:") || !l.contains("x1")).skip(1);
    let numbers: Vec<f64> =
        after.flat_map(str::split_whitespace).map(|v| v.parse().unwrap()).collect();
    assert_eq!(numbers.len(), 16 * 7);
    let column = |at: usize| -> Vec<f64> { numbers.chunks(7).map(|row| row[at]).collect() };
    let mut columns = vec![vec![1.0; 16]];
    columns.extend((1..7).map(column));
    let fitted = fit(&columns, &column(0)).unwrap();
    assert_eq!((fitted.rank(), fitted.df()), (7, 9));
    let certified = [
        -3_482_258.634_595_82,
        15.061_872_271_373_3,
        -0.358_191_792_925_910e-1,
        -2.020_229_803_816_83,
        -1.033_226_867_173_59,
        -0.511_041_056_535_807e-1,
        1_829.151_464_613_55,
    ];
    for (at, certified) in certified.iter().enumerate() {
        let mut weights = vec![0.0; 7];
        weights[at] = 1.0;
        let ours = fitted.estimate(&weights).unwrap();
        // The columns' condition number, about 5e9, leaves doubles this much.
        near("coefficient", ours.value, *certified, 1e-8, 0.0);
    }
    let sd = (fitted.residual_ss() / 9.0).sqrt();
    near("rest", sd, 304.854_073_561_965, 1e-10, 0.0);
}

#[test]
fn what_the_design_cannot_tell_is_not_told() {
    // An intercept and both of two groups: only differences can be told.
    let columns = [vec![1.0; 4], vec![1.0, 1.0, 0.0, 0.0], vec![0.0, 0.0, 1.0, 1.0]];
    let fitted = fit(&columns, &[1.0, 3.0, 6.0, 8.0]).unwrap();
    assert_eq!((fitted.rank(), fitted.df()), (2, 2));
    assert_eq!(fitted.estimate(&[0.0, 1.0, 0.0]), None);
    let difference = fitted.estimate(&[0.0, -1.0, 1.0]).unwrap();
    near("difference", difference.value, 5.0, 1e-14, 0.0);
    near("variance", difference.variance(), 1.0, 1e-14, 0.0);
    let mean = fitted.estimate(&[1.0, 0.5, 0.5]).unwrap();
    near("mean", mean.value, 4.5, 1e-14, 0.0);
    near("apart", mean.covariance(&difference), 0.0, 0.0, 1.0);
}

#[test]
fn models_that_cannot_be_fitted_say_why() {
    assert_eq!(fit(&[], &[]), Err(FitError::Empty));
    let uneven = fit(&[vec![1.0]], &[1.0, 2.0]);
    assert_eq!(uneven, Err(FitError::Uneven { column: 0, found: 1, wanted: 2 }));
    for wild in [f64::NAN, f64::INFINITY, 1e308] {
        let there = fit(&[vec![1.0, 1.0]], &[1.0, wild]);
        assert!(matches!(there, Err(FitError::OutOfReach { row: 1, .. })));
        assert!(fit(&[vec![1.0, wild]], &[1.0, 2.0]).is_err());
    }
}

proptest! {
    /// Two factors: the contrast of two levels can be told exactly where a chain of shared blocks
    /// links them.
    #[test]
    fn contrasts_can_be_told_exactly_where_blocks_link_them(
        places in prop::collection::vec((0_usize..4, 0_usize..4), 1..10),
    ) {
        let mark = |of: &dyn Fn(&(usize, usize)) -> usize, wanted| -> Vec<f64> {
            places.iter().map(|p| f64::from(u8::from(of(p) == wanted))).collect()
        };
        let mut columns: Vec<Vec<f64>> = (0..4).map(|b| mark(&|p| p.0, b)).collect();
        columns.extend((0..4).map(|t| mark(&|p| p.1, t)));
        let values: Vec<f64> = (0..places.len()).map(|i| (i * i % 7) as f64).collect();
        let fitted = fit(&columns, &values).unwrap();
        let mut linked = [false; 4];
        let mut blocks = [false; 4];
        linked[0] = places.iter().any(|p| p.1 == 0);
        for _ in 0..8 {
            for &(block, treatment) in &places {
                blocks[block] |= linked[treatment];
                linked[treatment] |= blocks[block];
            }
        }
        for (other, &linked) in linked.iter().enumerate().skip(1) {
            let mut weights = vec![0.0; 8];
            weights[4] = -1.0;
            weights[4 + other] = 1.0;
            prop_assert_eq!(fitted.estimate(&weights).is_some(), linked);
        }
    }

    /// Residuals are at right angles to the columns: adding a multiple of a column to the values
    /// changes its coefficient by that much and nothing that is left over.
    #[test]
    fn a_column_added_to_the_values_is_found(
        x in prop::collection::vec(-10.0_f64..10.0, 8..9),
        y in prop::collection::vec(-10.0_f64..10.0, 8..9),
        times in -5.0_f64..5.0,
    ) {
        let columns = [vec![1.0; 8], x.clone()];
        let plain = fit(&columns, &y).unwrap();
        prop_assume!(plain.rank() == 2);
        let moved: Vec<f64> = y.iter().zip(&x).map(|(y, x)| y + times * x).collect();
        let other = fit(&columns, &moved).unwrap();
        let slope = |f: &barm_science::statistics::linear::Fit| f.estimate(&[0.0, 1.0]).unwrap();
        let size = slope(&plain).variance().sqrt();
        prop_assert!((slope(&other).value - slope(&plain).value - times).abs() < 1e-10 * (1.0 + size));
        prop_assert!((other.residual_ss() - plain.residual_ss()).abs() < 1e-9);
    }
}
