//! Levels inside blocks, block means taken off: the same model as the additive one, for tables of any
//! length.
//!
//! The additive model of a class is fitted with a column for each block; a district's table would
//! need gigabytes for that. Here blocks are eliminated first, and what is left has the size of the levels.

use super::sum::total;
use crate::cholesky::lower_triangle;

/// One value with its level and its block.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The value, in any unit.
    pub value: f64,
    /// Its level, numbered from 0 without gaps.
    pub level: usize,
    /// Its block, by any number; the same for all where there are no blocks.
    pub block: usize,
}

/// Rows in the order of their blocks, and what their design can tell.
#[derive(Debug)]
pub(super) struct Blocked {
    /// Values less the mean of their block.
    pub(super) centered: Vec<f64>,
    /// Level of each.
    pub(super) labels: Vec<usize>,
    /// Where each block begins, and the end.
    pub(super) starts: Vec<usize>,
    /// Mean of each block.
    means: Vec<f64>,
    /// A generalized inverse of the levels' normal equations: weights' quadratic form is the variance
    /// of a contrast in units of the residual variance.
    pub(super) inverse: Vec<Vec<f64>>,
}

/// Level effects with what they leave over.
#[derive(Debug)]
pub(super) struct Effects {
    /// Mean of each level, adjusted for blocks: as it would be over all blocks, each counted once.
    pub(super) adjusted: Vec<f64>,
    /// Sum of squares that the levels explain after the blocks.
    pub(super) between: f64,
    /// Sum of squares that is left.
    pub(super) rest: f64,
}

impl Blocked {
    /// Takes block means off; `levels` is how many levels there are.
    ///
    /// # Errors
    /// The sets of levels that hang together through blocks, where they are more than one.
    pub(super) fn of(rows: &[Measured], levels: usize) -> Result<Self, Vec<Vec<usize>>> {
        let mut order: Vec<usize> = (0..rows.len()).collect();
        order.sort_by_key(|&at| rows[at].block);
        let (mut centered, mut starts, mut means) =
            (Vec::with_capacity(rows.len()), vec![0], Vec::new());
        for block in order.chunk_by(|&a, &b| rows[a].block == rows[b].block) {
            let first = rows[block[0]].value;
            let off = block.iter().map(|&at| rows[at].value - first);
            let mean = total(off.clone()) / block.len() as f64;
            centered.extend(off.map(|v| v - mean));
            means.push(first + mean);
            starts.push(centered.len());
        }
        let labels: Vec<usize> = order.iter().map(|&at| rows[at].level).collect();
        let (normal, joined) = normal_equations(&labels, &starts, levels);
        if joined.len() > 1 {
            return Err(joined);
        }
        let inverse = if means.len() == 1 {
            // One block: the variances of plain means.
            let count = |level| labels.iter().filter(|&&l| l == level).count() as f64;
            let own = |level| {
                let entry = |other| if other == level { 1.0 / count(level) } else { 0.0 };
                (0..levels).map(entry).collect()
            };
            (0..levels).map(own).collect()
        } else {
            inverse_without_first(&normal)
        };
        Ok(Self { centered, labels, starts, means, inverse })
    }

    /// Number of blocks.
    pub(super) fn blocks(&self) -> usize {
        self.means.len()
    }

    /// Fits the levels.
    pub(super) fn effects(&self) -> Effects {
        let levels = self.inverse.len();
        let mut effects = vec![0.0; levels];
        let mut rest = self.centered.clone();
        let mut fitted = vec![0.0; rest.len()];
        // The second round takes up what rounding left of the first.
        for _ in 0..2 {
            let mut sums = vec![0.0; levels];
            for (value, &level) in rest.iter().zip(&self.labels) {
                sums[level] += value;
            }
            for (effect, row) in effects.iter_mut().zip(&self.inverse) {
                *effect += row.iter().zip(&sums).map(|(g, s)| g * s).sum::<f64>();
            }
            for ends in self.starts.windows(2) {
                let block = ends[0]..ends[1];
                let shared = self.mean_effect(&effects, block.clone());
                for at in block {
                    fitted[at] = effects[self.labels[at]] - shared;
                    rest[at] = self.centered[at] - fitted[at];
                }
            }
        }
        let bare = total(self.starts.windows(2).zip(&self.means).map(|(ends, mean)| {
            mean - self.means[0] - self.mean_effect(&effects, ends[0]..ends[1])
        }));
        let level = self.means[0] + bare / self.means.len() as f64;
        Effects {
            adjusted: effects.iter().map(|effect| level + effect).collect(),
            between: total(fitted.iter().map(|v| v * v)),
            rest: total(rest.iter().map(|v| v * v)),
        }
    }

    fn mean_effect(&self, effects: &[f64], block: std::ops::Range<usize>) -> f64 {
        let count = block.len() as f64;
        total(self.labels[block].iter().map(|&level| effects[level])) / count
    }
}

/// The levels' normal equations after the blocks, and the sets of levels that blocks join.
fn normal_equations(
    labels: &[usize],
    starts: &[usize],
    levels: usize,
) -> (Vec<Vec<f64>>, Vec<Vec<usize>>) {
    let mut normal = vec![vec![0.0; levels]; levels];
    let mut set: Vec<usize> = (0..levels).collect();
    let mut counts = vec![0.0; levels];
    for ends in starts.windows(2) {
        let block = &labels[ends[0]..ends[1]];
        let mut present: Vec<usize> = block.to_vec();
        present.sort_unstable();
        present.dedup();
        for &level in block {
            counts[level] += 1.0;
        }
        for &a in &present {
            normal[a][a] += counts[a];
            for &b in &present {
                normal[a][b] -= counts[a] * counts[b] / block.len() as f64;
            }
        }
        let (kept, joined) = (set[present[0]], present.iter().map(|&l| set[l]));
        let joined: Vec<usize> = joined.filter(|&s| s != kept).collect();
        if !joined.is_empty() {
            for own in &mut set {
                if joined.contains(own) {
                    *own = kept;
                }
            }
        }
        for level in present {
            counts[level] = 0.0;
        }
    }
    let of = |wanted| (0..levels).filter(|&level| set[level] == wanted).collect::<Vec<_>>();
    (normal, (0..levels).map(of).filter(|members| !members.is_empty()).collect())
}

/// The inverse of all but the first row and column, which stay 0: a generalized inverse where the
/// rows of the whole add up to 0 and nothing else does.
fn inverse_without_first(normal: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let inner: Vec<Vec<f64>> = normal[1..].iter().map(|row| row[1..].to_vec()).collect();
    let lower = lower_triangle(&inner);
    let count = inner.len();
    let column = |unit: usize| {
        let mut x = vec![0.0; count];
        for row in 0..count {
            let known: f64 = (0..row).map(|at| lower[row][at] * x[at]).sum();
            x[row] = (f64::from(u8::from(row == unit)) - known) / lower[row][row];
        }
        for row in (0..count).rev() {
            let known: f64 = (row + 1..count).map(|at| lower[at][row] * x[at]).sum();
            x[row] = (x[row] - known) / lower[row][row];
        }
        x
    };
    let mut whole = vec![vec![0.0; count + 1]];
    whole.extend((0..count).map(|at| [vec![0.0], column(at)].concat()));
    whole
}
