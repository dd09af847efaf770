//! Chances of several correlated t values that are nearly of a form that quadrature knows.

use super::lattice::{SHIFTS, T_99, chebyshev, points, sizes};
use super::multivariate_t::Likelihood;
use super::product_form::ProductForm;
use super::quadrature::OverSpread;
use super::sampled::Factor;
use super::student;
use super::studentized_range::StudentizedRange;
use crate::statistics::chance::Chance;
use std::f64::consts::SQRT_2;

/// Error at which more points are not worth their time (1).
const ENOUGH: f64 = 5e-5;
/// Bounds at which the difference to the guide is sampled.
const PLACES: usize = 8;

/// A form near the one asked for, whose chances for a known spread quadrature gives.
#[derive(Debug, Clone)]
pub(super) enum Guide {
    /// Correlations that are products.
    Product(ProductForm),
    /// All pairs of equally sure means.
    Range(StudentizedRange),
}

impl Guide {
    /// Chance that none lies further from 0 than `w` times the known spread.
    fn chance(&self, w: f64) -> f64 {
        match self {
            Self::Product(form) => form.within(w),
            Self::Range(range) => range.cdf(SQRT_2 * w),
        }
    }

    /// The bound at which that chance is `chance`.
    fn reaches(&self, chance: f64) -> f64 {
        let (mut low, mut high) = (0.0, FAR);
        for _ in 0..40 {
            let middle = 0.5 * (low + high);
            if self.chance(middle) < chance {
                low = middle;
            } else {
                high = middle;
            }
        }
        high
    }
}

/// The guide's chance G and what it is off by, for a known spread, learned once by sampling:
///
/// ```text
/// P(c) = ∫ f(s) [G + G (1 − G) ρ](c s) ds        ρ a polynomial through sampled places
/// ```
///
/// ρ does not depend on the degrees of freedom nor on c, so that all chances and bounds of a
/// question cost one sampling. Sampled is only the difference to the guide (control variate).
///
/// # Source
/// As [`Sampled`](super::sampled::Sampled); interpolation at Chebyshev's points in barycentric form,
/// Berrut & Trefethen (2004), *SIAM Review* 46, 501–517 (from memory).
#[derive(Debug, Clone)]
pub(super) struct Corrected {
    over: OverSpread,
    rows: Vec<Row>,
    /// What interpolation is off by where it was tried (1).
    between: f64,
}

/// The chance at one bound, for a known spread.
#[derive(Debug, Clone, Copy)]
struct Row {
    chance: f64,
    /// What each shift of the lattice makes of it, less their mean.
    off: [f64; SHIFTS],
}

/// Bound beyond which the chance is 1 (1).
const FAR: f64 = 9.0;
/// Rows for each unit of the bound.
const PER_UNIT: f64 = 48.0;
/// Rows, one more than steps up to `FAR` and one on either side for the cubic.
const ROWS: usize = 435;
/// What a cubic between rows is off by at most: seen for all pairs of up to eight means (1).
const CUBIC: f64 = 5e-8;

impl Corrected {
    /// `None` where the difference to the guide is too uneven to be interpolated.
    pub(super) fn new(
        (asked, near): (&Factor, &Factor),
        guide: &Guide,
        df: f64,
        seed: u64,
    ) -> Option<Self> {
        let (low, high) = (guide.reaches(1e-3), guide.reaches(1.0 - 1e-5));
        let mut places: Vec<f64> = (0..PLACES)
            .map(|i| {
                let angle = std::f64::consts::PI * (i as f64 + 0.5) / PLACES as f64;
                0.5 * (low + high) - 0.5 * (high - low) * libm::cos(angle)
            })
            .collect();
        // One place more, at which interpolation is tried.
        let trial = guide.reaches(0.9);
        places.push(trial);
        let known: Vec<f64> = (0..ROWS).map(|row| guide.chance(at_row(row))).collect();
        let at_places: Vec<f64> = places.iter().map(|place| guide.chance(*place)).collect();
        // About where the chance is 95 %: for a known spread, made wider as Student's t is.
        let wider =
            if df.is_finite() { student::upper_quantile(0.025, df) / 1.96 } else { 1.0 };
        let usual = wider * guide.reaches(0.95);
        let over = OverSpread::new(df, 8.5);
        let mut found = None;
        for &size in sizes(asked.dimensions().max(near.dimensions())) {
            let off = differences((asked, near), &places, size, seed);
            let tried = |shift: usize| {
                let weights = chebyshev(&places[..PLACES], trial);
                let ratio =
                    |at: usize| off[at][shift] / (at_places[at] * (1.0 - at_places[at]));
                let sum: f64 = (0..PLACES).map(|at| weights[at] * ratio(at)).sum();
                sum * at_places[PLACES] * (1.0 - at_places[PLACES]) - off[PLACES][shift]
            };
            let between = ((0..SHIFTS).map(tried).sum::<f64>() / SHIFTS as f64).abs();
            let rows = (0..ROWS)
                .map(|row| {
                    Row::at(at_row(row), known[row], &places[..PLACES], &at_places, &off)
                })
                .collect();
            let next = Self { over: over.clone(), rows, between };
            let enough = next.within(usual).error <= ENOUGH;
            found = Some(next);
            if enough {
                break;
            }
        }
        found.filter(|found| found.between <= ENOUGH)
    }

