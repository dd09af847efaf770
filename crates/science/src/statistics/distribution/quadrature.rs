//! Gauss–Legendre quadrature, and averages over the chance spread of an estimated spread.

use super::gamma;
use std::f64::consts::PI;

/// Nodes and weights of a Gauss–Legendre rule on −1 to 1.
///
/// # Source
/// DLMF 3.5(v); nodes by Newton's method on the Legendre polynomial's recurrence (DLMF 18.9.1).
#[derive(Debug, Clone)]
pub(in crate::statistics) struct Rule {
    nodes: Vec<(f64, f64)>,
}

impl Rule {
    pub(in crate::statistics) fn new(order: u32) -> Self {
        let n = f64::from(order);
        let nodes = (1..=order)
            .map(|i| {
                let mut x = libm::cos(PI * (f64::from(i) - 0.25) / (n + 0.5));
                let mut slope = 1.0;
                for _ in 0..100 {
                    let (value, derivative) = legendre(order, x);
                    slope = derivative;
                    let step = value / derivative;
                    x -= step;
                    if step.abs() < 1e-16 {
                        break;
                    }
                }
                (x, 2.0 / ((1.0 - x * x) * slope * slope))
            })
            .collect();
        Self { nodes }
    }

    /// Nodes and weights on `low` to `high`, cut into `panels` equal parts.
    pub(in crate::statistics) fn spread(
        &self,
        low: f64,
        high: f64,
        panels: u32,
    ) -> impl Iterator<Item = (f64, f64)> {
        let half = 0.5 * (high - low) / f64::from(panels);
        (0..panels).flat_map(move |panel| {
            let middle = low + half * (2.0 * f64::from(panel) + 1.0);
            self.nodes.iter().map(move |&(x, weight)| (middle + half * x, half * weight))
        })
    }
}

fn legendre(order: u32, x: f64) -> (f64, f64) {
    let (mut before, mut value) = (1.0, x);
    for k in 2..=order {
        let k = f64::from(k);
        let next = ((2.0 * k - 1.0) * x * value - (k - 1.0) * before) / k;
        before = value;
        value = next;
    }
    (value, f64::from(order) * (x * value - before) / (x * x - 1.0))
}

/// Averages functions of c·s, where s = √(χ²/df) is an estimated spread over the true one.
#[derive(Debug, Clone)]
pub(super) struct OverSpread {
    df: f64,
    low: f64,
    high: f64,
    reach: f64,
    rule: Rule,
}

impl OverSpread {
    /// For functions that rise from 0 at 0 to 1 at `reach` and stay there.
    pub(super) fn new(df: f64, reach: f64) -> Self {
        let (low, high) = if df.is_finite() {
            // All but 1e-17 of the chance on either side lies between.
            (gamma::quantile_of_spread(1e-17, df), gamma::upper_quantile_of_spread(1e-17, df))
        } else {
            (1.0, 1.0)
        };
        Self { df, low, high, reach, rule: Rule::new(16) }
    }

    /// Average of `g(scale·s)`.
    pub(super) fn average(&self, scale: f64, mut g: impl FnMut(f64) -> f64) -> f64 {
        self.average_with(scale, |at, _| g(at))
    }

    /// Average of `g(scale·s)`, which is also told the weight of each place.
    pub(super) fn average_with(&self, scale: f64, mut g: impl FnMut(f64, f64) -> f64) -> f64 {
        if !self.df.is_finite() {
            return g(scale, 1.0);
        }
        let bend = (self.reach / scale).clamp(self.low, self.high);
        let beyond = gamma::incomplete(0.5 * self.df, 0.5 * self.df * bend * bend).1;
        let nodes = self.rule.spread(self.low, bend, 3);
        let inside: f64 = nodes
            .map(|(s, weight)| {
                let weight = weight * gamma::density_of_spread(s, self.df);
                weight * g(scale * s, weight)
            })
            .sum();
        inside + beyond
    }
}
