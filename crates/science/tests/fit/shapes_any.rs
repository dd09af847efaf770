//! What holds of the six shapes whatever the points are.

use barm_science::fit::curve::{CurveError, Shape, curve};
use barm_science::statistics::chance::Chance;
use proptest::prelude::*;

/// True parameters over a lesson's 40 minutes, within what such curves look like.
fn truth(shape: Shape, unit: &[f64; 4]) -> Vec<f64> {
    let [a, b, c, d] = *unit;
    match shape {
        Shape::Line => vec![40.0 * a - 20.0, 4.0 * b - 2.0],
        Shape::Saturating => vec![5.0 + 100.0 * a, 0.03 + 0.3 * b],
        Shape::MichaelisMenten => vec![5.0 + 100.0 * a, 1.0 + 25.0 * b],
        Shape::Logistic => {
            vec![5.0 + 100.0 * a, (0.15 + 0.4 * b) * (8.0 + 20.0 * c), 0.15 + 0.4 * b]
        }
        Shape::Gompertz => {
            let height = 5.0 + 100.0 * a;
            vec![height, height * (0.04 + 0.08 * b), 2.0 + 12.0 * c]
        }
        Shape::Richards => {
            let turn = 0.5 + 2.5 * d;
            vec![5.0 + 100.0 * a, (0.2 + 0.4 * b) * (10.0 + 15.0 * c), 0.2 + 0.4 * b, turn]
        }
    }
}

fn shapes() -> impl Strategy<Value = Shape> {
    prop::sample::select(Shape::ALL.to_vec())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(
        match std::env::var("BARM_TEST_SIZE").as_deref() {
            Ok("quick") => 24,
            Ok("long") => 2_000,
            _ => 128,
        }
    ))]

    /// Without noise what was put in comes back, in any units, without a start.
    #[test]
    fn what_was_put_in_comes_back(
        shape in shapes(),
        unit in prop::array::uniform4(0.0..1.0_f64),
        x_unit in prop_oneof![Just(1.0), Just(60.0), Just(1e-9), Just(3e12)],
        y_unit in prop_oneof![Just(1.0), Just(-25.4), Just(1e-12), Just(7e20)],
    ) {
        let b = truth(shape, &unit);
        let minutes: Vec<f64> = (0..21).map(|at| 2.0 * f64::from(at)).collect();
        let x: Vec<f64> = minutes.iter().map(|m| m * x_unit).collect();
        let y: Vec<f64> = minutes.iter().map(|&m| shape.at(&b, m) * y_unit).collect();
        let fit = curve(shape, &x, &y).expect("a fit");
        prop_assert!(fit.converged, "{b:?} {fit:?}");
        let most = y.iter().fold(0.0_f64, |m, v| m.max(v.abs()));
        for (&x, y) in x.iter().zip(&y) {
            prop_assert!((fit.at(x) - y).abs() < 1e-7 * most, "{b:?} {fit:?}");
        }
        prop_assert!((fit.parameters[0].value - b[0] * y_unit).abs() < 1e-4 * (b[0] * y_unit).abs().max(most));
    }

    /// With noise: no neighbor is better (it is a minimum), units do not matter, and the curve that
    /// was put in is never nearer to the points than the one found.
    #[test]
    fn the_fit_is_nearest(
        shape in shapes(),
        unit in prop::array::uniform4(0.0..1.0_f64),
        seed: u64,
    ) {
        let b = truth(shape, &unit);
        let mut chance = Chance::from_seed(seed);
        let x: Vec<f64> = (0..21).map(|at| 2.0 * f64::from(at)).collect();
        let y: Vec<f64> = x.iter().map(|&x| shape.at(&b, x) + chance.normal()).collect();
        let fit = curve(shape, &x, &y).expect("a fit");
        let rss = |b: &[f64]| -> f64 {
            x.iter().zip(&y).map(|(&x, y)| (y - shape.at(b, x)).powi(2)).sum()
        };
        let found: Vec<f64> = fit.parameters.iter().map(|p| p.value).collect();
        prop_assert!((rss(&found) - fit.rss).abs() <= 1e-9 * fit.rss);
        prop_assert!(fit.rss <= rss(&b) * (1.0 + 1e-9), "{b:?} {} {fit:?}", rss(&b));
        if fit.converged {
            for at in 0..found.len() {
                for share in [1.0 - 1e-4, 1.0 + 1e-4] {
                    let mut other = found.clone();
                    other[at] *= share;
                    prop_assert!(rss(&other) >= fit.rss * (1.0 - 1e-9), "{fit:?}");
                }
            }
            let inches: Vec<f64> = y.iter().map(|y| y / 25.4).collect();
            let seconds: Vec<f64> = x.iter().map(|x| x * 60.0).collect();
            let other = curve(shape, &seconds, &inches).expect("a fit");
            prop_assert!((other.rss * 25.4 * 25.4 / fit.rss - 1.0).abs() < 1e-6, "{fit:?} {other:?}");
        }
    }

    /// Nonsense gives words or finite numbers.
    #[test]
    fn nonsense_gives_words_or_numbers(
        shape in shapes(),
        points in prop::collection::vec(
            (
                prop_oneof![4 => -3.0..30.0_f64, 1 => Just(0.0), 1 => prop::num::f64::ANY],
                prop_oneof![4 => -3.0..30.0_f64, 1 => Just(1.0), 1 => prop::num::f64::ANY],
            ),
            0..12,
        ),
    ) {
        let (x, y): (Vec<f64>, Vec<f64>) = points.into_iter().unzip();
        match curve(shape, &x, &y) {
            Err(why) => prop_assert!(why.to_string().len() > 15),
            Ok(fit) => {
                prop_assert!(fit.rss.is_finite() && fit.df > 0);
                for p in &fit.parameters {
                    prop_assert!(p.value.is_finite());
                    prop_assert!(p.doubt.is_none_or(|d| d.se.is_finite() && d.low <= d.high));
                }
            }
        }
    }
}

