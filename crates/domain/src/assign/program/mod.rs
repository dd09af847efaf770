//! Flows with further limits: branch and bound over cheapest flows.
//!
//! A [`Program`] is a network with rows, such as “all bags together take at most 40 g of this”. A
//! plain flow knows no rows, so its cost is a bound; where it breaks a row, the range of one arc is
//! split in two and both halves are looked at (Land & Doig 1960, *Econometrica* 28, 497-520). Every
//! bound is worked out from the prices of the flow by [`super::flow::bound`], not taken from the
//! search that found them.

mod narrow;

use super::flow::{Cost, Flow, Network, bound, cheapest};
use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// A limit on what flows through several arcs together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Arcs with what one unit of their flow counts, never below 0.
    pub terms: Vec<(usize, i64)>,
    /// Least of the sum.
    pub least: i64,
    /// Most of the sum.
    pub most: i64,
}

impl Row {
    /// What it adds up to.
    pub fn sum(&self, on: &[i64]) -> i64 {
        self.terms.iter().map(|(arc, counts)| counts * on[*arc]).sum()
    }

    /// Whether a flow keeps it.
    pub fn holds(&self, on: &[i64]) -> bool {
        (self.least..=self.most).contains(&self.sum(on))
    }
}

/// A network with rows.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Program {
    /// The network.
    pub network: Network,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// A narrower range for an arc: arc, least, most.
pub type Range = (usize, i64, i64);

/// What is to be said of a flow that keeps all rows.
pub enum Judged<A> {
    /// It stands for an answer, which costs so much: what the flow costs, or more where an answer
    /// has to pay for what the network does not know. Then one of these sets of ranges may lead to
    /// something better; if there are none, this is the only answer within the ranges.
    Stands(Cost, A, Vec<Vec<Range>>),
    /// It stands for none; one of these sets of ranges leads on, and nothing is lost with the rest.
    Branch(Vec<Vec<Range>>),
}

/// Knows what flows stand for.
pub trait Judge {
    /// An answer.
    type Answer;

    /// What a flow that keeps all rows stands for.
    fn judge(&mut self, network: &Network, on: &[i64]) -> Judged<Self::Answer>;

    /// An answer made out of any flow, where there is a way to mend it.
    fn mended(&mut self, _network: &Network, _on: &[i64]) -> Option<(Cost, Self::Answer)> {
        None
    }

    /// What is compared of costs: answers that differ in less are taken as equally good.
    fn grain(&self) -> Cost {
        1
    }
}

/// What a search found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found<A> {
    /// The best answer with its cost; none if there is none, or none was found within the steps.
    pub best: Option<(Cost, A)>,
    /// No answer costs less than this. Without an answer and with all looked at: nothing.
    pub bound: Option<Cost>,
    /// Whether everything was looked at, so that nothing better exists, or no answer at all.
    pub proven: bool,
    /// Flows that were worked out.
    pub steps: u32,
}

/// Where a search stands: ranges that were narrowed, and what comes of it at best.
struct Node {
    bound: Cost,
    depth: u32,
    ranges: Vec<Range>,
}

impl PartialEq for Node {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Node {}
impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Node {
    /// The most promising is the greatest; of equals the deepest.
    fn cmp(&self, other: &Self) -> Ordering {
        other.bound.cmp(&self.bound).then(self.depth.cmp(&other.depth))
    }
}

/// Looks for the cheapest answer, over at most so many flows.
pub fn search<J: Judge>(program: &Program, steps: u32, judge: &mut J) -> Found<J::Answer> {
    let grain = judge.grain().max(1);
    let mut search = Search { program, best: None, steps: 0, grain };
    let mut open = BinaryHeap::from([Node { bound: Cost::MIN, depth: 0, ranges: Vec::new() }]);
    while let Some(node) = open.pop() {
        if search.no_better(node.bound) {
            continue;
        }
        if search.steps >= steps {
            open.push(node);
            break;
        }
        search.look(&node, judge, &mut open);
    }
    let left = open.iter().map(|node| node.bound).filter(|bound| !search.no_better(*bound));
    let least_left = left.min();
    let best_cost = search.best.as_ref().map(|(cost, _)| *cost);
    // What was given up lies in the same grain as the best.
    let settled = best_cost.map(|cost| cost.div_euclid(grain) * grain);
    let bound = match (settled, least_left) {
        (Some(best), Some(left)) => Some(best.min(left)),
        (best, left) => best.or(left),
    };
    let proven = least_left.is_none();
    Found { best: search.best, bound, proven, steps: search.steps }
}

struct Search<'p, A> {
    program: &'p Program,
    best: Option<(Cost, A)>,
    steps: u32,
    grain: Cost,
}

impl<A> Search<'_, A> {
    fn no_better(&self, bound: Cost) -> bool {
        self.best.as_ref().is_some_and(|(best, _)| {
            bound != Cost::MIN && bound.div_euclid(self.grain) >= best.div_euclid(self.grain)
        })
    }

    fn keep(&mut self, answer: Option<(Cost, A)>) {
        let Some((cost, answer)) = answer else { return };
        if self.best.as_ref().is_none_or(|(best, _)| cost < *best) {
            self.best = Some((cost, answer));
        }
    }

    fn look<J: Judge<Answer = A>>(
        &mut self,
        node: &Node,
        judge: &mut J,
        open: &mut BinaryHeap<Node>,
    ) {
        let mut network = self.program.network.clone();
        for (arc, least, most) in &node.ranges {
            let arc = &mut network.arcs[*arc];
            arc.lower = arc.lower.max(*least);
            arc.upper = arc.upper.min(*most);
        }
        if !narrow::narrow(&mut network, &self.program.rows) {
            return;
        }
        self.steps += 1;
        let Some(Flow { on, price }) = cheapest(&network) else { return };
        let least = bound(&network, &price);
        if self.no_better(least) {
            return;
        }
        let broken = self.program.rows.iter().find(|row| !row.holds(&on));
        let children = match broken {
            Some(row) => narrow::split(&network, row, &on),
            None => match judge.judge(&network, &on) {
                Judged::Stands(cost, answer, rest) => {
                    self.keep(Some((cost, answer)));
                    let open = cost.div_euclid(self.grain) > least.div_euclid(self.grain);
                    if open { rest } else { Vec::new() }
                }
                Judged::Branch(children) => children,
            },
        };
        if !children.is_empty() {
            self.keep(judge.mended(&network, &on));
        }
        for more in children {
            let mut ranges = node.ranges.clone();
            ranges.extend(more);
            open.push(Node { bound: least, depth: node.depth + 1, ranges });
        }
    }
}
