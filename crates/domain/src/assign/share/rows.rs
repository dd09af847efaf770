//! Rows of a sharing-out: how many groups may work on a question, and what there is of materials.

use super::build::{Built, Way};
use crate::assign::case::{Case, Count};
use crate::assign::program::Row;

impl Built {
    /// Rows for how many groups may work on a question.
    pub(super) fn count(&mut self, case: &Case<'_>) {
        for Count { period, question, least, most } in &case.counts {
            let of = |arm: usize, at: usize| {
                case.arm(arm).question == *question && period.is_none_or(|period| period == at)
            };
            let scale = self.row_scale();
            let terms: Vec<(usize, i64)> = if !self.even {
                let groups = &case.day.groups;
                let own = self.ways.iter().filter(|way| of(way.arm, groups[way.group].period));
                own.map(|way| (way.arc, scale / self.units[way.group])).collect()
            } else if period.is_some() {
                let own = self.cells.iter().filter(|cell| of(cell.arm, cell.period));
                let arcs = own.flat_map(|cell| [cell.own, cell.single, cell.reference]);
                arcs.flatten().map(|arc| (arc, 1)).collect()
            } else {
                // Of the whole day one arc counts all groups of an arm, so that nothing is branched.
                let arms = (0..self.totals.len()).filter(|arm| of(*arm, 0));
                let totals = arms.map(|arm| self.totals[arm]);
                let single = self.cells.iter().filter(|cell| of(cell.arm, cell.period));
                let single = single.filter_map(|cell| cell.reference);
                totals.chain(single).map(|arc| (arc, 1)).collect()
            };
            let most = if *most == u32::MAX { i64::MAX } else { i64::from(*most) * scale };
            let least = i64::from(*least) * scale;
            self.program.rows.push(Row { terms, least, most });
        }
    }

    /// Rows for materials, as if every bag of an arm were of the treatment that takes least.
    pub(super) fn stock(&mut self, case: &Case<'_>) {
        for stock in &case.stocks {
            let scale = self.row_scale();
            let takes = |arm: usize, bags: u32, reference: bool| {
                let arm = case.arm(arm);
                let own = arm.reference.map_or(0, |t| stock.takes[t]);
                let least = arm.treatments.iter().map(|t| stock.takes[*t]).min().unwrap_or(0);
                let slots = if reference { 0 } else { i64::from(arm.slots(bags)) };
                slots * least + (i64::from(bags) - slots) * own
            };
            let terms = if self.even {
                let bags = case.bags.first().copied().unwrap_or(1);
                let arms = self.totals.iter().enumerate();
                let arms = arms.map(|(arm, arc)| (*arc, takes(arm, bags, false)));
                let single = self.cells.iter().filter_map(|cell| {
                    cell.reference.map(|arc| (arc, takes(cell.arm, 1, true)))
                });
                arms.chain(single).collect()
            } else {
                let each = |way: &Way| {
                    let takes = takes(way.arm, case.bags[way.group], way.reference);
                    (way.arc, takes * (scale / self.units[way.group]))
                };
                self.ways.iter().map(each).collect()
            };
            let bench =
                case.day.bench.iter().map(|(t, bags)| stock.takes[*t] * i64::from(*bags));
            let bench = bench.sum::<i64>() * case.day.periods.len() as i64;
            let most = (stock.most - bench).saturating_mul(scale);
            self.program.rows.push(Row { terms, least: 0, most });
        }
    }

    /// What one group counts in a row, so that parts of it are whole too.
    fn row_scale(&self) -> i64 {
        if self.even { 1 } else { i64::try_from(self.scale).unwrap_or(1) }
    }
}
