//! The wall page: the clock, who reads, and curves and results once the teacher opened them.
//!
//! Children look at it. Nothing here can hold a mark, a name of anybody or a word about who is late;
//! a forecast only as the band behind open curves, once the teacher opened that too.

use super::benches::{BenchBag, Benches, after};
use super::doubts::{Doubt, own_slips};
use super::foretold::{BandRow, Foretelling};
use super::hour::{Hour, Stage};
use super::opened::{Found, results_on_wall};
use super::{Kind, Scene};
use barm_documents::chart::{CurvesChart, Frame, Look, Reading, Sheaf, Words};
use barm_domain::board::State;
use barm_domain::plan::Period;
use barm_domain::record::{Audience, Face, Lent, older_version};
use jiff::Timestamp;

/// What the wall shows.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WallView {
    /// Whether it happens in a class, in a rehearsal, or is made up.
    pub(crate) kind: Kind,
    /// The clock.
    pub(crate) hour: Hour,
    /// Groups to read now.
    pub(crate) now: Vec<u32>,
    /// Groups that are next, when, and whether that is their zero reading.
    pub(crate) next: Vec<(u32, Timestamp, bool)>,
    /// Groups that work with numbers that are not their own, and whether nobody measured those.
    pub(crate) stand_ins: Vec<(u32, bool)>,
    /// What the class found, once that is open.
    pub(crate) found: Option<Found>,
    /// Curves, once they are open.
    pub(crate) curves: Option<WallCurves>,
}

/// Curves of the class.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WallCurves {
    /// Whether they are of all periods.
    pub(crate) day: bool,
    sheaves: Vec<Sheaf>,
    /// What was foretold of them; nothing before it is opened.
    foretold: Foretelling,
}

/// Groups that are named as next.
const NAMED: usize = 3;

/// The wall of a period; nothing if the plan has no such period.
pub(crate) fn wall_view(scene: &Scene<'_>, period: &str, now: Timestamp) -> Option<WallView> {
    let planned = scene.plan.period(period)?;
    let hour = Hour::of(scene, period, now)?;
    let benches = Benches::of(scene, planned, now);
    let standing = scene.ledger.standing();
    let stand_ins = standing
        .groups
        .iter()
        .filter(|((of, _), _)| of == period)
        .filter_map(|((_, group), standing)| {
            let lent = standing.stand_in?.lent;
            Some((*group, matches!(lent, Lent::Simulated { .. })))
        })
        .collect();
    let runs = hour.stage == Stage::Running;
    Some(WallView {
        kind: scene.kind,
        now: if runs { due(&benches) } else { Vec::new() },
        next: if runs { next(&hour, &benches) } else { Vec::new() },
        stand_ins,
        found: results_on_wall(scene, period),
        curves: curves(scene, planned, now),
        hour,
    })
}

/// Groups with a bag to read, late ones among them: late is between a group and its teacher.
fn due(benches: &Benches) -> Vec<u32> {
    let mut groups: Vec<u32> = benches
        .bags
        .iter()
        .filter(|bag| matches!(bag.state, State::Due { .. } | State::Late { .. }))
        .map(|bag| bag.group)
        .collect();
    groups.sort_unstable();
    groups.dedup();
    groups
}

fn next(hour: &Hour, benches: &Benches) -> Vec<(u32, Timestamp, bool)> {
    let now = due(benches);
    let mut next: Vec<(u32, Timestamp, bool)> = Vec::new();
    for bag in &benches.bags {
        if now.contains(&bag.group) || next.iter().any(|(group, ..)| *group == bag.group) {
            continue;
        }
        match bag.state {
            State::Waiting { in_s, .. } => {
                next.push((bag.group, after(hour.now, in_s), false));
            }
            State::NotStarted => {
                let start = benches.schedule.start_of(bag.group);
                let left = start.zip(hour.now_min).map(|(start, now)| 60.0 * (start - now));
                if let Some(left) = left.filter(|left| *left > 0.0) {
                    next.push((bag.group, after(hour.now, left), true));
                }
            }
            _ => {}
        }
    }
    next.sort_by_key(|(group, at, _)| (*at, *group));
    next.truncate(NAMED);
    next
}

