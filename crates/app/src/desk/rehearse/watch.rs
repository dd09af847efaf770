//! What the teacher's pages show of what went wrong, looked at while it happens.

use super::Stage;
use crate::desk::room::Scene;
use crate::desk::room::run::slips_shown;
use barm_domain::board::{State, board};
use barm_domain::code::BagCode;
use barm_domain::rehearsal::{Mishap, Staged};
use barm_domain::schedule::schedule;
use jiff::Timestamp;
use std::time::{Duration, Instant};

/// It is looked as often as a teacher might.
const EVERY: Duration = Duration::from_millis(200);

/// Something that went wrong, and whether anybody could see it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Caught {
    /// What went wrong, and where.
    pub(crate) staged: Staged,
    /// Whether it happened at all before the end.
    pub(crate) happened: bool,
    /// Whether the run page showed it, or the teacher dealt with it.
    pub(crate) shown: bool,
}

pub(super) struct Watch<'a> {
    stage: &'a Stage,
    caught: Vec<Caught>,
    looked: Option<Instant>,
}

impl<'a> Watch<'a> {
    pub(super) fn new(stage: &'a Stage) -> Self {
        let caught = stage.script.staged.iter();
        let caught =
            caught.map(|staged| Caught { staged: *staged, happened: false, shown: false });
        Self { stage, caught: caught.collect(), looked: None }
    }

    /// Looks, unless it has just looked.
    pub(super) fn look(&mut self) {
        if self.looked.is_some_and(|looked| looked.elapsed() < EVERY) {
            return;
        }
        self.looked = Some(Instant::now());
        let now = self.stage.clock.now();
        let (period, caught) = (&self.stage.script.period, &mut self.caught);
        self.stage.room.read(|scene| look(scene, period, now, caught));
    }

    pub(super) fn caught(mut self) -> Vec<Caught> {
        self.looked = None;
        self.look();
        self.caught
    }
}

fn look(scene: &Scene<'_>, period: &str, now: Timestamp, caught: &mut [Caught]) {
    let slips = slips_shown(scene, period, now);
    let Some(planned) = scene.plan.period(period) else { return };
    let standing = scene.standing();
    let schedule = schedule(scene.plan, planned, standing.periods.get(period));
    let lines = board(scene.plan, &schedule, standing, planned, now).lines;
    let late = |bag: BagCode, minute: Option<u32>| {
        lines.iter().any(|line| {
            let planned = match line.state {
                State::Late { planned, .. } => Some(planned),
                _ => None,
            };
            line.code == bag && planned.is_some() && planned == minute
        })
    };
    for one in caught {
        let Staged { mishap, bag, planned, .. } = one.staged;
        let Some(stands) = standing.bags.get(&bag) else { continue };
        let read = |minute: u32| {
            stands.readings.iter().find(|reading| reading.planned == Some(minute))
        };
        let passed = |minute: u32| {
            let latest = stands.readings.iter().filter_map(|reading| reading.planned).max();
            latest.is_some_and(|latest| latest > minute)
        };
        one.happened |= match (mishap, planned) {
            (Mishap::Missed, Some(minute)) => {
                late(bag, planned) || passed(minute) || stands.vented.is_some()
            }
            (Mishap::Leak, Some(minute)) => passed(minute),
            (Mishap::Unit | Mishap::Transposed | Mishap::Late, Some(minute)) => {
                read(minute).is_some()
            }
            _ => stands.zero.is_some() && !stands.readings.is_empty(),
        };
        let reading = planned.and_then(read);
        let mended = reading.is_some_and(|one| !one.mended.is_empty());
        let dealt_with = stands.set_aside.is_some() || stands.truth.is_some() || mended;
        let shown = slips.iter().any(|slip| one.staged.is_told_by(slip));
        let on_board = matches!(mishap, Mishap::Missed | Mishap::Late) && late(bag, planned);
        let tapped = mishap == Mishap::Leak && !stands.odd.is_empty();
        one.shown |= shown || dealt_with || on_board || tapped;
    }
}
