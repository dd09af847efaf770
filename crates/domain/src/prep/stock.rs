//! Stock solutions: how much to make of what, and when.

use super::PeriodPrep;
use super::clock::{earlier, later, minute_of_day};
use super::facts::{STOCK_AHEAD, STOCK_LIFE};
use super::item::Item;
use super::measure::{Measure, Spare, Unit};
use crate::bench::ShelfEnzyme;
use crate::plan::{Plan, Timing};
use barm_science::enzyme::products::{Measure as By, product};
use jiff::civil::Time;
use std::collections::BTreeSet;

/// One batch of a stock solution.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// Key of the enzyme product that it is made of.
    pub product: &'static str,
    /// Name of the day on which it is made and used.
    pub day: String,
    /// When to make it, local time.
    pub make_at: Time,
    /// When it is too old, local time; what is left then is thrown away.
    pub use_by: Time,
    /// Names of the periods that it serves, in order.
    pub periods: Vec<String>,
    /// Bags that get some of it.
    pub bags: u32,
    /// What those bags get (mL).
    pub used: Measure,
    /// Spare of it (mL).
    pub spare: Measure,
    /// How much to make (mL): used and spare, rounded up to a mark of the cylinder, or to what
    /// whole tablets make.
    pub makes: Measure,
    /// Powder (g) or tablets to put in; water is added up to [`Self::makes`].
    pub takes: Measure,
}

impl Stock {
    /// The solution as an item of the trays.
    pub const fn item(&self) -> Item {
        Item::Solution(self.product)
    }
}

/// Every batch, by day, product and time.
pub(super) fn stocks(plan: &Plan, periods: &[PeriodPrep], spare: Spare) -> Vec<Stock> {
    let mut stocks = Vec::new();
    for day in &plan.days {
        let mut on_day: Vec<&PeriodPrep> =
            periods.iter().filter(|period| period.day == day.name).collect();
        on_day.sort_by_key(|period| period.start);
        let mut products = BTreeSet::new();
        for period in &on_day {
            products.extend(period.sums.keys().filter_map(|item| match item {
                Item::Solution(key) => Some(*key),
                _ => None,
            }));
        }
        for key in products {
            let item = Item::Solution(key);
            let served: Vec<&PeriodPrep> = on_day
                .iter()
                .copied()
                .filter(|period| period.sums.contains_key(&item))
                .collect();
            let mut rest = served.as_slice();
            while !rest.is_empty() {
                let (batch, later) = rest.split_at(batch_length(rest, &plan.timing));
                stocks.push(stock(key, batch, spare));
                rest = later;
            }
        }
    }
    stocks
}

/// How many of the next periods one batch serves: no batch outlives [`STOCK_LIFE`], as few batches
/// as can be, and the next one is made in the longest break that allows it.
fn batch_length(periods: &[&PeriodPrep], timing: &Timing) -> usize {
    let longest = longest_batch(periods, timing);
    let mut best = (longest, f64::NEG_INFINITY);
    for cut in 1..=longest.min(periods.len() - 1) {
        if batches(&periods[cut..], timing) + 1 > batches(periods, timing) {
            continue;
        }
        let before = periods[cut - 1];
        let free =
            minute_of_day(periods[cut].start) - minute_of_day(before.start) - before.length_min;
        if free > best.1 {
            best = (cut, free);
        }
    }
    if longest == periods.len() { longest } else { best.0 }
}

/// The most of the next periods that one batch can serve, at least one.
fn longest_batch(periods: &[&PeriodPrep], timing: &Timing) -> usize {
    let Some(first) = periods.first() else { return 0 };
    let made = minute_of_day(first.start) - STOCK_AHEAD.value;
    let fresh = periods.iter().take_while(|period| {
        minute_of_day(period.start) + timing.mixing_min - made <= STOCK_LIFE.value
    });
    fresh.count().max(1)
}

/// The fewest batches that serve those periods.
fn batches(periods: &[&PeriodPrep], timing: &Timing) -> usize {
    let (mut rest, mut count) = (periods, 0);
    while !rest.is_empty() {
        rest = &rest[longest_batch(rest, timing)..];
        count += 1;
    }
    count
}

fn stock(key: &'static str, periods: &[&PeriodPrep], spare: Spare) -> Stock {
    let item = Item::Solution(key);
    let mut used = Measure::none(Unit::Milliliter);
    let mut bags = 0;
    for period in periods {
        let lines = period.trays.iter().flat_map(|tray| &tray.lines);
        for line in lines.filter(|line| line.item == item) {
            used = used.plus(line.total);
            bags += line.bags;
        }
    }
    let spare = used.spare(spare);
    let need = used.plus(spare);
    let makes = if whole_tablets(key) { need.up_to(100) } else { need.up_to_a_mark() };
    let make_at =
        periods.first().map_or(Time::MIN, |first| earlier(first.start, STOCK_AHEAD.value));
    Stock {
        product: key,
        day: periods.first().map(|first| first.day.clone()).unwrap_or_default(),
        make_at,
        use_by: later(make_at, STOCK_LIFE.value),
        periods: periods.iter().map(|period| period.period.clone()).collect(),
        bags,
        used,
        spare,
        makes,
        takes: dissolved(key, makes),
    }
}

fn whole_tablets(key: &str) -> bool {
    product(key).is_some_and(|product| product.measure == By::Tablet)
}

/// What is dissolved in that much of a stock solution: g of powder or tablets.
pub(super) fn dissolved(key: &'static str, solution: Measure) -> Measure {
    let in_100_ml = product(key)
        .map_or(0.0, |product| ShelfEnzyme { product, is_stock: true }.measures_in_100_ml());
    Measure::new(Item::Enzyme(key).unit(), solution.value() * in_100_ml / 100.0)
}
