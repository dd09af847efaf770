//! Correlated t values whose correlations are products of one loading for each value.

use super::normal;
use super::normal_table::{cdf, table};
use super::quadrature::{OverSpread, Rule};

/// Correlations closer to 0 than this are 0, and closer to ±1 are ±1 (1).
pub(super) const CLOSE: f64 = 1e-10;

/// One or more sets of values; those of different sets do not correlate.
///
/// ```text
/// ρ_ij = b_i b_j within a set:
/// P(c) = ∫ f(s) Π_sets ∫ φ(z) Π_i [Φ((cs − b_i z)/√(1−b_i²)) − Φ((−cs − b_i z)/√(1−b_i²))] dz ds
/// ```
#[derive(Debug, Clone)]
pub(super) struct ProductForm {
    over: OverSpread,
    sets: Vec<Set>,
}

/// Values whose correlations are products of their loadings, with nodes in their common part.
#[derive(Debug, Clone)]
struct Set {
    steps: Vec<Step>,
    /// Half of an even integrand: nodes from 0 up, weights with the normal density.
    nodes: Vec<(f64, f64)>,
}

/// What the conditional chance of one value needs.
#[derive(Debug, Clone, Copy)]
struct Step {
    /// 1/√(1 − b²).
    own: f64,
    /// b/√(1 − b²).
    shared: f64,
}

impl ProductForm {
    /// From the loadings of each set; `None` where one is so near ±1 that the integrand is too
    /// sharp to be worth quadrature.
    pub(super) fn new(loadings: &[Vec<f64>], df: f64) -> Option<Self> {
        let sets: Option<Vec<Set>> = loadings.iter().map(|set| Set::new(set)).collect();
        Some(Self { over: OverSpread::new(df, 8.3), sets: sets? })
    }

    /// From the loadings of a nearby form, as [`near_loadings`] gives them.
    pub(super) fn near(loadings: &[Vec<f64>], df: f64) -> Self {
        let sets = loadings.iter().map(|set| Set::of(set, sharpest(set).max(0.05))).collect();
        Self { over: OverSpread::new(df, 8.3), sets }
    }

    /// The same values with other degrees of freedom.
    pub(super) fn with_df(&self, df: f64) -> Self {
        Self { over: OverSpread::new(df, 8.3), sets: self.sets.clone() }
    }

    /// Chance that none of the values lies further from 0 than `c`.
    pub(super) fn within(&self, c: f64) -> f64 {
        let all = |bound: f64| self.sets.iter().map(|set| set.within(bound)).product();
        self.over.average(c, all).clamp(0.0, 1.0)
    }
}

impl Set {
    fn new(loadings: &[f64]) -> Option<Self> {
        let sharpest = sharpest(loadings);
        (sharpest >= 0.05).then(|| Self::of(loadings, sharpest))
    }

    /// With panels narrow enough for the sharpest step.
    fn of(loadings: &[f64], sharpest: f64) -> Self {
        const FAR: f64 = 8.5;
        let step = |b: &f64| {
            let own = 1.0 / libm::sqrt(1.0 - b * b);
            Step { own, shared: b * own }
        };
        let steps: Vec<Step> = loadings.iter().map(step).collect();
        if loadings.len() < 2 {
            return Self { steps, nodes: vec![(0.0, 1.0)] };
        }
        let panels = libm::ceil(2.0 / sharpest) as u32;
        let nodes = Rule::new(16)
            .spread(0.0, FAR, panels)
            .map(|(z, weight)| (z, 2.0 * weight * normal::density(z)))
            .collect();
        Self { steps, nodes }
    }

    /// Chance that no value of the set lies further from 0 than `bound` times the true spread.
    fn within(&self, bound: f64) -> f64 {
        let table = table();
        let mut sum = 0.0;
        for &(z, weight) in &self.nodes {
            let mut product = weight;
            for step in &self.steps {
                let (middle, half) = (step.shared * z, step.own * bound);
                product *= cdf(table, half - middle) - cdf(table, -half - middle);
            }
            sum += product;
        }
        sum
    }
}

/// How fast the sharpest of the normal steps changes along the common part (1, at most 1).
fn sharpest(loadings: &[f64]) -> f64 {
    if loadings.len() < 2 {
        return 1.0;
    }
    let steps = loadings.iter().map(|b| libm::sqrt(1.0 - b * b) / b.abs());
    // Not `min`, which would pass over a loading beyond 1.
    steps.fold(1.0, |least, step| if step < least || step.is_nan() { step } else { least })
}

/// Sets of values that correlate, directly or through others.
pub(super) fn connected(
    members: &[usize],
    r: &impl Fn(usize, usize) -> f64,
) -> Vec<Vec<usize>> {
    let mut left = members.to_vec();
    let mut sets = Vec::new();
    while let Some(first) = left.pop() {
        let mut set = vec![first];
        let mut next = 0;
        while next < set.len() {
            let from = set[next];
            let (joined, rest): (Vec<usize>, Vec<usize>) =
                left.iter().partition(|&&j| r(from, j).abs() > CLOSE);
            set.extend(joined);
            left = rest;
            next += 1;
        }
        set.sort_unstable();
        sets.push(set);
    }
    sets
}

/// One loading for each value such that correlations are their products, if there are such.
pub(super) fn loadings(set: &[usize], r: &impl Fn(usize, usize) -> f64) -> Option<Vec<f64>> {
    let first = match *set {
        [] | [_] => return Some(vec![0.0; set.len()]),
        [a, b] => libm::sqrt(r(a, b).abs()),
        [a, b, c, ..] => libm::sqrt(r(a, b) * r(a, c) / r(b, c)),
    };
    let mut found = vec![first];
    found.extend(set[1..].iter().map(|&j| r(set[0], j) / first));
    let fits = |i: usize, j: usize| (found[i] * found[j] - r(set[i], set[j])).abs() < CLOSE;
    let all = (1..set.len()).all(|i| (0..i).all(|j| fits(i, j)));
    (all && found.iter().all(|b| b.abs() < 1.0)).then_some(found)
}

/// Loadings whose products come near the correlations, in the sense of least squares.
///
/// # Source
/// Harman & Jones (1966), *Psychometrika* 31, 351–368 (minres with one factor), by coordinate
/// descent.
pub(super) fn near_loadings(set: &[usize], r: &impl Fn(usize, usize) -> f64) -> Vec<f64> {
    const MOST: f64 = 0.97;
    let k = set.len();
    if k < 2 {
        // A value by itself has nothing in common with others.
        return vec![0.0; k];
    }
    // The sign pattern of the first value's row is enough of a start.
    let mut b: Vec<f64> = set
        .iter()
        .map(|&j| if j == set[0] { 0.7 } else { r(set[0], j).signum() * 0.7 })
        .collect();
    for _ in 0..60 {
        for i in 0..k {
            let (mut over, mut under) = (0.0, 0.0);
            for j in (0..k).filter(|&j| j != i) {
                over += r(set[i], set[j]) * b[j];
                under += b[j] * b[j];
            }
            if under > 0.0 {
                b[i] = (over / under).clamp(-MOST, MOST);
            }
        }
    }
    b
}
