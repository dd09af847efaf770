//! A bag that was calibrated with a syringe is known better, and no better than it is.

use crate::dice::Dice;
use crate::prior;
use crate::size::counts;
use barm_science::bag::StandardBag;
use barm_science::card_height::{
    self, CRUMPLE_GONE, CRUMPLE_SD, CalibrationError, CardCurve, CurvePosterior, CurvePrior,
    Injected, MODEL_SD, calibrate, gas_from_rise,
};
use barm_science::ruler::Ruler;
use barm_science::setup::Card;

/// Volumes of a usual calibration of a sandwich bag (mL).
const VOLUMES: [f64; 4] = [60.0, 120.0, 240.0, 360.0];

/// Air that is thought to be in a bag when it is read for zero (mL).
const AIR_ML: f64 = 8.0;

/// A bag of its own: a curve of the family, and what the family misses of it.
struct Own {
    curve: CardCurve,
    crumple_mm: f64,
    /// Waves that make up the misfit: waves per room for gas, and where each starts.
    waves: [(f64, f64); 40],
}

impl Own {
    fn drawn(dice: &mut Dice, prior: &CurvePrior) -> Self {
        let curve = prior.curve(dice.normal(), dice.normal(), dice.normal());
        let crumple_mm = CRUMPLE_SD.value * dice.normal();
        // Random waves whose sum is close to a Gaussian process of that reach (A. Rahimi & B. Recht,
        // Adv. Neural Inf. Process. Syst. 20, 2007; from memory).
        let waves = core::array::from_fn(|_| {
            (dice.normal() / 0.15, std::f64::consts::TAU * dice.uniform())
        });
        Self { curve, crumple_mm, waves }
    }

    fn rise_mm(&self, gas_ml: f64) -> f64 {
        let rise = self.curve.rise_mm(gas_ml);
        let share = gas_ml / self.curve.room_ml();
        let sum: f64 =
            self.waves.iter().map(|(turns, start)| (turns * share + start).cos()).sum();
        let misfit = MODEL_SD.value * (2.0 / self.waves.len() as f64).sqrt() * sum;
        rise + misfit + self.crumple_mm * (1.0 - rise / CRUMPLE_GONE.value).max(0.0)
    }

    /// Somebody puts a ruler to it after a zero of their own, or of a calibration.
    fn read(&self, dice: &mut Dice, gas_ml: f64, zero_off: f64) -> f64 {
        let ruler = Ruler::USUAL;
        let slant = ruler.parallax_mm / 3.0_f64.sqrt();
        self.rise_mm(gas_ml) + slant.hypot(ruler.reading_sd_mm()) * dice.normal() - zero_off
    }

    /// What a class would put in and read: one syringe, one zero.
    fn syringed(&self, dice: &mut Dice) -> Vec<Injected> {
        self.syringed_to(dice, &VOLUMES)
    }

    fn syringed_to(&self, dice: &mut Dice, volumes: &[f64]) -> Vec<Injected> {
        let scale = 0.023 * dice.normal();
        let zero = Ruler::USUAL.reading_sd_mm() * dice.normal();
        // Pressed out by hand: a factor of 1.5 either way.
        let air_ml = AIR_ML * (0.4 * dice.normal()).exp();
        let start = self.curve.rise_mm(air_ml);
        let point = |&gas_ml: &f64| {
            let truly = gas_ml * (1.0 + scale + 0.02 * dice.normal());
            Injected { gas_ml, rise_mm: self.read(dice, truly + air_ml, zero + start) }
        };
        volumes.iter().map(point).collect()
    }
}

fn known(prior: &CurvePrior, points: &[Injected]) -> CurvePrior {
    prior.known(calibrate(prior, points, Ruler::USUAL, AIR_ML).expect("possible points"))
}

/// The 99 % sampling error of a share of 95 % among so many.
fn sampling(count: usize) -> f64 {
    2.326 * (0.95 * 0.05 / count as f64).sqrt()
}

/// Pairs of bag and card that classes use: the bag, and the card's sides (mm).
const PAIRS: [(StandardBag, f64, f64); 4] = [
    (StandardBag::Snack, 127.0, 76.0),
    (StandardBag::Sandwich, 127.0, 76.0),
    (StandardBag::Quart, 203.0, 127.0),
    (StandardBag::Gallon, 254.0, 203.0),
];