fn curves(scene: &Scene<'_>, period: &Period, now: Timestamp) -> Option<WallCurves> {
    let wall = Audience::Wall { period: period.name.clone() };
    let open = |face| scene.ledger.standing().open.contains(&(face, wall.clone()));
    let day = open(Face::DayCurves);
    if !day && !open(Face::PeriodCurves) {
        return None;
    }
    let periods = scene.plan.periods.iter().filter(|other| day || other.name == period.name);
    let bags: Vec<(&Period, BenchBag)> = periods
        .flat_map(|of| Benches::of(scene, of, now).bags.into_iter().map(move |bag| (of, bag)))
        .filter(|(_, bag)| bag.rises.len() > 1)
        .collect();
    let mut names: Vec<(Look, String)> = Vec::new();
    for (_, bag) in &bags {
        if !names.iter().any(|(_, name)| *name == bag.treatment) {
            names.push((bag.look, bag.treatment.clone()));
        }
    }
    names.sort();
    let sheaf = |(look, name): (Look, String)| {
        let own: Vec<&(&Period, BenchBag)> =
            bags.iter().filter(|(_, bag)| bag.treatment == name).collect();
        let lines = own.iter().map(|(of, bag)| line(scene, of, bag)).collect();
        let counts = own.iter().filter(|(_, bag)| bag.state != State::SetAside);
        let counts: Vec<&[(f64, f64)]> = counts.map(|(_, bag)| bag.rises.as_slice()).collect();
        Sheaf { mean: mean(&counts, scene.plan.timing.interval_min), bags: lines, name, look }
    };
    let drawn = bags.iter().map(|(_, bag)| (bag.code, bag.treatment.as_str()));
    let foretold = open(Face::Forecast).then(|| Foretelling::of(scene, drawn));
    let sheaves = names.into_iter().map(sheaf).collect();
    Some(WallCurves { day, sheaves, foretold: foretold.unwrap_or_default() })
}

/// One bag; what its own readings make doubtful is marked, and all of a bag that is set aside.
fn line(scene: &Scene<'_>, period: &Period, bag: &BenchBag) -> Vec<Reading> {
    let standing = scene.ledger.standing().bags.get(&bag.code);
    let aside = bag.state == State::SetAside;
    let doubted: Vec<_> = own_slips(scene, period, bag)
        .into_iter()
        .filter(|slip| Doubt::of(&slip.kind).is_some())
        .filter_map(|slip| slip.reading)
        .collect();
    let keys = standing.into_iter().flat_map(|bag| bag.zero.iter().chain(&bag.readings));
    let mut keys = keys.map(|height| height.key);
    let last = bag.rises.len().saturating_sub(1);
    bag.rises
        .iter()
        .enumerate()
        .map(|(at, (minute, rise))| {
            let doubtful = keys.next().is_some_and(|key| doubted.contains(&key));
            Reading { minute: *minute, rise: *rise, doubtful: doubtful || aside && at == last }
        })
        .collect()
}

/// The mean by planned minute of the rises of bags that count, while at least half of them were
/// read.
pub(super) fn mean(counts: &[&[(f64, f64)]], interval_min: f64) -> Vec<(f64, f64)> {
    let interval = interval_min.max(0.5);
    let steps = counts.iter().copied().flatten().map(|(minute, _)| minute / interval);
    let last = steps.fold(0.0, f64::max).round().min(200.0) as u32;
    let mut mean = vec![(0.0, 0.0)];
    for step in 1..=last {
        let minute = f64::from(step) * interval;
        let near = |at: f64| (at - minute).abs() <= interval / 2.0;
        let rises: Vec<f64> = counts
            .iter()
            .filter_map(|rises| rises.iter().skip(1).find(|(at, _)| near(*at)))
            .map(|(_, rise)| *rise)
            .collect();
        if rises.is_empty() || rises.len() * 2 < counts.len() {
            break;
        }
        mean.push((minute, rises.iter().sum::<f64>() / rises.len() as f64));
    }
    mean
}

impl WallCurves {
    /// Drawn for a wall (`wide`) or for a small screen.
    pub(crate) fn svg(&self, title: &str, words: Words, wide: bool) -> String {
        let phone = Frame::phone(words);
        let frame = if wide { Frame { width: 920.0, type_size: 25.0, ..phone } } else { phone };
        let bands = self.foretold.strands(&self.sheaves);
        CurvesChart { title, sheaves: &self.sheaves, bands: &bands }.svg(&frame)
    }

    /// What was foretold, beside what was read; nothing before it is opened.
    pub(crate) fn bands(&self) -> Vec<BandRow> {
        self.foretold.beside(&self.sheaves)
    }

    /// The version of the plan by which something drawn is made, if that is an older one.
    pub(crate) fn older_version(&self) -> Option<u32> {
        self.sheaves.iter().find_map(|sheaf| older_version(&sheaf.name))
    }

    /// How many bags are drawn.
    pub(crate) fn bags(&self) -> usize {
        self.sheaves.iter().map(|sheaf| sheaf.bags.len()).sum()
    }
}
