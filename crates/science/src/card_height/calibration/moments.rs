//! Mean and covariance of a bag's deviates, summed up over a grid.

use crate::card_height::CurvePosterior;
use crate::card_height::posterior::square;
use crate::cholesky::lower_triangle;

/// Half width of the grid, in standard deviations, and its step.
const GRID: (f64, f64) = (4.2, 0.7);
/// Times that the grid is laid at most.
const ROUNDS: usize = 12;

/// What is known of three deviates, from the sum of squares that each choice of them leaves: summed up
/// over a grid that is laid anew around what was found until it holds all of it. The curvature at a
/// dead share that is cut at zero says nothing of the side where the card no longer tells.
pub(super) fn around(
    start: CurvePosterior,
    mut sum_of_squares: impl FnMut([f64; 3]) -> f64,
) -> CurvePosterior {
    let mut about = start;
    for _ in 0..ROUNDS {
        let open = about.left_open();
        about = summed(&about, &mut sum_of_squares);
        let still = about
            .left_open()
            .iter()
            .zip(open)
            .all(|(now, before)| (now / before - 1.0).abs() < 0.01);
        if still {
            break;
        }
    }
    about
}

/// Mean and covariance over one grid.
fn summed(
    about: &CurvePosterior,
    sum_of_squares: &mut impl FnMut([f64; 3]) -> f64,
) -> CurvePosterior {
    let steps = (GRID.0 / GRID.1).round() as i32;
    let line = || (-steps..=steps).map(|step| GRID.1 * f64::from(step));
    let mut nodes = Vec::new();
    for one in line() {
        for two in line() {
            for three in line() {
                let deviates = about.deviates([one, two, three]);
                nodes.push((deviates, sum_of_squares(deviates)));
            }
        }
    }
    moments(nodes)
}

/// Moments of points, each weighted by exp(−s/2) for its sum of squares s.
fn moments(mut nodes: Vec<([f64; 3], f64)>) -> CurvePosterior {
    let least = nodes.iter().fold(f64::INFINITY, |least, node| least.min(node.1));
    nodes.iter_mut().for_each(|node| node.1 = libm::exp(-0.5 * (node.1 - least)));
    let all: f64 = nodes.iter().map(|node| node.1).sum();
    let mean: [f64; 3] = core::array::from_fn(|at| {
        nodes.iter().map(|(deviates, weight)| weight * deviates[at]).sum::<f64>() / all
    });
    let product = |row: usize, column: usize| -> f64 {
        let off = |deviates: &[f64; 3], at: usize| deviates[at] - mean[at];
        let each = nodes
            .iter()
            .map(|(deviates, weight)| weight * off(deviates, row) * off(deviates, column));
        each.sum::<f64>() / all
    };
    let covariance: Vec<Vec<f64>> =
        (0..3).map(|row| (0..3).map(|column| product(row, column)).collect()).collect();
    CurvePosterior { mean, root: square(&lower_triangle(&covariance)) }
}
