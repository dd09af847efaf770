//! What the newest pilot taught, worked out once and again after the program was started anew.

use crate::desk::editing::Chart;
use crate::desk::pilot::{
    self, bag_charts, changes, foreseen, range_chart, taught, treatments,
};
use crate::desk::room::{Room, Scope};
use crate::desk::{Lesson, Unheard, Wording, say};
use barm_domain::pilot::PilotFault;
use std::sync::{Arc, Mutex, PoisonError};

/// What is worked out for the page of one version.
#[derive(Debug, Default)]
pub(crate) struct PilotDesk {
    shown: Mutex<Shown>,
}

#[derive(Debug, Default)]
struct Shown {
    version: u32,
    lesson: Option<Result<Arc<Lesson>, Vec<PilotFault>>>,
    /// Whether the plan's forecasts before and after are among it, or cannot be.
    whole: bool,
    working: bool,
}

/// What the newest pilot taught, as it is shown.
#[derive(Debug, Default)]
pub(crate) struct Learned {
    /// What was measured and how much is known better, in a sentence.
    pub(crate) summary: String,
    /// Numbers before and after.
    pub(crate) changes: Option<Chart>,
    /// The plan's treatments before and after, at the last reading.
    pub(crate) treatments: Option<Chart>,
    /// Each bag with yeast, before and after.
    pub(crate) bags: Vec<Chart>,
    /// What a person should know or look at again.
    pub(crate) notes: Vec<String>,
    /// What the readings left open.
    pub(crate) unmoved: Vec<String>,
    /// Whether something is still being worked out.
    pub(crate) working: bool,
    /// Whether the plan is now such that the readings do not fit it any more.
    pub(crate) outgrown: bool,
}

impl Learned {
    /// What a lesson says.
    pub(crate) fn of(w: Wording, lesson: &Lesson) -> Self {
        let notes = lesson.notes.iter().cloned().chain(lesson.warnings()).collect();
        Self {
            summary: pilot::summary(lesson),
            changes: range_chart(w, &say!(w, "pilot-changes"), &changes(lesson)),
            treatments: range_chart(w, &say!(w, "pilot-treatments"), &treatments(lesson)),
            bags: bag_charts(w, lesson),
            notes,
            unmoved: lesson.taught.unmoved.clone(),
            working: false,
            outgrown: false,
        }
    }
}

impl PilotDesk {
    fn with<T>(&self, version: u32, work: impl FnOnce(&mut Shown) -> T) -> T {
        let mut shown = self.shown.lock().unwrap_or_else(PoisonError::into_inner);
        if shown.version < version {
            *shown = Shown { version, ..Shown::default() };
        }
        work(&mut shown)
    }
}

/// Shows what was learned when that version was saved.
pub(super) fn keep_learned(room: &Room, version: u32, lesson: Lesson) {
    room.pilot_desk.with(version, |shown| shown.lesson = Some(Ok(Arc::new(lesson))));
}

/// What the newest pilot taught, as far as it was worked out; nothing if there is no sheet. What is
/// missing is worked out in the background.
pub(super) fn learned(room: &Arc<Room>, w: Wording) -> Option<Learned> {
    let kept = room.kept_pilot();
    let read = kept.read()?;
    let version = room.read(|scene| scene.version);
    let (lesson, whole, start) = room.pilot_desk.with(version, |shown| {
        let start = !shown.whole && !shown.working;
        shown.working |= start;
        (shown.lesson.clone(), shown.whole, start)
    });
    if start {
        let room = Arc::clone(room);
        let before = kept.before();
        let lesson = lesson.clone();
        rayon::spawn(move || {
            let plan = room.read(|scene| scene.newest.clone());
            let date = read.date.unwrap_or_default();
            let lesson = lesson.unwrap_or_else(|| match taught(&plan, &read, &before, date) {
                Ok(found) => found.map(|found| Arc::new(pilot::lesson(found, Vec::new()))),
                Err(_) => Err(Vec::new()),
            });
            let whole = lesson.map(|lesson| {
                let was = foreseen(&plan, &before, &Unheard);
                let is = foreseen(&plan, &kept.lots, &Unheard);
                let outlooks = was.zip(is);
                let (taught, notes) = (lesson.taught.clone(), lesson.notes.clone());
                Arc::new(Lesson { outlooks, ..pilot::lesson(taught, notes) })
            });
            room.pilot_desk.with(version, |shown| {
                if shown.version == version {
                    (shown.lesson, shown.whole, shown.working) = (Some(whole), true, false);
                }
            });
            room.pulse.beat(|scope| *scope == Scope::Teacher);
        });
    }
    Some(match lesson {
        Some(Ok(lesson)) => Learned { working: !whole, ..Learned::of(w, &lesson) },
        Some(Err(_)) => Learned { outgrown: true, ..Learned::default() },
        None => Learned { working: true, ..Learned::default() },
    })
}
