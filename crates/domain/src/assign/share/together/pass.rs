//! One search through days whose periods are laid out: prices first, then all that is near.

use super::joint::Joint;
use super::layers::{Layers, NEVER};
use super::paid::Paid;
use super::{Answer, near, parts};
use crate::assign::answer::gap;
use crate::assign::case::Case;
use crate::assign::flow::Cost;
use crate::assign::improve::{improved, keeps};
use crate::assign::worth::{Weights, worth};

/// Beginnings of ways, and pairs of them, that are looked at in one go.
const ROOM: usize = 400_000;
/// The same where what stands may be far from the best.
const MORE_ROOM: usize = 2_000_000;
/// What may be better by no more than this is near enough (1).
const NEAR_ENOUGH: f64 = 0.01;
/// Steps through layers while prices are looked for, over all periods together.
const SCANNED: usize = 30_000_000;
/// Times that small changes are tried on what stands at some prices.
const MENDED: u32 = 12;
/// Rounds without a better bound after which prices change by less.
const PATIENCE: u32 = 5;

/// A search.
pub(super) struct Pass<'c, 'd> {
    pub(super) case: &'c Case<'d>,
    pub(super) weights: Weights,
    pub(super) joint: &'c Joint,
    pub(super) layers: &'c [Layers],
    pub(super) best: Option<(Cost, Answer)>,
    /// Rounds that are left.
    pub(super) steps: u32,
}

/// What each group of each period chooses.
type Ways = Vec<Vec<usize>>;

/// What came of some prices.
struct Round {
    prices: Vec<Cost>,
    /// No day costs less.
    bound: Cost,
    paid: Vec<Paid>,
    ways: Ways,
    /// By how much the day that stands there keeps each number or not.
    off: Vec<f64>,
}

impl Pass<'_, '_> {
    /// Searches; gives what no day within these layers costs less than.
    pub(super) fn go(&mut self) -> Cost {
        let round = self.priced();
        let least = self.whole(round.bound);
        if self.own() <= least { least } else { self.near(&round, least) }
    }

    fn own(&self) -> Cost {
        self.best.as_ref().map_or(NEVER, |(cost, _)| *cost)
    }

    /// What days cost in steps: where unevenness does not count, in whole steps of regret.
    fn grain(&self) -> Cost {
        if self.case.is_even() { 1 } else { self.weights.regret }
    }

    fn whole(&self, bound: Cost) -> Cost {
        bound.div_euclid(self.grain()) * self.grain()
            + if bound.rem_euclid(self.grain()) > 0 { self.grain() } else { 0 }
    }

    fn round(&mut self, prices: Vec<Cost>) -> Round {
        self.steps = self.steps.saturating_sub(1);
        let all = self.layers.iter();
        let paid: Vec<Paid> = all.map(|of| of.paid(self.weights, &prices)).collect();
        let least: Cost = paid.iter().map(Paid::least).sum();
        let bound = self.joint.given(&prices) + least;
        let ways: Ways =
            self.layers.iter().zip(&paid).map(|(of, paid)| of.cheapest(paid)).collect();
        let mut sums = vec![0; self.joint.len()];
        for (of, way) in self.layers.iter().zip(&ways) {
            let counts = of.counts(way, sums.len());
            sums.iter_mut().zip(counts).for_each(|(sum, count)| *sum += count);
        }
        let off = sums.iter().enumerate();
        let off =
            off.map(|(t, sum)| f64::from(self.joint.number(t)) - f64::from(*sum)).collect();
        if self.joint.cost(&sums).is_some() {
            self.keep(&ways);
        }
        Round { prices, bound, paid, ways, off }
    }

    fn keep(&mut self, ways: &[Vec<usize>]) {
        let answer = parts(self.case, self.layers, ways);
        self.take(answer);
    }

    fn take(&mut self, answer: Answer) {
        let cost = self.joint.worth(self.case, self.weights, &answer.1);
        if cost < self.own() {
            self.best = Some((cost, answer));
        }
    }

    /// Small changes to what stands at some prices.
    fn mend(&mut self, round: &Round) {
        if self.joint.any {
            return;
        }
        let (mended, _) = parts(self.case, self.layers, &round.ways);
        let mended = improved(self.case, mended);
        if keeps(self.case, &mended) {
            let worth = worth(self.case, &mended);
            self.take((mended, worth));
        }
    }

