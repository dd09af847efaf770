//! The data folder: the record on disk, and the rooms that are open.

use super::whole_check::Checkup;
use super::{Investigation, Kind, Room};
use crate::desk::shared::YearsKept;
use crate::desk::{DeskError, doors::Doors};
use barm_documents::plan_text;
use barm_domain::record::{Key, WordsKey};
use barm_store::{Place, Store};
use jiff::Timestamp;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

/// Everything that a teacher has, and who may look at it.
pub(crate) struct Shelf {
    /// Where it lies.
    pub(crate) folder: PathBuf,
    /// Who comes in.
    pub(crate) doors: Doors,
    pub(super) store: Store,
    /// How often an investigation was replayed.
    replays: AtomicUsize,
    rooms: Mutex<BTreeMap<i64, Arc<Room>>>,
    /// What the last full check found, since the program was started.
    checkup: Mutex<Option<Checkup>>,
    /// Whether lines of the shelf are being worked out in the background.
    pub(super) counting: AtomicBool,
    /// Whether what class days teach is being worked out for the whole shelf.
    pub(super) learning: Arc<AtomicBool>,
    /// What was worked out of its classes beside each other.
    pub(in crate::desk) years: Mutex<YearsKept>,
}

impl Shelf {
    /// Opens a data folder, making it if it is not there. Waits for the disk.
    pub(crate) fn open(folder: &Path, now: Timestamp) -> Result<Self, DeskError> {
        Self::open_at(folder, &Place::Folder(folder.to_owned()), now)
    }

    /// Opens a record on a server; the folder holds what belongs to this computer, such as the log.
    /// Waits for the network.
    pub(crate) fn open_on_server(
        folder: &Path,
        address: &str,
        now: Timestamp,
    ) -> Result<Self, DeskError> {
        Self::open_at(folder, &Place::Postgres(address.to_owned()), now)
    }

    fn open_at(folder: &Path, place: &Place, now: Timestamp) -> Result<Self, DeskError> {
        let store = Store::open(place)?;
        let doors = Doors::open(&store, now)?;
        let (folder, rooms) = (folder.to_owned(), Mutex::default());
        let (checkup, counting) = (Mutex::default(), AtomicBool::new(false));
        Ok(Self {
            folder,
            doors,
            store,
            replays: AtomicUsize::new(0),
            rooms,
            checkup,
            counting,
            learning: Arc::default(),
            years: Mutex::default(),
        })
    }

    /// What the last full check found, if one was made since the start.
    pub(crate) fn checkup(&self) -> Option<Checkup> {
        self.checkup.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    pub(super) fn keep_checkup(&self, found: Checkup) {
        *self.checkup.lock().unwrap_or_else(PoisonError::into_inner) = Some(found);
    }

    /// Replays an investigation without keeping it open. Waits for the disk.
    pub(in crate::desk) fn replay(
        &self,
        of: &Investigation,
        now: Timestamp,
    ) -> Result<Room, DeskError> {
        self.replays.fetch_add(1, Ordering::Relaxed);
        Room::open(&self.store, of, now)
    }

    /// All investigations, in the order in which they were made. Waits for the disk.
    pub(crate) fn investigations(&self) -> Result<Vec<Investigation>, DeskError> {
        Ok(self.store.investigations()?)
    }

    /// Puts a new investigation on the shelf with the first version of its plan, which must be
    /// sound. What no class read and what one read never lie on one shelf. Waits for the disk.
    pub(crate) fn begin(
        &self,
        text: &str,
        kind: Kind,
        key: Key,
        now: Timestamp,
    ) -> Result<Arc<Room>, DeskError> {
        match kind {
            Kind::Rehearsal => self.must_not_hold(Kind::Real)?,
            Kind::Real => self.must_not_hold(Kind::Rehearsal)?,
            Kind::Invented => {}
        }
        let read = plan_text::read(text.as_bytes());
        let plan = match read.plan {
            Some(plan) if read.mistakes.is_empty() => plan,
            _ => return Err(DeskError::Unsound(read.mistakes)),
        };
        let made = self.store.add_investigation(&plan.title, kind, now)?;
        self.store.save_plan(made.id, text, now)?;
        let room = self.room(made.id, now)?;
        room.note_plan(1, key, now)?;
        Ok(room)
    }

    /// Refuses if one of this kind is on the shelf. Waits for the disk.
    pub(crate) fn must_not_hold(&self, kind: Kind) -> Result<(), DeskError> {
        let there = self.store.investigations()?.iter().any(|one| one.kind == kind);
        let folder = || self.folder.clone();
        match kind {
            _ if !there => Ok(()),
            Kind::Rehearsal => Err(DeskError::OfARehearsal { folder: folder() }),
            Kind::Real | Kind::Invented => Err(DeskError::NotForRehearsal { folder: folder() }),
        }
    }

    /// A room; opened if it is not open yet. Waits for the disk the first time.
    pub(crate) fn room(&self, id: i64, now: Timestamp) -> Result<Arc<Room>, DeskError> {
        if let Some(room) = self.open_room(id) {
            return Ok(room);
        }
        let all = self.store.investigations()?;
        let of = all.into_iter().find(|one| one.id == id);
        let of = of.ok_or(DeskError::NoInvestigation { id })?;
        // Two who come at once must get the same room.
        let mut rooms = self.rooms.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(room) = rooms.get(&id) {
            return Ok(room.clone());
        }
        let room = Arc::new(self.replay(&of, now)?);
        rooms.insert(id, room.clone());
        Ok(room)
    }

    /// The plan of the day, worked out from what is on disk.
    #[cfg(test)]
    pub(crate) fn replay_anew(&self, id: i64, now: Timestamp) -> Arc<barm_domain::plan::Plan> {
        let all = self.store.investigations().expect("a list");
        let of = all.into_iter().find(|one| one.id == id).expect("it is there");
        self.replay(&of, now).expect("a room").read(|scene| scene.plan.clone())
    }

    /// A room that is open already.
    pub(crate) fn open_room(&self, id: i64) -> Option<Arc<Room>> {
        self.rooms.lock().unwrap_or_else(PoisonError::into_inner).get(&id).cloned()
    }

    /// Keeps words that a person wrote. Waits for the disk.
    pub(crate) fn keep_words(
        &self,
        id: i64,
        key: WordsKey,
        kind: &str,
        text: &str,
    ) -> Result<bool, DeskError> {
        Ok(self.store.keep_words(id, key, kind, text)?)
    }
    /// How often an investigation was replayed so far.
    #[cfg(test)]
    pub(crate) fn replays(&self) -> usize {
        self.replays.load(Ordering::Relaxed)
    }
    /// Investigations that are open.
    #[cfg(test)]
    pub(crate) fn rooms_open(&self) -> usize {
        self.rooms.lock().unwrap_or_else(PoisonError::into_inner).len()
    }
    /// All words of an investigation. Waits for the disk.
    #[cfg(test)]
    pub(crate) fn words_of(&self, id: i64) -> Vec<(WordsKey, String, String)> {
        self.store.all_words(id).expect("they can be read")
    }
    /// The words under a key, if they were not deleted. Waits for the disk.
    #[cfg(test)]
    pub(crate) fn words(&self, key: WordsKey) -> Result<Option<String>, DeskError> {
        Ok(self.store.words(key)?)
    }
}
