//! How the class does beside its forecast, and each treatment beside the class.
//!
//! On a grid, a treatment's rise is e^a M(m − d) ((m + 1)/11)^g with its forecast's median M. A
//! class has its own a, d and g; a treatment's differ a little from them; a bag's readings speak
//! for its treatment's, but none shouts (a slip must not drag its sisters along).

use super::student::Student;
use super::{Course, Followed, Rates, scale};
use std::collections::BTreeMap;

/// Steps of a.
const RISES: usize = 28;
/// Steps of d.
const DELAYS: usize = 7;
/// Steps of g.
const BENDS: usize = 3;
/// How far they are apart.
const RISE_STEP: f64 = 0.2;
const DELAY_STEP_MIN: f64 = 1.5;
const BEND_STEP: f64 = 0.4;
/// All of them.
pub(super) const POINTS: usize = RISES * DELAYS * BENDS;

/// Logarithm of the factor on the rise at a step: -3.6 to 1.8.
pub(super) fn rise(step: usize) -> f64 {
    -3.6 + RISE_STEP * step as f64
}

/// Delay at a step: -3 to 6 min.
fn delay(step: usize) -> f64 {
    -3.0 + DELAY_STEP_MIN * step as f64
}

/// Bend at a step: -0.4 to 0.4.
fn bend(step: usize) -> f64 {
    BEND_STEP * (step as f64 - 1.0)
}

/// Where bend changes nothing (min).
const BENT_FROM_MIN: f64 = 10.0;

/// What one bag's readings can say against a point at most (logarithm of a likelihood ratio).
const MOST_AGAINST: f64 = 7.0;

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

/// A sound bag's rise at each minute for each delay and bend, with a = 0 (mm).
pub(super) fn shapes(course: &Course, minutes: &[f64]) -> Vec<Vec<f64>> {
    let mut shapes = Vec::with_capacity(DELAYS * BENDS);
    for d in 0..DELAYS {
        let rises: Vec<f64> =
            minutes.iter().map(|minute| delayed(course, *minute, delay(d))).collect();
        for g in 0..BENDS {
            let bent = rises.iter().zip(minutes).map(|(rise, minute)| {
                let share = (minute + 1.0).max(0.1) / (BENT_FROM_MIN + 1.0);
                rise * libm::pow(share, bend(g))
            });
            shapes.push(bent.collect());
        }
    }
    shapes
}

/// Median rise of a bag that began so many minutes late (mm).
pub(super) fn delayed(course: &Course, minute: f64, late_min: f64) -> f64 {
    course.median_mm(minute - late_min) - course.median_mm(-late_min)
}

/// ln likelihood of a bag's heights on the grid; nothing for fewer than two of them.
fn on_grid(bag: &Followed, ruler: f64, guess: f64) -> Option<Vec<f64>> {
    if bag.heights.len() < 2 {
        return None;
    }
    let minutes = bag.minutes();
    let factor = libm::exp(guess);
    let places: Vec<(f64, f64, f64)> = minutes
        .iter()
        .map(|minute| {
            let rise = |minute: f64| factor * bag.course.median_mm(minute);
            (*minute, rise(*minute), rise(minute + 0.5) - rise(minute - 0.5))
        })
        .collect();
    let matrix = matrix(places.len(), ruler, |a, b| {
        scale::of_one_bag(places[a], places[b]) + scale::ZERO_MM.1 * scale::ZERO_MM.1
    });
    let student = Student::new(places.len(), |a, b| matrix[a][b])?;
    let heights: Vec<f64> = bag.written().iter().map(|mm| mm - scale::ZERO_MM.0).collect();
    let white = student.whitened(&heights);
    let square: f64 = white.iter().map(|value| value * value).sum();
    let factors: Vec<f64> = (0..RISES).map(|step| libm::exp(rise(step))).collect();
    let mut all = vec![0.0; POINTS];
    for (shape, rises) in shapes(&bag.course, &minutes).iter().enumerate() {
        let flat = student.whitened(rises);
        let both: f64 = flat.iter().zip(&white).map(|(a, b)| a * b).sum();
        let own: f64 = flat.iter().map(|value| value * value).sum();
        for (a, factor) in factors.iter().enumerate() {
            let off = square - 2.0 * factor * both + factor * factor * own;
            all[a * DELAYS * BENDS + shape] = student.at_square(off.max(0.0));
        }
    }
    // However unlike, it says no more than that.
    let most = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    all.iter_mut().for_each(|value| *value = (*value - most).max(-MOST_AGAINST));
    Some(all)
}

