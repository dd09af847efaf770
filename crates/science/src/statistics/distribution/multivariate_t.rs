//! Several Student's t values at once, as the comparisons of one question are.

use super::corrected::{Corrected, Guide};
use super::product_form::{CLOSE, ProductForm, connected, loadings, near_loadings};
use super::root::rising_root;
use super::sampled::{Factor, Sampled};
use super::studentized_range::StudentizedRange;
use super::{normal, student};

/// How far the largest of several correlated Student's t values may lie from 0.
///
/// The values share one estimate of spread. Where the correlations are products of one number for
/// each value (within sets that do not correlate with each other), as for treatments against one
/// reference in complete blocks, chances come from quadrature; otherwise from seeded
/// quasi-Monte-Carlo with a stated error: where the correlations come near such products, for the
/// difference to them, once for all chances and degrees of freedom; else for each chance.
///
/// # Accuracy
/// Quadrature: 1e-10; quasi-Monte-Carlo: the stated [`Likelihood::error`], under 1e-4 for up to 20
/// treatments against one reference.
/// # Source
/// Dunnett (1955), *J. Am. Stat. Assoc.* 50, 1096–1121, and Dunnett & Sobel (1955), *Biometrika*
/// 42, 258–260, for the product form; Genz & Bretz (2009), *Computation of Multivariate Normal and
/// t Probabilities*, Springer, for the general one.
#[derive(Debug, Clone)]
pub struct LargestOfSeveral {
    count: usize,
    df: f64,
    way: Way,
}

/// A chance with the error of its computation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likelihood {
    /// The chance (1).
    pub chance: f64,
    /// Bound on its error with 99 % confidence (1).
    pub error: f64,
}

#[derive(Debug, Clone)]
enum Way {
    Quadrature(ProductForm),
    Corrected(Corrected),
    Sampled(Sampled),
}

impl LargestOfSeveral {
    /// For values with these correlations (1) and `df` > 0 degrees of freedom, which may be
    /// infinite; `seed` decides the points where quadrature does not apply.
    ///
    /// Only the part below the diagonal is read. Values that are copies of another one, up to the
    /// sign, count once.
    pub fn new(correlation: &[Vec<f64>], df: f64, seed: u64) -> Self {
        let r = |i: usize, j: usize| if i > j { correlation[i][j] } else { correlation[j][i] };
        let mut distinct: Vec<usize> = Vec::new();
        for i in 0..correlation.len() {
            if distinct.iter().all(|&j| r(i, j).abs() < 1.0 - CLOSE) {
                distinct.push(i);
            }
        }
        let sets = connected(&distinct, &r);
        let exact: Option<Vec<Vec<f64>>> = sets.iter().map(|set| loadings(set, &r)).collect();
        let way = match exact.and_then(|loadings| ProductForm::new(&loadings, df)) {
            Some(form) => Way::Quadrature(form),
            None => near_products(&sets, &r, df, seed),
        };
        Self { count: distinct.len(), df, way }
    }

    /// For all pairs of `means` means, in the order (1, 0), (2, 0), (2, 1), (3, 0) and so on, whose
    /// differences have these correlations; otherwise as [`LargestOfSeveral::new`].
    ///
    /// The guide is the studentized range, which all pairs of equally sure means follow.
    pub fn of_pairs(correlation: &[Vec<f64>], means: u16, df: f64, seed: u64) -> Self {
        let pairs: Vec<(u16, u16)> =
            (0..means).flat_map(|i| (0..i).map(move |j| (i, j))).collect();
        let r = |i: usize, j: usize| if i > j { correlation[i][j] } else { correlation[j][i] };
        let same = |a: u16, b: u16| f64::from(u8::from(a == b));
        let even = |i: usize, j: usize| {
            let ((a, b), (c, d)) = (pairs[i], pairs[j]);
            0.5 * (same(a, c) - same(a, d) - same(b, c) + same(b, d))
        };
        if pairs.len() != correlation.len() {
            return Self::new(correlation, df, seed);
        }
        let asked = Factor::new(pairs.len(), r);
        let near = Factor::new(pairs.len(), even);
        let guide = Guide::Range(StudentizedRange::new(means, f64::INFINITY));
        match Corrected::new((&asked, &near), &guide, df, seed) {
            Some(corrected) => Self { count: pairs.len(), df, way: Way::Corrected(corrected) },
            None => Self::new(correlation, df, seed),
        }
    }