#[test]
fn what_cannot_be_fitted_says_why() {
    let x = [0.0, 1.0, 2.0, 3.0, 4.0];
    let y = [0.0, 2.0, 3.0, 3.5, 3.8];
    for shape in Shape::ALL {
        let count = shape.names().len();
        let few = curve(shape, &x[..count], &y[..count]);
        assert_eq!(few, Err(CurveError::TooFew { found: count, parameters: count }));
        assert_eq!(curve(shape, &x, &[2.5; 5]), Err(CurveError::AllEqual { value: 2.5 }));
        let one = curve(shape, &[7.0; 5], &y);
        assert_eq!(one, Err(CurveError::FewPlaces { found: 1, needed: count }));
        assert_eq!(curve(shape, &x, &y[..4]), Err(CurveError::Uneven { x: 5, y: 4 }));
        for wild in [f64::NAN, f64::INFINITY, 1e308] {
            let mut y = y;
            y[1] = wild;
            assert!(matches!(curve(shape, &x, &y), Err(CurveError::OutOfReach { at: 1, .. })));
        }
    }
}

/// Points on a straight line have no top: the search says that it did not arrive, or that nothing
/// is known of it, but not a number with a small doubt.
#[test]
fn a_top_that_the_points_do_not_show_is_not_made_up() {
    let x: Vec<f64> = (0..12).map(f64::from).collect();
    let mut chance = Chance::from_seed(4);
    let y: Vec<f64> = x.iter().map(|x| 3.0 * x + 0.5 * chance.normal()).collect();
    for shape in [Shape::Saturating, Shape::MichaelisMenten] {
        let fit = curve(shape, &x, &y).expect("numbers");
        let top = fit.parameters[0];
        let unsure = top.doubt.is_none_or(|d| d.se > 0.2 * top.value.abs());
        assert!(!fit.converged || unsure, "{fit:?}");
    }
}

/// Very many points: the same curve, in little time.
#[test]
fn a_long_table_is_fitted() {
    let mut chance = Chance::from_seed(9);
    let x: Vec<f64> = (0..50_000).map(|_| 40.0 * chance.uniform()).collect();
    let b = [30.0, 1.8, 8.0];
    let y: Vec<f64> = x.iter().map(|&x| Shape::Gompertz.at(&b, x) + chance.normal()).collect();
    let fit = curve(Shape::Gompertz, &x, &y).expect("a fit");
    assert!(fit.converged);
    for (ours, truth) in fit.parameters.iter().zip(b) {
        let se = ours.doubt.expect("a doubt").se;
        assert!((ours.value - truth).abs() < 5.0 * se && se < 0.02 * truth, "{ours:?}");
    }
}
