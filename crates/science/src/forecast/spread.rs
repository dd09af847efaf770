//! The uncertain numbers of the model, draw by draw.

use super::streams::{Source, Sources};
use crate::bag::StandardBag;
use crate::model::Parameters;
use crate::prior::{ACTIVITY, Key, Of, Prior, Row, Whose};
use crate::setup::{EnzymeKind, Setup};

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

/// First dimension of every row of a table; a row takes as many as there are of its number in a day.
fn dimensions(rows: &[Row]) -> Vec<usize> {
    let rank = |row: &Row| match FIRST.iter().position(|name| *name == row.name) {
        _ if matches!(row.whose, Whose::Yeast(_)) => 0,
        Some(place) => 1 + place,
        None => 1 + FIRST.len(),
    };
    let mut order: Vec<usize> = (0..rows.len()).collect();
    order.sort_by_key(|&row| rank(&rows[row]));
    let mut dimensions = vec![0; rows.len()];
    let mut place = 0;
    for row in order {
        dimensions[row] = if place < PLACES_FIRST { place } else { place + LABELS };
        place += match rows[row].whose {
            Whose::All | Whose::Yeast(_) => 1,
            Whose::Bags => StandardBag::ALL.len(),
        };
    }
    dimensions
}

/// Dimension of what the label of one kind of enzyme leaves open.
const fn dimension_of_label(kind: EnzymeKind) -> usize {
    PLACES_FIRST + kind as usize
}

/// What the bags of a day share, draw by draw.
pub(super) struct Day<'a> {
    prior: &'a Prior,
    source: Source,
    dimensions: Vec<usize>,
    /// Deviates of what was learned, in the order of its keys.
    learned: Vec<Vec<f64>>,
}

impl<'a> Day<'a> {
    pub(super) fn new(prior: &'a Prior, source: Source) -> Self {
        let dimensions = dimensions(&prior.rows);
        let mut day = Self { prior, source, dimensions, learned: Vec::new() };
        let joint = &prior.joint;
        let own: Vec<Vec<f64>> = joint.keys.iter().map(|key| day.independent(key)).collect();
        let one = |at: usize| {
            (0..source.draws).map(|k| joint.deviate(at, |of| own[of][k])).collect::<Vec<f64>>()
        };
        day.learned = (0..joint.keys.len()).map(one).collect();
        day
    }

    /// Deviates of one number. What was learned of several together is drawn together, whichever of
    /// them a bag has: so draw `k` of all forecasts of a day is one and the same day.
    pub(super) fn deviates(&self, key: &Key) -> Vec<f64> {
        match self.prior.joint.keys.iter().position(|one| one == key) {
            Some(place) => self.learned[place].clone(),
            None => self.independent(key),
        }
    }

    fn independent(&self, key: &Key) -> Vec<f64> {
        let of = key.of.number();
        match self.dimension(key) {
            Some(dimension) => self.source.evenly(dimension, key.name, of),
            None => self.source.deviates(key.name, of),
        }
    }

    fn dimension(&self, key: &Key) -> Option<usize> {
        if let (ACTIVITY, Of::Enzyme(kind)) = (key.name, key.of) {
            return Some(dimension_of_label(kind));
        }
        let is_row = |row: &Row| row.name == key.name && row.is_of(key.of);
        let first = self.dimensions[self.prior.rows.iter().position(is_row)?];
        Some(if let Of::Bags(size) = key.of { first + size as usize } else { first })
    }
}

