//! What a calibration hands on.

use crate::prior;
use barm_science::bag::StandardBag;
use barm_science::card_height::{CurvePosterior, Injected, calibrate};
use barm_science::prior::{Learned, Prior};
use barm_science::ruler::Ruler;

/// A calibration as numbers of the day and back is what is known of another bag of the box.
#[test]
fn a_calibration_reaches_forecasts_and_readings_alike() {
    let snack = StandardBag::Snack.bag();
    let prior = prior(StandardBag::Snack, 40.0);
    let truth = prior.curve(0.8, -0.5, 1.0);
    let points = [20.0, 50.0, 90.0].map(|gas_ml| Injected {
        gas_ml,
        rise_mm: truth.rise_mm(gas_ml + 5.0) - truth.rise_mm(5.0),
    });
    let one = calibrate(&prior, &points, Ruler::USUAL, 5.0).expect("a calibration");
    let learned = Learned::of_curve(&one, &snack);
    assert_eq!(learned.names[2], "capacity of snack bags");
    let knowing = Prior::default().knowing(&learned).expect("numbers that can be");
    let (back, expected) = (knowing.curve(&snack), one.of_another_bag(0.8));
    for at in 0..3 {
        assert!((back.mean[at] - expected.mean[at]).abs() < 1e-12);
        for to in 0..3 {
            assert!((back.root[at][to] - expected.root[at][to]).abs() < 1e-9);
        }
    }
    // Bags of another size come out of another box.
    let gallon = StandardBag::Gallon.bag();
    assert_eq!(knowing.curve(&gallon), CurvePosterior::NOTHING_MEASURED);
}
