//! What one bag's heights say of its treatment, point by point of the grid.

use super::grid::{BENDS, DELAYS, POINTS, RISES, rise, shapes};
use super::student::Student;
use super::{Followed, matrix, scale};

/// What one bag's readings can say against a point at most (logarithm of a likelihood ratio).
const MOST_AGAINST: f64 = 7.0;

/// ln likelihood of a bag's heights on the grid; nothing for fewer than two of them.
pub(super) fn on_grid(bag: &Followed, ruler: f64, guess: f64) -> Option<Vec<f64>> {
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
    let matrix = matrix::with_ruler(places.len(), ruler, |a, b| {
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
