//! `barm schedule --json`.

use super::{FORMAT, real};
use crate::desk::schedule::{Planned, advice_says};
use barm_domain::schedule::{Change, Course, Pouring, Task, Why};
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Scheduled {
    format: u32,
    periods: Vec<Period>,
}

#[derive(Serialize)]
struct Period {
    period: String,
    starts: String,
    bell_min: Option<f64>,
    pours: &'static str,
    waves: Vec<Wave>,
    turns: Vec<Turn>,
    does_not_fit: Vec<Unfit>,
    advice: Vec<Advice>,
    load: Vec<u32>,
    peak: Option<Peak>,
    in_one_wave: u32,
    changeover: Option<Changeover>,
}

#[derive(Serialize)]
struct Wave {
    minute: Option<f64>,
    clock: String,
    groups: Vec<u32>,
}

#[derive(Serialize)]
struct Turn {
    minute: Option<f64>,
    bag: String,
    group: u32,
    task: &'static str,
    planned: Option<u32>,
    meter: Option<u32>,
    done: bool,
    moved_min: Option<f64>,
}

#[derive(Serialize)]
struct Unfit {
    bag: String,
    group: u32,
    task: &'static str,
    planned: Option<u32>,
    why: &'static str,
}

#[derive(Serialize)]
struct Advice {
    change: &'static str,
    amount: Option<u64>,
    readings_lost: usize,
    runs_lost: usize,
    says: String,
}

#[derive(Serialize)]
struct Peak {
    minute: u32,
    bags: u32,
}

#[derive(Serialize)]
struct Changeover {
    next: String,
    minutes: Option<f64>,
    enough: bool,
}

pub(crate) fn scheduled(planned: &[Planned<'_>]) -> Scheduled {
    Scheduled { format: FORMAT, periods: planned.iter().map(period).collect() }
}

fn period(of: &Planned<'_>) -> Period {
    let Course { waves, turns, unfit, advice, load, .. } = &of.course;
    let wave = |wave: &barm_domain::schedule::Wave| Wave {
        minute: real(wave.at_min),
        clock: of.at(wave.at_min).to_string(),
        groups: wave.groups.clone(),
    };
    Period {
        period: of.period.name.clone(),
        starts: of.period.start.to_string(),
        bell_min: real(of.course.bell_min),
        pours: match of.course.pouring {
            Pouring::Groups => "groups",
            Pouring::Teacher => "teacher",
        },
        waves: waves.iter().map(wave).collect(),
        turns: turns.iter().map(turn).collect(),
        does_not_fit: unfit.iter().map(missed).collect(),
        advice: advice.iter().map(advised).collect(),
        load: load.bags.clone(),
        peak: load.peak().map(|(minute, bags)| Peak { minute, bags }),
        in_one_wave: of.course.one_wave,
        changeover: of.changeover.as_ref().map(|next| Changeover {
            next: next.next.clone(),
            minutes: real(next.minutes),
            enough: next.is_enough(),
        }),
    }
}

fn turn(turn: &barm_domain::schedule::Turn) -> Turn {
    let (task, planned, meter) = parts(turn.task);
    Turn {
        minute: real(turn.at_min),
        bag: turn.bag.clone(),
        group: turn.group,
        task,
        planned,
        meter,
        done: turn.done,
        moved_min: real(turn.moved_min),
    }
}

fn missed(unfit: &barm_domain::schedule::Unfit) -> Unfit {
    let (task, planned, _) = parts(unfit.task);
    Unfit {
        bag: unfit.bag.clone(),
        group: unfit.group,
        task,
        planned,
        why: match unfit.why {
            Why::Clearing => "clearing",
            Why::ShortDay => "short-day",
            Why::Stopped => "stopped",
            Why::NotTaken => "not-taken",
            Why::NoMeter => "no-meter",
            Why::NoGroup => "no-group",
        },
    }
}

const fn parts(task: Task) -> (&'static str, Option<u32>, Option<u32>) {
    match task {
        Task::Zero => ("zero", None, None),
        Task::Reading { planned } => ("reading", Some(planned), None),
        Task::Meter { meter } => ("meter", None, Some(meter)),
    }
}

fn advised(advice: &barm_domain::schedule::Advice) -> Advice {
    let (change, amount) = match advice.change {
        Change::GroupsPour => ("groups-pour", None),
        Change::MixFaster(minutes) => ("mix-faster", Some(u64::from(minutes))),
        Change::LastReading(minute) => ("last-reading", Some(u64::from(minute))),
        Change::Meters(meters) => ("meters", Some(u64::from(meters))),
        Change::MeterOnly(bags) => ("meter-only", Some(bags as u64)),
    };
    Advice {
        change,
        amount,
        readings_lost: advice.readings,
        runs_lost: advice.runs,
        says: advice_says(advice),
    }
}
