//! Everything in the store that differs between operating systems.

use crate::failure::StoreError;
use std::fs::File;
use std::path::Path;

/// Puts what was renamed or made in a folder on disk.
pub(crate) fn sync_folder(folder: &Path) -> Result<(), StoreError> {
    // Only Unix can open a folder; elsewhere the system sees to it.
    if cfg!(unix) {
        let sync = File::open(folder).and_then(|file| file.sync_all());
        sync.map_err(|error| StoreError::file("write", folder, error))?;
    }
    Ok(())
}

/// The host of a database server as it can be shown; only Unix knows sockets with a path.
#[cfg(feature = "postgres")]
pub(crate) fn host(host: &postgres::config::Host) -> String {
    match host {
        postgres::config::Host::Tcp(name) => name.clone(),
        #[cfg(unix)]
        postgres::config::Host::Unix(path) => path.display().to_string(),
    }
}
