//! What holds of any fit.

use crate::curves::Curve;
use barm_science::fit::{FitError, Problem, least_squares};
use proptest::prelude::*;

/// The curve of first order, which any start near the data finds.
fn first_order(b: &[f64], x: &[f64]) -> f64 {
    b[0] * (1.0 - libm::exp(-b[1] * x[0]))
}

fn minutes() -> Vec<Vec<f64>> {
    (1..=8).map(|minute| vec![f64::from(minute) * 3.0]).collect()
}

proptest! {
    /// Without noise the true parameters come back, whatever they are.
    #[test]
    fn what_was_put_in_comes_back(top in 1.0..200.0_f64, rate in 0.02..0.6_f64) {
        let x = minutes();
        let y: Vec<f64> = x.iter().map(|x| first_order(&[top, rate], x)).collect();
        let start = [y[7] * 1.3, 0.1];
        let fit = least_squares(&Curve { model: &first_order, x: &x, y: &y }, &start).expect("a fit");
        prop_assert!((fit.parameters[0] / top - 1.0).abs() < 1e-6, "{fit:?}");
        prop_assert!((fit.parameters[1] / rate - 1.0).abs() < 1e-6, "{fit:?}");
    }

    /// A straight line is what the normal equations give.
    #[test]
    fn a_line_is_the_line_of_the_normal_equations(
        y in prop::collection::vec(-50.0..50.0_f64, 5..12),
    ) {
        let x: Vec<Vec<f64>> = (0..y.len()).map(|at| vec![at as f64]).collect();
        let line = |b: &[f64], x: &[f64]| b[0] + b[1] * x[0];
        let fit = least_squares(&Curve { model: &line, x: &x, y: &y }, &[0.0, 0.0]).expect("a fit");
        let n = y.len() as f64;
        let (mx, my) = ((n - 1.0) / 2.0, y.iter().sum::<f64>() / n);
        let sxx: f64 = x.iter().map(|x| (x[0] - mx) * (x[0] - mx)).sum();
        let sxy: f64 = x.iter().zip(&y).map(|(x, y)| (x[0] - mx) * (y - my)).sum();
        prop_assert!((fit.parameters[1] - sxy / sxx).abs() < 1e-8);
        prop_assert!((fit.parameters[0] - (my - sxy / sxx * mx)).abs() < 1e-7);
    }
}

/// A line that happens to pass beside the origin: its slope is Σ(x − x̄)(y − ȳ)/Σ(x − x̄)², worked with the fractions that
/// these values are.
#[test]
fn a_line_beside_the_origin_has_its_digits_too() {
    let x: Vec<Vec<f64>> = (0..5).map(|at| vec![f64::from(at)]).collect();
    // Residuals 10, −20, 10, 0, 0 off 1e-5 + 2 x: they add up to 0, and to 0 times x.
    let y: Vec<f64> = [10.0, -20.0, 10.0, 0.0, 0.0]
        .into_iter()
        .zip(&x)
        .map(|(off, x)| 1e-5 + 2.0 * x[0] + off)
        .collect();
    let line = |b: &[f64], x: &[f64]| b[0] + b[1] * x[0];
    let fit = least_squares(&Curve { model: &line, x: &x, y: &y }, &[0.0, 0.0]).expect("a fit");
    assert!((fit.parameters[1] - 2.0).abs() < 1e-11, "{fit:?}");
    assert!((fit.parameters[0] - 1e-5).abs() < 1e-11, "{fit:?}");
}

/// A prior is one more residual: of one value and one prior of the same weight, the mean.
struct WithPrior;

impl Problem for WithPrior {
    fn count(&self) -> usize {
        2
    }

    fn residuals(&self, parameters: &[f64], out: &mut [f64]) {
        out[0] = 7.0 - parameters[0];
        out[1] = 3.0 - parameters[0];
    }
}

#[test]
fn a_prior_is_one_more_residual() {
    let fit = least_squares(&WithPrior, &[0.0]).expect("a fit");
    assert!((fit.parameters[0] - 5.0).abs() < 1e-12);
    assert!((fit.residual_ss - 8.0).abs() < 1e-12);
    let covariance = fit.unscaled_covariance.expect("one parameter");
    assert!((covariance[0][0] - 0.5).abs() < 1e-12);
}

#[test]
fn what_cannot_be_told_apart_is_said_and_what_cannot_be_fitted_refused() {
    let x = minutes();
    let y: Vec<f64> = x.iter().map(|x| 2.0 * x[0]).collect();
    let twice = |b: &[f64], x: &[f64]| (b[0] + b[1]) * x[0];
    let fit =
        least_squares(&Curve { model: &twice, x: &x, y: &y }, &[0.3, 0.4]).expect("a fit");
    assert!((fit.parameters.iter().sum::<f64>() - 2.0).abs() < 1e-9);
    assert_eq!(fit.standard_errors(), None, "only their sum is known");
    let few = least_squares(&Curve { model: &twice, x: &x[..1], y: &y[..1] }, &[1.0, 1.0]);
    assert_eq!(few, Err(FitError::TooFew { residuals: 1, parameters: 2 }));
    let never = |_: &[f64], _: &[f64]| f64::NAN;
    let none = least_squares(&Curve { model: &never, x: &x, y: &y }, &[1.0, 1.0]);
    assert_eq!(none, Err(FitError::NoStart));
}
