//! What is worked out once more of a flow, by other means than those that found it.

use super::{Cost, Network};

/// Whether a flow keeps all ranges, and at every node what comes in goes out.
pub fn keeps(network: &Network, on: &[i64]) -> bool {
    if on.len() != network.arcs.len() {
        return false;
    }
    let mut left = network.supply.clone();
    for (arc, flow) in network.arcs.iter().zip(on) {
        if !(arc.lower..=arc.upper).contains(flow) {
            return false;
        }
        left[arc.from] -= flow;
        left[arc.to] += flow;
    }
    left.iter().all(|left| *left == 0)
}

/// A cost that no flow through the network can be below, whatever the prices are.
///
/// ```text
/// Σ over arcs  min over lower ≤ f ≤ upper of (cost + price(from) − price(to)) · f  −  Σ over nodes  price · supply
/// ```
///
/// This is weak duality: for any prices the right side is what the cheapest flow would cost if nodes
/// need not balance but pay their price for what they lack. At the right prices it is met.
pub fn bound(network: &Network, price: &[Cost]) -> Cost {
    let arcs = network.arcs.iter().map(|arc| {
        let reduced = arc.cost + price[arc.from] - price[arc.to];
        reduced * Cost::from(if reduced > 0 { arc.lower } else { arc.upper })
    });
    let nodes =
        network.supply.iter().zip(price).map(|(supply, price)| price * Cost::from(*supply));
    arcs.sum::<Cost>() - nodes.sum::<Cost>()
}
