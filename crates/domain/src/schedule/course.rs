//! The course of a period: every bag's turns in the order of time, and what does not fit.

use super::advice::{self, Advice};
use super::hands::Pouring;
use super::load::Load;
use super::meter::{self, Metering, RUN_MIN, Waiting};
use super::replan::{self, Stop, Upset};
use super::waves::{self, SAME};
use super::{READ_MIN, Schedule, plain, schedule};
use crate::plan::{Period, Plan, PlannedBag};
use std::collections::BTreeMap;

/// Everything that is done in a period, bag by bag.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// The period as pages and sheets show it, without the stop.
    pub hour: Schedule,
    /// Minutes after zero at which the plan has bags read, on a day of full length.
    pub planned: Vec<u32>,
    /// Who pours.
    pub pouring: Pouring,
    /// Who starts when, the stop among it.
    pub waves: Vec<Wave>,
    /// Every turn, in the order of time.
    pub turns: Vec<Turn>,
    /// What there is no time for, in the order of the bag list.
    pub unfit: Vec<Unfit>,
    /// What would lose less, the least first; empty where everything fits.
    pub advice: Vec<Advice>,
    /// Bags that want something, minute by minute.
    pub load: Load,
    /// Bags in the busiest minute if all were sealed at once: all of them.
    pub one_wave: u32,
    /// Meters in use.
    pub meters: u32,
    /// The bell at the end (min).
    pub bell_min: f64,
}

/// Groups that take their zero reading together.
#[derive(Debug, Clone, PartialEq)]
pub struct Wave {
    /// When (min after the bell).
    pub at_min: f64,
    /// Their numbers, 0 for the teacher's bench.
    pub groups: Vec<u32>,
}

/// One bag's turn.
#[derive(Debug, Clone, PartialEq)]
pub struct Turn {
    /// When (min after the bell).
    pub at_min: f64,
    /// Code of the bag.
    pub bag: String,
    /// Its group, 0 for the teacher's bench.
    pub group: u32,
    /// Its bench place.
    pub place: u32,
    /// What is done.
    pub task: Task,
    /// Whether it was done before the stop; never without one.
    pub done: bool,
    /// By how much a stop moved it (min).
    pub moved_min: f64,
}

/// What is done with a bag.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Task {
    /// It is sealed and read for the first time; its clock begins.
    Zero,
    /// It is read.
    Reading {
        /// The planned minute after its own zero reading.
        planned: u32,
    },
    /// It is pushed through a meter.
    Meter {
        /// Which one, from 1; 0 for a run that does not fit.
        meter: u32,
    },
}

/// What there is no time for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unfit {
    /// Code of the bag.
    pub bag: String,
    /// Its group.
    pub group: u32,
    /// What is not done.
    pub task: Task,
    /// Why.
    pub why: Why,
}

/// Why something is not done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Why {
    /// It would fall after clearing has begun.
    Clearing,
    /// The period is shorter than planned.
    ShortDay,
    /// A stop moved it past the start of clearing.
    Stopped,
    /// It was due before the stop, and nobody took it.
    NotTaken,
    /// No meter is free between the bag's last reading and emptying.
    NoMeter,
    /// The period has no such group.
    NoGroup,
}

/// A bag with its number among those of its group, from 1.
pub(super) type Seat<'a> = (&'a PlannedBag, u32);

/// What a course is made from.
pub(super) struct Frame<'a> {
    pub(super) plan: &'a Plan,
    /// As long as it is on the day.
    pub(super) period: &'a Period,
    /// Planned minutes of a full day.
    pub(super) planned: Vec<u32>,
    /// Those of the day.
    pub(super) hour: Schedule,
    pub(super) pouring: Pouring,
    pub(super) metering: Option<Metering>,
    pub(super) seats: Vec<Seat<'a>>,
}

/// Turns without the meter, what does not fit, and from when on each bag may be metered.
#[derive(Default)]
pub(super) struct Laid<'a> {
    pub(super) turns: Vec<Turn>,
    pub(super) unfit: Vec<Unfit>,
    pub(super) ready: Vec<(&'a PlannedBag, f64)>,
}

/// The course of a period, with what the day takes away.
///
/// A length over the plan's changes nothing, and so does a stop of no time.
#[must_use]
pub fn course(plan: &Plan, period: &Period, upset: &Upset) -> Course {
    let short = shortened(period, upset);
    let frame = Frame::of(plan, &short, schedule(plan, period, None).minutes, None);
    let mut course = made(&frame, upset.stop.as_ref());
    course.advice = advice::advice(&frame, upset, &course);
    course
}

/// The period as long as it is on the day.
pub(super) fn shortened(period: &Period, upset: &Upset) -> Period {
    let length = upset.length_min.filter(|length| *length < period.length_min);
    Period { length_min: length.unwrap_or(period.length_min).max(0.0), ..period.clone() }
}

