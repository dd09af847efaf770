//! Copies of the record: made, looked through, put back, and written out as plain files.

use super::Shelf;
use crate::desk::DeskError;
use barm_store::{Place, Store};
use jiff::Timestamp;
use std::path::{Path, PathBuf};

/// A backup that the program made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct BackupLine {
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// When it was made.
    pub(crate) made: Timestamp,
    /// Whether there still is a file of that name.
    pub(crate) there: bool,
    /// When it was last read through: when it was made, or later.
    pub(crate) checked: Timestamp,
}

/// What a copy holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Copied {
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// Investigations in it.
    pub(crate) investigations: usize,
    /// Entries in it, each of which was read.
    pub(crate) entries: usize,
    /// Where the record lies that was there before, if it was put aside.
    pub(crate) set_aside: Option<PathBuf>,
}

/// The backups of a shelf, the newest first. Waits for the disk.
pub(crate) fn backups(shelf: &Shelf, _: Timestamp) -> Result<Vec<BackupLine>, DeskError> {
    let mut lines = Vec::new();
    for one in shelf.store.backups()?.into_iter().rev() {
        let checked = shelf.store.setting(&named(&one.path))?;
        let checked = checked.and_then(|text| text.parse().ok()).unwrap_or(one.made);
        lines.push(BackupLine { there: one.path.is_file(), checked, ..line(&one) });
    }
    Ok(lines)
}

fn line(one: &barm_store::Backup) -> BackupLine {
    BackupLine { path: one.path.clone(), made: one.made, there: true, checked: one.made }
}

fn named(path: &Path) -> String {
    format!("backup-checked {}", path.display())
}

/// Makes a backup and reads it through; in the folder `backups` of the data folder, unless a path
/// is given. Waits for the disk.
pub(crate) fn make_backup(
    shelf: &Shelf,
    to: Option<&Path>,
    now: Timestamp,
) -> Result<Copied, DeskError> {
    let path = match to {
        Some(path) => path.to_owned(),
        None => {
            let folder = shelf.folder.join("backups");
            std::fs::create_dir_all(&folder)
                .map_err(|source| DeskError::Unwritten { path: folder.clone(), source })?;
            // No colons: some systems take none in names.
            let stamp = now.strftime("%Y-%m-%d-%H%M%S");
            let names = (1..).map(|number: u32| {
                let more = if number == 1 { String::new() } else { format!("-{number}") };
                folder.join(format!("record-{stamp}{more}.sqlite"))
            });
            let mut free = names.filter(|name| !name.exists());
            free.next().unwrap_or_else(|| folder.join("record.sqlite"))
        }
    };
    let checked = shelf.store.backup_to(&path, now)?;
    let path = std::path::absolute(&path).unwrap_or(path);
    let (investigations, entries) = (checked.investigations, checked.entries);
    Ok(Copied { path, investigations, entries, set_aside: None })
}

/// Reads a backup of the list through again. Waits for the disk.
pub(crate) fn check_backup(
    shelf: &Shelf,
    path: &Path,
    now: Timestamp,
) -> Result<Copied, DeskError> {
    must_be_listed(shelf, path)?;
    let checked = Store::check_backup(path)?;
    shelf.store.keep_setting(&named(path), &now.to_string())?;
    let (investigations, entries) = (checked.investigations, checked.entries);
    Ok(Copied { path: path.to_owned(), investigations, entries, set_aside: None })
}

/// Takes a backup off the list that is not there any more. Waits for the disk.
pub(crate) fn drop_backup(shelf: &Shelf, path: &Path) -> Result<(), DeskError> {
    must_be_listed(shelf, path)?;
    if !path.is_file() {
        shelf.store.drop_backup(path)?;
        shelf.store.drop_setting(&named(path))?;
    }
    Ok(())
}

fn must_be_listed(shelf: &Shelf, path: &Path) -> Result<(), DeskError> {
    let listed = shelf.store.backups()?.iter().any(|one| one.path == path);
    let unlisted = || barm_store::StoreError::NotARecord { path: path.to_owned() };
    if listed { Ok(()) } else { Err(unlisted().into()) }
}

/// Puts a backup in place of the record of a folder that nobody has open; what was there is put
/// aside beside it. Waits for the disk.
pub(crate) fn restore(folder: &Path, from: &Path, now: Timestamp) -> Result<Copied, DeskError> {
    let restored = Store::restore(&Place::Folder(folder.to_owned()), from, now)?;
    let checked = restored.checked;
    Ok(Copied {
        path: from.to_owned(),
        investigations: checked.investigations,
        entries: checked.entries,
        set_aside: restored.set_aside,
    })
}

/// Writes the whole record as plain files into an empty folder; gives their number. Waits for the
/// disk.
pub(crate) fn export(shelf: &Shelf, to: &Path) -> Result<usize, DeskError> {
    Ok(shelf.store.export(to)?.len())
}
