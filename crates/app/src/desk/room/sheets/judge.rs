//! What typed cells mean, what they would add, and what looks odd among them.

use super::clock;
use super::view::bags;
use crate::desk::Wording;
use crate::desk::room::Scene;
use crate::desk::room::run::doubts;
use barm_documents::readings::height_written;
use barm_domain::code::BagCode;
use barm_domain::paper::{Added, OnPaper, Outcome, When, added};
use barm_domain::plan::Period;
use barm_domain::record::{Entry, Key, Ledger};
use jiff::Timestamp;
use std::collections::BTreeMap;

/// A sheet as it is typed; nothing of it is believed yet.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Typed {
    /// Heights.
    pub(crate) cells: Vec<TypedCell>,
    /// Times of zero readings that are not on record.
    pub(crate) zeros: Vec<TypedZero>,
}

/// One height as it is typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct TypedCell {
    /// Made where it was typed.
    pub(crate) key: String,
    /// Code of the bag.
    pub(crate) bag: String,
    /// Planned minute; 0 is the zero reading.
    pub(crate) minute: u32,
    /// What stands in the cell.
    pub(crate) text: String,
}

/// The time of a zero reading as it is typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct TypedZero {
    /// Code of the bag.
    pub(crate) bag: String,
    /// What stands there.
    pub(crate) text: String,
}

/// What is to be said of a sheet.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Judged {
    /// One for each typed height, in their order.
    pub(crate) cells: Vec<JudgedCell>,
    /// What looks odd among typed and recorded heights of the sheet: bag, planned minute, a word
    /// and a sentence.
    pub(crate) odd: Vec<(BagCode, Option<u32>, String, String)>,
    /// What is to be put on record.
    pub(crate) entries: Vec<Entry>,
}

/// What is to be said of one typed height.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct JudgedCell {
    /// Code of the bag, as it was sent.
    pub(crate) bag: String,
    /// Planned minute.
    pub(crate) minute: u32,
    /// What it means (mm), if it can be read.
    pub(crate) mm: Option<f64>,
    /// What becomes of it.
    pub(crate) state: State,
}

/// What becomes of a typed height.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum State {
    /// Nothing is typed that says anything.
    Blank,
    /// It is added.
    New,
    /// It is on record already.
    There,
    /// It corrects what counts now (mm).
    Corrects(f64),
    /// It chooses between two that are on record.
    Chooses,
    /// It is added and does not count; why, as a clause.
    NotCounted(String),
    /// It cannot be taken; why, as a clause.
    Wrong(Wrong),
}

/// Why a typed height cannot be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Wrong {
    /// It cannot be read; what is wrong with it, as the end of a sentence.
    Height(String),
    /// The time of its bag's zero reading cannot be read.
    Time(String),
    /// Its bag has no zero reading.
    NoZero,
    /// It is no cell of this sheet.
    NotHere,
}

/// What a typed sheet means and what it adds. Nothing if the plan has no such period.
pub(crate) fn judge(
    scene: &Scene<'_>,
    w: Wording,
    period: &str,
    group: u32,
    typed: &Typed,
    now: Timestamp,
) -> Option<Judged> {
    let planned = scene.plan.period(period)?;
    let own: Vec<BagCode> = bags(scene, period, group).iter().map(|(code, _)| *code).collect();
    let zeros = Zeros::read(scene, planned, group, &own, typed);
    let read: Vec<_> = typed.cells.iter().map(|cell| read(cell, &own, &zeros)).collect();
    let paper: Vec<OnPaper> =
        read.iter().filter_map(|one| one.as_ref().ok()?.clone()).collect();
    let mut told = added(scene.ledger, scene.version, &paper, now).into_iter();
    let mut entries = Vec::new();
    let cells: Vec<JudgedCell> = typed
        .cells
        .iter()
        .zip(read)
        .map(|(cell, read)| {
            let mm = read.as_ref().ok().and_then(|one| Some(one.as_ref()?.height_mm));
            let state = match read {
                Err(wrong) => State::Wrong(wrong),
                Ok(None) => State::Blank,
                Ok(Some(_)) => match told.next() {
                    Some(one) => state(one, &mut entries),
                    None => State::Wrong(Wrong::NotHere),
                },
            };
            JudgedCell { bag: cell.bag.clone(), minute: cell.minute, mm, state }
        })
        .collect();
    let after = with(scene.ledger, &entries);
    let would = Scene { ledger: &after, ..*scene };
    let mut judged = Judged { cells, odd: odd(&would, w, period, &own, now), entries };
    judged.say_what_does_not_count(&after, typed);
    Some(judged)
}

