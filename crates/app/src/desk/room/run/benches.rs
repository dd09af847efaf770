//! Benches of a period as the teacher sees them: each bag on its forecast.

use super::needs::Need;
use crate::desk::room::Scene;
use crate::desk::room::benches::{BenchBag, Benches, Tag, after};
use crate::desk::room::hour::{Hour, Stage};
use barm_domain::board::State;
use barm_domain::code::BagCode;
use barm_domain::record::Lent;
use barm_domain::slip::Expected;
use jiff::Timestamp;
use std::collections::BTreeMap;

/// One bag with what is expected of it.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RunBag {
    /// The bag.
    pub(crate) bag: BenchBag,
    /// Minute, low and high edge of its forecast (mm); empty until that was worked out.
    pub(crate) band: Vec<(f64, f64, f64)>,
    /// The minute at the right edge of its curve.
    pub(crate) to_min: f64,
    /// The rise at the upper edge of its curve (mm).
    pub(crate) top_mm: f64,
}

/// When a bench is next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum When {
    /// Its bags are due since then.
    Due(Timestamp),
    /// One of its bags is due then.
    At(Timestamp),
    /// It takes its zero readings then.
    Zero(Timestamp),
    /// It has no clock before the period begins.
    NotBegun,
    /// All clocks stand still.
    Standing,
    /// Nothing is left to read.
    Over,
}

/// One bench.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Bench {
    /// Number of the group; 0 for the teacher's bench.
    pub(crate) group: u32,
    /// When it is next.
    pub(crate) when: When,
    /// The planned minute it is about.
    pub(crate) minute: Option<u32>,
    /// Its bags by bench place.
    pub(crate) bags: Vec<RunBag>,
    /// What it works with in the place of its own numbers.
    pub(crate) stand_in: Option<Lent>,
}

/// The forecast of each bag of a period, by its treatment in truth.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Expects {
    bands: BTreeMap<BagCode, Vec<Expected>>,
    stand_ins: BTreeMap<u32, Lent>,
    to_min: f64,
    top_mm: f64,
}

impl Expects {
    /// What is expected of the bags of a period.
    pub(super) fn of(scene: &Scene<'_>, benches: &Benches) -> Self {
        let band = |bag: &BenchBag| -> Option<Vec<Expected>> {
            let entries = &scene.outlook_of(bag.code)?.entries;
            let entry = entries.iter().find(|entry| entry.treatment == bag.treatment)?;
            let rise = &entry.rise_mm;
            let edges = rise.low.iter().zip(&rise.median).zip(&rise.high).enumerate();
            let expected = edges.map(|(minute, ((low, median), high))| Expected {
                minute: minute as f64,
                low_mm: *low,
                median_mm: *median,
                high_mm: *high,
            });
            Some(expected.collect())
        };
        let bands: BTreeMap<BagCode, Vec<Expected>> =
            benches.bags.iter().map(|bag| (bag.code, band(bag).unwrap_or_default())).collect();
        let highs = bands.values().flatten().map(|expected| expected.high_mm);
        let rises = benches.bags.iter().flat_map(|bag| bag.rises.iter().map(|(_, mm)| *mm));
        let groups = &scene.ledger.standing().groups;
        let period = benches.bags.first().and_then(|bag| {
            scene.ledger.known().bags.get(&bag.code).map(|home| home.period.clone())
        });
        let stand_ins = groups
            .iter()
            .filter(|((of, _), _)| Some(of) == period.as_ref())
            .filter_map(|((_, group), standing)| Some((*group, standing.stand_in?.lent)))
            .collect();
        Self {
            // Readings are made a little after their minute.
            to_min: f64::from(benches.schedule.last).max(4.0) + 2.0,
            top_mm: highs.chain(rises).fold(8.0, f64::max),
            bands,
            stand_ins,
        }
    }

    /// The band of a bag by minute.
    pub(super) fn band(&self, code: BagCode) -> &[Expected] {
        self.bands.get(&code).map_or(&[], Vec::as_slice)
    }

