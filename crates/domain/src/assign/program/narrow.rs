//! Ranges that follow from rows, and ranges to go on with.

use super::{Range, Row};
use crate::assign::flow::Network;

/// Narrows ranges by what rows leave; false if a row cannot be kept any more.
pub(super) fn narrow(network: &mut Network, rows: &[Row]) -> bool {
    loop {
        let mut changed = false;
        for row in rows {
            let low: i64 = row.terms.iter().map(|(a, by)| by * network.arcs[*a].lower).sum();
            let high: i64 = row.terms.iter().map(|(a, by)| by * network.arcs[*a].upper).sum();
            if low > row.most || high < row.least {
                return false;
            }
            for (a, by) in row.terms.iter().filter(|(_, by)| *by > 0) {
                let arc = &mut network.arcs[*a];
                // What is left for this arc if all others take their least, or their most.
                let most = (row.most - (low - by * arc.lower)).div_euclid(*by);
                let need = row.least - (high - by * arc.upper);
                let least = need.div_euclid(*by) + i64::from(need.rem_euclid(*by) > 0);
                if most < arc.upper {
                    arc.upper = most;
                    changed = true;
                }
                if least > arc.lower {
                    arc.lower = least;
                    changed = true;
                }
                if arc.lower > arc.upper {
                    return false;
                }
                if changed {
                    break;
                }
            }
        }
        if !changed {
            return network.arcs.iter().all(|arc| arc.lower <= arc.upper);
        }
    }
}

/// Two halves of the range of the arc that has most to do with a broken row.
pub(super) fn split(network: &Network, row: &Row, on: &[i64]) -> Vec<Vec<Range>> {
    let too_much = row.sum(on) > row.most;
    let room = |(arc, by): &(usize, i64)| {
        let range = &network.arcs[*arc];
        by * if too_much { on[*arc] - range.lower } else { range.upper - on[*arc] }
    };
    let Some(&(arc, _)) = row.terms.iter().max_by_key(|term| room(term)) else {
        return Vec::new();
    };
    let range = &network.arcs[arc];
    let cut = if too_much { on[arc] } else { on[arc] + 1 };
    // Nothing to split: all arcs are where the row cannot be kept.
    if cut <= range.lower || cut > range.upper {
        return Vec::new();
    }
    vec![vec![(arc, range.lower, cut - 1)], vec![(arc, cut, range.upper)]]
}
