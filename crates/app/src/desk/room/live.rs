//! One investigation while pages look at it.

use super::again::NextFound;
use super::day::{ByReadings, DayFound};
use super::pilot::{KeptPilot, PilotDesk};
use super::shown::open_to;
use super::{Investigation, Kind, Pulse, Scene, Scope};
use crate::desk::{DeskError, Outlook, Unheard, further_days, outlook};
use barm_documents::plan_text;
use barm_domain::outlook::Look;
use barm_domain::pilot::Known as KnownLots;
use barm_domain::plan::Plan;
use barm_domain::record::{Bound, Entry, Face, Key, Known, Ledger, Subject, What, Who};
use barm_store::Store;
use jiff::Timestamp;
use std::cell::Cell;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Arc, PoisonError, RwLock, RwLockReadGuard, RwLockWriteGuard};
use tokio::sync::watch;

/// One investigation of the shelf, kept true while entries come in.
pub(crate) struct Room {
    /// Its number.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    pub(super) store: Store,
    pub(super) pulse: Pulse,
    /// What is worked out for the pilot's page.
    pub(super) pilot_desk: PilotDesk,
    /// The plan whose outlook is being worked out, by [`State::turn`]; 0 for none.
    foreseeing: AtomicU32,
    /// Whether what the day teaches is being worked out.
    pub(super) learning: AtomicBool,
    state: RwLock<State>,
}

/// What changes.
pub(super) struct State {
    pub(super) plans: BTreeMap<u32, Arc<Plan>>,
    pub(super) newest: (u32, Arc<Plan>),
    pub(super) ledger: Ledger,
    /// What every bag is; kept true by [`State::bind`].
    bound: Bound,
    /// Rises with every other plan in `bound`, from 1.
    turn: u32,
    /// The outlook of the plan in `bound`, by its turn.
    pub(super) outlook: Option<(u32, Arc<Outlook>)>,
    /// What the day taught, and from what.
    pub(super) day: Option<DayFound>,
    /// What the class found, and from what.
    pub(super) found: Option<Arc<ByReadings>>,
    /// What could be made next, and from what.
    pub(super) next: Option<NextFound>,
    /// The same by lots that were in use when bags were sealed and are so no longer, by its turn.
    older: (u32, Vec<(KnownLots, Outlook)>),
    /// What pilots found and read, as the newest version has it.
    pub(super) pilot: Arc<KeptPilot>,
}

impl State {
    /// Whether an entry that is on record now may change what a bag is; `first` says that nothing
    /// was on record of it. On a day without an edit no entry does, however many come.
    pub(super) fn must_bind(&self, entry: &Entry, first: bool) -> bool {
        let Subject::Bag(code) = &entry.subject else { return false };
        if !(Ledger::may_bind(&entry.what) || first) {
            return false;
        }
        let decides =
            matches!(entry.what, What::SetRight(_) | What::SetAside { .. } | What::TakenBack);
        if decides || !self.bound.kept.is_empty() {
            return true;
        }
        // A bag that is made by the newest version, or not made yet, is what that version says.
        let (newest, plan) = &self.newest;
        let bag = self.ledger.standing().bags.get(code);
        let version = bag.and_then(|bag| {
            let zero = || self.ledger.version_at(bag.zero.as_ref()?.measured);
            bag.sealed.map(|(_, version)| version).or_else(zero)
        });
        let written = code.to_string();
        version.is_some_and(|version| version != *newest)
            || plan.bags.iter().all(|bag| bag.code != written)
    }

    /// Asks again what every bag is, after an entry that may change it or a new version.
    pub(super) fn bind(&mut self) {
        let mut bound = self.ledger.bind(&self.plans, &self.newest.1);
        if bound.plan == self.bound.plan {
            bound.plan = self.bound.plan.clone();
        } else {
            self.turn = self.turn.wrapping_add(1).max(1);
        }
        self.bound = bound;
    }
}

