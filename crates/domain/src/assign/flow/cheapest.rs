//! The search for a cheapest flow: shortest paths, one after the other.

use super::{Cost, Flow, Network};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// What is left of every arc, there (even) and back (odd).
struct Residual {
    /// Edges that leave each node.
    leaving: Vec<Vec<usize>>,
    to: Vec<usize>,
    room: Vec<i64>,
    cost: Vec<Cost>,
    price: Vec<Cost>,
    /// What each node still has to send; negative where it still has to get.
    excess: Vec<i64>,
}

/// A cheapest flow with the prices that prove it, or nothing if there is no flow at all.
///
/// Successive shortest paths by prices that keep every cost positive, several paths of the same
/// length at a time.
///
/// # Source
/// Edmonds & Karp 1972, *Journal of the ACM* 19, 248-264; the first prices as in Johnson 1977,
/// *Journal of the ACM* 24, 1-13; both from memory. What is found proves itself: see
/// [`super::bound`].
pub fn cheapest(network: &Network) -> Option<Flow> {
    if network.supply.iter().sum::<i64>() != 0
        || network.arcs.iter().any(|arc| arc.lower > arc.upper)
    {
        return None;
    }
    let mut left = Residual::of(network);
    left.first_prices();
    while left.excess.iter().any(|excess| *excess > 0) {
        if !left.reprice() {
            return None;
        }
        left.send();
    }
    let flows = network.arcs.iter().enumerate();
    let on = flows.map(|(a, arc)| arc.upper - left.room[2 * a]).collect();
    Some(Flow { on, price: left.price })
}

impl Residual {
    fn of(network: &Network) -> Self {
        let nodes = network.supply.len();
        let mut left = Self {
            leaving: vec![Vec::new(); nodes],
            to: Vec::new(),
            room: Vec::new(),
            cost: Vec::new(),
            price: vec![0; nodes],
            excess: network.supply.clone(),
        };
        for (a, arc) in network.arcs.iter().enumerate() {
            left.leaving[arc.from].push(2 * a);
            left.leaving[arc.to].push(2 * a + 1);
            left.to.extend([arc.to, arc.from]);
            left.room.extend([arc.upper - arc.lower, 0]);
            left.cost.extend([arc.cost, -arc.cost]);
            left.excess[arc.from] -= arc.lower;
            left.excess[arc.to] += arc.lower;
        }
        left
    }

    fn reduced(&self, from: usize, edge: usize) -> Cost {
        self.cost[edge] + self.price[from] - self.price[self.to[edge]]
    }

    /// Prices by which no edge with room is cheaper than nothing. Around a circle that costs less
    /// than nothing there are none; then what is still too cheap is filled at once.
    fn first_prices(&mut self) {
        for _ in 0..self.leaving.len() {
            let mut changed = false;
            for from in 0..self.leaving.len() {
                for at in 0..self.leaving[from].len() {
                    let edge = self.leaving[from][at];
                    if self.room[edge] > 0 && self.reduced(from, edge) < 0 {
                        self.price[self.to[edge]] = self.price[from] + self.cost[edge];
                        changed = true;
                    }
                }
            }
            if !changed {
                return;
            }
        }
        for from in 0..self.leaving.len() {
            for at in 0..self.leaving[from].len() {
                let edge = self.leaving[from][at];
                if self.room[edge] > 0 && self.reduced(from, edge) < 0 {
                    self.push(from, edge, self.room[edge]);
                }
            }
        }
    }

    fn push(&mut self, from: usize, edge: usize, much: i64) {
        self.room[edge] -= much;
        self.room[edge ^ 1] += much;
        self.excess[from] -= much;
        self.excess[self.to[edge]] += much;
    }

    /// Raises prices until the nearest node that lacks something is reached at no cost from one that
    /// has too much (Dijkstra). False if none can be reached.
    fn reprice(&mut self) -> bool {
        let mut far: Vec<Option<Cost>> = vec![None; self.leaving.len()];
        let mut done = vec![false; self.leaving.len()];
        let mut next = BinaryHeap::new();
        for (node, excess) in self.excess.iter().enumerate() {
            if *excess > 0 {
                far[node] = Some(0);
                next.push(Reverse((0, node)));
            }
        }
        let mut nearest = None;
        while let Some(Reverse((way, node))) = next.pop() {
            if done[node] {
                continue;
            }
            done[node] = true;
            if self.excess[node] < 0 {
                nearest = Some(way);
                break;
            }
            for &edge in &self.leaving[node] {
                let to = self.to[edge];
                if self.room[edge] == 0 || done[to] {
                    continue;
                }
                let longer = way + self.reduced(node, edge);
                if far[to].is_none_or(|known| longer < known) {
                    far[to] = Some(longer);
                    next.push(Reverse((longer, to)));
                }
            }
        }
        let Some(nearest) = nearest else { return false };
        for (price, far) in self.price.iter_mut().zip(&far) {
            // Farther nodes rise all alike, and so do those that cannot be reached.
            *price += far.map_or(nearest, |far| far.min(nearest));
        }
        true
    }

    /// Sends along edges that cost nothing by the prices, until no such way is left.
    fn send(&mut self) {
        let mut next = vec![0; self.leaving.len()];
        let mut on_way = vec![false; self.leaving.len()];
        for from in 0..self.leaving.len() {
            while self.excess[from] > 0 {
                let most = self.excess[from];
                if self.walk(from, most, &mut next, &mut on_way) == 0 {
                    break;
                }
            }
        }
    }

    /// Sends up to `most` from a node along one way; gives how much.
    fn walk(&mut self, node: usize, most: i64, next: &mut [usize], on_way: &mut [bool]) -> i64 {
        if self.excess[node] < 0 {
            return most.min(-self.excess[node]);
        }
        on_way[node] = true;
        while let Some(&edge) = self.leaving[node].get(next[node]) {
            let to = self.to[edge];
            if self.room[edge] > 0 && !on_way[to] && self.reduced(node, edge) == 0 {
                let sent = self.walk(to, most.min(self.room[edge]), next, on_way);
                if sent > 0 {
                    self.push(node, edge, sent);
                    on_way[node] = false;
                    return sent;
                }
            }
            next[node] += 1;
        }
        on_way[node] = false;
        0
    }
}
