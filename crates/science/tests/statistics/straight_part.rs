//! The straight part of rising curves.

use crate::experiments::near;
use barm_science::statistics::straight::straight;
use proptest::prelude::*;

/// A curve that waits, rises straight and stops: rate and lag come back as they were put in.
#[test]
fn a_ramp_gives_its_rate_and_its_lag() {
    let x: Vec<f64> = (0..16).map(|at| 2.0 * f64::from(at)).collect();
    let y: Vec<f64> = x.iter().map(|x| (1.5 * (x - 8.0)).clamp(0.0, 21.0)).collect();
    let ours = straight(&x, &y, 0.0).unwrap().unwrap();
    near("rate", ours.line.slope, 1.5, 1e-12, 0.0);
    near("lag", ours.lag, 8.0, 1e-12, 0.0);
    assert_eq!((ours.from, ours.to), (4, 11), "from the last height of 0 to the first of 21");
    let lifted: Vec<f64> = y.iter().map(|y| y + 30.0).collect();
    near("lag", straight(&x, &lifted, 30.0).unwrap().unwrap().lag, 8.0, 1e-12, 0.0);
}

/// The modified Gompertz curve has its greatest slope mu and, by the tangent there, its lag lambda
/// (Zwietering et al. 1990). A line through a part that bends a little is a little less steep and
/// meets the start a little earlier.
#[test]
fn on_a_gompertz_curve_it_is_near_the_tangent() {
    let (a, mu, lambda) = (10.0, 0.5, 8.0);
    let e = std::f64::consts::E;
    let x: Vec<f64> = (0..61).map(f64::from).collect();
    let y: Vec<f64> =
        x.iter().map(|x| a * (-(mu * e / a * (lambda - x) + 1.0).exp()).exp()).collect();
    let ours = straight(&x, &y, 0.0).unwrap().unwrap();
    assert!(ours.line.slope < mu && ours.line.slope > 0.95 * mu, "{ours:?}");
    assert!(ours.lag < lambda && ours.lag > lambda - 1.0, "{ours:?}");
    // The turn, at 15.36, lies inside.
    assert!(ours.from < 15 && ours.to > 15, "{ours:?}");
}

#[test]
fn what_does_not_rise_or_is_too_short_has_no_straight_part() {
    assert_eq!(straight(&[0.0, 1.0, 2.0, 3.0], &[5.0, 4.0, 3.0, 1.0], 0.0), Ok(None));
    assert_eq!(straight(&[0.0, 1.0, 2.0, 3.0], &[2.0; 4], 0.0), Ok(None));
    assert_eq!(straight(&[0.0, 1.0], &[1.0, 2.0], 0.0), Ok(None));
    assert_eq!(straight(&[], &[], 0.0), Ok(None));
    assert!(straight(&[0.0, 1.0, 2.0], &[1.0, 2.0], 0.0).is_err());
    assert!(straight(&[0.0, 1.0, 2.0], &[1.0, f64::NAN, 3.0], 0.0).is_err());
}

proptest! {
    /// Order, units and the zero of the scale do not matter.
    #[test]
    fn order_and_units_do_not_matter(
        steps in prop::collection::vec(0.1_f64..5.0, 8..14),
        turn in 0_usize..8,
    ) {
        let x: Vec<f64> = (0..steps.len()).map(|at| at as f64).collect();
        let y: Vec<f64> = steps
            .iter()
            .scan(0.0, |sum, step| {
                *sum += step;
                Some(*sum)
            })
            .collect();
        let ours = straight(&x, &y, 0.0).unwrap().unwrap();
        let (mut other_x, mut other_y): (Vec<f64>, Vec<f64>) =
            x.iter().zip(&y).map(|(x, y)| (60.0 * x + 5.0, 25.4 * y)).unzip();
        other_x.rotate_left(turn);
        other_y.rotate_left(turn);
        let theirs = straight(&other_x, &other_y, 0.0).unwrap().unwrap();
        prop_assert_eq!((ours.from, ours.to), (theirs.from, theirs.to));
        prop_assert!((ours.line.slope * 25.4 / 60.0 / theirs.line.slope - 1.0).abs() < 1e-9);
        prop_assert!((60.0 * ours.lag + 5.0 - theirs.lag).abs() < 1e-6 * (1.0 + theirs.lag.abs()));
    }
}
