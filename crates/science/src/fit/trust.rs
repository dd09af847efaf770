//! The longest step that is trusted: least squares of the linear model inside an ellipsoid.

use super::triangle::Triangle;
use crate::householder::length;

/// A step with the multiplier of its bound.
pub(super) struct Step {
    /// Change of each parameter.
    pub(super) change: Vec<f64>,
    /// The Levenberg–Marquardt parameter λ; 0 for a step that the bound does not hold back.
    pub(super) lambda: f64,
    /// Length of D·change.
    pub(super) length: f64,
}

/// Share of the radius by which the length of a step may miss it (1).
const NEAR: f64 = 0.1;
/// Newton steps for λ at most; three are usual.
const ROUNDS: usize = 20;

/// The step that makes ‖R p − turned‖ least with ‖D p‖ no more than about `radius`.
///
/// # Source
/// J. J. Moré, The Levenberg–Marquardt algorithm: implementation and theory, Lect. Notes Math. 630,
/// 105–116 (1978), section 5.
pub(super) fn step(triangle: &Triangle, scale: &[f64], radius: f64) -> Step {
    let scaled =
        |change: &[f64]| -> Vec<f64> { change.iter().zip(scale).map(|(p, d)| p * d).collect() };
    let slope = |factor: &Triangle, q: &[f64], long: f64| {
        // φ′ = −‖q‖ ‖R⁻ᵀ (D q/‖q‖)‖².
        let unit: Vec<f64> = q.iter().zip(scale).map(|(q, d)| d * q / long).collect();
        let w = length(&factor.forward(&unit));
        -long * w * w
    };
    let mut low = 0.0;
    if triangle.is_whole() {
        let change = triangle.solution();
        let q = scaled(&change);
        let long = length(&q);
        if long <= (1.0 + NEAR) * radius {
            return Step { change, lambda: 0.0, length: long };
        }
        low = (long - radius) / -slope(triangle, &q, long);
    }
    let steepest: Vec<f64> =
        triangle.downhill().iter().zip(scale).map(|(g, d)| g / d).collect();
    let mut high = length(&steepest) / radius;
    let mut lambda = (0.001 * high).max(libm::sqrt(low * high));
    let mut found = None;
    for _ in 0..ROUNDS {
        if !(low < lambda && lambda < high) {
            lambda = (0.001 * high).max(libm::sqrt(low * high));
        }
        let factor = triangle.stacked(scale, lambda);
        let change = factor.solution();
        let q = scaled(&change);
        let long = length(&q);
        let off = long - radius;
        let near = off.abs() <= NEAR * radius;
        let fall = slope(&factor, &q, long);
        found = Some(Step { change, lambda, length: long });
        if near || fall >= 0.0 || fall.is_nan() {
            break;
        }
        if off < 0.0 {
            high = lambda;
        }
        low = f64::max(low, lambda - off / fall);
        lambda -= (long / radius) * (off / fall);
    }
    found.unwrap_or(Step { change: vec![0.0; scale.len()], lambda, length: 0.0 })
}