/// Reads the table of what is not known: one set of parameters a draw.
pub(super) fn parameters(setup: &Setup, day: &Day, sources: &Sources) -> Vec<Parameters> {
    let mut all = vec![day.prior.center; sources.day.draws];
    for (row, key) in day.prior.rows.iter().filter_map(|row| Some((row, row.key(setup)?))) {
        let mut moved = |sd: f64, deviates: Vec<f64>| {
            for (one, z) in all.iter_mut().zip(deviates) {
                let value = (row.place)(one);
                *value = row.transform.moved(*value, sd, z);
            }
        };
        if row.spread.day > 0.0 {
            moved(row.spread.day, day.deviates(&key));
        }
        for (source, sd) in [
            (&sources.period, row.spread.period),
            (&sources.group, row.spread.group),
            (&sources.bag, row.spread.bag),
        ] {
            for way in 0..row.transform.deviates() {
                if sd > 0.0 {
                    moved(sd, source.deviates(row.name, key.of.number() + way));
                }
            }
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::{Day, FIRST, LABELS, dimension_of_label, dimensions};
    use crate::bag::StandardBag;
    use crate::forecast::sobol::DIMENSIONS;
    use crate::forecast::streams::Source;
    use crate::model::state::ENZYME_ORDER;
    use crate::prior::{Key, Learned, Of, Prior, Whose};
    use crate::setup::{EnzymeKind, YeastKind};
    use std::collections::BTreeSet;

    #[test]
    fn everything_that_a_day_shares_has_a_dimension_of_its_own() {
        let labels = ENZYME_ORDER.into_iter().map(dimension_of_label);
        let rows = Prior::default().rows;
        assert!(FIRST.iter().all(|name| rows.iter().any(|row| row.name == *name)));
        let of_day = dimensions(&rows).into_iter().zip(&rows).filter_map(|(first, row)| {
            let many = if row.whose == Whose::Bags { StandardBag::ALL.len() } else { 1 };
            (row.spread.day > 0.0).then_some(first..first + many)
        });
        let all: Vec<usize> = labels.chain(of_day.flatten()).collect();
        assert!(ENZYME_ORDER.len() <= LABELS);
        assert_eq!(all.iter().collect::<BTreeSet<_>>().len(), all.len(), "{all:?}");
        assert!(all.iter().all(|&dimension| dimension < DIMENSIONS), "{all:?}");
    }

    /// Four numbers known together: three with a dimension of the net, one without.
    fn known() -> (Vec<Key>, Learned) {
        let keys = vec![
            Key::new("vigor", Of::Yeast(YeastKind::Instant)),
            Key::new("capacity", Of::Bags(StandardBag::Quart)),
            Key::new("content", Of::Food(7)),
            Key::activity(EnzymeKind::Glucoamylase),
        ];
        let learned = Learned {
            names: keys.iter().map(Key::to_string).collect(),
            means: vec![0.5, -1.0, 0.0, 2.0],
            covariance: vec![
                vec![0.25, -0.12, 0.05, -0.2],
                vec![-0.12, 0.64, 0.1, 0.3],
                vec![0.05, 0.1, 1.0, 0.0],
                vec![-0.2, 0.3, 0.0, 0.49],
            ],
        };
        (keys, learned)
    }

    #[test]
    fn draws_have_the_means_and_covariance_of_what_was_learned() {
        let (keys, learned) = known();
        let prior = Prior::default().knowing(&learned).expect("numbers that can be");
        let draws = 4096;
        let day = Day::new(&prior, Source { seed: 11, draws });
        let all: Vec<Vec<f64>> = keys.iter().map(|key| day.deviates(key)).collect();
        let mean = |values: &[f64]| values.iter().sum::<f64>() / draws as f64;
        for (i, one) in all.iter().enumerate() {
            let sd = learned.sd(i);
            let four_errors = 4.0 * sd / (draws as f64).sqrt();
            assert!((mean(one) - learned.means[i]).abs() < four_errors, "{}", keys[i]);
            for (j, other) in all.iter().enumerate() {
                let products: Vec<f64> = one
                    .iter()
                    .zip(other)
                    .map(|(a, b)| (a - learned.means[i]) * (b - learned.means[j]))
                    .collect();
                let expected = learned.covariance[i][j];
                // Variance of a product of two normal numbers: v v' + c².
                let both = sd * sd * learned.covariance[j][j] + expected * expected;
                let off = (mean(&products) - expected).abs();
                let four_errors = 4.0 * (both / draws as f64).sqrt();
                assert!(off < four_errors, "{} with {}: {off}", keys[i], keys[j]);
            }
        }
    }

    /// Whatever was learned, a day is dealt from the same points of the same net in the same order:
    /// solved for its independent deviates, it gives back those of the table.
    #[test]
    fn what_was_learned_leaves_the_net_as_it_is() {
        let (keys, learned) = known();
        let table = Prior::default();
        let prior = table.knowing(&learned).expect("numbers that can be");
        let source = Source { seed: 3, draws: 256 };
        let (plain, knowing) = (Day::new(&table, source), Day::new(&prior, source));
        let unlearned = Key::new("heat", Of::All);
        assert_eq!(plain.deviates(&unlearned), knowing.deviates(&unlearned));
        let drawn: Vec<Vec<f64>> = keys.iter().map(|key| knowing.deviates(key)).collect();
        let mut solved: Vec<Vec<f64>> = Vec::new();
        for (i, key) in keys.iter().enumerate() {
            let root = &prior.joint.root[i];
            let own: Vec<f64> = (0..source.draws)
                .map(|k| {
                    let known: f64 = (0..i).map(|j| root[j] * solved[j][k]).sum();
                    (drawn[i][k] - learned.means[i] - known) / root[i]
                })
                .collect();
            for (one, other) in own.iter().zip(plain.deviates(key)) {
                assert!((one - other).abs() < 1e-12, "{key}: {one} {other}");
            }
            solved.push(own);
        }
    }
}
