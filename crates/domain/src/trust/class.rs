//! One invented class: its bags, what its groups write, and what it is told.

use super::card::Card;
use super::cell::{Cell, Slips};
use super::lesson::Lesson;
use super::mend::{Hands, write_down};
use super::rates::Rates;
use super::said::Said;
use super::series::{Written, series};
use super::teacher::look_over;
use super::world::{
    CURVE_MIN, CURVE_SD, DEAD, HEAPED, LAST_MIN, LEVEL_MM, PERIOD_SD_MM, START_MIN, WIDE,
    ZERO_MM,
};
use crate::code::BagCode;
use crate::record::{Bag, Counted, Standing};
use crate::result::analyze;
use crate::round_two::{Handed, pool};
use barm_science::ruler;
use barm_science::statistics::chance::Chance;
use std::collections::BTreeMap;

/// What is true of the treatments of a class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Truth {
    /// All do the same.
    Same,
    /// The last rises more than all others by twice the spread of bags.
    Twice,
}

impl Truth {
    /// By how much a treatment rises more than the reference (mm).
    pub(super) fn difference_mm(self, treatment: usize, cell: &Cell) -> f64 {
        match self {
            Self::Twice if treatment + 1 == cell.treatments => cell.difference_mm(),
            Self::Same | Self::Twice => 0.0,
        }
    }
}

impl Lesson {
    /// What the class of that number is told where that is true. Equal numbers and seeds give equal
    /// classes on every machine; with a difference and without it a class has the same bags.
    pub fn class(&self, number: u64, seed: u64, truth: Truth) -> Said {
        let mut chance = Chance::from_seed(own_seed(self.cell.name, number, seed));
        let counted = self.day(truth, &mut chance);
        let Some(again) = &self.again else {
            let result = analyze(&self.plan, &[], &counted.readings, &counted.set_aside);
            return Said::of(&self.cell, &result, truth);
        };
        let second = again.day(truth, &mut chance);
        match pool(&self.handed(&counted), &again.handed(&second)) {
            Ok(pooled) => {
                let of = |result| Said::of(&self.cell, result, truth);
                of(&pooled.first).or_later(of(&pooled.both))
            }
            Err(_) => Said::default(),
        }
    }

    /// What counts of a day of this class.
    fn day(&self, truth: Truth, chance: &mut Chance) -> Counted {
        let rates = match self.cell.slips {
            Slips::None => Rates::NONE,
            Slips::Ignored | Slips::Mended => Rates::default(),
        };
        let mut cards = self.cards(&rates, truth, chance);
        self.swap(&mut cards, &rates, chance);
        let honest: Vec<Vec<Written>> =
            cards.iter().map(|card| series(card, &rates, chance)).collect();
        let written = self.copied(&honest, &rates, chance);
        let mut bags: BTreeMap<BagCode, Bag> = BTreeMap::new();
        let mends = self.cell.slips == Slips::Mended;
        for (place, (made, card)) in self.bags.iter().zip(&cards).enumerate() {
            let hands = Hands { made, place, card, mends };
            bags.insert(made.code, write_down(&hands, &written[place]));
        }
        if mends {
            look_over(self, &cards, &mut bags);
        }
        let standing = Standing { bags, ..Standing::default() };
        Counted::of(&self.known, &standing)
    }

    fn handed<'a>(&'a self, counted: &'a Counted) -> Handed<'a> {
        Handed { plan: &self.plan, readings: &counted.readings, set_aside: &counted.set_aside }
    }

    /// The bags as they truly are, each with its own curve.
    fn cards(&self, rates: &Rates, truth: Truth, chance: &mut Chance) -> Vec<Card> {
        let cell = &self.cell;
        let mut spread = |count: usize, sd: f64| -> Vec<f64> {
            (0..count).map(|_| sd * chance.normal()).collect()
        };
        let periods = spread(cell.periods, PERIOD_SD_MM);
        let groups = spread(self.groups.len(), cell.group_sd * cell.bag_sd_mm);
        let steps = self.plan.timing.interval_min;
        let made = self.bags.iter().map(|bag| {
            let wide = if cell.wide && bag.treatment % 2 == 1 { WIDE } else { 1.0 };
            let own = wide * cell.bag_sd_mm * chance.normal();
            let usual = LEVEL_MM + truth.difference_mm(bag.treatment, cell);
            let mut rise_mm = (usual + periods[bag.period] + groups[bag.group] + own).max(0.0);
            let curve_min = CURVE_MIN * libm::exp(CURVE_SD * chance.normal());
            let sealed_mm = (ZERO_MM.0 + ZERO_MM.1 * chance.normal()).max(3.0);
            let slant_mm = ruler::PARALLAX.value * (2.0 * chance.uniform() - 1.0);
            let [dead, heaped, late, how_late, leak, from] =
                std::array::from_fn(|_| chance.uniform());
            if dead < rates.dead {
                rise_mm *= DEAD;
            } else if heaped < rates.heaped {
                rise_mm *= HEAPED;
            }
            let late = late < rates.bench.wrong_start;
            let before_min = START_MIN.0 + (START_MIN.1 - START_MIN.0) * how_late;
            let leaks = leak < rates.bench.leak;
            let from = (from * f64::from(LAST_MIN) / steps).floor() * steps;
            Card {
                sealed_mm,
                rise_mm,
                curve_min,
                last_min: f64::from(LAST_MIN),
                before_min: if late { before_min } else { 0.0 },
                leaks_from: leaks.then_some(from),
                slant_mm,
            }
        });
        made.collect()
    }

    /// Takes two unlike bags of a group for one another.
    fn swap(&self, cards: &mut [Card], rates: &Rates, chance: &mut Chance) {
        for group in &self.groups {
            let happens = chance.uniform() < rates.bench.swapped;
            let Some(&first) = group.first().filter(|_| happens) else { continue };
            let unlike = |at: &&usize| self.bags[**at].treatment != self.bags[first].treatment;
            if let Some(&other) = group.iter().find(unlike) {
                cards.swap(first, other);
            }
        }
    }

    /// What stands on the sheets: own heights, or those of the bag at the same place of the next
    /// bench, wherever that has one.
    fn copied(
        &self,
        honest: &[Vec<Written>],
        rates: &Rates,
        chance: &mut Chance,
    ) -> Vec<Vec<Written>> {
        let mut all = honest.to_vec();
        for (at, group) in self.groups.iter().enumerate() {
            for (place, &bag) in group.iter().enumerate() {
                let happens = chance.uniform() < rates.bench.copied;
                let others = self.groups[at + 1..].iter().chain(&self.groups[..at]);
                let mut beside = others.filter_map(|other| other.get(place)).copied();
                let period = self.bags[bag].period;
                let beside = beside.find(|other| self.bags[*other].period == period);
                let Some(beside) = beside.filter(|_| happens) else { continue };
                let theirs = |planned: u32| {
                    honest[beside].iter().find(|written| written.planned == planned)
                };
                all[bag].retain_mut(|written| match theirs(written.planned) {
                    Some(theirs) => {
                        written.mm = theirs.mm;
                        true
                    }
                    None => false,
                });
            }
        }
        all
    }
}

/// A seed of its own for each class (FNV-1a, G. Fowler, L. C. Noll, P. Vo; constants from memory).
fn own_seed(name: &str, number: u64, seed: u64) -> u64 {
    let (number, seed) = (number.to_le_bytes(), seed.to_le_bytes());
    name.bytes().chain(number).chain(seed).fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}
