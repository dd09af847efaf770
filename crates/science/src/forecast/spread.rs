//! The uncertain numbers of the model, draw by draw.

use super::streams::Sources;
use crate::model::Parameters;
use crate::prior::{Prior, Row};
use crate::setup::{EnzymeKind, Setup, YeastKind};

pub(super) fn scaled(log_sd: f64, deviates: Vec<f64>) -> Vec<f64> {
    deviates.into_iter().map(|z| libm::exp(log_sd * z)).collect()
}

/// Rows that matter most to a bag's gas and its card, after the lots of yeast. The first dimensions
/// are the evenest, so these get them, wherever they stand in the table.
const FIRST: [&str; 8] =
    ["wake", "heat", "release", "exponent", "capacity", "steepness", "optimum", "dead-share"];

/// Places before those of what enzymes' labels leave open.
const PLACES_FIRST: usize = 5;

/// Dimensions kept for labels, one for each kind of enzyme.
const LABELS: usize = 10;

/// Dimension of every row of a table.
fn dimensions(rows: &[Row]) -> Vec<usize> {
    let rank = |row: &Row| match FIRST.iter().position(|name| *name == row.name) {
        _ if row.kind.is_some() => 0,
        Some(place) => 1 + place,
        None => 1 + FIRST.len(),
    };
    let mut order: Vec<usize> = (0..rows.len()).collect();
    order.sort_by_key(|&row| rank(&rows[row]));
    let mut dimensions = vec![0; rows.len()];
    for (place, row) in order.into_iter().enumerate() {
        dimensions[row] = if place < PLACES_FIRST { place } else { place + LABELS };
    }
    dimensions
}

/// Dimension of what the label of one kind of enzyme leaves open.
pub(super) const fn dimension_of_label(kind: EnzymeKind) -> usize {
    PLACES_FIRST + kind as usize
}

/// Reads the table of what is not known: one set of parameters a draw.
pub(super) fn parameters(setup: &Setup, prior: &Prior, sources: &Sources) -> Vec<Parameters> {
    let kind = setup.yeast.map_or(YeastKind::Instant, |yeast| yeast.kind);
    let mut all = vec![prior.center; sources.day.draws];
    for (row, dimension) in prior.rows.iter().zip(dimensions(&prior.rows)) {
        if row.kind.is_some_and(|only| only != kind) {
            continue;
        }
        let levels = [
            (&sources.day, row.spread.day, Some(dimension)),
            (&sources.period, row.spread.period, None),
            (&sources.group, row.spread.group, None),
            (&sources.bag, row.spread.bag, None),
        ];
        for (source, sd, dimension) in levels.into_iter().filter(|(_, sd, _)| *sd > 0.0) {
            for way in 0..row.transform.deviates() {
                // A lot of yeast has the stream of its kind.
                let of = row.kind.map_or(way, |kind| kind as u64);
                let deviates = match dimension {
                    Some(dimension) if way == 0 => source.evenly(dimension, row.name, of),
                    _ => source.deviates(row.name, of),
                };
                for (one, z) in all.iter_mut().zip(deviates) {
                    let value = (row.place)(one);
                    *value = row.transform.moved(*value, sd, z);
                }
            }
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::{FIRST, LABELS, dimension_of_label, dimensions};
    use crate::forecast::sobol::DIMENSIONS;
    use crate::model::state::ENZYME_ORDER;
    use crate::prior::Prior;
    use std::collections::BTreeSet;

    #[test]
    fn everything_that_a_day_shares_has_a_dimension_of_its_own() {
        let labels = ENZYME_ORDER.into_iter().map(dimension_of_label);
        let rows = Prior::default().rows;
        assert!(FIRST.iter().all(|name| rows.iter().any(|row| row.name == *name)));
        let of_day = dimensions(&rows)
            .into_iter()
            .zip(&rows)
            .filter_map(|(dimension, row)| (row.spread.day > 0.0).then_some(dimension));
        let all: Vec<usize> = labels.chain(of_day).collect();
        assert!(ENZYME_ORDER.len() <= LABELS);
        assert_eq!(all.iter().collect::<BTreeSet<_>>().len(), all.len(), "{all:?}");
        assert!(all.iter().all(|&dimension| dimension < DIMENSIONS), "{all:?}");
    }
}
