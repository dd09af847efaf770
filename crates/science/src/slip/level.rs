//! How the class does beside its forecast, and each treatment beside the class.
//!
//! A class has its own rise, delay and bend on the grid; a treatment's differ a little from them; a bag's readings
//! speak for its treatment's, but none shouts (a slip must not drag its sisters along).

use super::grid::{BENDS, DELAYS, POINTS, RISES, bend, delay, rise, smeared};
use super::logs::{add, log_sum, normal, probabilities};
use super::on_grid::on_grid;
use super::{Followed, Rates, scale};
use std::collections::BTreeMap;

/// A class that is low for a reason rises by no more than this share of its forecast (1): yeast of
/// less than a quarter of its pace, or water 12 °C off (own rule).
const LOW_AT_MOST: f64 = 0.4;

/// What the bags of a period say of their class and treatments.
pub(super) struct Level {
    /// ln likelihood of each bag on the grid.
    bags: Vec<Option<Vec<f64>>>,
    /// By number of treatment.
    treatments: BTreeMap<usize, OfTreatment>,
    /// ln prior of a class as it should be.
    ordinary: Vec<f64>,
    /// ln prior of a class that is low.
    low: Vec<f64>,
}

/// What is known of one treatment on the grid.
struct OfTreatment {
    /// What its bags say of it.
    said: Vec<f64>,
    /// What they say of the class.
    heard: Vec<f64>,
    /// What prior and other treatments say of it.
    told: Vec<f64>,
}

impl Level {
    pub(super) fn of(bags: &[Followed], rulers: &[f64], rates: &Rates) -> Self {
        let guess = guess(bags);
        let (ordinary, low) = priors(class_log_sd(bags), rates);
        let grids: Vec<Option<Vec<f64>>> =
            bags.iter().zip(rulers).map(|(bag, ruler)| on_grid(bag, *ruler, guess)).collect();
        let mut treatments: BTreeMap<usize, OfTreatment> = BTreeMap::new();
        for (bag, says) in bags.iter().zip(&grids) {
            let empty =
                || OfTreatment { said: vec![0.0; POINTS], heard: Vec::new(), told: Vec::new() };
            let own = treatments.entry(bag.treatment).or_insert_with(empty);
            if let Some(says) = says {
                add(&mut own.said, says);
            }
        }
        let mut class: Vec<f64> =
            ordinary.iter().zip(&low).map(|(a, b)| log_sum(&[*a, *b])).collect();
        for own in treatments.values_mut() {
            own.heard = smeared(&own.said);
            add(&mut class, &own.heard);
        }
        for own in treatments.values_mut() {
            let without: Vec<f64> =
                class.iter().zip(&own.heard).map(|(all, own)| all - own).collect();
            own.told = smeared(&without);
        }
        Self { bags: grids, treatments, ordinary, low }
    }

    /// Probabilities on the grid for the treatment of a number, by all bags but one.
    pub(super) fn of_bag(&self, but: usize, treatment: usize) -> Vec<f64> {
        let Some(of) = self.treatments.get(&treatment) else {
            return probabilities(&self.ordinary);
        };
        let mut own = of.told.clone();
        add(&mut own, &of.said);
        if let Some(says) = self.bags.get(but).and_then(Option::as_ref) {
            own.iter_mut().zip(says).for_each(|(value, says)| *value -= says);
        }
        probabilities(&own)
    }

    /// Probabilities on the grid for the treatment of a number, by all bags.
    pub(super) fn of_all(&self, treatment: usize) -> Vec<f64> {
        let Some(of) = self.treatments.get(&treatment) else {
            return probabilities(&self.ordinary);
        };
        let mut own = of.told.clone();
        add(&mut own, &of.said);
        probabilities(&own)
    }

    /// Probability that the class is low, by all bags.
    pub(super) fn is_low(&self) -> f64 {
        let (mut ordinary, mut low) = (self.ordinary.clone(), self.low.clone());
        for own in self.treatments.values() {
            add(&mut ordinary, &own.heard);
            add(&mut low, &own.heard);
        }
        let (ordinary, low) = (log_sum(&ordinary), log_sum(&low));
        1.0 / (1.0 + libm::exp(ordinary - low))
    }
}

/// ln prior of a class as it should be and of one that is low, with the rate of that.
fn priors(spread: f64, rates: &Rates) -> (Vec<f64>, Vec<f64>) {
    let mut ordinary = vec![0.0; POINTS];
    let mut low = vec![f64::NEG_INFINITY; POINTS];
    for a in 0..RISES {
        for d in 0..DELAYS {
            for g in 0..BENDS {
                let at = (a * DELAYS + d) * BENDS + g;
                let shape = normal(delay(d), scale::CLASS.0) + normal(bend(g), scale::CLASS.1);
                ordinary[at] = normal(rise(a), spread) + shape;
                if rise(a) <= libm::log(LOW_AT_MOST) {
                    low[at] = shape;
                }
            }
        }
    }
    let share = |prior: &mut Vec<f64>, share: f64| {
        let all = log_sum(prior);
        prior.iter_mut().for_each(|value| *value += libm::log(share) - all);
    };
    share(&mut ordinary, 1.0 - rates.class_low);
    share(&mut low, rates.class_low);
    (ordinary, low)
}

/// About how the class does, from the middle of its bags: logarithm of the factor on the rise.
fn guess(bags: &[Followed]) -> f64 {
    let mut logs: Vec<f64> = bags
        .iter()
        .filter_map(|bag| {
            let (zero, last) = (bag.heights.first()?, bag.heights.last()?);
            let expected = bag.course.median_mm(last.minute);
            let rise = (last.mm - zero.mm).max(0.1 * expected);
            (expected >= 2.0).then(|| libm::log(rise / expected))
        })
        .collect();
    logs.sort_by(f64::total_cmp);
    logs.get(logs.len() / 2).map_or(0.0, |middle| middle.clamp(-3.0, 1.5))
}

/// How far the rise of a class may be off its forecast: what the forecast says, less what is a
/// bag's own.
fn class_log_sd(bags: &[Followed]) -> f64 {
    let mut spreads: Vec<f64> = bags.iter().map(|bag| bag.course.log_sd()).collect();
    spreads.sort_by(f64::total_cmp);
    let all = spreads.get(spreads.len() / 2).copied().unwrap_or(0.5);
    (all * all - scale::BAG_LOG_SD * scale::BAG_LOG_SD).max(0.01).sqrt()
}
