//! Who makes which treatment, once it is known who works on what.
//!
//! A flow of least cost as well: from every group through the treatments of its arm in its period to
//! the treatments of the day. A first bag of a treatment in a period counts most; then bags that the
//! plan asks for; then evenness, as the sum of squares over periods and over the day.

use super::case::Case;
use super::flow::{Cost, Network};
use super::program::{Judge, Judged, Program, Row, search};
use super::share::Order;
use super::worth::Part;

/// Bags of each group, and what the dealing is worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Dealt {
    /// For each group the treatments that it makes, with how many bags; its own reference is not
    /// among them.
    pub(super) made: Vec<Vec<(usize, u32)>>,
    /// Treatments that a period goes without, over all arms and periods.
    pub(super) missing: u64,
    /// Whether no other dealing of the same sharing-out is better.
    pub(super) proven: bool,
}

/// Weights of a dealing: bags asked for, and a treatment that a period has.
struct Weights {
    short: Cost,
    missing: Cost,
}

/// The best dealing, over at most so many flows; nothing if materials allow none.
pub(super) fn deal(
    case: &Case<'_>,
    order: &Order,
    parts: &[Part],
    steps: u32,
) -> Option<Dealt> {
    let table = Table::of(case, order, parts);
    let found = search(&table.program, steps, &mut Table::judge(&table));
    let (_, on) = found.best?;
    let mut made = vec![Vec::new(); parts.len()];
    for (group, treatment, arc) in &table.hands {
        if let Ok(bags @ 1..) = u32::try_from(on[*arc]) {
            made[*group].push((*treatment, bags));
        }
    }
    let missing = table.cells.iter().filter(|arcs| arcs.iter().all(|arc| on[*arc] == 0));
    Some(Dealt { made, missing: missing.count() as u64, proven: found.proven })
}

/// The network of a dealing.
struct Table {
    program: Program,
    /// Group, treatment and the arc between them.
    hands: Vec<(usize, usize, usize)>,
    /// For each treatment of each arm in each period the arcs of all groups that may make it.
    cells: Vec<Vec<usize>>,
}

/// A flow that keeps the rows is a dealing as it is.
struct Plain<'t>(&'t Network);

impl Judge for Plain<'_> {
    type Answer = Vec<i64>;

    fn judge(&mut self, _: &Network, on: &[i64]) -> Judged<Vec<i64>> {
        Judged::Stands(self.0.cost(on), on.to_vec(), Vec::new())
    }
}

impl Table {
    fn judge(table: &Self) -> Plain<'_> {
        Plain(&table.program.network)
    }

    fn of(case: &Case<'_>, order: &Order, parts: &[Part]) -> Self {
        let day = case.day;
        let mut table =
            Self { program: Program::default(), hands: Vec::new(), cells: Vec::new() };
        let net = &mut table.program.network;
        let slots = |g: usize| {
            if parts[g].reference { 0 } else { i64::from(case.slots(g, parts[g].arm)) }
        };
        let groups: Vec<usize> = (0..parts.len()).map(|g| net.node(slots(g))).collect();
        let all: i64 = (0..parts.len()).map(slots).sum();
        let end = net.node(-all);
        let bags = Cost::from(all);
        // One bag's evenness is less than one bag asked for, all of those less than one missing.
        let weights = Weights { short: 1 + 4 * bags * (bags + 1), missing: 0 };
        let weights = Weights { missing: weights.short * (1 + bags), ..weights };
        // What materials count: bags of each treatment, over all arms.
        let mut counted: Vec<Vec<usize>> = vec![Vec::new(); day.treatments.len()];
        for &a in &order.arms {
            let arm = case.arm(a);
            let kinds = arm.treatments.len();
            for (kind, &treatment) in arm.treatments.iter().enumerate() {
                let of_day = net.node(0);
                for period in 0..day.periods.len() {
                    let here = net.node(0);
                    let mut arcs = Vec::new();
                    let mut most = 0;
                    for &g in &order.groups {
                        if parts[g].arm != a || day.groups[g].period != period {
                            continue;
                        }
                        // No group makes two bags alike while there are other treatments.
                        let each = slots(g).unsigned_abs().div_ceil(kinds.max(1) as u64) as i64;
                        let arc = net.arc(groups[g], here, each, 0);
                        table.hands.push((g, treatment, arc));
                        arcs.push(arc);
                        most += each;
                    }
                    table.cells.push(arcs);
                    let first = |bag: Cost| if bag == 0 { weights.missing } else { 0 };
                    net.steps(
                        here,
                        of_day,
                        (0..Cost::from(most)).map(|b| 2 * b + 1 - first(b)),
                    );
                }
                let sum = net.node(0);
                counted[treatment].push(net.arc(of_day, sum, all, 0));
                let asked = Cost::from(arm.asked[kind]);
                let gain = |bag: Cost| if bag < asked { weights.short } else { 0 };
                net.steps(sum, end, (0..bags).map(|bag| 2 * bag + 1 - gain(bag)));
            }
        }
        table.stock(case, parts, &counted);
        table
    }

    fn stock(&mut self, case: &Case<'_>, parts: &[Part], counted: &[Vec<usize>]) {
        let day = case.day;
        for stock in &case.stocks {
            let bench = day.bench.iter().map(|(t, bags)| stock.takes[*t] * i64::from(*bags));
            let bench = bench.sum::<i64>() * day.periods.len() as i64;
            let references = parts.iter().enumerate().map(|(g, part)| {
                let own = case.bags[g] - case.slots(g, part.arm);
                let own = if part.reference { 1 } else { i64::from(own) };
                case.arm(part.arm).reference.map_or(0, |t| stock.takes[t] * own)
            });
            let most = stock.most - bench - references.sum::<i64>();
            let arcs = counted.iter().zip(&stock.takes);
            let terms =
                arcs.flat_map(|(arcs, takes)| arcs.iter().map(move |arc| (*arc, *takes)));
            self.program.rows.push(Row { terms: terms.collect(), least: 0, most });
        }
    }
}
