//! The test by ranks that a table's design allows.

use super::Measured;
use crate::statistics::friedman::friedman;
use crate::statistics::kruskal::kruskal_wallis;
use crate::statistics::ranks::RankTest;
use std::collections::BTreeMap;

/// Kruskal–Wallis, or Friedman where there are blocks and each holds all levels alike.
pub(super) fn by_ranks(
    rows: &[Measured],
    groups: &[Vec<f64>],
    in_blocks: bool,
) -> Option<RankTest> {
    if !in_blocks {
        return kruskal_wallis(groups).ok();
    }
    let mut blocks: BTreeMap<usize, Vec<Vec<f64>>> = BTreeMap::new();
    for row in rows {
        let cells = blocks.entry(row.block).or_insert_with(|| vec![Vec::new(); groups.len()]);
        cells[row.level].push(row.value);
    }
    let blocks: Vec<Vec<Vec<f64>>> = blocks.into_values().collect();
    friedman(&blocks).ok()
}
