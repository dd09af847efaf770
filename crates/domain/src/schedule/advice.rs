//! What would lose less where time is short.

use super::course::{Course, Frame, Task, made, shortened};
use super::hands::Pouring;
use super::replan::Upset;
use crate::plan::Plan;

/// Mixing in fewer minutes than that is not advised; no class has done it (common practice, no source).
const LEAST_MIXING_MIN: f64 = 8.0;

/// A change, and what is still lost with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Advice {
    /// What to change.
    pub change: Change,
    /// Readings that are still lost.
    pub readings: usize,
    /// Runs at the meter that are still lost.
    pub runs: usize,
}

/// Something that can be changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Change {
    /// Cooler water, so that groups pour by themselves.
    GroupsPour,
    /// So many minutes less from the bell to the first zero reading.
    MixFaster(u32),
    /// The same last planned minute for all bags, so that all can be compared there.
    LastReading(u32),
    /// So many meters in all.
    Meters(u32),
    /// So many bags at the meter: those that the queue takes.
    MeterOnly(usize),
}

/// What would lose less, the least first; nothing where all fits.
pub(super) fn advice(frame: &Frame<'_>, upset: &Upset, course: &Course) -> Vec<Advice> {
    let (readings, runs) = course.lost();
    let mut all = Vec::new();
    let with = |plan: &Plan, pouring: Option<Pouring>| {
        // The day's own length is in the frame already.
        let period = shortened(frame.period, &Upset::default());
        let frame = Frame::of(plan, &period, frame.planned.clone(), pouring);
        made(&frame, upset.stop.as_ref()).lost()
    };
    let mut better = |change: Change, lost: (usize, usize)| {
        all.push(Advice { change, readings: lost.0, runs: lost.1 });
    };
    if readings > 0 && upset.stop.is_none() {
        if frame.pouring == Pouring::Teacher {
            let lost = with(frame.plan, Some(Pouring::Groups));
            if lost.0 < readings {
                better(Change::GroupsPour, lost);
            }
        }
        if let Some((minutes, lost)) = faster(frame, readings, &with) {
            better(Change::MixFaster(minutes), lost);
        }
    }
    if let Some((minute, lost)) = same_last(course, readings) {
        better(Change::LastReading(minute), (lost, runs));
    }
    if runs > 0 {
        let bags = course.turns.iter().filter(|turn| is_run(turn.task)).count();
        let most = u32::try_from(bags + runs).unwrap_or(u32::MAX);
        let count = |meters: u32| {
            let mut plan = frame.plan.clone();
            plan.equipment.meters = Some(meters);
            (meters, with(&plan, Some(frame.pouring)))
        };
        let more = (course.meters + 1..=most).map(count);
        // The fewest meters of those that lose least.
        let best = more.min_by_key(|(meters, lost)| (lost.1, *meters));
        if let Some((meters, lost)) = best.filter(|(_, lost)| lost.1 < runs) {
            better(Change::Meters(meters), lost);
        }
        better(Change::MeterOnly(bags), (readings, runs));
    }
    all.sort_by_key(|one| (one.readings, one.runs, one.change));
    all
}

fn is_run(task: Task) -> bool {
    matches!(task, Task::Meter { .. })
}

/// The fewest minutes less of mixing that lose fewest readings, if they lose fewer than now.
fn faster(
    frame: &Frame<'_>,
    readings: usize,
    lost_with: &impl Fn(&Plan, Option<Pouring>) -> (usize, usize),
) -> Option<(u32, (usize, usize))> {
    let spare = (frame.plan.timing.mixing_min - LEAST_MIXING_MIN).floor().clamp(0.0, 60.0);
    let tried = (1..=spare as u32).map(|minutes| {
        let mut plan = frame.plan.clone();
        plan.timing.mixing_min -= f64::from(minutes);
        (minutes, lost_with(&plan, Some(frame.pouring)))
    });
    tried.min_by_key(|(minutes, lost)| (lost.0, *minutes)).filter(|(_, lost)| lost.0 < readings)
}

/// The last planned minute that every sealed bag reaches, and the readings lost if all stop there; only
/// where some bags are read later than others.
fn same_last(course: &Course, readings: usize) -> Option<(u32, usize)> {
    let last_of = |bag: &str| {
        let own = course.turns.iter().filter(|turn| turn.bag == bag);
        own.filter_map(|turn| match turn.task {
            Task::Zero => Some(0),
            Task::Reading { planned } => Some(planned),
            Task::Meter { .. } => None,
        })
        .max()
    };
    let sealed = course.turns.iter().filter(|turn| turn.task == Task::Zero);
    let least =
        sealed.filter_map(|turn| last_of(&turn.bag)).min().filter(|least| *least > 0)?;
    let later = |task: Task| matches!(task, Task::Reading { planned } if planned > least);
    let more = course.turns.iter().filter(|turn| later(turn.task) && !turn.done).count();
    (more > 0).then_some((least, readings + more))
}
