//! Levels of chance, recovered from dealt bags.

use super::Deck;
use crate::bag::StandardBag;
use crate::forecast::Streams;
use crate::model::Parameters;
use crate::prior::Prior;
use crate::setup::{Card, Lying, Setup, YeastDose, YeastKind};

const PERIODS: u64 = 400;
const GROUPS: u64 = 5;
const BAGS: u64 = 2;

fn setup() -> Setup {
    Setup {
        water_ml: 50.0,
        water_celsius: 40.0,
        water_celsius_sd: 1.0,
        water_dosing_sd: 0.05,
        yeast: Some(YeastDose::fresh(YeastKind::Instant, 2.0, 0.1)),
        foods: Vec::new(),
        enzymes: Vec::new(),
        bag: StandardBag::Sandwich.bag(),
        card: Card { length_mm: 127.0, width_mm: 76.0, grams: 1.8 },
        lying: Lying::Bench,
        room_celsius: 22.0,
        pressure_pa: 101_325.0,
        trapped_air_ml: 8.0,
        wet_before_zero_min: 0.0,
    }
}

/// A variance with its standard error.
struct Part {
    variance: f64,
    error: f64,
}

impl Part {
    #[track_caller]
    fn is(&self, what: &str, expected: f64) {
        let off = (self.variance - expected).abs();
        assert!(off < 4.0 * self.error, "{what}: {} for {expected}", self.variance);
    }
}

/// Variances of periods, of groups in them and of bags in those, by the usual mean squares of a
/// nested design (S. R. Searle, G. Casella, C. E. McCulloch, *Variance Components* (1992), ch. 3;
/// from memory).
fn parts(values: &[Vec<Vec<f64>>]) -> [Part; 3] {
    let mean = |of: &[f64]| of.iter().sum::<f64>() / of.len() as f64;
    let (p, g, b) = (PERIODS as f64, GROUPS as f64, BAGS as f64);
    let groups: Vec<Vec<f64>> =
        values.iter().map(|period| period.iter().map(|group| mean(group)).collect()).collect();
    let periods: Vec<f64> = groups.iter().map(|of| mean(of)).collect();
    let all = mean(&periods);
    let (mut between, mut among, mut within) = (0.0, 0.0, 0.0);
    for ((period, of_groups), of_period) in values.iter().zip(&groups).zip(&periods) {
        between += g * b * (of_period - all).powi(2) / (p - 1.0);
        for (group, of_group) in period.iter().zip(of_groups) {
            among += b * (of_group - of_period).powi(2) / (p * (g - 1.0));
            for bag in group {
                within += (bag - of_group).powi(2) / (p * g * (b - 1.0));
            }
        }
    }
    let error = |square: f64, freedom: f64| square * (2.0 / freedom).sqrt();
    let errors = [
        error(between, p - 1.0),
        error(among, p * (g - 1.0)),
        error(within, p * g * (b - 1.0)),
    ];
    [
        Part {
            variance: (between - among) / (g * b),
            error: errors[0].hypot(errors[1]) / (g * b),
        },
        Part { variance: (among - within) / b, error: errors[1].hypot(errors[2]) / b },
        Part { variance: within, error: errors[2] },
    ]
}

/// What 4,000 bags of one day show of one quantity.
fn recovered(of: impl Fn(&Setup, &Parameters) -> f64) -> [Part; 3] {
    let (setup, prior) = (setup(), Prior::default());
    let value = |period: u64, group: u64, bag: u64| {
        let group = GROUPS * period + group;
        let streams = Streams { day: 3, period, group, bag: BAGS * group + bag };
        let (dealt, parameters) = Deck::new(&setup, &streams, &prior, 1).deal(0);
        of(&dealt, &parameters)
    };
    let values: Vec<Vec<Vec<f64>>> = (0..PERIODS)
        .map(|p| (0..GROUPS).map(|g| (0..BAGS).map(|b| value(p, g, b)).collect()).collect())
        .collect();
    parts(&values)
}

#[test]
fn a_jug_belongs_to_its_period() {
    let [period, group, bag] = recovered(|setup, _| setup.water_celsius);
    period.is("jugs", 0.8);
    group.is("groups", 0.0);
    bag.is("bags", 0.2);
}

#[test]
fn half_of_a_spoon_is_habit() {
    let [period, group, bag] =
        recovered(|setup, _| libm::log(setup.yeast.map_or(1.0, |yeast| yeast.grams)));
    period.is("periods", 0.0);
    group.is("habits", 0.005);
    bag.is("spoons", 0.005);
    let [_, group, bag] = recovered(|setup, _| libm::log(setup.trapped_air_ml));
    // 0.4 squared.
    group.is("pressing out air", 0.08);
    bag.is("air", 0.08);
}

#[test]
fn a_box_of_cards_belongs_to_the_day() {
    let [period, group, bag] = recovered(|_, parameters| parameters.exponent);
    period.is("periods", 0.0);
    group.is("groups", 0.0);
    bag.is("cards of one box", 0.2);
    let mut lots = recovered(|_, parameters| parameters.vigor).into_iter();
    assert!(lots.all(|part| part.variance.abs() < 1e-20), "one lot of yeast a day");
}
