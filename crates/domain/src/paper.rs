//! What a data sheet on paper, or a file of readings, adds to the record.
//!
//! Nothing is overwritten. A height for a place that has none is a new entry of its own, at the
//! time that the bag's clock gives. The same height again adds nothing. Another height than the one
//! that counts is a correction by the teacher, and so also a choice between rivals. Every entry has
//! the key that was made where the height was typed, or the number after it.

use crate::board::falls_at;
use crate::code::BagCode;
use crate::record::{Bag, Entry, Height, Key, Known, Ledger, Subject, What, Who};
use jiff::{SignedDuration, Timestamp};
use std::collections::BTreeMap;

/// A height as it stands on paper.
#[derive(Debug, Clone, PartialEq)]
pub struct OnPaper {
    /// Made where it was typed; the number after it is kept free for it too.
    pub key: Key,
    /// The bag.
    pub bag: BagCode,
    /// Which reading it is.
    pub when: When,
    /// Height above the bench (mm).
    pub height_mm: f64,
}

/// Which reading a height on paper is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum When {
    /// The zero reading; the time starts the bag's clock, unless the record has one.
    Zero(Timestamp),
    /// That of a planned minute after it, by clocks that stood still when all did.
    Planned(u32),
    /// One made so many true minutes after it.
    Minute {
        /// Minutes after the zero reading, none of them stopped.
        minute: f64,
        /// The planned minute that it is for; none for one between.
        planned: Option<u32>,
    },
}

/// What becomes of a height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outcome {
    /// Nothing stands there yet.
    New,
    /// It stands there already.
    There,
    /// Another height counts there (mm); this one corrects it.
    Corrects {
        /// What counts now (mm).
        was_mm: f64,
    },
    /// Two heights stand there that nobody has chosen between, and it is one of them.
    Chooses,
    /// The bag has no zero reading, on record or on this paper.
    NoZero,
    /// No version of the plan has the bag.
    NoSuchBag,
}

/// A height with what it adds.
#[derive(Debug, Clone, PartialEq)]
pub struct Added {
    /// What becomes of it.
    pub outcome: Outcome,
    /// The entries that say so; none if there is nothing to add.
    pub entries: Vec<Entry>,
}

/// Two heights between planned minutes that lie so close are one reading (own rule: a bag is never
/// read twice in a minute).
const SAME_READING: SignedDuration = SignedDuration::from_secs(30);

/// What heights on paper add to a record, one answer for each, in their order.
///
/// `plan` is the version under which a bag counts as sealed that nobody sealed on record.
#[must_use]
pub fn added(ledger: &Ledger, plan: u32, paper: &[OnPaper], now: Timestamp) -> Vec<Added> {
    let sheet = Sheet { ledger, plan, now, zeros: zeros(paper) };
    paper.iter().map(|one| sheet.added(one)).collect()
}

/// The zero readings of the paper, by bag.
fn zeros(paper: &[OnPaper]) -> BTreeMap<BagCode, Timestamp> {
    let zero = |one: &OnPaper| match one.when {
        When::Zero(at) => Some((one.bag, at)),
        _ => None,
    };
    paper.iter().filter_map(zero).collect()
}

struct Sheet<'a> {
    ledger: &'a Ledger,
    plan: u32,
    now: Timestamp,
    zeros: BTreeMap<BagCode, Timestamp>,
}

impl Sheet<'_> {
    fn added(&self, one: &OnPaper) -> Added {
        let nothing = |outcome| Added { outcome, entries: Vec::new() };
        let known: &Known = self.ledger.known();
        if !known.bags.contains_key(&one.bag) {
            return nothing(Outcome::NoSuchBag);
        }
        let bag = self.ledger.standing().bags.get(&one.bag);
        let Some(measured) = self.measured(one, bag) else { return nothing(Outcome::NoZero) };
        let there = bag.map(|bag| place(bag, one.when, measured)).unwrap_or_default();
        let Some(first) = there.first() else {
            return Added { outcome: Outcome::New, entries: self.new_ones(one, bag, measured) };
        };
        let same = there.iter().find(|height| same(height.height_mm, one.height_mm));
        let outcome = match same {
            Some(height) if height.rival => Outcome::Chooses,
            Some(_) => return nothing(Outcome::There),
            None => Outcome::Corrects { was_mm: first.height_mm },
        };
        let of = same.unwrap_or(first).key;
        // After everything that stands there, so that it settles all of it.
        let latest = there.iter().map(|height| height.measured).max();
        let at = latest.map_or(self.now, |latest| latest.max(self.now));
        let what = What::Correction { of, height_mm: one.height_mm };
        Added { outcome, entries: vec![self.entry(one.key, one.bag, what, at, Who::Teacher)] }
    }

    /// When it was read, by the clock of its bag.
    fn measured(&self, one: &OnPaper, bag: Option<&Bag>) -> Option<Timestamp> {
        let on_record = bag.and_then(|bag| Some(bag.zero.as_ref()?.measured));
        let zero = on_record.or_else(|| self.zeros.get(&one.bag).copied());
        match one.when {
            When::Zero(_) => zero,
            When::Planned(minute) => {
                let home = self.ledger.known().bags.get(&one.bag)?;
                let day = self.ledger.standing().periods.get(&home.period);
                let stopped = day.map_or(&[][..], |day| &day.stopped);
                Some(falls_at(stopped, zero?, minute, self.now))
            }
            When::Minute { minute, .. } => {
                let seconds = (60.0 * minute).clamp(0.0, 864_000.0);
                let span = SignedDuration::from_millis((1000.0 * seconds).round() as i64);
                zero?.checked_add(span).ok()
            }
        }
    }

    /// Entries for a place where nothing stands.
    fn new_ones(&self, one: &OnPaper, bag: Option<&Bag>, measured: Timestamp) -> Vec<Entry> {
        let height_mm = one.height_mm;
        let entry = |key, what| self.entry(key, one.bag, what, measured, Who::Import);
        let planned = match one.when {
            When::Zero(_) => {
                let sealed = bag.is_some_and(|bag| bag.sealed.is_some());
                // By the plan of that time, whatever it says when the sheet is typed.
                let plan = self.ledger.version_at(measured).unwrap_or(self.plan);
                let seal = (!sealed).then(|| entry(one.key, What::Sealed { plan }));
                let next = Key(one.key.0.wrapping_add(1));
                let zero = entry(next, What::Zero { height_mm });
                return seal.into_iter().chain([zero]).collect();
            }
            When::Planned(minute) => Some(minute),
            When::Minute { planned, .. } => planned,
        };
        vec![entry(one.key, What::Reading { planned, height_mm })]
    }

    fn entry(&self, key: Key, bag: BagCode, what: What, at: Timestamp, who: Who) -> Entry {
        let subject = Subject::Bag(bag);
        Entry { key, subject, what, measured: at, arrived: self.now, who }
    }
}

/// The heights that count for the same reading, the earliest first.
fn place(bag: &Bag, when: When, measured: Timestamp) -> Vec<&Height> {
    match when {
        When::Zero(_) => bag.zero.iter().chain(&bag.other_zeros).collect(),
        When::Planned(minute) | When::Minute { planned: Some(minute), .. } => {
            bag.readings.iter().filter(|height| height.planned == Some(minute)).collect()
        }
        When::Minute { planned: None, .. } => {
            let near = |height: &&Height| {
                height.planned.is_none()
                    && height.measured.duration_since(measured).abs() <= SAME_READING
            };
            bag.readings.iter().filter(near).collect()
        }
    }
}

/// No ruler tells a hundredth of a millimeter.
fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.005
}