impl Room {
    /// Opens an investigation. Waits for the disk.
    pub(super) fn open(
        store: &Store,
        of: &Investigation,
        now: Timestamp,
    ) -> Result<Self, DeskError> {
        let mut plans = BTreeMap::new();
        let mut pilot = KeptPilot::default();
        for ((version, text), found) in
            store.plans(of.id)?.into_iter().zip(store.pilots(of.id)?)
        {
            if (&found.lots, &found.readings) != (&pilot.lots_text, &pilot.readings) {
                pilot = KeptPilot::of(found);
            }
            // A version with mistakes cannot be saved; one from a newer program may be there.
            if let Some(mut plan) = plan_text::read(text.as_bytes()).plan {
                plan.known = KnownLots::of(&pilot.lots);
                plans.insert(version, Arc::new(plan));
            }
        }
        let newest = plans.last_key_value().map(|(version, plan)| (*version, plan.clone()));
        let newest = newest.ok_or(DeskError::NoPlan { title: of.title.clone() })?;
        let known = Known::of(plans.values().map(AsRef::as_ref));
        let entries = store.entries(of.id, 0)?.into_iter().map(|(_, entry)| entry);
        let mut ledger = Ledger::of(known, entries);
        let bound = ledger.bind(&plans, &newest.1);
        let first = u64::try_from(now.as_millisecond()).unwrap_or_default();
        Ok(Self {
            id: of.id,
            kind: of.kind,
            store: store.clone(),
            pulse: Pulse::new(first),
            pilot_desk: PilotDesk::default(),
            foreseeing: AtomicU32::new(0),
            learning: AtomicBool::new(false),
            state: RwLock::new(State {
                plans,
                newest,
                ledger,
                bound,
                turn: 1,
                outlook: None,
                day: None,
                found: None,
                next: None,
                older: (0, Vec::new()),
                pilot: Arc::new(pilot),
            }),
        })
    }