/// Calibrations: volumes as shares of the room for gas.
const STEPS: [&[f64]; 4] = [
    &[0.3],
    &[0.1, 0.4],
    &[0.08, 0.16, 0.33, 0.5],
    &[0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7],
];

/// Bags drawn from the prior, calibrated and then read over another volume: the 95 % interval holds the gas
/// that was there in at least 95 % of them, less the 99 % sampling error of the count, for each pair, each
/// calibration and each stretch of volumes; and the more was measured the nearer is the value.
#[test]
fn intervals_of_a_calibrated_bag_hold_the_gas_whatever_was_measured() {
    let bags = counts(240, 960, 9_600);
    let mut dice = Dice(71);
    let mut by_pair = [(0_usize, 0_usize); PAIRS.len()];
    let mut by_steps = [(0_usize, 0_usize); STEPS.len()];
    let mut by_stretch = [(0_usize, 0_usize); 4];
    let mut square = [0.0; STEPS.len() + 1];
    for at in 0..bags {
        let (pair, calibration) = (at % PAIRS.len(), at / PAIRS.len() % STEPS.len());
        let stretch = at / (PAIRS.len() * STEPS.len()) % by_stretch.len();
        let (size, length_mm, width_mm) = PAIRS[pair];
        let card = Card { length_mm, width_mm, grams: 0.19e-3 * length_mm * width_mm };
        let plain = card_height::prior(&size.bag(), &card, 40.0);
        let room = plain.mean.room_ml();
        let bag = Own::drawn(&mut dice, &plain);
        let volumes: Vec<f64> = STEPS[calibration].iter().map(|share| share * room).collect();
        let own = known(&plain, &bag.syringed_to(&mut dice, &volumes));
        let gas_ml = room * (0.03 + 0.17 * (stretch as f64 + dice.uniform()));
        let zero = Ruler::USUAL.reading_sd_mm() * dice.normal();
        let rise = bag.read(&mut dice, gas_ml, zero);
        let sd = Ruler::USUAL.difference_sd_mm();
        let found = gas_from_rise(&own, rise, sd, 0.0);
        let held = usize::from((found.low_ml..=found.high_ml).contains(&gas_ml));
        for (of, count) in
            [&mut by_pair[pair], &mut by_steps[calibration], &mut by_stretch[stretch]]
        {
            *of += 1;
            *count += held;
        }
        square[calibration + 1] += ((found.ml - gas_ml) / room).powi(2) * STEPS.len() as f64;
        square[0] += ((gas_from_rise(&plain, rise, sd, 0.0).ml - gas_ml) / room).powi(2);
    }
    for (of, held) in by_pair.into_iter().chain(by_steps).chain(by_stretch) {
        let share = held as f64 / of as f64;
        assert!(share > 0.95 - sampling(of), "{by_pair:?}\n{by_steps:?}\n{by_stretch:?}");
    }
    let rms = square.map(|sum| (sum / bags as f64).sqrt());
    let nearer = rms[1..].iter().all(|after| *after < rms[0]);
    assert!(nearer && rms[STEPS.len()] < 0.85 * rms[0], "{rms:?}");
}

/// The same of a sandwich bag with an index card and four volumes: nearer and narrower.
#[test]
fn a_calibrated_bag_is_read_more_closely() {
    let bags = counts(100, 500, 5_000);
    let plain = prior(StandardBag::Sandwich, 50.0);
    let mut dice = Dice(70);
    let (mut before, mut after, mut width) = (0.0, 0.0, (0.0, 0.0));
    for _ in 0..bags {
        let bag = Own::drawn(&mut dice, &plain);
        let own = known(&plain, &bag.syringed(&mut dice));
        let gas_ml = 30.0 + 450.0 * dice.uniform();
        let zero = Ruler::USUAL.reading_sd_mm() * dice.normal();
        let rise = bag.read(&mut dice, gas_ml, zero);
        let judged = |known: &CurvePrior| {
            gas_from_rise(known, rise, Ruler::USUAL.difference_sd_mm(), 0.0)
        };
        let (wide, close) = (judged(&plain), judged(&own));
        before += (wide.ml - gas_ml).powi(2);
        after += (close.ml - gas_ml).powi(2);
        width.0 += wide.high_ml - wide.low_ml;
        width.1 += close.high_ml - close.low_ml;
    }
    let rms = |sum: f64| (sum / bags as f64).sqrt();
    assert!(rms(after) < 0.8 * rms(before), "{:.1} mL, before {:.1}", rms(after), rms(before));
    assert!(width.1 < 0.85 * width.0, "widths {width:?}");
}

