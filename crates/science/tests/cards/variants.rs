//! Calibration of bags that are not ours: the membrane simulation with another film, card, zip or size.
//!
//! Not an outside check, no bag has been measured yet: but the curves are not members of the family.

use crate::dice::Dice;
use crate::prior;
use crate::size::counts;
use barm_science::bag::StandardBag;
use barm_science::card_height::{Injected, calibrate, gas_from_rise};
use barm_science::ruler::Ruler;

/// A simulated bag: its liquid (mL) and the card's rise (mm) at volumes of gas (mL).
struct Variant {
    name: &'static str,
    liquid_ml: f64,
    rises: Vec<(f64, f64)>,
}

impl Variant {
    /// Rise between the simulated volumes, along a straight line: within 0.1 mm.
    fn rise_mm(&self, gas_ml: f64) -> f64 {
        let next =
            self.rises.iter().position(|(gas, _)| *gas >= gas_ml).expect("inside the rows");
        let ((before, low), (after, high)) = (self.rises[next - 1], self.rises[next]);
        low + (high - low) * (gas_ml - before) / (after - before)
    }
}

fn variants() -> Vec<Variant> {
    let mut all: Vec<Variant> = Vec::new();
    let rows = include_str!("../rows/card_variants.csv").lines();
    for row in rows.filter(|row| !row.starts_with('#')).skip(1) {
        let cells: Vec<&str> = row.split(',').collect();
        let number = |at: usize| cells[at].parse::<f64>().expect("a number");
        let point = (number(2), number(3) - number(4));
        match all.last_mut().filter(|variant| variant.name == cells[0]) {
            Some(variant) => variant.rises.push(point),
            None => {
                let (name, liquid_ml) = (cells[0], number(1));
                all.push(Variant { name, liquid_ml, rises: vec![point] });
            }
        }
    }
    all
}

/// Sum of squared errors, and how many intervals hold, of how many.
#[derive(Default, Clone, Copy)]
struct Score {
    square: f64,
    width: f64,
    held: usize,
    of: usize,
}

impl Score {
    fn rms(&self) -> f64 {
        (self.square / self.of as f64).sqrt()
    }

    fn share(&self) -> f64 {
        self.held as f64 / self.of as f64
    }
}

/// Over all of them 95 % of intervals hold; over the strangest alone fewer do (creases as stiff as ten
/// films: 78 %; a bag 3 mm larger than was said: 92 %), which is why the bag is measured and a used one
/// not taken.
///
/// Twenty-one bags, four volumes (60, 120, 240, 360 mL), heights read to 0.7 mm there and in use, gas of
/// 50 to 550 mL in use. Worked outside by another program with a fit of the same three numbers: 24 mL
/// root mean square before a calibration, 17 mL after.
#[test]
fn strange_bags_are_read_better_once_calibrated_and_intervals_hold() {
    let rounds = counts(5, 12, 100);
    let noise = Ruler::USUAL.difference_sd_mm();
    let mut dice = Dice(2027);
    let (mut before, mut after) = (Score::default(), Score::default());
    let all = variants();
    assert_eq!(all.len(), 21);
    for variant in &all {
        let plain = prior(StandardBag::Sandwich, variant.liquid_ml);
        let (mut one, mut other) = (Score::default(), Score::default());
        for _ in 0..rounds {
            let points = [60.0, 120.0, 240.0, 360.0].map(|gas_ml| Injected {
                gas_ml,
                rise_mm: variant.rise_mm(gas_ml) + noise * dice.normal(),
            });
            let posterior =
                calibrate(&plain, &points, Ruler::USUAL, 0.0).expect("points of a bag");
            for (gas_ml, rise) in &variant.rises {
                if !(49.0..551.0).contains(gas_ml) {
                    continue;
                }
                let read = rise + noise * dice.normal();
                for (known, score) in [(plain, &mut one), (plain.known(posterior), &mut other)]
                {
                    let gas = gas_from_rise(&known, read, noise, 0.0);
                    score.square += (gas.ml - gas_ml).powi(2);
                    score.width += gas.high_ml - gas.low_ml;
                    score.held += usize::from((gas.low_ml..=gas.high_ml).contains(gas_ml));
                    score.of += 1;
                }
            }
        }
        for (sum, part) in [(&mut before, one), (&mut after, other)] {
            sum.square += part.square;
            sum.width += part.width;
            sum.held += part.held;
            sum.of += part.of;
        }
    }
    assert!(
        after.rms() < 18.0 && before.rms() > after.rms(),
        "{} {}",
        before.rms(),
        after.rms()
    );
    assert!(after.share() > 0.95, "{}", after.share());
    assert!(after.width < before.width);
}
