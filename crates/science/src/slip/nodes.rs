//! Minutes at which a day is compared with what is expected of it.

use super::Followed;

/// Minutes at which the shares are worked out at most: with more, those left out lie between two.
const NODES: usize = 12;

/// Minutes of the nodes: those that were planned, or read where none was.
pub(super) fn nodes(bags: &[Followed]) -> Vec<f64> {
    let mut minutes: Vec<f64> = bags
        .iter()
        .flat_map(|bag| bag.heights.iter().skip(1))
        .map(|height| height.planned.map_or(height.minute, f64::from))
        .filter(|minute| *minute > 0.0)
        .collect();
    minutes.sort_by(f64::total_cmp);
    minutes.dedup_by(|a, b| *a - *b < 1.0);
    let each = minutes.len().div_ceil(NODES).max(1);
    let last = minutes.last().copied();
    let mut nodes: Vec<f64> = minutes.iter().copied().step_by(each).collect();
    if let Some(last) = last.filter(|last| nodes.last() != Some(last)) {
        nodes.push(last);
    }
    nodes
}

/// The nodes before and after a minute, and how far it lies on the way.
pub(super) fn between(nodes: &[f64], minute: f64) -> (usize, usize, f64) {
    let after = nodes.partition_point(|node| *node < minute);
    if after == 0 {
        return (0, 0, 0.0);
    }
    if after == nodes.len() {
        return (after - 1, after - 1, 0.0);
    }
    let (from, to) = (nodes[after - 1], nodes[after]);
    (after - 1, after, (minute - from) / (to - from))
}
