//! Where a search stands, and the ways between.

use super::unlike::Trust;
use crate::cholesky::lower_triangle;

/// The least share of the way that is gone (1).
const LEAST: f64 = 0.1;
/// The largest, once near (1).
const MOST: f64 = 2.0;

/// Where a search stands.
#[derive(Clone)]
pub(super) struct Stand {
    /// Independent deviates.
    pub(super) at: Vec<f64>,
    /// Their covariance.
    pub(super) covariance: Vec<Vec<f64>>,
    /// How far bags are trusted; nothing before that can be told.
    pub(super) trust: Option<Trust>,
}

impl Stand {
    /// At a place before anything is known: all is open that the prior leaves open.
    pub(super) fn open(at: Vec<f64>) -> Self {
        let count = at.len();
        let unit = |row| (0..count).map(|at| f64::from(u8::from(at == row))).collect();
        Self { at, covariance: (0..count).map(unit).collect(), trust: None }
    }

    /// The way to another: deviates, and trust in bags where there is any.
    pub(super) fn way(&self, other: &Self) -> Vec<f64> {
        let way = other.at.iter().zip(&self.at).map(|(to, from)| to - from);
        let trust = self.trust.iter().zip(&other.trust).flat_map(|(from, to)| from.way(to));
        way.chain(trust).collect()
    }

    /// The same as long as the way is beside what is left open, with how that changes (1): the triangle of a
    /// covariance measures it.
    pub(super) fn long_way(&self, other: &Self, root: &[Vec<f64>]) -> Vec<f64> {
        let mut way = self.way(other);
        measure(&mut way, root);
        let sds = self.covariance.iter().zip(&other.covariance).enumerate();
        way.extend(sds.map(|(at, (from, to))| 0.5 * libm::log(to[at] / from[at])));
        way
    }

    /// Stands added up by parts that are 1 together; `None` where that is nowhere.
    pub(super) fn together(all: &[Self], parts: &[f64]) -> Option<Self> {
        let numbers = all.first()?.at.len();
        let sum = |of: &dyn Fn(&Self) -> f64| -> f64 {
            all.iter().zip(parts).map(|(one, part)| part * of(one)).sum()
        };
        let at: Vec<f64> = (0..numbers).map(|at| sum(&|one| one.at[at])).collect();
        let row = |row| (0..numbers).map(move |at| (row, at));
        let covariance: Vec<Vec<f64>> = (0..numbers)
            .map(|at| row(at).map(|(row, at)| sum(&|one| one.covariance[row][at])).collect())
            .collect();
        let root = lower_triangle(&covariance);
        let whole = (0..numbers).all(|at| root[at][at].is_finite() && root[at][at] > 0.0);
        if !whole || at.iter().any(|z| !z.is_finite()) {
            return None;
        }
        let trusts: Option<Vec<&Trust>> = all.iter().map(|one| one.trust.as_ref()).collect();
        let trust = trusts.map(|trusts| Trust::together(&trusts, parts));
        if trust.is_none() && all.iter().any(|one| one.trust.is_some()) {
            return None;
        }
        Some(Self { at, covariance, trust })
    }

    /// A share of the way to another.
    pub(super) fn toward(&self, other: Self, share: f64) -> Self {
        let between = |from: &[f64], to: &[f64]| -> Vec<f64> {
            from.iter().zip(to).map(|(from, to)| from + share * (to - from)).collect()
        };
        let rows = self.covariance.iter().zip(&other.covariance);
        Self {
            at: between(&self.at, &other.at),
            covariance: rows.map(|(from, to)| between(from, to)).collect(),
            trust: match (&self.trust, other.trust) {
                (Some(from), Some(to)) => Some(from.toward(&to, share)),
                (_, to) => to,
            },
        }
    }
}

/// Turns the first of some values into as many independent ones, by the triangle of their covariance.
pub(super) fn measure(values: &mut [f64], root: &[Vec<f64>]) {
    for row in 0..root.len() {
        let known: f64 = (0..row).map(|at| root[row][at] * values[at]).sum();
        let own = root[row][row];
        values[row] = if own > 0.0 { (values[row] - known) / own } else { 0.0 };
    }
}

/// The share of a way to go after a share of the last one.
pub(super) fn share_of(share: f64, last: &[f64], way: &[f64], near: bool) -> f64 {
    let most = if near { MOST } else { 1.0 };
    if last.len() != way.len() {
        return 1.0;
    }
    let turned = last.iter().zip(way).map(|(last, way)| way - last);
    let (mut along, mut square) = (0.0, 0.0);
    for (turned, last) in turned.zip(last) {
        along += last * turned;
        square += turned * turned;
    }
    let share = -share * along / square;
    if share.is_finite() { share.clamp(LEAST, most) } else { 1.0 }
}

/// The largest change of a standard deviation (1).
pub(super) fn wider(from: &[Vec<f64>], to: &[Vec<f64>]) -> f64 {
    let each = from.iter().zip(to).enumerate();
    each.map(|(at, (from, to))| ((to[at] / from[at]).sqrt() - 1.0).abs()).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::share_of;

    /// x' = −1.5 x leads ever further to and fro; after one whole way the share is that which leads to 0 at
    /// once, 1/(1 + 1.5).
    #[test]
    fn a_way_to_and_fro_is_cut_short() {
        let way = |x: f64| -2.5 * x;
        let share = share_of(1.0, &[way(1.0)], &[way(-1.5)], false);
        assert!((share - 0.4).abs() < 1e-12, "{share}");
        // One that comes nearer from one side is gone further: x' = x/4 from 1 has 4/3 of 3/4 to go.
        assert!((share_of(1.0, &[1.0], &[0.25], true) - 4.0 / 3.0).abs() < 1e-12);
    }
}