/// A symmetric matrix with the ruler's variance (mm²) on its diagonal.
pub(super) fn matrix(
    count: usize,
    ruler: f64,
    between: impl Fn(usize, usize) -> f64,
) -> Vec<Vec<f64>> {
    let value = |row: usize, column: usize| {
        let ruler = if row == column { ruler } else { 0.0 };
        between(row, column) + ruler
    };
    (0..count).map(|row| (0..count).map(|column| value(row, column)).collect()).collect()
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

/// What a treatment's values say of the class's, and the other way round: each differs from the
/// other by as much as treatments do.
fn smeared(log: &[f64]) -> Vec<f64> {
    let (mut values, most) = weights(log);
    let (rise_sd, delay_sd, bend_sd) = scale::TREATMENT;
    values = along(&values, (RISES, DELAYS * BENDS), RISE_STEP / rise_sd);
    values = along(&values, (DELAYS, BENDS), DELAY_STEP_MIN / delay_sd);
    values = along(&values, (BENDS, 1), BEND_STEP / bend_sd);
    let far = libm::log(LEAST);
    let log = |value: &f64| if *value > LEAST { libm::log(*value) } else { far };
    values.iter().map(|value| log(value) + most).collect()
}

/// Smears along one side of the grid with so many steps, each so many values from the next;
/// `apart` is a step in standard deviations.
fn along(values: &[f64], (steps, stride): (usize, usize), apart: f64) -> Vec<f64> {
    let kernel: Vec<f64> =
        (0..steps).map(|step| libm::exp(normal(apart * step as f64, 1.0))).collect();
    let near = kernel.iter().take_while(|weight| **weight > 1e-6).count();
    let all: f64 = kernel[0] + 2.0 * kernel[1..].iter().sum::<f64>();
    let mut smeared = vec![0.0; values.len()];
    for (at, value) in values.iter().enumerate() {
        if *value < LEAST {
            continue;
        }
        let step = at / stride % steps;
        let from = step.saturating_sub(near - 1);
        for to in from..(step + near).min(steps) {
            smeared[at + to * stride - step * stride] +=
                value * kernel[step.abs_diff(to)] / all;
        }
    }
    smeared
}

/// What is less likely beside the likeliest is taken for so likely (1).
const LEAST: f64 = 1e-14;

/// ln of a normal density, but for its constant.
fn normal(off: f64, sd: f64) -> f64 {
    -0.5 * (off / sd) * (off / sd)
}

fn add(to: &mut [f64], other: &[f64]) {
    to.iter_mut().zip(other).for_each(|(value, other)| *value += other);
}

/// ln Σ e^x.
pub(super) fn log_sum(log: &[f64]) -> f64 {
    let most = log.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most == f64::NEG_INFINITY {
        return most;
    }
    most + libm::log(log.iter().map(|value| libm::exp(value - most)).sum::<f64>())
}

fn probabilities(log: &[f64]) -> Vec<f64> {
    let mut values = weights(log).0;
    let all: f64 = values.iter().sum();
    values.iter_mut().for_each(|value| *value /= all);
    values
}

/// e^x over the largest of them, and the largest x. What is next to nothing is nothing.
fn weights(log: &[f64]) -> (Vec<f64>, f64) {
    let most = log.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weight = |value: &f64| if value - most < -32.0 { 0.0 } else { libm::exp(value - most) };
    (log.iter().map(weight).collect(), most)
}

/// Mean of e^a and of e^2a over the points of each shape, with the weight of each.
pub(super) fn moments(probabilities: &[f64]) -> Vec<(f64, f64)> {
    let shapes = DELAYS * BENDS;
    let mut moments = vec![(0.0, 0.0); shapes];
    for (step, of_rise) in probabilities.chunks(shapes).enumerate() {
        let factor = libm::exp(rise(step));
        for ((first, second), probability) in moments.iter_mut().zip(of_rise) {
            *first += probability * factor;
            *second += probability * factor * factor;
        }
    }
    moments
}
