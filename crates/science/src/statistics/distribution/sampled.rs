//! Chances of several correlated t values by seeded quasi-Monte-Carlo.

use super::lattice::{Lattice, SHIFTS, SIZES, T_99, points, sizes};
use super::multivariate_t::Likelihood;
use super::normal;
use super::normal_table::{cdf, table};
use super::product_form::ProductForm;
use super::root::rising_root;
use super::spread_table::SpreadTable;
use crate::statistics::chance::Chance;

/// Error at which more points are not worth their time (1).
const ENOUGH: f64 = 6e-5;

/// Separation of variables over a randomly shifted lattice, with the spread as first variable.
///
/// Sampled is only the difference to the nearest product form, whose chance quadrature knows
/// (control variate).
///
/// # Source
/// Genz & Bretz (2002), *J. Comput. Graph. Stat.* 11, 950–971, and (2009), *Computation of
/// Multivariate Normal and t Probabilities*, sections 4.1 and 4.2: separation of variables,
/// a lattice with random shifts and the tent map. Dependent values are
/// handled as in Genz & Kwong (2000), *J. Stat. Comput. Simul.* 68, 1–21. Control variates:
/// Hammersley & Handscomb (1964), *Monte Carlo Methods*, section 5.5.
#[derive(Debug, Clone)]
pub(super) struct Sampled {
    asked: Factor,
    guide: (Factor, ProductForm),
    spread: Option<SpreadTable>,
    dimensions: usize,
    seed: u64,
}

impl Sampled {
    /// For the asked form and a nearby one of the same values.
    pub(super) fn new(asked: Factor, guide: (Factor, ProductForm), df: f64, seed: u64) -> Self {
        let dimensions = asked.dimensions().max(guide.0.dimensions()) + 1;
        let spread = df.is_finite().then(|| SpreadTable::new(df));
        Self { asked, guide, spread, dimensions, seed }
    }

    /// The same values with other degrees of freedom.
    pub(super) fn with_df(&self, df: f64) -> Self {
        let (factor, form) = &self.guide;
        Self::new(self.asked.clone(), (factor.clone(), form.with_df(df)), df, self.seed)
    }

    pub(super) fn within(&self, c: f64) -> Likelihood {
        self.enough(c).0
    }

    /// The likelihood, and the number of points that sufficed for it.
    fn enough(&self, c: f64) -> (Likelihood, (u32, u32)) {
        let mut best = (Likelihood { chance: 0.0, error: 1.0 }, SIZES[0]);
        for &size in sizes(self.dimensions) {
            best = (self.with_points(c, size), size);
            if best.0.error <= ENOUGH {
                break;
            }
        }
        best
    }

    pub(super) fn bound(&self, low: f64, high: f64, p: f64) -> f64 {
        // The guide finds the place, as many points as are needed polish it.
        let rough = rising_root(low, high, |c| self.guide.1.within(c) - p);
        let (found, size) = self.enough(rough);
        let mut last = (rough, found.chance);
        let mut at = (rough + 0.01 * rough.copysign(p - found.chance)).clamp(low, high);
        for _ in 0..4 {
            let chance = self.with_points(at, size).chance;
            let slope = (chance - last.1) / (at - last.0);
            if !slope.is_finite() || slope <= 0.0 {
                break;
            }
            last = (at, chance);
            at = (at + (p - chance) / slope).clamp(low, high);
            if (at - last.0).abs() * slope < 0.1 * ENOUGH {
                break;
            }
        }
        at
    }

    fn with_points(&self, c: f64, (size, korobov): (u32, u32)) -> Likelihood {
        let (near, form) = &self.guide;
        let known = form.within(c);
        let mut chance = Chance::from_seed(self.seed);
        let mean_of = |lattice: Lattice| {
            lattice.mean(|point, y| {
                let bound = self.spread.as_ref().map_or(c, |table| c * table.at(point[0]));
                self.asked.at(bound, &point[1..], y) - near.at(bound, &point[1..], y)
            })
        };
        let means: Vec<f64> = (0..SHIFTS)
            .map(|_| mean_of(points(self.dimensions, size, korobov, &mut chance)))
            .collect();
        let count = SHIFTS as f64;
        let mean = means.iter().sum::<f64>() / count;
        let square = means.iter().map(|m| (m - mean) * (m - mean)).sum::<f64>();
        let error = T_99 * libm::sqrt(square / (count * (count - 1.0)));
        Likelihood { chance: (known + mean).clamp(0.0, 1.0), error }
    }
}

/// Rows of a Cholesky factor, gathered under the last variable that each of them involves.
#[derive(Debug, Clone)]
pub(super) struct Factor {
    closing: Vec<Vec<Vec<f64>>>,
}

impl Factor {
    pub(super) fn new(count: usize, r: impl Fn(usize, usize) -> f64) -> Self {
        const NOTHING: f64 = 1e-9;
        let mut own: Vec<Vec<f64>> = Vec::new();
        let mut closing: Vec<Vec<Vec<f64>>> = Vec::new();
        let mut bases: Vec<usize> = Vec::new();
        for i in 0..count {
            let mut row: Vec<f64> = Vec::with_capacity(bases.len() + 1);
            for (column, &base) in own.iter().zip(&bases) {
                let known: f64 = row.iter().zip(column).map(|(a, b)| a * b).sum();
                row.push((r(i, base) - known) / column[row.len()]);
            }
            let left = 1.0 - row.iter().map(|l| l * l).sum::<f64>();
            if left > NOTHING {
                row.push(libm::sqrt(left));
                own.push(row.clone());
                bases.push(i);
                closing.push(vec![row]);
            } else if let Some(last) = row.iter().rposition(|l| l.abs() > NOTHING) {
                closing[last].push(row);
            }
        }
        Self { closing }
    }

    /// Values that are no combination of those before.
    pub(super) fn dimensions(&self) -> usize {
        self.closing.len()
    }

    /// The integrand at one point of the unit cube, for values within `bound` of 0.
    pub(super) fn at(&self, bound: f64, point: &[f64], y: &mut [f64]) -> f64 {
        let table = table();
        let mut product = 1.0;
        for (j, rows) in self.closing.iter().enumerate() {
            let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
            for row in rows {
                let known: f64 = row[..j].iter().zip(&*y).map(|(l, y)| l * y).sum();
                let ends = ((-bound - known) / row[j], (bound - known) / row[j]);
                low = low.max(ends.0.min(ends.1));
                high = high.min(ends.0.max(ends.1));
            }
            if low >= high {
                return 0.0;
            }
            let (below, above) = (cdf(table, low), cdf(table, high));
            product *= above - below;
            if j + 1 < self.closing.len() {
                // Beyond the last double below 1 the quantile would be infinite.
                let share = below + point[j] * (above - below);
                y[j] = normal::quantile(share.clamp(1e-300, 1.0 - 1e-16));
            }
        }
        product
    }
}
