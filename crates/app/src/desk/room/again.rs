//! What a class could make next, worked out beside the requests: it takes up to a minute.

use super::day::{DayGround, DayLook};
use super::results::{analysis, what_counts};
use super::{Kind, Room, Scope, Shelf};
use crate::desk::{self, DeskError, Next, Progress, next_of};
use barm_documents::plan_text;
use barm_domain::plan::Plan;
use barm_domain::record::Counted;
use barm_domain::round_two::{By, Handed, Pooled, Proposal, pool};
use jiff::Timestamp;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// How far it has come.
#[derive(Debug, Clone)]
pub(crate) enum NextLook {
    /// Nobody asked for it, or something else is on record since.
    NotAsked,
    /// A class is at work, or no bag was read yet.
    Waits,
    /// It is being worked out: so many of so many second rounds are weighed.
    Working(usize, usize),
    /// There it is.
    There(Arc<Next>),
    /// It could not be: why.
    Lost(String),
}

/// What was worked out, and from what.
#[derive(Debug)]
pub(super) struct NextFound {
    ground: DayGround,
    by: By,
    look: NextLook,
    weighed: Arc<Weighed>,
    /// Whether weighing has begun: before that it has to be known what the day teaches.
    begun: bool,
}

/// How many second rounds are weighed.
#[derive(Debug, Default)]
struct Weighed {
    done: AtomicUsize,
    of: AtomicUsize,
}

/// Counts, and lets pages of the teacher know now and then.
struct Telling {
    weighed: Arc<Weighed>,
    room: Arc<Room>,
}

impl Progress for Telling {
    fn step(&self, _: &'static str, done: usize, of: usize) {
        let before = self.weighed.done.swap(done, Ordering::Relaxed);
        self.weighed.of.store(of, Ordering::Relaxed);
        if done / 10 != before / 10 {
            self.room.pulse.beat(|scope| *scope == Scope::Teacher);
        }
    }
}

impl Room {
    /// How far it has come with what is on record now, ranked by that.
    pub(crate) fn next(&self, by: By) -> NextLook {
        let Some(ground) = self.read(DayGround::of) else { return NextLook::Waits };
        let state = self.state();
        match &state.next {
            Some(found) if found.ground == ground && found.by == by => match &found.look {
                NextLook::Working(..) => NextLook::Working(
                    found.weighed.done.load(Ordering::Relaxed),
                    found.weighed.of.load(Ordering::Relaxed),
                ),
                look => look.clone(),
            },
            _ => NextLook::NotAsked,
        }
    }

    /// Begins to work it out, unless it is there or under way.
    pub(crate) fn begin_next(self: &Arc<Self>, by: By) {
        let Some(ground) = self.read(DayGround::of) else { return };
        {
            let mut state = self.state_mut();
            let known = state.next.as_ref();
            if known.is_some_and(|found| found.ground == ground && found.by == by) {
                return;
            }
            let weighed = Arc::default();
            let look = NextLook::Working(0, 0);
            state.next = Some(NextFound { ground, by, look, weighed, begun: false });
        }
        self.go_on_with_next();
    }

    /// Begins to weigh second rounds that were asked for, once it is known what the day teaches. Whoever learns that
    /// calls this at the end.
    pub(super) fn go_on_with_next(self: &Arc<Self>) {
        // What was asked of another record is asked anew.
        let ground = self.read(DayGround::of);
        let waits = |found: &NextFound| !found.begun && Some(&found.ground) == ground.as_ref();
        if !self.state().next.as_ref().is_some_and(waits) {
            return;
        }
        let day = match self.day() {
            DayLook::Working => return,
            DayLook::Waits => Ok(None),
            DayLook::There(taught) => Ok(Some(taught.as_ref().clone())),
            DayLook::Lost(why) => Err(why),
        };
        let (ground, by, weighed) = match &mut self.state_mut().next {
            Some(found) if waits(found) => {
                found.begun = true;
                (found.ground.clone(), found.by, found.weighed.clone())
            }
            _ => return,
        };
        let room = Arc::clone(self);
        rayon::spawn(move || {
            let telling = Telling { weighed, room: room.clone() };
            let found = analysis(&room).and_then(|(plan, analysis, _)| {
                next_of(&plan, &analysis.result, day, by, &telling)
            });
            let look = match found {
                Ok(next) => NextLook::There(Arc::new(next)),
                Err(error) => NextLook::Lost(error.to_string()),
            };
            if let Some(found) = &mut room.state_mut().next
                && found.ground == ground
                && found.by == by
            {
                found.look = look;
            }
            room.pulse.beat(|scope| *scope == Scope::Teacher);
        });
    }
}

/// Puts the plan of a proposal, by its rank from 1, on the shelf as an investigation of its own; gives its number.
/// Waits for the disk.
pub(crate) fn take_next(
    shelf: &Shelf,
    room: &Room,
    by: By,
    rank: usize,
    now: Timestamp,
) -> Result<Option<i64>, DeskError> {
    let NextLook::There(next) = room.next(by) else { return Ok(None) };
    let Proposal { plan, .. } = desk::proposal(&next, rank)?;
    let old = room.plan_text(room.read(|scene| scene.version))?;
    let text = plan_text::write(plan, &old);
    // What follows an invented day is invented too.
    let kind = if room.kind == Kind::Invented { Kind::Invented } else { Kind::Real };
    Ok(Some(super::plans::begin(shelf, &text, kind, now)?))
}

/// Both rounds together, by what is on record of each.
pub(crate) fn both(first: &Room, second: &Room) -> Result<Pooled, DeskError> {
    let [one, two] = [first, second].map(|room| room.read(what_counts));
    fn handed((plan, counted): &(Plan, Counted)) -> Handed<'_> {
        Handed { plan, readings: &counted.readings, set_aside: &counted.set_aside }
    }
    Ok(pool(&handed(&one), &handed(&two))?)
}
