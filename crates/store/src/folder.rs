//! The folder of a SQLite record: its file, and the lock that keeps a second program out.

use crate::failure::StoreError;
use crate::line::{Lite, Whose, looks_like_a_database};
use crate::system::sync_folder;
use std::fs::{self, File, TryLockError};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

/// Name of the file that holds the record.
const RECORD: &str = "record.sqlite";
/// Name of the file that is locked while the record is open.
const LOCK: &str = "record.lock";

/// Where the record of a folder lies.
pub(crate) fn record_in(folder: &Path) -> PathBuf {
    folder.join(RECORD)
}

/// Holds the folder until it is dropped.
#[derive(Debug)]
pub(crate) struct Held {
    lock: File,
}

impl Drop for Held {
    fn drop(&mut self) {
        // Closing alone is not enough: a process that is being started right now has a copy of
        // the file open until it runs its own program.
        let _ = self.lock.unlock();
    }
}

/// Makes the folder if it is not there, and takes it for this process.
pub(crate) fn hold(folder: &Path) -> Result<Held, StoreError> {
    make(folder)?;
    let path = folder.join(LOCK);
    let open = File::options().read(true).write(true).create(true).truncate(false).open(&path);
    let mut lock = open.map_err(|error| closed_to_us("open", folder, error))?;
    match lock.try_lock() {
        Ok(()) => {}
        Err(TryLockError::WouldBlock) => {
            let mut text = String::new();
            let read = lock.read_to_string(&mut text);
            let pid = read.ok().and_then(|_| text.trim().parse().ok());
            return Err(StoreError::InUse { folder: folder.to_owned(), pid });
        }
        Err(TryLockError::Error(error)) => return Err(StoreError::file("lock", &path, error)),
    }
    // Only for the message to the next one who tries.
    let _ = lock.set_len(0).and_then(|()| writeln!(lock, "{}", std::process::id()));
    Ok(Held { lock })
}

/// Opens the record for writing; makes it if it is not there; checks it quickly otherwise.
pub(crate) fn open_for_writing(folder: &Path) -> Result<Lite, StoreError> {
    let path = record_in(folder);
    if looks_like_a_database(&path)? == Some(false) {
        return Err(StoreError::NotARecord { path });
    }
    let mut lite = Lite::open(&path)?;
    match lite.whose()? {
        Whose::Nobodys => lite.claim()?,
        Whose::Ours => lite.check(false)?,
        Whose::Another => return Err(StoreError::NotARecord { path }),
    }
    let lite = lite.durable()?;
    sync_folder(folder)?;
    Ok(lite)
}

/// The file beside a path in which something is prepared before it gets that name.
pub(crate) fn part_of(path: &Path) -> PathBuf {
    beside(path, ".part")
}

/// A path with something after its name.
pub(crate) fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    name.into()
}

/// Takes a file away, if it is there.
pub(crate) fn take_away(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => {
            Err(StoreError::file("take away", path, error))
        }
        _ => Ok(()),
    }
}

/// Puts a finished file on disk and gives it its name in one step.
pub(crate) fn give_name(part: &Path, path: &Path) -> Result<(), StoreError> {
    let sync = File::options().write(true).open(part).and_then(|file| file.sync_all());
    sync.map_err(|error| StoreError::file("write", part, error))?;
    fs::rename(part, path).map_err(|error| StoreError::file("name", path, error))?;
    path.parent().map_or(Ok(()), sync_folder)
}

fn make(folder: &Path) -> Result<(), StoreError> {
    if folder.is_dir() {
        return Ok(());
    }
    fs::create_dir_all(folder)
        .map_err(|error| closed_to_us("make the folder", folder, error))?;
    match folder.parent() {
        Some(above) if above.is_dir() => sync_folder(above),
        _ => Ok(()),
    }
}

fn closed_to_us(doing: &'static str, folder: &Path, error: io::Error) -> StoreError {
    match error.kind() {
        io::ErrorKind::PermissionDenied => StoreError::ReadOnly { path: folder.to_owned() },
        _ => StoreError::file(doing, folder, error),
    }
}
