//! The teacher's preparation: what to buy, to make, to mix and to lay out.
//!
//! Everything is worked out from the bag list: each bag is put on its tray, trays are summed to
//! periods and periods to the day, and the plan's spare is added at the end. Amounts are kept in
//! whole millionths of a gram or milliliter, so that sums have no error and do not depend on the
//! order of the bags.

mod clock;
mod dose;
mod error;
pub mod facts;
mod held;
mod item;
mod measure;
mod mix;
mod packs;
mod shopping;
mod stock;
mod total;
mod tray;
mod water;
mod worth;

pub use error::PrepError;
pub use facts::FACTS;
pub use held::LeftOut;
pub use item::Item;
pub use measure::{Measure, Spare, Unit};
pub use mix::{Mix, Sources, jug_celsius, jug_minutes};
pub use packs::{Choice, Offer, choose};
pub use shopping::{Buy, Chosen, Pack, Purchase, Shopping};
pub use stock::Stock;
pub use total::Total;
pub use tray::{Tray, TrayBag, TrayLine};
pub use water::{Hands, Jug, TopUp};
pub use worth::{Worth, worth};

use crate::amount::show::Kitchen;
use crate::bench;
use crate::plan::{Equipment, Plan};
use barm_science::setup::YeastKind;
use jiff::civil::Time;
use std::collections::BTreeMap;

/// Everything that is prepared for a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Prep {
    /// Spare as a share of what the trays hold (1).
    pub spare: f64,
    /// How much of each thing, over all days.
    pub totals: Vec<Total>,
    /// What to buy.
    pub shopping: Shopping,
    /// Stock solutions, batch by batch.
    pub stocks: Vec<Stock>,
    /// Trays and water, period by period, in the order of the plan.
    pub periods: Vec<PeriodPrep>,
    /// The hot and cold water that the mixing counts on.
    pub sources: Sources,
    /// How many of each tool the plan counts.
    pub equipment: Equipment,
    /// Mass of a level customary teaspoon of each thing that has one (g).
    pub grams_per_tsp: BTreeMap<Item, f64>,
}

/// What is prepared for one period.
#[derive(Debug, Clone, PartialEq)]
pub struct PeriodPrep {
    /// Name of the period.
    pub period: String,
    /// Name of its day.
    pub day: String,
    /// Its start, local time.
    pub start: Time,
    /// Its length (min).
    pub length_min: f64,
    /// Its trays by group, the teacher's bench (0) first; groups without bags have none.
    pub trays: Vec<Tray>,
    /// Its water, the coolest first.
    pub jugs: Vec<Jug>,
    /// Sum over its trays, item by item, without spare.
    pub sums: BTreeMap<Item, Measure>,
}

/// Prepares a plan with water from the usual taps (60 °C and 15 °C).
///
/// A plan without bags gives an empty preparation.
///
/// # Errors
/// [`PrepError`] if the bag list names what the plan does not have, or a recipe cannot be measured
/// out.
pub fn prep(plan: &Plan) -> Result<Prep, PrepError> {
    prep_with(plan, &Sources::default())
}

/// Prepares a plan with the hot and cold water that the teacher has.
///
/// # Errors
/// As [`prep`], and [`PrepError::Water`] for waters that cannot be mixed.
pub fn prep_with(plan: &Plan, sources: &Sources) -> Result<Prep, PrepError> {
    let spare = Spare::of(plan.spare).ok_or(PrepError::Spare { share: plan.spare })?;
    if !sources.can_be_mixed() {
        let Sources { hot_celsius, cold_celsius } = *sources;
        return Err(PrepError::Water { hot_celsius, cold_celsius });
    }
    let doses = dose::Doses::new(plan)?;
    let mut periods = Vec::new();
    for period in &plan.periods {
        let trays = tray::trays(plan, period, &doses)?;
        if trays.is_empty() {
            continue;
        }
        let mut sums = BTreeMap::new();
        for (item, measure) in trays.iter().flat_map(|tray| &tray.sums) {
            tray::add(&mut sums, item, *measure);
        }
        let mut ready = PeriodPrep {
            period: period.name.clone(),
            day: period.day.clone(),
            start: period.start,
            length_min: period.length_min,
            trays,
            jugs: Vec::new(),
            sums,
        };
        let on = (period, dose::day(plan, period)?);
        ready.jugs = water::jugs(plan, &ready, on, &doses, spare, sources)?;
        periods.push(ready);
    }
    let stocks = stock::stocks(plan, &periods, spare);
    let totals = total::totals(&periods, &stocks, spare);
    Ok(Prep {
        spare: plan.spare,
        shopping: shopping::shopping(plan, &totals),
        grams_per_tsp: grams_per_tsp(plan, &totals),
        totals,
        stocks,
        periods,
        sources: *sources,
        equipment: plan.equipment,
    })
}

impl Prep {
    /// The total of one thing; nothing if the plan does not use it.
    pub fn total(&self, item: &Item) -> Option<&Total> {
        self.totals.iter().find(|total| total.item == *item)
    }

    /// Bags on the whole, of all kinds, with spare.
    pub fn bags(&self) -> Measure {
        self.all(|item| matches!(item, Item::Bag(_)))
    }

    /// Cards on the whole, of all kinds, with spare.
    pub fn cards(&self) -> Measure {
        self.all(|item| matches!(item, Item::Card(_)))
    }

    /// Labels on the whole, with spare.
    pub fn labels(&self) -> Measure {
        self.all(|item| *item == Item::Label)
    }

    /// An amount of a thing in cups and spoons; nothing for what is counted, what is too little
    /// for a spoon, and what nobody has weighed by the spoon.
    pub fn kitchen(&self, item: &Item, measure: Measure) -> Option<Kitchen> {
        match measure.unit() {
            Unit::Gram => {
                Kitchen::of_teaspoons(measure.value() / self.grams_per_tsp.get(item).copied()?)
            }
            Unit::Milliliter => Kitchen::of_milliliters(measure.value()),
            Unit::Piece => None,
        }
    }

    fn all(&self, wanted: impl Fn(&Item) -> bool) -> Measure {
        let found = self.totals.iter().filter(|total| wanted(&total.item));
        found.fold(Measure::none(Unit::Piece), |sum, total| sum.plus(total.need()))
    }
}

fn grams_per_tsp(plan: &Plan, totals: &[Total]) -> BTreeMap<Item, f64> {
    totals
        .iter()
        .filter_map(|total| {
            let grams = match &total.item {
                Item::Yeast(YeastKind::ActiveDry | YeastKind::Instant) => {
                    Some(bench::tools::YEAST_SPOON.value)
                }
                Item::Food(id) => bench::ingredient(plan, id, "food").ok()?.grams_per_tsp,
                _ => None,
            };
            Some((total.item.clone(), grams?))
        })
        .collect()
}
