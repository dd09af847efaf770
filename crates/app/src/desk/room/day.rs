//! What the day's readings teach, worked out beside the requests: it takes seconds.

use super::results::what_counts;
use super::{Room, Scene, Scope, Shelf};
use crate::desk::{DeskError, Unheard, day_of_record};
use barm_domain::pilot::{LotDay, class_days};
use barm_domain::plan::Plan;
use barm_domain::record::Counted;
use barm_domain::result::taught::DayTaught;
use barm_domain::result::{ClassResult, analyze};
use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::Ordering;

/// How far it has come.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum DayLook {
    /// A class is at work, or no bag was read yet.
    Waits,
    /// It is being worked out.
    Working,
    /// There it is.
    There(Arc<DayTaught>),
    /// The readings teach nothing: why.
    Lost(String),
}

/// All that it is worked out from.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct DayGround {
    plan: Plan,
    counted: Counted,
    /// How warm the water was at pouring (°C), by bag.
    poured: BTreeMap<String, f64>,
}

/// What came of it.
pub(super) type DayFound = (Arc<DayGround>, DayLook);

impl DayGround {
    /// What there is to go by; nothing while a period runs, for a class needs the computer more.
    pub(super) fn of(scene: &Scene<'_>) -> Option<Self> {
        let standing = scene.standing();
        let runs =
            standing.periods.values().any(|one| one.began.is_some() && one.ended.is_none());
        if runs {
            return None;
        }
        let (plan, counted) = what_counts(scene);
        let warmth = standing.bags.iter().filter_map(|(code, bag)| {
            Some((code.to_string(), bag.made.as_ref()?.water_celsius?))
        });
        let poured = warmth.collect();
        (!counted.readings.is_empty()).then_some(Self { plan, counted, poured })
    }
}

/// What a class found by what counts of its record, without forecasts.
#[derive(Debug)]
pub(super) struct ByReadings {
    /// The plan with each bag as what it is in truth.
    pub(super) plan: Plan,
    counted: Counted,
    /// What was found.
    pub(super) result: ClassResult,
}

impl Room {
    /// What the class found by what is on record now; worked out once, for page after page asks for it.
    pub(super) fn found(&self) -> Arc<ByReadings> {
        let (plan, counted) = self.read(what_counts);
        let known = self.state().found.clone();
        if let Some(known) = known.filter(|one| one.plan == plan && one.counted == counted) {
            return known;
        }
        let result = analyze(&plan, &[], &counted.readings, &counted.set_aside);
        let found = Arc::new(ByReadings { plan, counted, result });
        self.state_mut().found = Some(found.clone());
        found
    }

    /// What the day teaches, as far as it was worked out for what is on record now; begins to work it out
    /// where it was not. Listeners of the teacher's pages hear when it is there.
    pub(crate) fn day(self: &Arc<Self>) -> DayLook {
        let Some(ground) = self.read(DayGround::of) else { return DayLook::Waits };
        if let Some(known) = self.day_known(&ground) {
            return known;
        }
        if self.learning.swap(true, Ordering::AcqRel) {
            return DayLook::Working;
        }
        let room = Arc::clone(self);
        rayon::spawn(move || room.work_out_day(ground));
        DayLook::Working
    }

    /// The same, while the caller waits for it: seconds. Leaves it to whoever is at it already.
    pub(super) fn learn_day(self: &Arc<Self>) {
        let Some(ground) = self.read(DayGround::of) else { return };
        if self.day_known(&ground).is_none() && !self.learning.swap(true, Ordering::AcqRel) {
            self.work_out_day(ground);
        }
    }

    fn work_out_day(self: &Arc<Self>, ground: DayGround) {
        let ground = Arc::new(ground);
        let of = ground.as_ref().clone();
        let found = match day_of_record(&of.plan, of.counted, &of.poured, &Unheard) {
            Ok(Some(taught)) => DayLook::There(Arc::new(taught)),
            Ok(None) => DayLook::Waits,
            Err(DeskError::Day(why)) => DayLook::Lost(why.to_string()),
            Err(error) => DayLook::Lost(error.to_string()),
        };
        self.state_mut().day = Some((ground, found));
        self.learning.store(false, Ordering::Release);
        self.go_on_with_next();
        self.pulse.beat(|scope| *scope == Scope::Teacher);
    }

    /// What the day's readings say by themselves of the lots in use: nothing yet where they have to be worked out, and
    /// an empty list where they say nothing, or where bags were sealed under other lots than those in use now.
    pub(crate) fn lots_of_day(&self) -> Option<Vec<LotDay>> {
        let Some(ground) = self.read(DayGround::of) else { return Some(Vec::new()) };
        if self.read(|scene| !scene.lots_of_sealed().is_empty()) {
            return Some(Vec::new());
        }
        let date = ground.plan.days.first().map(|day| day.date).unwrap_or_default();
        Some(match self.day_known(&ground)? {
            DayLook::There(taught) => class_days(&ground.plan.known, &taught.learned, date),
            _ => Vec::new(),
        })
    }

    /// What was worked out for just that.
    fn day_known(&self, ground: &DayGround) -> Option<DayLook> {
        let state = self.state();
        let (of, found) = state.day.as_ref()?;
        (of.as_ref() == ground).then(|| found.clone())
    }

    /// The same for what is on record now, without beginning anything.
    pub(super) fn day_there(&self) -> Option<Arc<DayTaught>> {
        let ground = self.read(DayGround::of)?;
        match self.day_known(&ground)? {
            DayLook::There(taught) => Some(taught),
            _ => None,
        }
    }
}

impl Shelf {
    /// Works out what days teach, one after the other in the background; nothing where that goes on already.
    pub(crate) fn learn_days(&self, rooms: Vec<Arc<Room>>) {
        if rooms.is_empty() || self.learning.swap(true, Ordering::AcqRel) {
            return;
        }
        let learning = Arc::clone(&self.learning);
        rayon::spawn(move || {
            rooms.iter().for_each(|room| room.learn_day());
            learning.store(false, Ordering::Release);
        });
    }
}
