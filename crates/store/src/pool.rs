//! Connections that only read, each used by one thread at a time.

use crate::failure::StoreError;
#[cfg(feature = "postgres")]
use crate::line::Server;
use crate::line::{Line, Lite};
use std::path::PathBuf;
use std::sync::{Mutex, MutexGuard, PoisonError, RwLock, RwLockWriteGuard};

/// Where connections lead.
#[derive(Debug, Clone)]
pub(crate) enum Source {
    File(PathBuf),
    #[cfg(feature = "postgres")]
    Server(String),
}

impl Source {
    /// A connection that only reads.
    pub(crate) fn reader(&self) -> Result<Line, StoreError> {
        match self {
            Self::File(path) => Ok(Line::Sqlite(Lite::open(path)?.only_reading()?)),
            #[cfg(feature = "postgres")]
            Self::Server(address) => Ok(Line::Postgres(Box::new(Server::open(address)?))),
        }
    }

    /// A connection that writes, to a record that is there.
    pub(crate) fn writer(&self) -> Result<Line, StoreError> {
        match self {
            Self::File(path) => Ok(Line::Sqlite(Lite::open(path)?.durable()?)),
            #[cfg(feature = "postgres")]
            Self::Server(address) => Ok(Line::Postgres(Box::new(Server::open(address)?))),
        }
    }
}

/// The readers that are not at work.
pub(crate) struct Pool {
    source: Source,
    idle: Mutex<Vec<Line>>,
    /// Closed while deleted words are wiped: a reader would keep them alive.
    gate: RwLock<()>,
}

impl Pool {
    pub(crate) const fn new(source: Source) -> Self {
        Self { source, idle: Mutex::new(Vec::new()), gate: RwLock::new(()) }
    }

    /// Reads with a connection of one's own.
    pub(crate) fn read<T>(
        &self,
        work: impl FnOnce(&mut Line) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let _open = self.gate.read().unwrap_or_else(PoisonError::into_inner);
        let mut idle = self.idle().pop();
        if idle.as_mut().is_some_and(|line| !line.is_alive()) {
            idle = None;
        }
        let mut line = idle.map_or_else(|| self.source.reader(), Ok)?;
        let found = work(&mut line);
        self.idle().push(line);
        found
    }

    /// Keeps all readers out until the answer is dropped.
    pub(crate) fn keep_out(&self) -> RwLockWriteGuard<'_, ()> {
        let closed = self.gate.write().unwrap_or_else(PoisonError::into_inner);
        self.idle().clear();
        closed
    }

    fn idle(&self) -> MutexGuard<'_, Vec<Line>> {
        self.idle.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