    /// The same values with other degrees of freedom, without sampling again where that can be.
    pub fn with_df(&self, df: f64) -> Self {
        let way = match &self.way {
            Way::Quadrature(form) => Way::Quadrature(form.with_df(df)),
            Way::Corrected(corrected) => Way::Corrected(corrected.with_df(df)),
            Way::Sampled(sampled) => Way::Sampled(sampled.with_df(df)),
        };
        Self { count: self.count, df, way }
    }

    /// Whether chances come from quadrature rather than from sampling.
    pub fn by_quadrature(&self) -> bool {
        matches!(self.way, Way::Quadrature(_))
    }

    /// Chance that none of the values lies further from 0 than `c`.
    pub fn within(&self, c: f64) -> Likelihood {
        if c.is_nan() || c <= 0.0 || self.count == 0 {
            return Likelihood { chance: if c > 0.0 { 1.0 } else { 0.0 }, error: 0.0 };
        }
        match &self.way {
            Way::Quadrature(form) => Likelihood { chance: form.within(c), error: 1e-10 },
            Way::Corrected(corrected) => corrected.within(c),
            Way::Sampled(sampled) => sampled.within(c),
        }
    }

    /// The bound that none of the values exceeds, on either side, with chance `p` strictly
    /// between 0 and 1.
    pub fn bound(&self, p: f64) -> f64 {
        let out = 1.0 - p;
        // One value alone needs less; the sum of the single chances asks for more (Bonferroni).
        let low = upper_quantile(0.5 * out, self.df);
        let high = upper_quantile(0.5 * out / self.count.max(1) as f64, self.df);
        match &self.way {
            _ if self.count < 2 => low,
            Way::Quadrature(form) => rising_root(low, high, |c| form.within(c) - p),
            Way::Corrected(corrected) => {
                rising_root(low, high, |c| corrected.within(c).chance - p)
            }
            Way::Sampled(sampled) => sampled.bound(low, high, p),
        }
    }
}

fn upper_quantile(q: f64, df: f64) -> f64 {
    if df.is_finite() { student::upper_quantile(q, df) } else { -normal::quantile(q) }
}

/// Sampling of the difference to the nearest products of loadings.
fn near_products(
    sets: &[Vec<usize>],
    r: &impl Fn(usize, usize) -> f64,
    df: f64,
    seed: u64,
) -> Way {
    let members = sets.concat();
    let near: Vec<Vec<f64>> = sets.iter().map(|set| near_loadings(set, r)).collect();
    let set_and_loading: Vec<(usize, f64)> = near
        .iter()
        .enumerate()
        .flat_map(|(set, loadings)| loadings.iter().map(move |&b| (set, b)))
        .collect();
    let product = |i: usize, j: usize| {
        let ((set_i, b_i), (set_j, b_j)) = (set_and_loading[i], set_and_loading[j]);
        if set_i == set_j { b_i * b_j } else { 0.0 }
    };
    let asked = Factor::new(members.len(), |i, j| r(members[i], members[j]));
    let factor = Factor::new(members.len(), product);
    let known = Guide::Product(ProductForm::near(&near, f64::INFINITY));
    match Corrected::new((&asked, &factor), &known, df, seed) {
        Some(corrected) => Way::Corrected(corrected),
        None => {
            Way::Sampled(Sampled::new(asked, (factor, ProductForm::near(&near, df)), df, seed))
        }
    }
}
