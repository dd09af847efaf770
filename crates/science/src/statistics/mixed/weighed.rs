//! Sums of squares and products as they count when groups differ by a given amount.

use super::square::Square;
use super::sums::Sums;

/// What remains of the sums for one ratio γ of the variance between groups to that within.
///
/// With H = I + γ Z Zᵀ, Z marking the groups, and blocks taken out,
///
/// ```text
/// k_g = n_g/(1 + γ n_g)      d_g = mean of group g − mean of its block, groups counted by k
/// A = Xᵀ H⁻¹ X = within + Σ k d dᵀ      T = Σ k² d dᵀ      R = Σ k³ d dᵀ − Σ_blocks (Σ k² d)(Σ k² d)ᵀ/Σ k
/// ```
///
/// each with the value as one more column. All terms of A are squares: nothing cancels. T and R are
/// Uᵀ U and Uᵀ S U for U = Zᵀ P₀ X and S = Zᵀ P₀ Z, where P₀ takes the blocks out.
#[derive(Debug, Clone)]
pub(super) struct Weighed {
    pub(super) a: Square,
    pub(super) t: Square,
    pub(super) r: Square,
    /// ln |H| and the logarithm of the determinant that the blocks add (1).
    pub(super) ln_h: f64,
    /// Trace of S (1).
    pub(super) s1: f64,
    /// Sum of the squares of S (1).
    pub(super) s2: f64,
}

impl Weighed {
    pub(super) fn at(sums: &Sums, gamma: f64) -> Self {
        let width = sums.width;
        let (mut a, mut t, mut r) =
            (sums.within.clone(), Square::zero(width), Square::zero(width));
        let (mut ln_h, mut s1, mut s2) = (0.0, 0.0, 0.0);
        let (mut middle, mut off) = (vec![0.0; width], vec![0.0; width]);
        let mut weighed_off = vec![0.0; width];
        for block in &sums.blocks {
            let k = |group: usize| sums.sizes[group] / (1.0 + gamma * sums.sizes[group]);
            let power = |power: i32| -> f64 {
                block.clone().map(|g| (0..power).fold(1.0, |product, _| product * k(g))).sum()
            };
            let (k1, k2) = (power(1), power(2));
            middle.fill(0.0);
            weighed_off.fill(0.0);
            if sums.absorbed {
                for group in block.clone() {
                    let share = k(group) / k1;
                    for (middle, mean) in middle.iter_mut().zip(sums.mean(group)) {
                        *middle += share * mean;
                    }
                }
                ln_h += libm::log(k1);
                s1 += k1 - k2 / k1;
                s2 += k2 - 2.0 * power(3) / k1 + (k2 / k1) * (k2 / k1);
            } else {
                s1 += k1;
                s2 += k2;
            }
            for group in block.clone() {
                let k = k(group);
                ln_h += libm::log1p(gamma * sums.sizes[group]);
                for ((off, mean), middle) in off.iter_mut().zip(sums.mean(group)).zip(&middle) {
                    *off = mean - middle;
                }
                a.add_outer_below(k, &off);
                t.add_outer_below(k * k, &off);
                r.add_outer_below(k * k * k, &off);
                for (sum, off) in weighed_off.iter_mut().zip(&off) {
                    *sum += k * k * off;
                }
            }
            if sums.absorbed {
                r.add_outer_below(-1.0 / k1, &weighed_off);
            }
        }
        a.mirror();
        t.mirror();
        r.mirror();
        Self { a, t, r, ln_h, s1, s2 }
    }
}