    /// The same values with other degrees of freedom.
    pub(super) fn with_df(&self, df: f64) -> Self {
        Self { over: OverSpread::new(df, 8.5), ..self.clone() }
    }

    pub(super) fn within(&self, c: f64) -> Likelihood {
        let mut by_shift = [0.0; SHIFTS];
        let chance = self.over.average_with(c, |w, weight| {
            let (first, weights) = cubic(w);
            let mut chance = 0.0;
            for (row, share) in self.rows[first..first + 4].iter().zip(weights) {
                chance += share * row.chance;
                for (sum, off) in by_shift.iter_mut().zip(row.off) {
                    *sum += weight * share * off;
                }
            }
            chance
        });
        let count = SHIFTS as f64;
        let square = by_shift.iter().map(|m| m * m).sum::<f64>();
        let error = T_99 * libm::sqrt(square / (count * (count - 1.0)));
        let error = error + self.between + CUBIC;
        Likelihood { chance: chance.clamp(0.0, 1.0), error }
    }
}

impl Row {
    fn at(
        w: f64,
        known: f64,
        places: &[f64],
        at_places: &[f64],
        off: &[[f64; SHIFTS]],
    ) -> Self {
        let weights = chebyshev(places, w);
        let mut mine = [0.0; SHIFTS];
        for ((weight, g), off) in weights.iter().zip(at_places).zip(off) {
            let share = weight * known * (1.0 - known) / (g * (1.0 - g));
            for (mine, off) in mine.iter_mut().zip(off) {
                *mine += share * off;
            }
        }
        let mean = mine.iter().sum::<f64>() / SHIFTS as f64;
        Self { chance: (known + mean).clamp(0.0, 1.0), off: mine.map(|off| off - mean) }
    }
}

/// The sampled difference between two forms at each place, for each shift of the lattice.
fn differences(
    (asked, near): (&Factor, &Factor),
    places: &[f64],
    (size, korobov): (u32, u32),
    seed: u64,
) -> Vec<[f64; SHIFTS]> {
    let dimensions = asked.dimensions().max(near.dimensions());
    let mut chance = Chance::from_seed(seed);
    let mut off = vec![[0.0; SHIFTS]; places.len()];
    for shift in 0..SHIFTS {
        let lattice = points(dimensions, size, korobov, &mut chance);
        lattice.each(|point, room| {
            for (place, off) in places.iter().zip(&mut off) {
                off[shift] += asked.at(*place, point, room) - near.at(*place, point, room);
            }
        });
        for off in &mut off {
            off[shift] /= lattice.size();
        }
    }
    off
}

/// The bound of a row; the first lies one step below 0, where no chance is.
fn at_row(row: usize) -> f64 {
    (row as f64 - 1.0) / PER_UNIT
}

/// Four rows around a bound, from the first, with Lagrange's weights of the cubic through them.
fn cubic(w: f64) -> (usize, [f64; 4]) {
    let place = w.clamp(0.0, FAR) * PER_UNIT;
    let first = (place as usize).min(ROWS - 4);
    let t = place - first as f64;
    let (a, b, c, d) = (t + 1.0, t, t - 1.0, t - 2.0);
    (first, [-b * c * d / 6.0, 0.5 * a * c * d, -0.5 * a * b * d, a * b * c / 6.0])
}
