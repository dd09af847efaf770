//! What a flow says about groups.

use super::Order;
use super::build::{Built, Cell, Way};
use crate::assign::case::Case;
use crate::assign::deal::deal;
use crate::assign::flow::{Cost, Network};
use crate::assign::improve::{improved, keeps};
use crate::assign::program::{Judge, Judged, Range};
use crate::assign::worth::{Part, Worth, worth};

/// How often a sharing-out of groups with different numbers of bags is mended: the first times help
/// most.
const MENDED: u32 = 40;
/// Flows for one dealing of treatments while groups are shared out.
const DEAL_STEPS: u32 = 200;

/// Reads flows as sharings-out.
pub(super) struct Sharing<'c, 'd> {
    case: &'c Case<'d>,
    order: &'c Order,
    built: &'c Built,
    any: bool,
    mended: u32,
    /// Ways of each group.
    ways: Vec<Vec<Way>>,
}

impl<'c, 'd> Sharing<'c, 'd> {
    pub(super) fn new(
        case: &'c Case<'d>,
        order: &'c Order,
        built: &'c Built,
        any: bool,
    ) -> Self {
        let mut ways = vec![Vec::new(); case.day.groups.len()];
        for way in &built.ways {
            ways[way.group].push(*way);
        }
        Self { case, order, built, any, mended: 0, ways }
    }

    /// The way that most of each group goes, and whether all of it does.
    fn main_ways(&self, on: &[i64]) -> Vec<(Way, bool)> {
        let main = |ways: &Vec<Way>| ways.iter().copied().max_by_key(|way| on[way.arc]);
        let whole = |way: Way| (way, on[way.arc] == self.built.units[way.group]);
        self.ways.iter().filter_map(main).map(whole).collect()
    }

    /// A cell in which single bags have nothing to be compared with.
    fn without_control(&self, on: &[i64]) -> Option<&Cell> {
        let flows = |arc: Option<usize>| arc.is_some_and(|arc| on[arc] > 0);
        self.built.cells.iter().find(|cell| {
            self.case.needs_control(cell.arm)
                && flows(cell.single)
                && !flows(cell.own)
                && !flows(cell.reference)
        })
    }

    /// What else there is within the ranges: how many groups work on what where groups flow, for
    /// that decides what an answer pays beyond its flow; else what each group works on.
    fn rest(&self, network: &Network, on: &[i64]) -> Vec<Vec<Range>> {
        let open = |arc: &usize| network.arcs[*arc].lower < network.arcs[*arc].upper;
        if self.built.even {
            let cells = self.built.cells.iter();
            let arcs = cells.flat_map(|cell| [cell.own, cell.single, cell.reference]).flatten();
            let arcs = arcs.filter(open);
            let Some(arc) = arcs.max_by_key(|arc| on[*arc]) else { return Vec::new() };
            let (least, most) = (network.arcs[arc].lower, network.arcs[arc].upper);
            let halves = [(least, on[arc] - 1), (on[arc] + 1, most), (on[arc], on[arc])];
            let halves = halves.into_iter().filter(|(low, high)| low <= high);
            return halves.map(|(low, high)| vec![(arc, low, high)]).collect();
        }
        let ways = self.built.ways.iter().filter(|way| on[way.arc] > 0 && open(&way.arc));
        let widest = ways.max_by_key(|way| self.built.units[way.group]);
        widest.map_or_else(Vec::new, |way| {
            let units = self.built.units[way.group];
            vec![vec![(way.arc, units, units)], vec![(way.arc, 0, 0)]]
        })
    }

    fn answer(&self, parts: Vec<Part>) -> Option<(Cost, (Vec<Part>, Worth))> {
        let mut worth = if self.any { Worth::default() } else { worth(self.case, &parts) };
        if !self.case.stocks.is_empty() {
            let dealt = deal(self.case, self.order, &parts, DEAL_STEPS)?;
            if !self.any {
                worth.missing = dealt.missing;
            }
        }
        let cost = self.built.weights.one(worth) * self.built.scale - self.built.fixed;
        Some((cost, (parts, worth)))
    }
}

fn parts(ways: &[(Way, bool)]) -> Vec<Part> {
    ways.iter().map(|(way, _)| Part { arm: way.arm, reference: way.reference }).collect()
}

impl Judge for Sharing<'_, '_> {
    type Answer = (Vec<Part>, Worth);

    fn judge(&mut self, network: &Network, on: &[i64]) -> Judged<Self::Answer> {
        let range = |arc: usize| (network.arcs[arc].lower, network.arcs[arc].upper);
        if let Some(cell) = self.without_control(on) {
            let mut children: Vec<Vec<Range>> = Vec::new();
            children.extend(cell.single.map(|arc| vec![(arc, 0, 0)]));
            for arc in [cell.own, cell.reference].into_iter().flatten() {
                children.push(vec![(arc, 1, range(arc).1)]);
            }
            return Judged::Branch(children);
        }
        let main = self.main_ways(on);
        let torn = main.iter().filter(|(_, whole)| !whole);
        let torn = torn.max_by_key(|(way, _)| self.built.units[way.group] - on[way.arc]);
        if let Some((way, _)) = torn {
            let units = self.built.units[way.group];
            return Judged::Branch(vec![vec![(way.arc, units, units)], vec![(way.arc, 0, 0)]]);
        }
        let rest = self.rest(network, on);
        match self.answer(parts(&main)) {
            Some((cost, answer)) => Judged::Stands(cost, answer, rest),
            // Materials allow no dealing for these numbers: others are tried.
            None => Judged::Branch(rest),
        }
    }

    fn mended(&mut self, _: &Network, on: &[i64]) -> Option<(Cost, Self::Answer)> {
        if self.mended >= MENDED || self.any {
            return None;
        }
        self.mended += 1;
        let better = improved(self.case, parts(&self.main_ways(on)));
        keeps(self.case, &better).then(|| self.answer(better)).flatten()
    }

    fn grain(&self) -> Cost {
        // Where bags flow, unevenness is not among the costs of the network.
        if self.built.even || self.any {
            1
        } else {
            self.built.weights.regret * self.built.scale
        }
    }
}
