//! A period at prices for what the day has in common.

use super::layers::{Choice, Layers, NEVER};
use crate::assign::flow::Cost;
use crate::assign::worth::Weights;

/// What every choice costs, and what the rest of the way costs at least from every state.
pub(super) struct Paid {
    pub(super) charged: Vec<Vec<Cost>>,
    pub(super) to_go: Vec<Vec<Cost>>,
}

impl Paid {
    /// What the period costs at least.
    pub(super) fn least(&self) -> Cost {
        self.to_go[0][0]
    }
}

impl Layers {
    /// What a state at the end costs.
    pub(super) fn end(&self, state: usize, weights: Weights) -> Cost {
        self.ends[state].map_or(NEVER, |(missing, uneven)| {
            weights.missing * Cost::from(missing) + Cost::from(uneven)
        })
    }

    pub(super) fn paid(&self, weights: Weights, prices: &[Cost]) -> Paid {
        let charge = |choice: &Choice| {
            let counts = choice.counts.iter().zip(prices);
            weights.regret * Cost::from(choice.regret)
                - counts.map(|(count, price)| price * Cost::from(*count)).sum::<Cost>()
        };
        let charged: Vec<Vec<Cost>> =
            self.choices.iter().map(|of| of.iter().map(charge).collect()).collect();
        let mut to_go = vec![(0..self.ends.len()).map(|end| self.end(end, weights)).collect()];
        for (g, steps) in self.steps.iter().enumerate().rev() {
            let after: &Vec<Cost> = &to_go[to_go.len() - 1];
            let mut before = vec![NEVER; self.states[g]];
            for step in steps {
                let cost = charged[g][step.choice] + after[step.to];
                if cost < before[step.from] {
                    before[step.from] = cost;
                }
            }
            to_go.push(before);
        }
        to_go.reverse();
        Paid { charged, to_go }
    }

    /// What each group chooses on a cheapest way.
    pub(super) fn cheapest(&self, paid: &Paid) -> Vec<usize> {
        let mut state = 0;
        let ways = self.steps.iter().enumerate().map(|(g, steps)| {
            let first = steps.partition_point(|step| step.from < state);
            let leaving = steps[first..].iter().take_while(|step| step.from == state);
            let cost = |step: &&super::layers::Step| {
                paid.charged[g][step.choice] + paid.to_go[g + 1][step.to]
            };
            let Some(step) = leaving.min_by_key(cost) else { return 0 };
            state = step.to;
            step.choice
        });
        ways.collect()
    }

    /// What a way counts in all that the day has in common.
    pub(super) fn counts(&self, way: &[usize], things: usize) -> Vec<u32> {
        let mut counts = vec![0; things];
        for (choices, choice) in self.choices.iter().zip(way) {
            for (sum, count) in counts.iter_mut().zip(&choices[*choice].counts) {
                *sum += count;
            }
        }
        counts
    }
}
