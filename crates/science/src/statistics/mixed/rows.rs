//! The rows of a table as a fitted model sees them.

use super::records::Records;
use super::square::Square;

/// One row.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub(super) treatment: usize,
    group: usize,
    block: usize,
    /// What is left over of its value, groups and blocks predicted.
    pub(super) left: f64,
    /// What its group's mean counts for it (1), k/n.
    weight: f64,
    /// What is left over of it, beside the others of its group, if there were no treatments (1).
    in_group: f64,
    /// What its block counts for (1), Σ k; endless where blocks are not taken out.
    of_block: f64,
    /// Its row of the design, blocks taken out and groups weighed: that of P₀ X.
    pub(super) design: Vec<f64>,
}

impl Row {
    /// σ² P of two rows: how much of the one's value is in what is left over of the other (1).
    pub(super) fn hat(&self, other: &Self, same: bool, phi: &Square) -> f64 {
        let blocked = if self.block == other.block {
            self.weight * other.weight / self.of_block
        } else {
            0.0
        };
        let grouped = if self.block == other.block && self.group == other.group {
            self.in_group
        } else {
            0.0
        };
        let own = if same { 1.0 } else { 0.0 };
        own + grouped - blocked - phi.between(&self.design, &other.design)
    }
}

/// All rows of a model with this ratio of variances and these coefficients of all columns, of which it
/// kept some.
pub(super) fn rows(
    records: &Records,
    kept: &[usize],
    gamma: f64,
    coefficients: &[f64],
) -> Vec<Row> {
    let left = |row: usize| records.values[row] - records.fitted(row, coefficients);
    let seen = |row: usize| -> Vec<f64> {
        let mut all = vec![0.0; records.columns];
        records.add_row(row, &mut all);
        kept.iter().map(|&at| all[at]).chain([left(row)]).collect()
    };
    let mean = |group: usize| -> Vec<f64> {
        let mut mean = vec![0.0; kept.len() + 1];
        let rows = records.groups[group].clone();
        let n = rows.len() as f64;
        for row in rows {
            for (sum, part) in mean.iter_mut().zip(seen(row)) {
                *sum += part / n;
            }
        }
        mean
    };
    let size = |group: usize| records.groups[group].len() as f64;
    let k = |group: usize| size(group) / (1.0 + gamma * size(group));
    let mut all = Vec::with_capacity(records.count());
    for (number, block) in records.blocks.iter().enumerate() {
        let whole: f64 = block.clone().map(k).sum();
        let means: Vec<Vec<f64>> = block.clone().map(mean).collect();
        let mut middle = vec![0.0; kept.len() + 1];
        if records.absorbed {
            for (group, mean) in block.clone().zip(&means) {
                for (middle, mean) in middle.iter_mut().zip(mean) {
                    *middle += k(group) / whole * mean;
                }
            }
        }
        for (group, mean) in block.clone().zip(&means) {
            let weight = k(group) / size(group);
            for row in records.groups[group].clone() {
                let mut design = seen(row);
                for ((seen, mean), middle) in design.iter_mut().zip(mean).zip(&middle) {
                    *seen += weight * (mean - middle) - mean;
                }
                all.push(Row {
                    treatment: records.treatment(row),
                    group,
                    block: number,
                    left: design.pop().unwrap_or_default(),
                    weight,
                    in_group: (weight - 1.0) / size(group),
                    of_block: if records.absorbed { whole } else { f64::INFINITY },
                    design,
                });
            }
        }
    }
    all
}
