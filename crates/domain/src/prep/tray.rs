//! What lies on each tray.

use super::dose::{Doses, Made};
use super::error::PrepError;
use super::item::Item;
use super::measure::{Measure, Unit};
use crate::amount::{Amount, AmountKind};
use crate::plan::{Lies, Period, Plan, PlannedBag};
use std::collections::BTreeMap;

/// A bag that lies, labeled and empty, on a tray.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayBag {
    /// Its code.
    pub code: String,
    /// Bench place within the group, from 1.
    pub place: u32,
    /// Id of its question, or [`crate::plan::CONTROLS`].
    pub question: String,
    /// Its treatment.
    pub treatment: String,
    /// Replicate number of that treatment, from 1.
    pub replicate: u32,
    /// How it lies while it works: towels and trays of warm water must be at hand.
    pub lies: Lies,
}

/// One thing that the bags of a tray get in one and the same amount.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayLine {
    /// What it is.
    pub item: Item,
    /// How much each of these bags gets, as the plan says it.
    pub each: Amount,
    /// How many bags get it.
    pub bags: u32,
    /// How much that is on the whole.
    pub total: Measure,
    /// Temperature as poured (°C), for water.
    pub celsius: Option<f64>,
}

/// What one group gets; group 0 is the teacher's bench.
#[derive(Debug, Clone, PartialEq)]
pub struct Tray {
    /// Number of the group within its period; 0 for the teacher's bench.
    pub group: u32,
    /// The group's own label, if it has one.
    pub label: Option<String>,
    /// Its bags by bench place.
    pub bags: Vec<TrayBag>,
    /// What goes into them, without spare.
    pub lines: Vec<TrayLine>,
    /// Sum of everything on the tray, item by item, without spare: bags, cards, labels, cups and
    /// spoons too.
    pub sums: BTreeMap<Item, Measure>,
}

/// Lays the trays of a period by group, the teacher's bench first; groups without bags get none.
pub(super) fn trays<'a>(
    plan: &'a Plan,
    period: &'a Period,
    doses: &Doses<'a>,
) -> Result<Vec<Tray>, PrepError> {
    let mut groups: BTreeMap<u32, Vec<&PlannedBag>> = BTreeMap::new();
    for bag in plan.bags.iter().filter(|bag| bag.period == period.name) {
        groups.entry(bag.group).or_default().push(bag);
    }
    groups
        .into_iter()
        .map(|(group, mut bags)| {
            bags.sort_by(|a, b| (a.place, &a.code).cmp(&(b.place, &b.code)));
            let setting = plan
                .group_settings
                .iter()
                .find(|setting| setting.period == period.name && setting.group == group);
            let mut tray = Tray {
                group,
                label: setting.and_then(|setting| setting.label.clone()),
                bags: Vec::with_capacity(bags.len()),
                lines: Vec::new(),
                sums: BTreeMap::new(),
            };
            let mut lines = BTreeMap::new();
            for bag in bags {
                let made = doses.of(bag, period)?;
                tray.bags.push(tray_bag(bag, made));
                tray.add(Item::Bag(made.bag.clone()), Measure::pieces(1));
                tray.add(Item::Card(made.card.clone()), Measure::pieces(1));
                tray.add(Item::Label, Measure::pieces(2));
                put_in(&mut lines, made);
            }
            tray.lines = lines.into_values().collect();
            for line in &tray.lines {
                add(&mut tray.sums, &line.item, line.total);
            }
            tray.add_cups_and_spoons();
            Ok(tray)
        })
        .collect()
}

fn tray_bag(bag: &PlannedBag, made: &Made) -> TrayBag {
    TrayBag {
        code: bag.code.clone(),
        place: bag.place,
        question: bag.question.clone(),
        treatment: bag.treatment.clone(),
        replicate: bag.replicate,
        lies: made.lies,
    }
}

/// What makes two portions the same line: thing, temperature, amount.
type LineKey = (Item, i64, Measure, String);

fn put_in(lines: &mut BTreeMap<LineKey, TrayLine>, made: &Made) {
    for dose in &made.doses {
        // Thousandths of a degree are finer than any thermometer.
        let celsius = dose.celsius.map_or(i64::MIN, |celsius| (1e3 * celsius).round() as i64);
        let key = (dose.item.clone(), celsius, dose.measure, dose.amount.written.clone());
        let line = lines.entry(key).or_insert_with(|| TrayLine {
            item: dose.item.clone(),
            each: dose.amount.clone(),
            bags: 0,
            total: Measure::none(dose.measure.unit()),
            celsius: dose.celsius,
        });
        line.bags += 1;
        line.total = line.total.plus(dose.measure);
    }
}

/// Adds to the sum of an item.
pub(super) fn add(sums: &mut BTreeMap<Item, Measure>, item: &Item, measure: Measure) {
    let sum = sums.entry(item.clone()).or_insert(Measure::none(measure.unit()));
    *sum = sum.plus(measure);
}

impl Tray {
    /// How much of an item lies on it, without spare.
    pub fn sum(&self, item: &Item) -> Measure {
        self.sums.get(item).copied().unwrap_or(Measure::none(item.unit()))
    }

    fn add(&mut self, item: Item, measure: Measure) {
        let none = Measure::none(Unit::Piece);
        let sum = self.sums.entry(item).or_insert(none);
        *sum = sum.plus(measure);
    }

    fn add_cups_and_spoons(&mut self) {
        let (mut cups, mut spoons) = (0, 0);
        let mut before: Option<&TrayLine> = None;
        let mut spooned: Option<&Item> = None;
        for line in &self.lines {
            let same = before.is_some_and(|b| {
                b.item == line.item
                    && b.celsius.map(f64::to_bits) == line.celsius.map(f64::to_bits)
            });
            cups += u32::from(!same);
            let by_spoon = line.each.kind == AmountKind::Spoon && line.item != Item::Water;
            if by_spoon && spooned != Some(&line.item) {
                spoons += 1;
                spooned = Some(&line.item);
            }
            before = Some(line);
        }
        for (item, count) in [(Item::Cup, cups), (Item::Spoon, spoons)] {
            if count > 0 {
                self.sums.insert(item, Measure::pieces(count));
            }
        }
    }
}