/// Deviates are shares of their prior spread: over many bags, what is found lies about the truth no
/// more widely than the calibration says.
#[test]
fn what_is_left_open_is_as_wide_as_the_errors_are() {
    let bags = counts(200, 600, 6_000);
    let plain = prior(StandardBag::Sandwich, 50.0);
    let mut dice = Dice(72);
    let mut ratio = [0.0; 3];
    for _ in 0..bags {
        let truth = [dice.normal(), dice.normal(), dice.normal()];
        let curve = plain.curve(truth[0], truth[1], truth[2]);
        let bag = Own { curve, ..Own::drawn(&mut dice, &plain) };
        let own =
            calibrate(&plain, &bag.syringed(&mut dice), Ruler::USUAL, AIR_ML).expect("points");
        let open = own.left_open();
        assert!(own.is_possible(), "{own:?}");
        for at in 0..3 {
            ratio[at] += ((own.mean[at] - truth[at]) / open[at]).powi(2) / bags as f64;
        }
    }
    // The relative error of a mean square of n values is √(2/n).
    let sampling = 2.576 * (2.0 / bags as f64).sqrt();
    for ratio in ratio {
        assert!(ratio < 1.0 + sampling && ratio > 0.7, "{ratio:.2}");
    }
}

/// A calibration leaves less open, and its mean is the curve at no deviation.
#[test]
fn nothing_is_more_open_than_before() {
    let plain = prior(StandardBag::Sandwich, 50.0);
    let mut dice = Dice(73);
    let own = known(&plain, &Own::drawn(&mut dice, &plain).syringed(&mut dice));
    let [exponent, _, capacity] = own.posterior().left_open();
    assert!(exponent < 0.9 && capacity < 1.0 + 1e-9, "{exponent} {capacity}");
    assert_eq!(own.curve(0.0, 0.0, 0.0), own.mean);
    assert_eq!(plain.posterior(), CurvePosterior::NOTHING_MEASURED);
}

/// Two calibrations one after the other say what both say together, but for what they have in common
/// (zero, syringe, misfit), which only the second way knows of.
#[test]
fn a_later_calibration_goes_on_from_the_first() {
    let plain = prior(StandardBag::Snack, 40.0);
    let curve = plain.curve(0.8, -0.5, 1.0);
    let start = curve.rise_mm(AIR_ML);
    let point =
        |gas_ml: f64| Injected { gas_ml, rise_mm: curve.rise_mm(gas_ml + AIR_ML) - start };
    let (first, second) = ([point(30.0), point(60.0)], [point(90.0), point(120.0)]);
    let both: Vec<Injected> = first.into_iter().chain(second).collect();
    let (stepwise, at_once) = (known(&known(&plain, &first), &second), known(&plain, &both));
    for gas_ml in [20.0, 50.0, 100.0] {
        let off = stepwise.mean.rise_mm(gas_ml) - at_once.mean.rise_mm(gas_ml);
        assert!(off.abs() < 0.25, "{gas_ml} mL: {off} mm");
        let truly = at_once.mean.rise_mm(gas_ml) - curve.rise_mm(gas_ml);
        assert!(truly.abs() < 0.5, "{gas_ml} mL: {truly} mm from the bag");
    }
}

/// By hand: with 30 mL of air at the zero reading a bag shows r(g + 30) − r(30); who does not know of the
/// air takes the bag for a smaller one.
#[test]
fn air_at_the_zero_reading_is_reckoned_with() {
    let plain = prior(StandardBag::Sandwich, 50.0);
    let curve = plain.mean;
    let shown = |gas_ml: f64| curve.rise_mm(gas_ml + 30.0) - curve.rise_mm(30.0);
    let points = VOLUMES.map(|gas_ml| Injected { gas_ml, rise_mm: shown(gas_ml) });
    let off = |air_ml: f64| {
        let posterior = calibrate(&plain, &points, Ruler::USUAL, air_ml).expect("points");
        let found = plain.known(posterior).mean;
        VOLUMES
            .map(|gas_ml| (found.rise_mm(gas_ml) - curve.rise_mm(gas_ml)).powi(2))
            .iter()
            .sum::<f64>()
    };
    assert!(off(30.0) < 0.5 * off(0.0), "{} {}", off(30.0), off(0.0));
}

