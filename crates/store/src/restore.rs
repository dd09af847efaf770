//! Puts a backup in place of the record.

use crate::backup::{self, Backup, verify};
#[cfg(feature = "postgres")]
use crate::carry::carry;
use crate::check::Checked;
use crate::clean;
use crate::failure::StoreError;
use crate::folder::{self, beside, give_name, part_of, record_in, take_away};
#[cfg(feature = "postgres")]
use crate::line::Server;
use crate::line::{Line, Lite, Whose, looks_like_a_database};
use crate::migrate::migrate;
use crate::store::{Place, Store};
use crate::system::sync_folder;
use jiff::Timestamp;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

/// What a restored record holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Restored {
    /// What is in it.
    pub checked: Checked,
    /// Where the record lies that was there before.
    pub set_aside: Option<PathBuf>,
}

impl Store {
    /// Puts a backup in place of the record of a place that nobody has open. What was there is
    /// set aside beside it. Words that were deleted since the backup was made do not come back.
    ///
    /// A PostgreSQL database must be empty.
    ///
    /// # Errors
    /// Why nothing was changed: the backup is damaged, is none, or is from a newer program; the
    /// record is open; the database is not empty; the disk is full.
    pub fn restore(place: &Place, from: &Path, now: Timestamp) -> Result<Restored, StoreError> {
        if looks_like_a_database(from)? != Some(true) {
            return Err(StoreError::NotARecord { path: from.to_owned() });
        }
        match place {
            Place::Folder(folder) => into_folder(folder, from, now),
            #[cfg(feature = "postgres")]
            Place::Postgres(address) => into_server(address, from),
        }
    }
}

fn into_folder(folder: &Path, from: &Path, now: Timestamp) -> Result<Restored, StoreError> {
    let held = folder::hold(folder)?;
    let path = record_in(folder);
    let part = part_of(&path);
    let restored = prepare(&part, from).and_then(|copy| {
        let set_aside = set_aside(folder, &path)?;
        let carried = carried_over(&path);
        fill_in(copy, carried, set_aside.as_deref(), now)?;
        let checked = verify(&part)?;
        // A log that stayed would be taken for the log of the new file.
        take_away(&beside(&path, "-wal"))?;
        take_away(&beside(&path, "-shm"))?;
        give_name(&part, &path)?;
        Ok(Restored { checked, set_aside })
    });
    if restored.is_err() {
        // Best effort: the next try takes it away first.
        let _ = take_away(&part);
    }
    drop(held);
    restored
}

/// A copy of the backup, looked through and brought to what this program knows.
fn prepare(part: &Path, from: &Path) -> Result<Line, StoreError> {
    take_away(part)?;
    fs::copy(from, part).map_err(|error| StoreError::file("copy", from, error))?;
    let copy = Lite::open(part)?;
    if copy.whose()? != Whose::Ours {
        return Err(StoreError::NotARecord { path: from.to_owned() });
    }
    let mut copy = copy.single()?;
    copy.check(true)?;
    let mut copy = Line::Sqlite(copy);
    migrate(&mut copy, &from.display().to_string())?;
    Ok(copy)
}

/// Copies the record that is there to a free name, and its log too, if it cannot be worked in.
fn set_aside(folder: &Path, path: &Path) -> Result<Option<PathBuf>, StoreError> {
    if !path.exists() {
        return Ok(None);
    }
    // Best effort: a damaged file keeps its log.
    if let Ok(mut lite) = Lite::open(path) {
        let _ = lite.flush_log();
    }
    let names = (1..).map(|number| folder.join(format!("record-replaced-{number}.sqlite")));
    let mut free = names.filter(|name| !name.exists());
    let aside = free.next().unwrap_or_else(|| beside(path, "-replaced"));
    for ending in ["", "-wal"] {
        let (from, to) = (beside(path, ending), beside(&aside, ending));
        if from.exists() {
            let copied = fs::copy(&from, &to).and_then(|_| File::open(&to)?.sync_all());
            copied.map_err(|error| StoreError::file("copy", &from, error))?;
        }
    }
    sync_folder(folder)?;
    Ok(Some(aside))
}

/// What the record that is there knows of deleted words and of backups; nothing if it is damaged.
fn carried_over(path: &Path) -> (Vec<String>, Vec<Backup>) {
    if !path.exists() {
        return Default::default();
    }
    let read = || {
        let mut line = Line::Sqlite(Lite::open(path)?.only_reading()?);
        Ok::<_, StoreError>((clean::forgotten(&mut line)?, backup::list(&mut line)?))
    };
    read().unwrap_or_default()
}

fn fill_in(
    mut copy: Line,
    (forgotten, mut backups): (Vec<String>, Vec<Backup>),
    set_aside: Option<&Path>,
    now: Timestamp,
) -> Result<(), StoreError> {
    backups.extend(set_aside.map(|path| Backup { path: path.to_owned(), made: now }));
    let gone = copy.alone(|copy| {
        for Backup { path, made } in &backups {
            line_up(copy, path, *made)?;
        }
        clean::delete(copy, &forgotten)
    })?;
    if gone > 0 {
        copy.run("vacuum", &[])?;
    }
    Ok(())
}

fn line_up(line: &mut Line, path: &Path, made: Timestamp) -> Result<(), StoreError> {
    line.run(
        "insert into backup (path, made) values ($1, $2) on conflict (path) do nothing",
        &[path.display().to_string().into(), made.as_microsecond().into()],
    )?;
    Ok(())
}

#[cfg(feature = "postgres")]
fn into_server(address: &str, from: &Path) -> Result<Restored, StoreError> {
    let server = Server::open(address)?;
    let place = server.place.clone();
    let mut server = Line::Postgres(Box::new(server));
    migrate(&mut server, &place)?;
    // In a copy, for the backup may lie where nothing can be written.
    let name = getrandom::u64().unwrap_or_else(|_| std::process::id().into());
    let part = std::env::temp_dir().join(format!("barm-restore-{name:016x}.sqlite"));
    let restored = prepare(&part, from).and_then(|mut copy| {
        carry(&mut copy, &mut server)?;
        let checked = crate::check::whole(&mut server)?;
        Ok(Restored { checked, set_aside: None })
    });
    take_away(&part)?;
    restored
}
