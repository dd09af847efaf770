//! The network of a sharing-out.

use super::Order;
use crate::assign::case::Case;
use crate::assign::flow::{Cost, Network};
use crate::assign::program::Program;
use crate::assign::worth::Weights;

/// A group's way to an arm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Way {
    pub(super) group: usize,
    pub(super) arm: usize,
    pub(super) reference: bool,
    pub(super) arc: usize,
}

/// One arm in one period: arcs over which all its groups of a kind flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Cell {
    pub(super) period: usize,
    pub(super) arm: usize,
    /// Groups that make a reference of their own, or need none.
    pub(super) own: Option<usize>,
    /// Groups with a single bag of a treatment.
    pub(super) single: Option<usize>,
    /// Groups whose single bag is the reference.
    pub(super) reference: Option<usize>,
}

/// A network that stands for all sharings-out.
pub(super) struct Built {
    pub(super) program: Program,
    pub(super) ways: Vec<Way>,
    pub(super) cells: Vec<Cell>,
    /// What flows for each group.
    pub(super) units: Vec<i64>,
    /// The arc that counts an arm's units over the day, arm by arm.
    pub(super) totals: Vec<usize>,
    /// By how much costs are multiplied to stay whole.
    pub(super) scale: Cost,
    /// What it costs if nothing flows, scaled: what arcs cost comes on top.
    pub(super) fixed: Cost,
    /// Whether groups flow, and not bags.
    pub(super) even: bool,
    pub(super) weights: Weights,
}

impl Built {
    pub(super) fn of(case: &Case<'_>, order: &Order, weights: Weights, any: bool) -> Self {
        // Whether rules can be kept does not hang on bags unless materials do: then groups flow too.
        let even = case.is_even() || any && case.stocks.is_empty();
        let unit = |bags: u32| if even { 1 } else { i64::from(bags.max(2)) - 1 };
        let units: Vec<i64> = case.bags.iter().map(|bags| unit(*bags)).collect();
        let most = units.iter().copied().max().unwrap_or(1);
        // Divisible by whatever flows for any one group.
        let scale = (1..=most).fold(1, |all, next| all / gcd(all, next) * next);
        let mut built = Self {
            program: Program::default(),
            ways: Vec::new(),
            cells: Vec::new(),
            units,
            totals: vec![0; case.day.arms.len()],
            scale: Cost::from(scale),
            fixed: 0,
            even,
            weights,
        };
        built.lay(case, order, any);
        built.count(case);
        built.stock(case);
        built
    }

    fn net(&mut self) -> &mut Network {
        &mut self.program.network
    }

    fn lay(&mut self, case: &Case<'_>, order: &Order, any: bool) {
        let day = case.day;
        let units = self.units.clone();
        let groups: Vec<usize> =
            (0..day.groups.len()).map(|g| self.net().node(units[g])).collect();
        let all: i64 = units.iter().sum();
        let end = self.net().node(-all);
        // Arcs are laid from the groups on, so that prices are found in one go.
        for &a in &order.arms {
            let total = self.net().node(0);
            for period in 0..day.periods.len() {
                self.cell(case, order, &groups, (period, a), (total, end), any);
            }
            let counted = self.net().node(0);
            self.totals[a] = self.net().arc(total, counted, all, 0);
            let steps = self.day_steps(case, a, any);
            self.net().steps(counted, end, steps);
        }
    }

    /// The groups of one period that may work on an arm, as far as the arm's node of the day.
    fn cell(
        &mut self,
        case: &Case<'_>,
        order: &Order,
        groups: &[usize],
        (period, arm): (usize, usize),
        (total, end): (usize, usize),
        any: bool,
    ) {
        let may = |g: &&usize| case.day.groups[**g].period == period && case.allowed[**g][arm];
        let able: Vec<usize> = order.groups.iter().filter(may).copied().collect();
        let (single, own): (Vec<usize>, Vec<usize>) =
            able.into_iter().partition(|g| case.bags[*g] == 1);
        let mut cell = Cell { period, arm, own: None, single: None, reference: None };
        let together = self.net().node(0);
        for (of, kind) in [(&own, &mut cell.own), (&single, &mut cell.single)] {
            if !of.is_empty() {
                *kind = Some(self.join(case, groups, of, arm, together, false));
            }
        }
        if case.needs_control(arm) && !single.is_empty() {
            cell.reference = Some(self.join(case, groups, &single, arm, end, true));
        }
        let most = own.iter().chain(&single).map(|g| self.units[*g]).sum();
        let steps = self.period_steps(case, (period, arm), most, any);
        self.net().steps(together, total, steps);
        self.cells.push(cell);
    }

    /// Groups joined at a node, and from there over one arc; gives the arc.
    fn join(
        &mut self,
        case: &Case<'_>,
        groups: &[usize],
        of: &[usize],
        arm: usize,
        to: usize,
        reference: bool,
    ) -> usize {
        let node = self.net().node(0);
        for &group in of {
            let units = self.units[group];
            let regret = Cost::from(case.day.groups[group].regret(case.arm(arm).question));
            let cost = regret * self.weights.regret * self.scale / Cost::from(units);
            let arc = self.net().arc(groups[group], node, units, cost);
            self.ways.push(Way { group, arm, reference, arc });
        }
        let all = of.iter().map(|g| self.units[*g]).sum();
        self.net().arc(node, to, all, 0)
    }
}

fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}
