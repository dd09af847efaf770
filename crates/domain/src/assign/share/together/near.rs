//! All ways that come near enough to a bound to be part of a best answer.
//!
//! Whatever an answer costs beyond the bound, no period of it can be farther from its own least than
//! that; so ways within that much are all there is to look at (as columns within the gap are in
//! Baldacci, Christofides & Mingozzi 2008, *Mathematical Programming* 115, 351-385, from memory).

use super::joint::Joint;
use super::layers::Layers;
use super::paid::Paid;
use crate::assign::flow::Cost;
use crate::assign::worth::Weights;
use std::collections::HashMap;
use std::hash::Hash;

/// What groups of one period, or of several, do together.
#[derive(Debug, Clone)]
pub(super) struct Near {
    pub(super) counts: Vec<u32>,
    /// Its cost without prices.
    pub(super) cost: Cost,
    /// How far beyond the least it is at the prices.
    pub(super) beyond: Cost,
    /// What each group chooses.
    pub(super) way: Vec<usize>,
}

/// A beginning of ways, with where it comes from.
struct Begun {
    state: usize,
    counts: Vec<u32>,
    cost: Cost,
    charged: Cost,
    before: usize,
    choice: usize,
}

/// Keeps the cheapest of those that are alike.
struct Kept<K, V> {
    all: Vec<V>,
    places: HashMap<K, usize>,
}

impl<K: Hash + Eq, V> Kept<K, V> {
    fn new() -> Self {
        Self { all: Vec::new(), places: HashMap::new() }
    }

    fn add(&mut self, key: K, value: V, cost: impl Fn(&V) -> Cost) {
        let place = *self.places.entry(key).or_insert(self.all.len());
        match self.all.get_mut(place) {
            None => self.all.push(value),
            Some(known) if cost(&value) < cost(known) => *known = value,
            Some(_) => {}
        }
    }
}

/// All ways of a period that are at most so far beyond its least, of those that count alike only the
/// cheapest. Nothing if there is no room for so many.
pub(super) fn of_period(
    layers: &Layers,
    (joint, weights): (&Joint, Weights),
    paid: &Paid,
    far: Cost,
    room: &mut usize,
) -> Option<Vec<Near>> {
    let least = paid.least();
    let none = vec![0; joint.len()];
    let first = Begun { state: 0, counts: none, cost: 0, charged: 0, before: 0, choice: 0 };
    let mut begun = vec![vec![first]];
    for (g, steps) in layers.steps.iter().enumerate() {
        let mut next: Kept<(usize, Vec<u32>), Begun> = Kept::new();
        for (before, from) in begun[g].iter().enumerate() {
            let at = steps.partition_point(|step| step.from < from.state);
            for step in steps[at..].iter().take_while(|step| step.from == from.state) {
                let charged = from.charged + paid.charged[g][step.choice];
                if charged + paid.to_go[g + 1][step.to] > least + far {
                    continue;
                }
                let choice = &layers.choices[g][step.choice];
                let Some(counts) = joint.add(&from.counts, &choice.counts) else { continue };
                let cost = from.cost + weights.regret * Cost::from(choice.regret);
                let (state, choice) = (step.to, step.choice);
                let key = (state, counts.clone());
                let value = Begun { state, counts, cost, charged, before, choice };
                next.add(key, value, |begun| begun.cost);
            }
        }
        *room = room.checked_sub(next.all.len())?;
        begun.push(next.all);
    }
    let mut ends: Kept<Vec<u32>, (usize, Cost)> = Kept::new();
    let last = begun.len() - 1;
    for (at, end) in begun[last].iter().enumerate() {
        let cost = end.cost + layers.end(end.state, weights);
        ends.add(end.counts.clone(), (at, cost), |end| end.1);
    }
    let near = ends.all.iter().map(|(at, cost)| {
        let end = &begun[last][*at];
        let beyond = end.charged + layers.end(end.state, weights) - least;
        let mut way = Vec::new();
        let mut at = *at;
        for layer in begun[1..].iter().rev() {
            way.push(layer[at].choice);
            at = layer[at].before;
        }
        way.reverse();
        Near { counts: end.counts.clone(), cost: *cost, beyond, way }
    });
    Some(near.collect())
}

/// The cheapest day of which every period is one of these, and all together are at most so far beyond:
/// its cost, and for each period which one it is. Nothing if there is no room to look.
pub(super) fn day(
    periods: &[Vec<Near>],
    joint: &Joint,
    far: Cost,
    room: &mut usize,
) -> Option<Option<(Cost, Vec<usize>)>> {
    let none = vec![0; joint.len()];
    let mut now = vec![Near { counts: none, cost: 0, beyond: 0, way: Vec::new() }];
    for of in periods {
        let mut order: Vec<usize> = (0..of.len()).collect();
        order.sort_by_key(|at| of[*at].beyond);
        let mut next: Kept<Vec<u32>, Near> = Kept::new();
        for from in &now {
            for &at in &order {
                let beyond = from.beyond + of[at].beyond;
                if beyond > far {
                    break;
                }
                *room = room.checked_sub(1)?;
                let Some(counts) = joint.add(&from.counts, &of[at].counts) else { continue };
                let cost = from.cost + of[at].cost;
                let way = from.way.iter().copied().chain([at]).collect();
                next.add(counts.clone(), Near { counts, cost, beyond, way }, |near| near.cost);
            }
        }
        now = next.all;
    }
    let whole = now.iter().filter_map(|day| Some((joint.cost(&day.counts)? + day.cost, day)));
    let best = whole.min_by_key(|(cost, _)| *cost);
    Some(best.map(|(cost, day)| (cost, day.way.clone())))
}
