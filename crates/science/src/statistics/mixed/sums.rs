//! What the likelihood needs of the values: a mean for each group, and how bags differ within.

use super::records::Records;
use super::square::Square;
use std::ops::Range;

/// Sums over groups; each vector has an entry for each column of the design, then the value.
#[derive(Debug, Clone)]
pub(super) struct Sums {
    /// Columns of the design and one for the value.
    pub(super) width: usize,
    /// Bags of each group.
    pub(super) sizes: Vec<f64>,
    /// Means of each group, one group after the other.
    means: Vec<f64>,
    /// Groups of each block.
    pub(super) blocks: Vec<Range<usize>>,
    /// Whether the mean of each block is taken out.
    pub(super) absorbed: bool,
    /// Squares and products around the means of the groups.
    pub(super) within: Square,
    /// Number of values.
    pub(super) rows: usize,
}

impl Sums {
    /// Sums of the records with `values` in place of their own.
    pub(super) fn of(records: &Records, values: &[f64]) -> Self {
        let width = records.columns + 1;
        let mut means = vec![0.0; width * records.groups.len()];
        let mut within = Square::zero(width);
        let mut own = vec![0.0; width];
        for (rows, mean) in records.groups.iter().zip(means.chunks_exact_mut(width)) {
            for row in rows.clone() {
                records.add_row(row, &mut mean[..width - 1]);
                mean[width - 1] += values[row];
            }
            for sum in &mut *mean {
                *sum /= rows.len() as f64;
            }
            let holds =
                |&at: &usize| at == width - 1 || !records.of_one_treatment() || mean[at] > 0.0;
            let held: Vec<usize> = (0..width).filter(holds).collect();
            for row in rows.clone() {
                own.fill(0.0);
                records.add_row(row, &mut own[..width - 1]);
                own[width - 1] = values[row];
                for (at, &i) in held.iter().enumerate() {
                    let off = own[i] - mean[i];
                    for &j in &held[..=at] {
                        within.add(i, j, off * (own[j] - mean[j]));
                    }
                }
            }
        }
        within.mirror();
        Self {
            width,
            sizes: records.groups.iter().map(|rows| rows.len() as f64).collect(),
            means,
            blocks: records.blocks.clone(),
            absorbed: records.absorbed,
            within,
            rows: records.count(),
        }
    }

    /// Means of one group.
    pub(super) fn mean(&self, group: usize) -> &[f64] {
        &self.means[group * self.width..(group + 1) * self.width]
    }

    /// The same sums with only some columns of the design.
    pub(super) fn only(&self, kept: &[usize]) -> Self {
        let wanted: Vec<usize> = kept.iter().copied().chain([self.width - 1]).collect();
        let mut within = Square::zero(wanted.len());
        for (i, &a) in wanted.iter().enumerate() {
            for (j, &b) in wanted.iter().enumerate() {
                within.add(i, j, self.within.at(a, b));
            }
        }
        let means = (0..self.sizes.len())
            .flat_map(|group| wanted.iter().map(move |&at| self.mean(group)[at]))
            .collect();
        Self {
            width: wanted.len(),
            means,
            within,
            sizes: self.sizes.clone(),
            blocks: self.blocks.clone(),
            ..*self
        }
    }
}
