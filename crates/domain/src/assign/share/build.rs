//! The network of a sharing-out.

use super::Order;
use crate::assign::case::{Case, Count};
use crate::assign::flow::{Cost, Network};
use crate::assign::program::{Program, Row};
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
    /// The arc that counts an arm over the day, arm by arm.
    pub(super) totals: Vec<Option<usize>>,
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
        let even = case.is_even();
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
            totals: vec![None; case.day.arms.len()],
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
        let groups: Vec<usize> = (0..day.groups.len()).map(|g| self.net().node(units[g])).collect();
        let all: i64 = units.iter().sum();
        let end = self.net().node(-all);
        // Arcs are laid from the groups on, so that prices are found in one go.
        for &a in &order.arms {
            let total = self.net().node(0);
            for period in 0..day.periods.len() {
                self.cell(case, order, &groups, (period, a), (total, end), any);
            }
            let counted = self.net().node(0);
            self.totals[a] = Some(self.net().arc(total, counted, all, 0));
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

    /// What each further unit of an arm in a period costs: less is missing, more is uneven.
    fn period_steps(
        &mut self,
        case: &Case<'_>,
        (period, arm): (usize, usize),
        most: i64,
        any: bool,
    ) -> Vec<Cost> {
        if any {
            return vec![0; usize::try_from(most).unwrap_or(0)];
        }
        let kinds = case.arm(arm).treatments.len() as Cost;
        let weights = self.weights;
        let missing = move |bags: Cost| weights.missing * (kinds - bags).max(0);
        if self.even {
            let each = case.bags.first().map_or(1, |_| Cost::from(case.slots(0, arm)));
            self.fixed += missing(0);
            return steps(most, |groups| {
                missing(groups * each) + (groups * each) * (groups * each)
            });
        }
        // Where a period's groups all make the same number, what lies between is on a straight line.
        let own = case.day.groups.iter().zip(&self.units).filter(|(g, _)| g.period == period);
        let mut own = own.map(|(_, units)| *units);
        let first = own.next().unwrap_or(1);
        let step = if own.all(|units| units == first) { first } else { 1 };
        let (step, scale) = (Cost::from(step), self.scale);
        let per = self.bags_per_unit(case, arm);
        let at = |units: Cost| {
            let (low, beyond) = (units / step * step, units % step);
            let (low_cost, high_cost) = (missing(low * per), missing((low + step) * per));
            scale * low_cost + (high_cost - low_cost) * beyond * (scale / step)
        };
        self.fixed += at(0);
        steps(most, at)
    }

    /// What each further unit of an arm on the whole day costs: fewer bags are lacking.
    fn day_steps(&mut self, case: &Case<'_>, arm: usize, any: bool) -> Vec<Cost> {
        let most: i64 = self.units.iter().sum();
        if any {
            return vec![0; usize::try_from(most).unwrap_or(0)];
        }
        let asked = Cost::from(case.arm(arm).asked_in_all());
        let per = if self.even {
            case.bags.first().map_or(1, |_| Cost::from(case.slots(0, arm)))
        } else {
            self.bags_per_unit(case, arm)
        };
        let weight = self.weights.short * self.scale;
        self.fixed += weight * asked;
        steps(most, |units| weight * (asked - units * per).max(0))
    }

    /// Most bags of an arm that stand behind one unit where bags flow: without a reference a group
    /// makes one bag more than flows for it, which is at most twice as many.
    fn bags_per_unit(&self, case: &Case<'_>, arm: usize) -> Cost {
        if case.arm(arm).reference.is_some() { 1 } else { 2 }
    }

    /// Rows for how many groups may work on a question.
    fn count(&mut self, case: &Case<'_>) {
        for Count { period, question, least, most } in &case.counts {
            let of = |arm: usize, at: usize| {
                case.arm(arm).question == *question && period.is_none_or(|period| period == at)
            };
            let scale = if self.even { 1 } else { i64::try_from(self.scale).unwrap_or(1) };
            let terms = if self.even {
                let own = self.cells.iter().filter(|cell| of(cell.arm, cell.period));
                own.flat_map(|cell| [cell.own, cell.single, cell.reference])
                    .flatten()
                    .map(|arc| (arc, 1))
                    .collect()
            } else {
                let groups = &case.day.groups;
                let own = self.ways.iter().filter(|way| of(way.arm, groups[way.group].period));
                own.map(|way| (way.arc, scale / self.units[way.group])).collect()
            };
            let most = if *most == u32::MAX { i64::MAX } else { i64::from(*most) * scale };
            let least = i64::from(*least) * scale;
            self.program.rows.push(Row { terms, least, most });
        }
    }

    /// Rows for materials, as if every bag of an arm were of the treatment that takes least.
    fn stock(&mut self, case: &Case<'_>) {
        for stock in &case.stocks {
            let scale = if self.even { 1 } else { i64::try_from(self.scale).unwrap_or(1) };
            let takes = |way: &Way| {
                let arm = case.arm(way.arm);
                let reference = arm.reference.map_or(0, |t| stock.takes[t]);
                let least = arm.treatments.iter().map(|t| stock.takes[*t]).min().unwrap_or(0);
                let bags = case.bags[way.group];
                if way.reference {
                    reference
                } else {
                    let slots = i64::from(arm.slots(bags));
                    slots * least + (i64::from(bags) - slots) * reference
                }
            };
            let mut terms = Vec::new();
            if self.even {
                for cell in &self.cells {
                    let kinds = [(cell.own, false), (cell.single, false), (cell.reference, true)];
                    for (arc, reference) in kinds {
                        let Some(arc) = arc else { continue };
                        let way = Way { group: 0, arm: cell.arm, reference, arc };
                        terms.push((arc, takes(&way)));
                    }
                }
            } else {
                let each = |way: &Way| (way.arc, takes(way) * (scale / self.units[way.group]));
                terms.extend(self.ways.iter().map(each));
            }
            let bench: i64 =
                case.day.bench.iter().map(|(t, bags)| stock.takes[*t] * i64::from(*bags)).sum();
            let periods = case.day.periods.len() as i64;
            let most = (stock.most - bench * periods).saturating_mul(scale);
            self.program.rows.push(Row { terms, least: 0, most });
        }
    }
}

/// How a convex function grows step by step, from 0 to `most`; what it begins with is left out.
fn steps(most: i64, of: impl Fn(Cost) -> Cost) -> Vec<Cost> {
    (0..Cost::from(most)).map(|at| of(at + 1) - of(at)).collect()
}

fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}
