//! Everything summed over the day.

use super::PeriodPrep;
use super::item::Item;
use super::measure::{Measure, Spare};
use super::stock::{Stock, dissolved};
use std::collections::BTreeMap;

/// How much of one thing is needed on the whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Total {
    /// What it is.
    pub item: Item,
    /// What lies on all trays; for an enzyme product also what is dissolved in the solution there.
    pub used: Measure,
    /// Spare of it, rounded up.
    pub spare: Measure,
    /// What rounding up to whole batches of stock solution adds; nothing for anything else.
    pub rounding: Measure,
    /// What lies on the trays of the period that has most of it, without spare: enough where
    /// cards, cups or spoons are washed or used again.
    pub most_in_a_period: Measure,
}

impl Total {
    /// All of it: used, spare and rounding.
    pub const fn need(&self) -> Measure {
        self.used.plus(self.spare).plus(self.rounding)
    }
}

/// The total of each thing in the order of the lists.
pub(super) fn totals(periods: &[PeriodPrep], stocks: &[Stock], spare: Spare) -> Vec<Total> {
    let mut totals: BTreeMap<Item, Total> = BTreeMap::new();
    for (item, measure) in periods.iter().flat_map(|period| &period.sums) {
        let total = totals.entry(item.clone()).or_insert_with(|| nothing(item.clone()));
        total.used = total.used.plus(*measure);
        total.most_in_a_period = total.most_in_a_period.max(*measure);
    }
    for total in totals.values_mut().filter(|total| !matches!(total.item, Item::Solution(_))) {
        total.spare = total.used.spare(spare);
    }
    for stock in stocks {
        let need = stock.used.plus(stock.spare);
        let item = stock.item();
        let total = totals.entry(item.clone()).or_insert_with(|| nothing(item));
        total.spare = total.spare.plus(stock.spare);
        total.rounding = total.rounding.plus(stock.makes.less(need));

        let item = Item::Enzyme(stock.product);
        let total = totals.entry(item.clone()).or_insert_with(|| nothing(item));
        let (used, need) =
            (dissolved(stock.product, stock.used), dissolved(stock.product, need));
        total.used = total.used.plus(used);
        total.spare = total.spare.plus(need.less(used));
        total.rounding = total.rounding.plus(stock.takes.less(need));
    }
    totals.into_values().collect()
}

fn nothing(item: Item) -> Total {
    let none = Measure::none(item.unit());
    Total { item, used: none, spare: none, rounding: none, most_in_a_period: none }
}
