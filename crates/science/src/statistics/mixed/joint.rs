//! Several combinations of coefficients tested together.

use super::fit::Mixed;
use super::square::{Square, dot};
use super::told::Told;
use super::triangle::{Independent, Triangle};
use super::{Method, eigen::symmetric};
use crate::statistics::distribution::fisher;

/// A test that several combinations are all zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointTest {
    /// The F value, scaled (1).
    pub f: f64,
    /// Combinations that stand on their own.
    pub df1: f64,
    /// Degrees of freedom of the variance behind it (1).
    pub df2: f64,
    /// Chance of such an F if all were zero (1).
    pub p: f64,
}

impl Mixed {
    /// Tests that all of these are zero; `None` where there is nothing to test.
    ///
    /// # Source
    /// Kenward & Roger (1997), *Biometrics* 53, 983–997, F scaled by their λ; by Satterthwaite's
    /// method as in Fai & Cornelius (1996), *J. Stat. Comput. Simul.* 54, 363–378 (both from memory).
    pub fn jointly(&self, combinations: &[&Told]) -> Option<JointTest> {
        let rows = self.standing_alone(combinations);
        let count = rows.len();
        if count == 0 {
            return None;
        }
        let values: Vec<f64> = rows.iter().map(|told| told.value / self.unit).collect();
        let adjusted = self.among(&rows, &self.covariance);
        let scaled = Triangle::of(&adjusted)?.forward(&values);
        let plain_f = dot(&scaled, &scaled) / (self.variance * count as f64);
        let (scale, df2) = match self.method {
            Method::KenwardRoger => self.kenward_roger(&rows),
            Method::Satterthwaite => (1.0, self.fai_cornelius(&rows, &adjusted)),
        };
        let (f, df1) = (scale * plain_f, count as f64);
        Some(JointTest { f, df1, df2, p: fisher::upper(f, df1, df2) })
    }

    /// Those that are no combination of the ones before.
    fn standing_alone<'a>(&self, combinations: &[&'a Told]) -> Vec<&'a Told> {
        let products = self.among(combinations, &self.solved.covariance);
        let own: Vec<f64> = (0..products.size()).map(|at| products.at(at, at)).collect();
        Independent::of(&products, &own).kept.into_iter().map(|at| combinations[at]).collect()
    }

    /// L M Lᵀ for the weights L.
    fn among(&self, rows: &[&Told], matrix: &Square) -> Square {
        let mut result = Square::zero(rows.len());
        for (i, a) in rows.iter().enumerate() {
            for (j, b) in rows.iter().enumerate() {
                result.add(i, j, matrix.between(&a.weights, &b.weights));
            }
        }
        result
    }

    /// Kenward and Roger's factor λ and degrees of freedom m.
    fn kenward_roger(&self, rows: &[&Told]) -> (f64, f64) {
        let q = rows.len() as f64;
        let least = rows.iter().fold(self.solved.df, |least, told| least.min(told.df));
        let Some(known) = self.information else { return (1.0, self.solved.df) };
        let Some(triangle) = Triangle::of(&self.among(rows, &self.solved.covariance)) else {
            return (1.0, least);
        };
        // N_i = C⁻¹ (L Φ Xᵀ V⁻¹ V_i V⁻¹ X Φ Lᵀ) C⁻ᵀ with L Φ Lᵀ = C Cᵀ; Σ θ_i N_i is the identity.
        let between = whitened(&triangle, &self.among(rows, &self.solved.by_groups));
        let mut within = Square::zero(rows.len());
        for at in 0..rows.len() {
            within.add(at, at, 1.0);
        }
        let within = within.plus(-self.solved.gamma, &between);
        let trace = |m: &Square| (0..rows.len()).map(|at| m.at(at, at)).sum::<f64>();
        let a1 = known.of(trace(&within), trace(&between));
        let a2 = known.within * within.trace_with(&within)
            + 2.0 * known.both * within.trace_with(&between)
            + known.between * between.trace_with(&between);
        scale_and_df(q, a1, a2).unwrap_or((1.0, least))
    }

    /// Fai and Cornelius' degrees of freedom: directions apart, each by Satterthwaite.
    fn fai_cornelius(&self, rows: &[&Told], covariance: &Square) -> f64 {
        let q = rows.len() as f64;
        let least = rows.iter().fold(self.solved.df, |least, told| least.min(told.df));
        let sum: f64 = symmetric(covariance)
            .iter()
            .filter_map(|direction| {
                let width = rows.first()?.weights.len();
                let mut weights = vec![0.0; width];
                for (share, told) in direction.iter().zip(rows) {
                    for (sum, w) in weights.iter_mut().zip(&told.weights) {
                        *sum += share * w;
                    }
                }
                let df = self.degrees(&weights);
                Some(if df > 2.0 { df / (df - 2.0) } else { 0.0 })
            })
            .sum();
        if sum > q { 2.0 * sum / (sum - q) } else { least }
    }
}

/// C⁻¹ M C⁻ᵀ.
fn whitened(triangle: &Triangle, matrix: &Square) -> Square {
    let size = matrix.size();
    let half: Vec<Vec<f64>> = (0..size).map(|i| triangle.forward(matrix.row(i))).collect();
    let mut result = Square::zero(size);
    for j in 0..size {
        let column: Vec<f64> = half.iter().map(|row| row[j]).collect();
        for (i, value) in triangle.forward(&column).into_iter().enumerate() {
            result.add(i, j, value);
        }
    }
    result
}

/// λ and m from A₁ and A₂, for `q` combinations; `None` where the approximation has no moments.
fn scale_and_df(q: f64, a1: f64, a2: f64) -> Option<(f64, f64)> {
    if a2.is_nan() || a2 <= 0.0 || a2 >= q {
        return None;
    }
    let b = (a1 + 6.0 * a2) / (2.0 * q);
    let g = ((q + 1.0) * a1 - (q + 4.0) * a2) / ((q + 2.0) * a2);
    let under = 3.0 * q + 2.0 * (1.0 - g);
    let (c1, c2, c3) = (g / under, (q - g) / under, (q + 2.0 - g) / under);
    let mean = 1.0 / (1.0 - a2 / q);
    let spread = 2.0 / q * (1.0 + c1 * b) / ((1.0 - c2 * b) * (1.0 - c2 * b) * (1.0 - c3 * b));
    let rho = spread / (2.0 * mean * mean);
    let df = 4.0 + (q + 2.0) / (q * rho - 1.0);
    let scale = df / (mean * (df - 2.0));
    (df.is_finite() && df > 2.0 && scale.is_finite() && scale > 0.0).then_some((scale, df))
}
