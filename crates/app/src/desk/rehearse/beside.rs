//! A rehearsal that runs beside the record, on the same computer.

use super::{Drive, Report, Stage, Wish, rehearse, stage_bytes};
use crate::desk::room::Room;
use crate::desk::{DeskError, Progress};
use std::path::Path;
use std::sync::Mutex;
use std::sync::PoisonError;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

/// A rehearsal from its beginning to its end.
pub(crate) struct Beside {
    /// The investigation whose plan is rehearsed.
    pub(crate) of: i64,
    /// What is rehearsed, and on what clock.
    pub(crate) stage: Stage,
    stop: AtomicBool,
    done: AtomicUsize,
    went: Mutex<Option<Result<Report, DeskError>>>,
}

impl Beside {
    /// Gets one ready in a folder of its own below the record's. Waits for the disk and works out
    /// every bag.
    pub(crate) fn of(room: &Room, record: &Path, wish: Wish<'_>) -> Result<Self, DeskError> {
        let text = room.plan_text(room.read(|scene| scene.version))?;
        let name = room.read(|scene| scene.plan.title.clone());
        let folder = record.join("rehearsal");
        let lots = &room.kept_pilot().lots;
        let stage = stage_bytes(text.as_bytes(), Path::new(&name), &folder, wish, lots)?;
        Ok(Self {
            of: room.id,
            stage,
            stop: AtomicBool::new(false),
            done: AtomicUsize::new(0),
            went: Mutex::default(),
        })
    }

    /// Drives the groups until they are done or it is stopped. The server must be listening.
    pub(crate) fn drive(&self, port: u16) {
        let drive = Drive { port, alone: false };
        let went = rehearse(&self.stage, drive, &self.stop, self);
        *self.went.lock().unwrap_or_else(PoisonError::into_inner) = Some(went);
    }

    /// The groups type nothing more.
    pub(crate) fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// Entries typed so far, and of how many.
    pub(crate) fn so_far(&self) -> (usize, usize) {
        (self.done.load(Ordering::Relaxed), self.stage.script.steps())
    }

    /// What is read of how it went, once it is over.
    pub(crate) fn went<T>(
        &self,
        read: impl FnOnce(&Result<Report, DeskError>) -> T,
    ) -> Option<T> {
        self.went.lock().unwrap_or_else(PoisonError::into_inner).as_ref().map(read)
    }
}

impl Progress for Beside {
    fn step(&self, _: &'static str, done: usize, _: usize) {
        self.done.store(done, Ordering::Relaxed);
    }
}
