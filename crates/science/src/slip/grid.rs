//! The grid on which a class and its treatments are weighed beside their forecast.
//!
//! On it, a treatment's rise is e^a M(m − d) ((m + 1)/11)^g with its forecast's median M.

use super::logs::{normal, weights};
use super::{Course, scale};

/// Steps of a.
pub(super) const RISES: usize = 28;
/// Steps of d.
pub(super) const DELAYS: usize = 7;
/// Steps of g.
pub(super) const BENDS: usize = 3;
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
pub(super) fn delay(step: usize) -> f64 {
    -3.0 + DELAY_STEP_MIN * step as f64
}

/// Bend at a step: -0.4 to 0.4.
pub(super) fn bend(step: usize) -> f64 {
    BEND_STEP * (step as f64 - 1.0)
}

/// Where bend changes nothing (min).
const BENT_FROM_MIN: f64 = 10.0;

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

/// What a treatment's values say of the class's, and the other way round: each differs from the
/// other by as much as treatments do.
pub(super) fn smeared(log: &[f64]) -> Vec<f64> {
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