/// A course without advice.
pub(super) fn made(frame: &Frame<'_>, stop: Option<&Stop>) -> Course {
    let starts = waves::with(frame.plan, frame.period, &frame.planned, frame.pouring);
    let mut laid = laid(frame, &starts);
    let mut runs = metered(frame, &mut laid, &[]);
    let mut waves = waves::together(&starts);
    if let Some(stop) = stop.filter(|stop| stop.for_min > 0.0) {
        let (after, starts, done) = replan::after(frame, &laid, &runs, stop);
        laid = after;
        runs = metered(frame, &mut laid, &done);
        runs.extend(done);
        waves = waves::together(&starts);
    }
    let Laid { mut turns, mut unfit, .. } = laid;
    turns.extend(runs);
    turns.sort_by(|a, b| {
        let key = |turn: &Turn| (turn.group, turn.place, turn.task);
        a.at_min.total_cmp(&b.at_min).then(key(a).cmp(&key(b)))
    });
    let order: BTreeMap<&str, usize> =
        frame.seats.iter().enumerate().map(|(at, (bag, _))| (bag.code.as_str(), at)).collect();
    unfit.sort_by_key(|one| (order.get(one.bag.as_str()).copied(), one.task));
    let sealed = turns.iter().filter(|turn| turn.task == Task::Zero).count();
    Course {
        planned: frame.planned.clone(),
        hour: frame.hour.clone(),
        pouring: frame.pouring,
        waves,
        load: Load::of(&turns),
        one_wave: u32::try_from(sealed).unwrap_or(u32::MAX),
        meters: frame.metering.map_or(0, |metering| metering.meters),
        bell_min: frame.period.length_min,
        turns,
        unfit,
        advice: Vec::new(),
    }
}

impl<'a> Frame<'a> {
    pub(super) fn of(
        plan: &'a Plan,
        period: &'a Period,
        planned: Vec<u32>,
        pouring: Option<Pouring>,
    ) -> Self {
        let mut nth = BTreeMap::<u32, u32>::new();
        let own = plan.bags.iter().filter(|bag| bag.period == period.name);
        let seats = own
            .map(|bag| {
                let number = nth.entry(bag.group).or_default();
                *number += 1;
                (bag, *number)
            })
            .collect();
        let pouring = pouring.unwrap_or_else(|| Pouring::of(plan, period));
        let minutes = plain::minutes(plan, period, None);
        let hour = Schedule {
            phases: plain::phases(plan, period),
            starts: waves::with(plan, period, &planned, pouring),
            last: minutes.last().copied().unwrap_or(0),
            minutes,
        };
        let metering = Metering::of(plan, period, hour.cleaning_min());
        Self { plan, period, planned, hour, pouring, metering, seats }
    }

    /// Whether something may still be read at that minute.
    pub(super) fn is_read_at(&self, at_min: f64) -> bool {
        at_min <= self.hour.clearing_min() + SAME
    }

    /// Zero reading and planned minutes.
    pub(super) fn tasks(&self) -> impl Iterator<Item = (u32, Task)> {
        let readings = self.planned.iter().map(|planned| (*planned, reading(*planned)));
        std::iter::once((0, Task::Zero)).chain(readings)
    }

    fn why(&self, planned: u32) -> Why {
        let short = self.planned.last().is_some_and(|last| *last > self.hour.last);
        if short && planned > self.hour.last { Why::ShortDay } else { Why::Clearing }
    }
}

fn reading(planned: u32) -> Task {
    Task::Reading { planned }
}

fn laid<'a>(frame: &Frame<'a>, starts: &[(u32, f64)]) -> Laid<'a> {
    let mut laid = Laid::default();
    for (bag, nth) in &frame.seats {
        let start = starts.iter().find(|(group, _)| *group == bag.group);
        let Some((_, start)) = start else {
            for (_, task) in frame.tasks() {
                laid.unfit.push(unfit(bag, task, Why::NoGroup));
            }
            continue;
        };
        let sealed = frame.is_read_at(*start);
        let mut last = None;
        for (planned, task) in frame.tasks() {
            let at_min = start + f64::from(planned);
            if sealed && frame.is_read_at(at_min) {
                laid.turns.push(turn(bag, at_min, task));
                last = Some(at_min);
            } else {
                laid.unfit.push(unfit(bag, task, frame.why(planned)));
            }
        }
        if let Some(last) = last {
            laid.ready.push((*bag, last + READ_MIN * f64::from(*nth)));
        }
    }
    laid
}

/// The runs at the meter of all bags but those that were metered already; those that do not fit are named.
fn metered(frame: &Frame<'_>, laid: &mut Laid<'_>, done: &[Turn]) -> Vec<Turn> {
    let Some(metering) = frame.metering else { return Vec::new() };
    let tiers = meter::tiers(frame.plan, &laid.ready);
    let open: Vec<(&PlannedBag, Waiting)> = tiers
        .into_iter()
        .filter(|(bag, _)| done.iter().all(|run| run.bag != bag.code))
        .collect();
    let waiting: Vec<Waiting> = open.iter().map(|(_, waiting)| *waiting).collect();
    let queue = meter::queue(&waiting, metering.meters, metering.end_min);
    for place in queue.left {
        laid.unfit.push(unfit(open[place].0, Task::Meter { meter: 0 }, Why::NoMeter));
    }
    let runs = queue.runs.into_iter();
    runs.map(|(place, meter, at)| turn(open[place].0, at, Task::Meter { meter })).collect()
}

pub(super) fn turn(bag: &PlannedBag, at_min: f64, task: Task) -> Turn {
    let (group, place) = (bag.group, bag.place);
    Turn { at_min, bag: bag.code.clone(), group, place, task, done: false, moved_min: 0.0 }
}

pub(super) fn unfit(bag: &PlannedBag, task: Task, why: Why) -> Unfit {
    Unfit { bag: bag.code.clone(), group: bag.group, task, why }
}

impl Turn {
    /// When it is over: a reading takes half a minute, a run at the meter a minute.
    pub fn to_min(&self) -> f64 {
        let takes = if matches!(self.task, Task::Meter { .. }) { RUN_MIN } else { READ_MIN };
        self.at_min + takes
    }
}

impl Course {
    /// Zero readings and readings, and runs at the meter, that there is no time for.
    pub fn lost(&self) -> (usize, usize) {
        let runs =
            self.unfit.iter().filter(|one| matches!(one.task, Task::Meter { .. })).count();
        (self.unfit.len() - runs, runs)
    }
}