    /// A bag with its band.
    pub(super) fn with(&self, bag: &BenchBag) -> RunBag {
        let band = self.band(bag.code);
        // Every other minute is enough for a small picture.
        let shown = band.iter().filter(|at| (at.minute as u64).is_multiple_of(2));
        RunBag {
            bag: bag.clone(),
            band: shown.map(|at| (at.minute, at.low_mm, at.high_mm)).collect(),
            to_min: self.to_min,
            top_mm: self.top_mm,
        }
    }

    /// What a group works with in the place of its own numbers.
    pub(super) fn stands_in(&self, group: u32) -> Option<Lent> {
        self.stand_ins.get(&group).copied()
    }
}

/// Benches with bags due now, and the others by time.
pub(super) fn sorted(
    hour: &Hour,
    benches: &Benches,
    expects: &Expects,
    needs: &[Need],
) -> (Vec<Bench>, Vec<Bench>) {
    let (mut now, mut next) = (Vec::new(), Vec::new());
    for group in benches.groups() {
        let bags = benches.of_group(group);
        let due: Vec<&BenchBag> =
            bags.iter().copied().filter(|bag| matches!(bag.state, State::Due { .. })).collect();
        let bench = |when, minute, bags: &[&BenchBag]| Bench {
            group,
            when,
            minute,
            bags: bags.iter().map(|bag| tagged(expects.with(bag), needs)).collect(),
            stand_in: expects.stands_in(group),
        };
        let longest = due.iter().filter_map(|bag| match bag.state {
            State::Due { since_s, planned } => Some((since_s, planned)),
            _ => None,
        });
        match longest.reduce(|a, b| if b.0 > a.0 { b } else { a }) {
            Some((since_s, planned)) => {
                let since = after(hour.now, -since_s);
                now.push(bench(When::Due(since), Some(planned), &due));
            }
            None => {
                let (when, minute) = when(hour, benches, group, &bags);
                next.push(bench(when, minute, &bags));
            }
        }
    }
    next.sort_by(|a, b| order(&a.when).total_cmp(&order(&b.when)));
    (now, next)
}

fn order(when: &When) -> f64 {
    match when {
        When::Due(at) | When::At(at) | When::Zero(at) => at.as_second() as f64,
        When::NotBegun | When::Standing => 0.0,
        When::Over => f64::INFINITY,
    }
}

/// When a bench without a bag that is due is next.
fn when(hour: &Hour, benches: &Benches, group: u32, bags: &[&BenchBag]) -> (When, Option<u32>) {
    if hour.stage == Stage::Before {
        return (When::NotBegun, None);
    }
    if matches!(hour.stage, Stage::Standing(_))
        && bags.iter().any(|bag| matches!(bag.state, State::Stopped | State::NotStarted))
    {
        return (When::Standing, None);
    }
    let waits = bags.iter().filter_map(|bag| match bag.state {
        State::Waiting { planned, in_s } => Some((in_s, planned)),
        // The next reading after one that is late stands with what needs the teacher.
        State::Late { planned, late_s } => Some((-late_s, planned)),
        _ => None,
    });
    if let Some((in_s, planned)) = waits.reduce(|a, b| if b.0 < a.0 { b } else { a }) {
        return (When::At(after(hour.now, in_s)), Some(planned));
    }
    let unstarted = bags.iter().any(|bag| bag.state == State::NotStarted);
    if unstarted
        && let (Some(start), Some(at)) = (benches.schedule.start_of(group), hour.now_min)
    {
        return (When::Zero(after(hour.now, 60.0 * (start - at))), None);
    }
    (When::Over, None)
}

/// A bag that needs the teacher says so wherever it stands.
fn tagged(mut bag: RunBag, needs: &[Need]) -> RunBag {
    let doubted = needs
        .iter()
        .any(|need| need.is_doubt() && need.bags.iter().any(|of| of.bag.code == bag.bag.code));
    if doubted && bag.bag.tag.is_none() {
        bag.bag.tag = Some(Tag::Doubtful);
    }
    bag
}
