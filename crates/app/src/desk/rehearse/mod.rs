//! Drives the real server with simulated groups: the same addresses, headers and entries as the
//! pages send, over real connections.

mod bench;
mod beside;
mod done;
mod line;
mod report;
mod stage;
mod teacher;
mod typed;
mod watch;

pub(crate) use beside::Beside;
pub(crate) use done::{claimed_before, done_before};
pub(crate) use report::WentWrong;
pub(crate) use stage::{Stage, Wish, stage, stage_bytes};
pub(crate) use watch::Caught;

use super::{DeskError, Progress};
use barm_domain::board::running_minutes;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::thread;
use std::time::Duration;

/// How often it looks whether something is to be done.
const TICK: Duration = Duration::from_millis(40);

/// How the groups are driven.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Drive {
    /// Where the server answers on this computer.
    pub(crate) port: u16,
    /// Whether the bells are rung too; else the teacher rings them on the run page.
    pub(crate) alone: bool,
}

/// What happened.
#[derive(Debug)]
pub(crate) struct Report {
    /// Entries that were sent.
    pub(crate) sent: usize,
    /// Of them, those that the server said are on disk.
    pub(crate) saved: usize,
    /// Of them, those that it refused.
    pub(crate) refused: usize,
    /// Entries that the script had.
    pub(crate) of: usize,
    /// What went wrong by the script, and what the pages showed of it.
    pub(crate) caught: Vec<Caught>,
}

/// What all benches share while they work.
struct Floor<'a> {
    stage: &'a Stage,
    drive: Drive,
    stop: &'a AtomicBool,
    /// Groups that are not done yet.
    at_work: AtomicUsize,
    sent: AtomicUsize,
    saved: AtomicUsize,
    refused: AtomicUsize,
}

/// Lets the groups of the script come in and work until they are done, the period is ended or
/// `stop` is set.
pub(crate) fn rehearse(
    stage: &Stage,
    drive: Drive,
    stop: &AtomicBool,
    progress: &dyn Progress,
) -> Result<Report, DeskError> {
    let codes =
        stage.shelf.doors.codes(&stage.room, &stage.script.period, stage.clock.now())?;
    let groups = stage.script.devices.iter().filter(|device| device.group != 0);
    let floor = Floor {
        stage,
        drive,
        stop,
        at_work: AtomicUsize::new(groups.count()),
        sent: AtomicUsize::new(0),
        saved: AtomicUsize::new(0),
        refused: AtomicUsize::new(0),
    };
    stage.room.foresee();
    let mut watch = watch::Watch::new(stage);
    let of = stage.script.steps();
    thread::scope(|scope| {
        let mut working = Vec::new();
        for device in &stage.script.devices {
            let (floor, codes) = (&floor, &codes);
            working.push(scope.spawn(move || match device.group {
                0 => teacher::work(floor, Some(device)),
                _ => bench::work(floor, codes, device),
            }));
        }
        if stage.script.devices.iter().all(|device| device.group != 0) {
            let floor = &floor;
            working.push(scope.spawn(move || teacher::work(floor, None)));
        }
        while !working.iter().all(thread::ScopedJoinHandle::is_finished) {
            watch.look();
            progress.step("entries", floor.sent.load(Ordering::Relaxed), of);
            thread::sleep(TICK);
        }
    });
    watch.look();
    Ok(Report {
        sent: floor.sent.into_inner(),
        saved: floor.saved.into_inner(),
        refused: floor.refused.into_inner(),
        of,
        caught: watch.caught(),
    })
}

impl Floor<'_> {
    /// Waits until the clock of the period shows so many seconds; false if nothing is to be done
    /// any more.
    fn until(&self, second: f64) -> bool {
        loop {
            if self.stop.load(Ordering::Relaxed) || self.is_over() {
                return false;
            }
            let left = second - self.period_s().unwrap_or(f64::NEG_INFINITY);
            if left <= 0.0 {
                return true;
            }
            let left = Duration::try_from_secs_f64(left / self.stage.clock.speed());
            thread::sleep(left.unwrap_or(TICK).min(TICK).max(Duration::from_millis(1)));
        }
    }

    /// Seconds since the bell, without those in which all clocks stood still; nothing before it.
    fn period_s(&self) -> Option<f64> {
        let now = self.stage.clock.now();
        self.stage.room.read(|scene| {
            let period = scene.standing().periods.get(&self.stage.script.period)?;
            Some(60.0 * running_minutes(period, period.began?, now))
        })
    }

    fn is_over(&self) -> bool {
        self.stage.room.read(|scene| {
            let period = scene.standing().periods.get(&self.stage.script.period);
            period.is_some_and(|period| period.ended.is_some())
        })
    }

    /// Tries until it works or nobody wants it any more, as a page does.
    fn insist<T>(&self, mut what: impl FnMut() -> Option<T>) -> Option<T> {
        loop {
            if let Some(done) = what() {
                return Some(done);
            }
            if self.stop.load(Ordering::Relaxed) {
                return None;
            }
            thread::sleep(5 * TICK);
        }
    }
}
