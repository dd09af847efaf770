//! Chances of several correlated t values by seeded quasi-Monte-Carlo.

use super::multivariate_t::Likelihood;
use super::normal;
use super::product_form::ProductForm;
use super::root::rising_root;
use super::spread_table::SpreadTable;
use crate::statistics::chance::Chance;

/// Independent shifts of the lattice, from whose disagreement the error is judged.
const SHIFTS: usize = 12;
/// Student's t quantile for two-sided 99 % with 11 degrees of freedom (1), for those shifts.
const T_99: f64 = 3.105_806_515_539_281;
/// Error at which more points are not worth their time (1).
const ENOUGH: f64 = 6e-5;
/// Points times values in one shift beyond which no more points are tried, so that a question with
/// very many comparisons still ends; its error is stated all the same.
const MOST_WORK: usize = 200_000;
/// Points of the lattice in one shift, tried in turn until the error is small enough, each with
/// the number whose powers are the lattice's steps (Korobov).
///
/// Derived: of all such numbers (up to 4,093 points; of 2,500 random ones beyond) the one with the
/// smallest P₂ in 12 dimensions with weights 1/j² (Sloan & Joe 1994, *Lattice Methods for Multiple
/// Integration*, from memory).
const SIZES: [(u32, u32); 7] =
    [(251, 37), (509, 146), (1021, 481), (2039, 469), (4093, 450), (8191, 1163), (16381, 8098)];

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
    guide: Option<(Factor, ProductForm)>,
    spread: Option<SpreadTable>,
    shifts: Vec<Vec<f64>>,
    dimensions: usize,
}

impl Sampled {
    pub(super) fn new(
        sets: &[Vec<usize>],
        r: &impl Fn(usize, usize) -> f64,
        near: &[Vec<f64>],
        df: f64,
        seed: u64,
    ) -> Self {
        let members = sets.concat();
        let asked = Factor::new(members.len(), |i, j| r(members[i], members[j]));
        let set_and_loading: Vec<(usize, f64)> = near
            .iter()
            .enumerate()
            .flat_map(|(set, loadings)| loadings.iter().map(move |&b| (set, b)))
            .collect();
        let guide = ProductForm::new(near, df).map(|form| {
            let product = |i: usize, j: usize| {
                let ((set_i, b_i), (set_j, b_j)) = (set_and_loading[i], set_and_loading[j]);
                if set_i == set_j { b_i * b_j } else { 0.0 }
            };
            (Factor::new(members.len(), product), form)
        });
        let dimensions = members.len() + 1;
        let mut chance = Chance::from_seed(seed);
        let shifts =
            (0..SHIFTS).map(|_| (0..dimensions).map(|_| chance.uniform()).collect()).collect();
        let spread = df.is_finite().then(|| SpreadTable::new(df));
        Self { asked, guide, spread, shifts, dimensions }
    }

    pub(super) fn within(&self, c: f64) -> Likelihood {
        self.enough(c).0
    }

    /// The likelihood, and the number of points that sufficed for it.
    fn enough(&self, c: f64) -> (Likelihood, (u32, u32)) {
        let mut best = (Likelihood { chance: 0.0, error: 1.0 }, SIZES[0]);
        let affordable = |size: &&(u32, u32)| size.0 as usize * self.dimensions <= MOST_WORK;
        for &size in SIZES.iter().filter(affordable) {
            best = (self.with_points(c, size), size);
            if best.0.error <= ENOUGH {
                break;
            }
        }
        best
    }

    pub(super) fn bound(&self, low: f64, high: f64, p: f64) -> f64 {
        // The guide or a few points find the place, as many as are needed polish it.
        let rough = match &self.guide {
            Some((_, form)) => rising_root(low, high, |c| form.within(c) - p),
            None => rising_root(low, high, |c| self.with_points(c, SIZES[0]).chance - p),
        };
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
        let mut point = vec![0.0; self.dimensions];
        let steps = steps(self.dimensions, size, korobov);
        let mut y = vec![0.0; self.dimensions];
        let known = self.guide.as_ref().map_or(0.0, |(_, form)| form.within(c));
        let means: Vec<f64> = self
            .shifts
            .iter()
            .map(|shift| {
                let mut sum = 0.0;
                for k in 0..size {
                    for ((x, step), start) in point.iter_mut().zip(&steps).zip(shift) {
                        let raw = (f64::from(k) * step + start) % 1.0;
                        *x = (2.0 * raw - 1.0).abs();
                    }
                    let bound = self.spread.as_ref().map_or(c, |table| c * table.at(point[0]));
                    sum += self.asked.at(bound, &point[1..], &mut y);
                    if let Some((factor, _)) = &self.guide {
                        sum -= factor.at(bound, &point[1..], &mut y);
                    }
                }
                sum / f64::from(size)
            })
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
struct Factor {
    closing: Vec<Vec<Vec<f64>>>,
}

impl Factor {
    fn new(count: usize, r: impl Fn(usize, usize) -> f64) -> Self {
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

    /// The integrand at one point of the unit cube, for values within `bound` of 0.
    fn at(&self, bound: f64, point: &[f64], y: &mut [f64]) -> f64 {
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
            let (below, above) = (normal::cdf(low), normal::cdf(high));
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

/// Steps of Korobov's lattice: powers of one number over the number of points.
fn steps(dimensions: usize, size: u32, korobov: u32) -> Vec<f64> {
    let (size, korobov) = (u64::from(size), u64::from(korobov));
    let mut power = 1;
    (0..dimensions)
        .map(|_| {
            let step = power as f64 / size as f64;
            power = power * korobov % size;
            step
        })
        .collect()
}