/// Heights that no bag of this kind would give are trusted less, not believed to the millimetre.
#[test]
fn heights_that_disagree_leave_more_open() {
    let plain = prior(StandardBag::Sandwich, 50.0);
    let curve = plain.mean;
    let smooth: Vec<Injected> =
        VOLUMES.map(|gas_ml| Injected { gas_ml, rise_mm: curve.rise_mm(gas_ml) }).to_vec();
    let mut rough = smooth.clone();
    for (at, point) in rough.iter_mut().enumerate() {
        point.rise_mm += if at % 2 == 0 { 6.0 } else { -6.0 };
    }
    let (smooth, rough) = (known(&plain, &smooth), known(&plain, &rough));
    let (smooth, rough) = (smooth.posterior().left_open(), rough.posterior().left_open());
    assert!(rough[0] > 1.2 * smooth[0] && rough[2] > smooth[2], "{rough:?} {smooth:?}");
}

/// Another bag of the box is known less well than the one that was calibrated, and better than none;
/// the formula by hand: a mean of 2 and a width of 0.5 at ρ = 0.8 become 1.6 and √(0.64·0.25 + 0.36).
#[test]
fn another_bag_of_the_box_is_known_less_well() {
    let one = CurvePosterior {
        mean: [2.0, 0.0, -1.0],
        root: [[0.5, 0.0, 0.0], [0.0, 1.0, 0.0], [-0.3, 0.0, 0.4]],
    };
    let other = one.of_another_bag(0.8);
    assert!((other.mean[0] - 1.6).abs() < 1e-12 && (other.mean[2] + 0.8).abs() < 1e-12);
    let open = other.left_open();
    assert!((open[0] - (0.64 * 0.25 + 0.36_f64).sqrt()).abs() < 1e-12, "{open:?}");
    assert!((open[1] - 1.0).abs() < 1e-12, "{open:?}");
    let together: f64 = (0..3).map(|at| other.root[2][at] * other.root[0][at]).sum();
    assert!((together + 0.64 * 0.15).abs() < 1e-12, "{together}");
    assert_eq!(one.of_another_bag(0.0), CurvePosterior::NOTHING_MEASURED);
    // What the box has in common, and 0.2 of the variance that each bag has of its own, are together that.
    let common = one.of_the_box(0.8);
    for (one, both) in common.mean.into_iter().zip(other.mean) {
        assert!((one - both).abs() < 1e-12, "{one} {both}");
    }
    for (common, open) in common.left_open().into_iter().zip(open) {
        assert!(((common * common + 0.2).sqrt() - open).abs() < 1e-12, "{common} {open}");
    }
}

/// What comes back from a file is looked at before it is believed.
#[test]
fn numbers_that_no_calibration_leaves_are_told() {
    let good = CurvePosterior::NOTHING_MEASURED;
    assert!(good.is_possible());
    let with = |row: usize, column: usize, value: f64| {
        let mut root = good.root;
        root[row][column] = value;
        CurvePosterior { root, ..good }
    };
    for bad in [
        CurvePosterior { mean: [f64::NAN, 0.0, 0.0], ..good },
        with(0, 0, 0.0),
        with(1, 1, -0.5),
        with(0, 2, 0.1),
        with(2, 2, 7.0),
        with(2, 0, f64::INFINITY),
    ] {
        assert!(!bad.is_possible(), "{bad:?}");
    }
}

#[test]
fn what_this_bag_cannot_show_is_refused_with_the_reason() {
    let plain = prior(StandardBag::Snack, 40.0);
    let tried = |points: &[Injected]| {
        calibrate(&plain, points, Ruler::USUAL, 0.0).expect_err("it cannot be")
    };
    assert_eq!(tried(&[]), CalibrationError::Nothing);
    let litre = tried(&[Injected { gas_ml: 1000.0, rise_mm: 20.0 }]);
    assert!(litre.to_string().starts_with("1000 mL cannot be put into this bag"), "{litre}");
    let metre = tried(&[Injected { gas_ml: 60.0, rise_mm: 160.0 }]);
    assert!(metre.to_string().contains("160 mm"), "{metre}");
    let none = tried(&[Injected { gas_ml: f64::NAN, rise_mm: 5.0 }]);
    assert!(matches!(none, CalibrationError::Volume { .. }));
}