/// The record as it would be.
pub(super) fn with(ledger: &Ledger, entries: &[Entry]) -> Ledger {
    let mut ledger = ledger.clone();
    for entry in entries {
        ledger.add(entry.clone());
    }
    ledger
}

fn state(one: Added, entries: &mut Vec<Entry>) -> State {
    entries.extend(one.entries);
    match one.outcome {
        Outcome::New => State::New,
        Outcome::There => State::There,
        Outcome::Corrects { was_mm } => State::Corrects(was_mm),
        Outcome::Chooses => State::Chooses,
        Outcome::NoZero => State::Wrong(Wrong::NoZero),
        Outcome::NoSuchBag => State::Wrong(Wrong::NotHere),
    }
}

/// A typed height, if the cell is not blank.
fn read(cell: &TypedCell, own: &[BagCode], zeros: &Zeros) -> Result<Option<OnPaper>, Wrong> {
    let bag: BagCode = cell.bag.parse().map_err(|_| Wrong::NotHere)?;
    if !own.contains(&bag) {
        return Err(Wrong::NotHere);
    }
    let key: Key = cell.key.parse().map_err(|_| Wrong::NotHere)?;
    let Some(height_mm) = height_written(&cell.text).map_err(Wrong::Height)? else {
        return Ok(None);
    };
    let when = match cell.minute {
        0 => When::Zero(zeros.of(bag)?),
        minute => When::Planned(minute),
    };
    Ok(Some(OnPaper { key, bag, when, height_mm }))
}

/// When the bags of a sheet start, as it says.
struct Zeros {
    typed: BTreeMap<BagCode, Result<Timestamp, String>>,
    planned: Option<Timestamp>,
}

impl Zeros {
    fn read(
        scene: &Scene<'_>,
        period: &Period,
        group: u32,
        own: &[BagCode],
        typed: &Typed,
    ) -> Self {
        let planned = clock::planned_zero(scene, period, group);
        let mut zeros = BTreeMap::new();
        for zero in &typed.zeros {
            let (Ok(bag), Some(near)) = (zero.bag.parse::<BagCode>(), planned) else {
                continue;
            };
            if own.contains(&bag) && !zero.text.trim().is_empty() {
                let read = clock::read(scene, period, &zero.text, near);
                let shortened = || zero.text.trim().chars().take(20).collect();
                zeros.insert(bag, read.ok_or_else(shortened));
            }
        }
        Self { typed: zeros, planned }
    }

    fn of(&self, bag: BagCode) -> Result<Timestamp, Wrong> {
        match self.typed.get(&bag) {
            Some(Ok(at)) => Ok(*at),
            Some(Err(typed)) => Err(Wrong::Time(typed.clone())),
            None => self.planned.ok_or(Wrong::NoZero),
        }
    }
}

fn odd(
    would: &Scene<'_>,
    w: Wording,
    period: &str,
    own: &[BagCode],
    now: Timestamp,
) -> Vec<(BagCode, Option<u32>, String, String)> {
    let mut odd = Vec::new();
    for doubt in doubts(would, w, period, now) {
        if !own.contains(&doubt.bag) {
            continue;
        }
        let bag = would.standing().bags.get(&doubt.bag);
        let minute = doubt.reading.and_then(|key| {
            let bag = bag?;
            let zeros = bag.zero.iter().chain(&bag.other_zeros);
            let zero = zeros.into_iter().find(|height| height.key == key).map(|_| 0);
            let reading = bag.readings.iter().find(|height| height.key == key);
            zero.or_else(|| reading?.planned)
        });
        odd.push((doubt.bag, minute, doubt.tag.word(w), doubt.says));
    }
    odd.sort_by_key(|(bag, minute, ..)| (*bag, *minute));
    odd
}

impl Judged {
    /// What the record would list as not counting, with its reason.
    fn say_what_does_not_count(&mut self, after: &Ledger, typed: &Typed) {
        let refused = &after.standing().refused;
        for (cell, typed) in self.cells.iter_mut().zip(&typed.cells) {
            if !matches!(cell.state, State::New | State::Corrects(_)) {
                continue;
            }
            let Ok(key) = typed.key.parse::<Key>() else { continue };
            let own = [key, Key(key.0.wrapping_add(1))];
            if let Some((_, reason)) = refused.iter().find(|(key, _)| own.contains(key)) {
                cell.state = State::NotCounted(reason.to_string());
            }
        }
    }
}
