//! Lines through curves.

use crate::experiments::{experiment, near, r_values};
use crate::outside::nist;
use barm_science::statistics::slope::{LineError, line, steepest};

/// R 4.2.2, `lm(dist ~ speed)` on its data set cars (Ezekiel 1930).
#[test]
fn a_line_agrees_with_r() {
    let cars = experiment("lm_cars");
    let speed: Vec<f64> = cars.iter().map(|car| car.treatment.parse().unwrap()).collect();
    let stop: Vec<f64> = cars.iter().map(|car| car.value).collect();
    let ours = line(&speed, &stop).unwrap();
    let r = r_values("lm_cars");
    let wanted = |what: &str| r[&("lm(dist ~ speed)".into(), what.into())];
    near("slope", ours.slope, wanted("speed Estimate"), 1e-14, 0.0);
    near("its se", ours.slope_se.unwrap(), wanted("speed Std. Error"), 1e-13, 0.0);
    near("intercept", ours.intercept, wanted("(Intercept) Estimate"), 1e-13, 0.0);
    near("its se", ours.intercept_se.unwrap(), wanted("(Intercept) Std. Error"), 1e-13, 0.0);
    near("rest", ours.residual_sd.unwrap(), wanted("sigma"), 1e-13, 0.0);
}

#[test]
fn the_steepest_stretch_is_found_whatever_the_order_of_readings() {
    let minutes = [0.0, 4.0, 8.0, 12.0, 16.0, 20.0];
    let heights = [0.0, 1.0, 5.0, 9.0, 10.0, 10.0];
    let best = steepest(&minutes, &heights, 3).unwrap().unwrap();
    assert_eq!(best.from, 1);
    near("slope", best.line.slope, 1.0, 1e-15, 0.0);
    let mixed = [3, 0, 5, 1, 4, 2];
    let minutes: Vec<f64> = mixed.iter().map(|&i| minutes[i]).collect();
    let heights: Vec<f64> = mixed.iter().map(|&i| heights[i]).collect();
    assert_eq!(steepest(&minutes, &heights, 3).unwrap(), Some(best));
    assert_eq!(steepest(&minutes, &heights, 7).unwrap(), None);
    assert_eq!(steepest(&minutes, &heights, 1), Err(LineError::ShortStretch { points: 1 }));
}

/// NIST StRD Norris (ozone monitors), certified to 15 digits, where the data are at hand: slope 1.00211681802045, intercept −0.262323073774029.
#[test]
fn nists_certified_line_is_met() {
    let Some(text) = nist("linreg/Norris.dat") else { return };
    let after = text.lines().skip_while(|line| !line.starts_with("Data:       y")).skip(1);
    let numbers: Vec<f64> =
        after.flat_map(str::split_whitespace).map(|v| v.parse().unwrap()).collect();
    let (y, x): (Vec<f64>, Vec<f64>) =
        numbers.chunks_exact(2).map(|pair| (pair[0], pair[1])).unzip();
    assert_eq!(x.len(), 36);
    let ours = line(&x, &y).unwrap();
    near("slope", ours.slope, 1.002_116_818_020_45, 1e-13, 0.0);
    near("intercept", ours.intercept, -0.262_323_073_774_029, 1e-12, 0.0);
    near("slope se", ours.slope_se.unwrap(), 0.429_796_848_199_937e-3, 1e-12, 0.0);
    near("intercept se", ours.intercept_se.unwrap(), 0.232_818_234_301_152, 1e-12, 0.0);
    near("rest", ours.residual_sd.unwrap(), 0.884_796_396_144_373, 1e-12, 0.0);
}

#[test]
fn points_without_a_line_say_why() {
    assert_eq!(line(&[1.0], &[1.0]), Err(LineError::TooFew { found: 1 }));
    assert_eq!(line(&[1.0, 1.0], &[1.0, 2.0]), Err(LineError::OneTime));
    assert_eq!(line(&[1.0], &[]), Err(LineError::Uneven { x: 1, y: 0 }));
    for wild in [f64::NAN, f64::NEG_INFINITY, 1e308] {
        assert!(matches!(line(&[1.0, wild], &[1.0, 2.0]), Err(LineError::OutOfReach { .. })));
        assert!(steepest(&[1.0, wild], &[1.0, 2.0], 2).is_err());
    }
}
