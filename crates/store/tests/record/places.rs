//! The places on which every story is told.

use crate::server::Server;
use barm_store::{Place, Store};
use std::path::PathBuf;
use tempfile::TempDir;

/// A place for a record, gone when dropped.
pub(crate) struct Ground {
    pub(crate) place: Place,
    _folder: Option<TempDir>,
    server: Option<Server>,
}

impl Ground {
    /// An empty folder.
    pub(crate) fn folder() -> Self {
        let folder = TempDir::new().expect("a folder");
        let place = Place::Folder(folder.path().join("record"));
        Self { place, _folder: Some(folder), server: None }
    }

    /// An empty database, if there is a server to be had.
    pub(crate) fn server() -> Option<Self> {
        let server = Server::start()?;
        let place = Place::Postgres(server.address());
        Some(Self { place, _folder: None, server: Some(server) })
    }

    /// The files of a server's databases.
    pub(crate) fn tables(&self) -> PathBuf {
        self.server.as_ref().expect("a server").tables()
    }

    pub(crate) fn open(&self) -> Store {
        Store::open(&self.place).unwrap_or_else(|error| panic!("{error}"))
    }
}

/// Tells a story on both engines.
pub(crate) fn tell(story: impl Fn(&Ground)) {
    story(&Ground::folder());
    if let Some(ground) = Ground::server() {
        story(&ground);
    }
}