    /// Prices whose bound is high: bags asked for are first held to be worth nothing or all, then what
    /// stands too low gets dearer and what stands too high cheaper (subgradients; Polyak 1969, *USSR
    /// Computational Mathematics and Mathematical Physics* 9 (3), 14-29, from memory).
    fn priced(&mut self) -> Round {
        let things = self.joint.len();
        let all = |of: fn(Option<Cost>) -> Cost| -> Vec<Cost> {
            (0..things).map(|thing| of(self.joint.highest(thing))).collect()
        };
        let (low, high) = (all(|_| 0), all(|most| most.unwrap_or(0)));
        let (low, high) = (self.round(low), self.round(high));
        let mut best = if low.bound >= high.bound { low } else { high };
        for thing in 0..things {
            let Some(highest) = self.joint.highest(thing) else { continue };
            let mut prices = best.prices.clone();
            prices[thing] = if prices[thing] == 0 { highest } else { 0 };
            let round = self.round(prices);
            if round.bound > best.bound {
                best = round;
            }
        }
        self.mend(&best);
        let edges: usize = self.layers.iter().flat_map(|of| &of.steps).map(Vec::len).sum();
        let rounds = (SCANNED / edges.max(1)).clamp(20, 300);
        let mut at: Vec<f64> = best.prices.iter().map(|price| *price as f64).collect();
        let mut off = best.off.clone();
        let (mut share, mut since, mut mended) = (1.0, 0, 0);
        for _ in 0..rounds {
            let norm: f64 = off.iter().map(|off| off * off).sum();
            if self.steps == 0 || self.own() <= self.whole(best.bound) || norm <= 0.0 {
                break;
            }
            let far = (self.own() - best.bound).min(1 << 100) as f64;
            let near = 8.0 * self.weights.regret as f64;
            let far = if self.best.is_none() { near } else { far };
            for (thing, (at, off)) in at.iter_mut().zip(&off).enumerate() {
                *at = self.joint.price(thing, *at + share * far * off / norm);
            }
            let round = self.round(at.iter().map(|at| at.round() as Cost).collect());
            off.clone_from(&round.off);
            if round.bound > best.bound {
                best = round;
                since = 0;
                if mended < MENDED {
                    mended += 1;
                    self.mend(&best);
                }
            } else {
                since += 1;
                if since >= PATIENCE {
                    (since, share) = (0, share / 2.0);
                    at = best.prices.iter().map(|price| *price as f64).collect();
                    off.clone_from(&best.off);
                }
            }
        }
        best
    }

    /// Looks at all days that cost at most so much, and so on with more, until nothing is left or
    /// there is no room; gives what no day costs less than.
    fn near(&mut self, round: &Round, mut least: Cost) -> Cost {
        let most = self.weights.missing.saturating_mul(1 << 20);
        let mut more = (self.grain() - 1).max(self.weights.regret / 16);
        loop {
            let goal = (least + more).min(self.own() - 1);
            if goal < least {
                return least;
            }
            let far = goal - round.bound;
            let mut looked = self.within(round, far, &mut { ROOM });
            if looked.is_none() && !self.is_near_enough(least) {
                looked = self.within(round, far, &mut { MORE_ROOM });
            }
            let Some(found) = looked else { return least };
            least = goal + 1;
            if let Some((cost, ways)) = found {
                self.keep(&ways);
                if cost <= goal {
                    return cost;
                }
            } else if goal >= most {
                return NEVER;
            }
            least = self.whole(least);
            more = 2 * more + 1;
        }
    }

    /// Whether what stands, if anything does, is good enough if nothing costs less than that.
    fn is_near_enough(&self, least: Cost) -> bool {
        let near = |worth| gap(self.case.day, worth, self.weights.four(least)) <= NEAR_ENOUGH;
        self.joint.any || self.best.as_ref().is_none_or(|(_, (_, worth))| near(*worth))
    }

    /// The cheapest day within so much, if there is one; nothing if there is no room to look.
    fn within(
        &self,
        round: &Round,
        far: Cost,
        room: &mut usize,
    ) -> Option<Option<(Cost, Ways)>> {
        let mut all = Vec::new();
        for (layers, paid) in self.layers.iter().zip(&round.paid) {
            all.push(near::of_period(layers, (self.joint, self.weights), paid, far, room)?);
        }
        let found = near::day(&all, self.joint, far, room)?;
        Some(found.map(|(cost, places)| {
            let ways = all.iter().zip(places).map(|(of, place)| of[place].way.clone());
            (cost, ways.collect())
        }))
    }
}
