//! What is expected of a bag by all others of its period.

use super::Followed;
use super::level::Level;
use super::nodes::nodes;
use super::pooled::{Pooled, weight};
use super::sound::{Expectation, Sound};
use std::collections::BTreeMap;

/// What is expected of each bag: first on the grid, then by what the others did.
pub(super) struct Beside<'a> {
    level: &'a Level,
    /// Of each bag, what the ruler leaves open of a height (variance, mm²).
    pub(super) rulers: &'a [f64],
    nodes: Vec<f64>,
    /// By treatment: probabilities on the grid by all bags, and the rise at the nodes.
    treatments: BTreeMap<usize, (Vec<f64>, Vec<f64>)>,
    pooled: Option<Pooled>,
}

/// How often it is asked anew which bags to listen to.
const ROUNDS: usize = 2;

impl<'a> Beside<'a> {
    pub(super) fn of(bags: &[Followed], rulers: &'a [f64], level: &'a Level) -> Self {
        let mut beside = Self {
            level,
            rulers,
            nodes: nodes(bags),
            treatments: BTreeMap::new(),
            pooled: None,
        };
        for bag in bags {
            let of = |probabilities: Vec<f64>| {
                let expected = Expectation::on_grid(&bag.course, &beside.nodes, &probabilities);
                (probabilities, expected.rise)
            };
            beside
                .treatments
                .entry(bag.treatment)
                .or_insert_with(|| of(level.of_all(bag.treatment)));
        }
        let bases: Vec<Vec<f64>> = bags.iter().map(|bag| beside.base(bag)).collect();
        let at_nodes: BTreeMap<usize, Vec<f64>> =
            beside.treatments.iter().map(|(name, (_, rise))| (*name, rise.clone())).collect();
        for _ in 0..ROUNDS {
            let weights: Vec<f64> = bags
                .iter()
                .enumerate()
                .map(|(at, bag)| {
                    Sound::of(bag, beside.of_bag(at, bag), rulers[at])
                        .map_or(0.0, |sound| weight(&sound))
                })
                .collect();
            beside.pooled =
                Pooled::of(bags, beside.nodes.clone(), &at_nodes, &bases, (rulers, &weights));
        }
        beside
    }

    /// What is expected of a bag by all but the one at a place.
    pub(super) fn of_bag(&self, but: usize, bag: &Followed) -> Expectation {
        let minutes = bag.minutes();
        let probabilities = self.level.of_bag(but, bag.treatment);
        let pooled = self.pooled.as_ref().zip(self.treatments.get(&bag.treatment));
        pooled
            .and_then(|(pooled, (_, base_at_nodes))| {
                let grid = Expectation::on_grid(&bag.course, &self.nodes, &probabilities);
                let base = self.base(bag);
                pooled.expected(but, bag.treatment, &minutes, &grid, (&base, base_at_nodes))
            })
            .unwrap_or_else(|| Expectation::on_grid(&bag.course, &minutes, &probabilities))
    }

    /// The rise of a bag's treatment by all bags on the grid, at its minutes (mm).
    fn base(&self, bag: &Followed) -> Vec<f64> {
        self.treatments.get(&bag.treatment).map_or_else(Vec::new, |(probabilities, _)| {
            Expectation::on_grid(&bag.course, &bag.minutes(), probabilities).rise
        })
    }
}