    /// Looks at the investigation as it stands. `look` must not wait for anything.
    pub(crate) fn read<T>(&self, look: impl FnOnce(&Scene<'_>) -> T) -> T {
        let _alone = Reading::begin();
        look(&self.scene(&self.state()))
    }

    /// The investigation at one moment.
    pub(super) fn scene<'a>(&self, state: &'a State) -> Scene<'a> {
        let outlook = state.outlook.as_ref().filter(|(of, _)| *of == state.turn);
        Scene {
            investigation: self.id,
            kind: self.kind,
            plan: &state.bound.plan,
            bound: &state.bound,
            newest: &state.newest.1,
            version: state.newest.0,
            plans: &state.plans,
            ledger: &state.ledger,
            outlook: outlook.map(|(_, outlook)| outlook.as_ref()),
            older: if state.older.0 == state.turn { &state.older.1 } else { &[] },
        }
    }

    /// Saves a new version of the plan, which must be sound, and notes it in the record; gives
    /// its number. Waits for the disk and reads the plan: not for asynchronous code.
    pub(crate) fn save_plan(
        &self,
        text: &str,
        key: Key,
        now: Timestamp,
    ) -> Result<u32, DeskError> {
        Self::about_to_wait();
        let read = plan_text::read(text.as_bytes());
        let mut plan = match read.plan {
            Some(plan) if read.mistakes.is_empty() => plan,
            _ => return Err(DeskError::Unsound(read.mistakes)),
        };
        plan.known = self.read(|scene| scene.newest.known.clone());
        let plan = Arc::new(plan);
        let version = self.store.save_plan(self.id, text, now)?;
        {
            let mut state = self.state_mut();
            if version == state.newest.0 {
                return Ok(version);
            }
            state.ledger.learn(Known::of([plan.as_ref()]));
            state.plans.insert(version, plan.clone());
            state.newest = (version, plan);
            state.bind();
        }
        self.note_plan(version, key, now)?;
        Ok(version)
    }

    /// Notes in the record that a version was saved. Waits for the disk.
    pub(super) fn note_plan(
        &self,
        version: u32,
        key: Key,
        now: Timestamp,
    ) -> Result<(), DeskError> {
        let entry = Entry {
            key,
            subject: Subject::Investigation,
            what: What::PlanSaved { version },
            measured: now,
            arrived: now,
            who: Who::Teacher,
        };
        self.enter_and_wait(&[entry])?;
        Ok(())
    }

    /// The text of a version as it was saved. Waits for the disk.
    pub(crate) fn plan_text(&self, version: u32) -> Result<String, DeskError> {
        Self::about_to_wait();
        Ok(self.store.plan(self.id, version)?)
    }

    /// Works out in the background what the plan of the day is expected to do, unless it is known
    /// or under way; for bags that were sealed under other lots, by those as well. Listeners of the
    /// teacher's pages hear when it is there.
    pub(crate) fn foresee(self: &Arc<Self>) {
        let (turn, plan, known, others) = {
            let state = self.state();
            let known = state.outlook.as_ref().is_some_and(|(of, _)| *of == state.turn);
            let scene = self.scene(&state);
            let mut others = scene.lots_of_sealed();
            others.retain(|lots| scene.older.iter().all(|(own, _)| own != lots));
            (state.turn, state.bound.plan.clone(), known, others)
        };
        let nothing = known && others.is_empty();
        if nothing || self.foreseeing.swap(turn, Ordering::AcqRel) == turn {
            return;
        }
        let room = Arc::clone(self);
        rayon::spawn(move || {
            // A plan that cannot be forecast says so on its own page.
            let found = |plan: &Plan| {
                let mut found = outlook(plan, Look::default(), &Unheard).ok()?;
                found.treated.extend(further_days(plan, Look::default(), &Unheard));
                Some(found)
            };
            if !known && let Some(outlook) = found(&plan) {
                room.state_mut().outlook = Some((turn, Arc::new(outlook)));
                room.foresaw();
            }
            for lots in others {
                let Some(outlook) = found(&Plan { known: lots.clone(), ..Plan::clone(&plan) })
                else {
                    continue;
                };
                let mut state = room.state_mut();
                if state.older.0 != turn {
                    state.older = (turn, Vec::new());
                }
                state.older.1.push((lots, outlook));
                drop(state);
                room.foresaw();
            }
            // Whoever asks for another plan meanwhile has put its turn here.
            let _ =
                room.foreseeing.compare_exchange(turn, 0, Ordering::AcqRel, Ordering::Relaxed);
        });
    }

    /// Lets pages know that a forecast is there: those of the teacher, and those to which she opened
    /// it or what rests on it.
    fn foresaw(&self) {
        let state = self.state();
        let open = |face, scope: &Scope| open_to(state.ledger.standing(), face, scope);
        let shows = |scope: &Scope| open(Face::Forecast, scope) || open(Face::Results, scope);
        self.pulse.beat(|scope| *scope == Scope::Teacher || shows(scope));
    }

    /// Puts an outlook in place of the one that is to be worked out.
    #[cfg(test)]
    pub(crate) fn expect(&self, outlook: Outlook) {
        let mut state = self.state_mut();
        state.outlook = Some((state.turn, Arc::new(outlook)));
    }

    /// Hears when what a page shows has changed.
    pub(crate) fn changed(&self, scope: Scope) -> watch::Receiver<u64> {
        self.pulse.listen(scope)
    }

    /// The number of what a page shows; it rises with every change.
    pub(crate) fn number(&self, scope: Scope) -> u64 {
        self.pulse.number(scope)
    }

    /// Says that something outside the record has changed what pages of a period show (or all
    /// pages), such as its codes.
    pub(crate) fn touch(&self, period: Option<&str>) {
        self.pulse.beat(|scope| match (period, scope.period()) {
            (Some(period), Some(own)) => own == period,
            _ => true,
        });
    }

    /// Finds out, in builds for tests, whether this thread is about to wait within a look.
    pub(super) fn about_to_wait() {
        Reading::none();
    }

    pub(super) fn state(&self) -> RwLockReadGuard<'_, State> {
        self.state.read().unwrap_or_else(PoisonError::into_inner)
    }

    pub(super) fn state_mut(&self) -> RwLockWriteGuard<'_, State> {
        self.state.write().unwrap_or_else(PoisonError::into_inner)
    }
}

thread_local! {
    /// Whether this thread looks at a room right now.
    static LOOKING: Cell<bool> = const { Cell::new(false) };
}

/// Somebody looks at a room. Whoever looks must not look again or wait for the disk: the writer
/// may be waiting for the room. Builds for tests find out.
struct Reading;

impl Reading {
    fn begin() -> Self {
        debug_assert!(!LOOKING.replace(true), "a look within a look");
        Self
    }

    /// Whoever is about to wait for the disk must not be looking.
    fn none() {
        debug_assert!(!LOOKING.get(), "waiting for the disk within a look");
    }
}

impl Drop for Reading {
    fn drop(&mut self) {
        LOOKING.set(false);
    }
}
