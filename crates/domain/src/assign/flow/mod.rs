//! Flows of least cost through a network, in whole numbers, each with a proof that none is cheaper.
//!
//! ```text
//! minimize   Σ cost(a) · f(a)
//! such that  Σ out of v − Σ into v = supply(v)      for every node v
//!            lower(a) ≤ f(a) ≤ upper(a)             for every arc a
//! ```
//!
//! With whole supplies and ranges there is a cheapest flow in whole numbers, so that who-does-what
//! questions of this form need no search at all (Ahuja, Magnanti & Orlin 1993, *Network Flows*,
//! theorem 9.10, from memory).

mod cheapest;
mod proof;

pub use cheapest::cheapest;
pub use proof::{bound, keeps};

/// A cost: wide enough that ranked aims can be put into one number without overflow.
pub type Cost = i128;

/// A way from one node to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Arc {
    /// Node from which it leads.
    pub from: usize,
    /// Node to which it leads.
    pub to: usize,
    /// Least that flows through it.
    pub lower: i64,
    /// Most that flows through it.
    pub upper: i64,
    /// What one unit costs.
    pub cost: Cost,
}

/// Nodes with what enters there (negative: leaves there), and the arcs between them.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Network {
    /// What each node brings in; all together is nothing, or no flow exists.
    pub supply: Vec<i64>,
    /// The arcs. Nodes that they name must exist.
    pub arcs: Vec<Arc>,
}

/// A flow with the prices of nodes that prove it cheapest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Flow {
    /// What flows through each arc.
    pub on: Vec<i64>,
    /// The price of each node: what a unit costs there, up to a number that all share.
    pub price: Vec<Cost>,
}

impl Network {
    /// Adds a node that brings in `supply`, and gives its number.
    pub fn node(&mut self, supply: i64) -> usize {
        self.supply.push(supply);
        self.supply.len() - 1
    }

    /// Adds an arc for 0 to `upper` units, and gives its number.
    pub fn arc(&mut self, from: usize, to: usize, upper: i64, cost: Cost) -> usize {
        self.arcs.push(Arc { from, to, lower: 0, upper, cost });
        self.arcs.len() - 1
    }

    /// Adds an arc a unit, each with its own cost. Where costs grow, the cheapest flow takes them in
    /// this order, so that together they cost what a convex function says.
    pub fn steps(&mut self, from: usize, to: usize, costs: impl IntoIterator<Item = Cost>) {
        for cost in costs {
            // Equal steps are one arc, which is found in one go.
            match self.arcs.last_mut() {
                Some(last) if (last.from, last.to, last.cost) == (from, to, cost) => {
                    last.upper += 1;
                }
                _ => {
                    self.arc(from, to, 1, cost);
                }
            }
        }
    }

    /// What a flow costs.
    pub fn cost(&self, on: &[i64]) -> Cost {
        self.arcs.iter().zip(on).map(|(arc, flow)| arc.cost * Cost::from(*flow)).sum()
    }
}
