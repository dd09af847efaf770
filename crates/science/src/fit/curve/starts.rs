//! Where the search for a curve begins.
//!
//! All shapes but the line are a height times a form. For every form of a grid the best height is
//! known at once (Golub & Pereyra 1973, *SIAM J. Numer. Anal.* 10, 413–432, separable least squares; from
//! memory),
//! so that the grid runs over one, two or three numbers only.

use super::shape::Shape;
use std::f64::consts::E;

/// Families of forms, the nearest first, from which a search goes out.
const TRIED: usize = 8;
/// Points that the grid looks at.
const LOOKED_AT: usize = 400;

/// The points, or some of them evenly along x where they are many.
pub(super) fn thinned(x: &[f64], y: &[f64]) -> (Vec<f64>, Vec<f64>) {
    if x.len() <= LOOKED_AT {
        return (x.to_vec(), y.to_vec());
    }
    let mut order: Vec<usize> = (0..x.len()).collect();
    order.sort_by(|&a, &b| x[a].total_cmp(&x[b]));
    let last = x.len() - 1;
    let chosen = (0..LOOKED_AT).map(|at| order[at * last / (LOOKED_AT - 1)]);
    chosen.map(|at| (x[at], y[at])).unzip()
}

/// Starts for a shape, in units near 1.
pub(super) fn starts(shape: Shape, x: &[f64], y: &[f64]) -> Vec<Vec<f64>> {
    let mut families: Vec<(f64, Vec<f64>)> = Vec::new();
    for family in forms(shape, x) {
        let tried = family.iter().filter_map(|form| with_height(shape, form, x, y));
        families.extend(tried.min_by(|a, b| a.0.total_cmp(&b.0)));
    }
    families.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut starts: Vec<Vec<f64>> =
        families.into_iter().take(TRIED).map(|(_, start)| start).collect();
    starts.extend(straightened(shape, x, y));
    starts
}

/// Forms of a shape with height 1, in families that look unlike each other.
fn forms(shape: Shape, x: &[f64]) -> Vec<Vec<Vec<f64>>> {
    let sizes = x.iter().map(|x| x.abs()).filter(|&x| x > 0.0);
    let (near, far) = sizes.fold((f64::INFINITY, 0.0_f64), |(a, b), x| (a.min(x), b.max(x)));
    let (low, high) =
        x.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), &x| (a.min(x), b.max(x)));
    let span = high - low;
    match shape {
        Shape::Line => Vec::new(),
        Shape::Saturating => {
            let rates = geometric(0.003 / far, 30.0 / near, 60);
            let signed = |sign: f64| rates.iter().map(move |r| vec![1.0, sign * r]).collect();
            vec![signed(1.0), signed(-1.0)]
        }
        Shape::MichaelisMenten => {
            let halves = geometric(0.01 * near, 300.0 * far, 60);
            let parted = |part: &[f64]| part.iter().map(|&half| vec![1.0, half]).collect();
            halves.chunks(15).map(parted).collect()
        }
        Shape::Logistic | Shape::Richards => {
            let turns: &[f64] =
                if shape == Shape::Logistic { &[1.0] } else { &[0.05, 0.3, 1.0, 3.0, 10.0] };
            let mut families = Vec::new();
            for &turn in turns {
                for sign in [1.0, -1.0] {
                    for rates in geometric(0.3 / span, 100.0 / span, 18).chunks(6) {
                        let at = |rate: f64| {
                            middles(x, low, span).into_iter().map(move |middle| {
                                let form = vec![1.0, sign * rate * middle, sign * rate];
                                if turns.len() > 1 { [form, vec![turn]].concat() } else { form }
                            })
                        };
                        families.push(rates.iter().flat_map(|&rate| at(rate)).collect());
                    }
                }
            }
            families
        }
        Shape::Gompertz => {
            let mut families = Vec::new();
            for sign in [1.0, -1.0] {
                for rates in geometric(0.3 / span, 100.0 / span, 18).chunks(6) {
                    let at = |rate: f64| {
                        // Height 1: mu e/A is the rate.
                        let form = move |lag| vec![1.0, sign * rate / E, lag];
                        middles(x, low, span).into_iter().map(form)
                    };
                    families.push(rates.iter().flat_map(|&rate| at(rate)).collect());
                }
            }
            families
        }
    }
}

/// Where an S may turn: evenly, also beyond both ends, and at some of the points themselves.
fn middles(x: &[f64], low: f64, span: f64) -> Vec<f64> {
    let mut middles: Vec<f64> =
        (0..=24).map(|step| low - span + f64::from(step) / 8.0 * span).collect();
    let step = x.len().div_ceil(12).max(1);
    let mut sorted = x.to_vec();
    sorted.sort_by(f64::total_cmp);
    middles.extend(sorted.iter().step_by(step));
    middles
}

fn geometric(from: f64, to: f64, count: u32) -> Vec<f64> {
    let (from, to) = (libm::log(from), libm::log(to));
    let at = |step: u32| from + (to - from) * f64::from(step) / f64::from(count - 1);
    (0..count).map(|step| libm::exp(at(step))).collect()
}

/// The sum of squares that a form leaves at its best height, and its parameters.
fn with_height(shape: Shape, form: &[f64], x: &[f64], y: &[f64]) -> Option<(f64, Vec<f64>)> {
    let heights: Vec<f64> = x.iter().map(|&x| shape.at(form, x)).collect();
    let along: f64 = heights.iter().zip(y).map(|(h, y)| h * y).sum();
    let own: f64 = heights.iter().map(|h| h * h).sum();
    let height = along / own;
    let left: f64 =
        heights.iter().zip(y).map(|(h, y)| (y - height * h) * (y - height * h)).sum();
    let mut start = form.to_vec();
    start[0] *= height;
    if shape == Shape::Gompertz {
        // The rate mu e/A stays as the height A changes.
        start[1] *= height;
    }
    (left.is_finite() && height.abs() > 1e-12).then_some((left, start))
}

/// Starts from a form that a change of axes makes straight: for Michaelis–Menten x/y over x (Hanes
/// 1932, *Biochem. J.* 26, 1406–1421, from memory).
fn straightened(shape: Shape, x: &[f64], y: &[f64]) -> Option<Vec<f64>> {
    if shape != Shape::MichaelisMenten {
        return None;
    }
    let usable = x.iter().zip(y).filter(|(_, y)| y.abs() > 1e-9);
    let (x, over): (Vec<f64>, Vec<f64>) = usable.map(|(&x, &y)| (x, x / y)).unzip();
    let line = crate::statistics::slope::line(&x, &over).ok()?;
    let (highest, half) = (1.0 / line.slope, line.intercept / line.slope);
    (highest.is_finite() && half.is_finite()).then(|| vec![highest, half])
}
