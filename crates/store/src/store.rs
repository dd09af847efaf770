//! The store: one writer, many readers.

use crate::backup;
use crate::clean;
use crate::failure::StoreError;
use crate::folder::{self, Held};
use crate::line::Line;
#[cfg(feature = "postgres")]
use crate::line::Server;
#[cfg(feature = "postgres")]
use crate::listen::Listening;
use crate::migrate::migrate;
use crate::notice::Notices;
use crate::pool::{Pool, Source};
use crate::writer::{Job, Writer};
use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::{self, Sender};
use std::thread::{self, JoinHandle};

/// Where a record lies.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// A folder on this computer's own disk; the record is a SQLite file in it.
    Folder(PathBuf),
    /// A PostgreSQL database, by its address such as `postgresql://barm@localhost/barm`.
    #[cfg(feature = "postgres")]
    Postgres(String),
}

/// An open record. Copies of it are one and the same; the record is closed with the last.
///
/// Every call waits: for the disk if it writes, for an answer if it reads. The only exception is
/// [`Store::append_then`]. Asynchronous code calls it from a thread that may wait.
#[derive(Clone)]
pub struct Store {
    inner: Arc<Inner>,
}

struct Inner {
    jobs: Option<Sender<Job>>,
    writing: Option<JoinHandle<()>>,
    pool: Arc<Pool>,
    notices: Arc<Notices>,
    #[cfg(feature = "postgres")]
    _listening: Option<Listening>,
}

impl std::fmt::Debug for Store {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Store").finish_non_exhaustive()
    }
}

impl Store {
    /// Opens the record, making it if there is none, after a quick check that it is sound. Before
    /// tables of an older program are changed, a copy of the file is put beside it as a backup.
    ///
    /// # Errors
    /// One sentence that says what is in the way: the folder takes no writing, another program
    /// has it open, the file is something else, damaged or from a newer program, the disk is full.
    pub fn open(place: &Place) -> Result<Self, StoreError> {
        match place {
            Place::Folder(folder) => {
                let held = folder::hold(folder)?;
                let lite = folder::open_for_writing(folder)?;
                let mut line = Line::Sqlite(lite);
                backup::before_upgrade(&mut line, folder)?;
                migrate(&mut line, &folder.display().to_string())?;
                clean::catch_up(&mut line)?;
                let source = Source::File(folder::record_in(folder));
                Self::start(line, source, Some(held))
            }
            #[cfg(feature = "postgres")]
            Place::Postgres(address) => {
                let server = Server::open(address)?;
                let shown = server.place.clone();
                let mut line = Line::Postgres(Box::new(server));
                migrate(&mut line, &shown)?;
                Self::start(line, Source::Server(address.clone()), None)
            }
        }
    }

    fn start(line: Line, source: Source, held: Option<Held>) -> Result<Self, StoreError> {
        let origin = getrandom::u64().map_err(|error| StoreError::Engine {
            place: "this computer".into(),
            said: error.to_string(),
        })?;
        let notices = Arc::new(Notices::new(origin));
        #[cfg(feature = "postgres")]
        let listening = match &source {
            Source::File(_) => None,
            Source::Server(address) => Some(Listening::start(address, &notices)?),
        };
        let pool = Arc::new(Pool::new(source.clone()));
        let (jobs, waiting) = mpsc::channel();
        let writer = Writer {
            line,
            pool: Arc::clone(&pool),
            source,
            notices: Arc::clone(&notices),
            known: BTreeSet::new(),
            held,
        };
        let writing = thread::Builder::new()
            .name("record".into())
            .spawn(move || writer.work(&waiting))
            .map_err(|source| StoreError::File {
                doing: "start a thread for",
                path: "the record".into(),
                source,
            })?;
        let inner = Inner {
            jobs: Some(jobs),
            writing: Some(writing),
            pool,
            notices,
            #[cfg(feature = "postgres")]
            _listening: listening,
        };
        Ok(Self { inner: Arc::new(inner) })
    }

    /// Reads with a connection of one's own.
    pub(crate) fn read<T>(
        &self,
        work: impl FnOnce(&mut Line) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        self.inner.pool.read(work)
    }

    /// Writes all of `work` or nothing, on the writing thread, and waits until it is on disk.
    pub(crate) fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Line) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        self.with_writer(|writer| writer.line.alone(work))
    }

    /// Lets the writing thread do something between two commits, and waits for it.
    pub(crate) fn with_writer<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Writer) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let (tell, told) = mpsc::sync_channel(1);
        self.hand_in(Job::Other(Box::new(move |writer| {
            // Whoever asked is waiting below.
            let _ = tell.send(work(writer));
        })));
        told.recv().unwrap_or(Err(StoreError::Closed))
    }

    /// Gives the writing thread something to do. If that thread is gone, the job is dropped, and
    /// whoever waits for it learns so.
    pub(crate) fn hand_in(&self, job: Job) {
        let left = match &self.inner.jobs {
            Some(jobs) => jobs.send(job).err().map(|unsent| unsent.0),
            None => Some(job),
        };
        if let Some(Job::Append { then, .. }) = left {
            then(Err(StoreError::Closed));
        }
    }

    pub(crate) fn notices(&self) -> &Notices {
        &self.inner.notices
    }
}

impl Drop for Inner {
    fn drop(&mut self) {
        // The writer ends when nobody can hand in anything any more.
        self.jobs = None;
        if let Some(writing) = self.writing.take()
            && writing.thread().id() != thread::current().id()
        {
            // It catches what could panic in it; there is nobody left to tell anyway.
            let _ = writing.join();
        }
    }
}
