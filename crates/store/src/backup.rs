//! Copies of the whole record, made while the program runs.

#[cfg(feature = "postgres")]
use crate::carry::carry;
use crate::check::{self, Checked};
use crate::failure::StoreError;
use crate::folder::{give_name, part_of, take_away};
use crate::line::{Line, Lite, Row, Whose, looks_like_a_database};
use crate::migrate::behind;
#[cfg(feature = "postgres")]
use crate::migrate::migrate;
use crate::store::Store;
use jiff::Timestamp;
use std::fs;
use std::path::{Path, PathBuf};

/// A backup that this program made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Backup {
    /// Where it was put.
    pub path: PathBuf,
    /// When it was made.
    pub made: Timestamp,
}

impl Store {
    /// Writes the whole record into one new file while everything goes on, opens that file and
    /// reads all of it, and only then gives it its name. It can be restored on either engine.
    ///
    /// It is put on the list of backups that are cleaned when words are deleted. Nobody who was
    /// signed in is signed in in it.
    ///
    /// # Errors
    /// Why there is no backup: the record itself is damaged, there is a file of that name, the
    /// disk is full. Nothing is left behind then.
    pub fn backup_to(&self, path: &Path, now: Timestamp) -> Result<Checked, StoreError> {
        let path = std::path::absolute(path).map_err(|e| StoreError::file("find", path, e))?;
        if path.exists() {
            return Err(StoreError::AlreadyThere { path });
        }
        self.full_check()?;
        // It is on the list before it is there, so that no deletion can miss it.
        let name = path.display().to_string();
        self.write(move |line| {
            line.run(
                "insert into backup (path, made) values ($1, $2) \
                 on conflict (path) do update set made = excluded.made",
                &[name.into(), now.as_microsecond().into()],
            )
        })?;
        let made = self.read(|line| make(line, &path));
        if made.is_err() {
            // Best effort: it stands on the list without a file otherwise.
            let _ = take_away(&part_of(&path));
            let _ = self.drop_backup(&path);
        }
        made
    }

    /// Opens a backup and reads all of it; changes nothing.
    ///
    /// # Errors
    /// What is wrong with it: it is not there, is no record, or is damaged.
    pub fn check_backup(path: &Path) -> Result<Checked, StoreError> {
        if looks_like_a_database(path)? != Some(true) {
            return Err(StoreError::NotARecord { path: path.to_owned() });
        }
        verify(path)
    }

    /// The backups that this program made, oldest first.
    ///
    /// # Errors
    /// Why the list cannot be read.
    pub fn backups(&self) -> Result<Vec<Backup>, StoreError> {
        self.read(list)
    }

    /// Takes a backup off the list, because it was thrown away.
    ///
    /// # Errors
    /// Why it stays on the list.
    pub fn drop_backup(&self, path: &Path) -> Result<(), StoreError> {
        let path = path.display().to_string();
        self.write(move |line| {
            line.run("delete from backup where path = $1", &[path.into()])?;
            Ok(())
        })
    }
}

pub(crate) fn list(line: &mut Line) -> Result<Vec<Backup>, StoreError> {
    line.rows("select path, made from backup order by made, path", &[], |mut row: Row| {
        Ok(Backup { path: row.text()?.into(), made: row.moment()? })
    })
}

/// Makes a copy of a record of this folder before steps are done on it that cannot be undone, puts
/// it on the list of backups, and leaves one alone that is there.
pub(crate) fn before_upgrade(line: &mut Line, folder: &Path) -> Result<(), StoreError> {
    let Some(done) = behind(line)? else { return Ok(()) };
    let path = folder.join(format!("record-before-step-{}.sqlite", done + 1));
    let path = std::path::absolute(&path).map_err(|e| StoreError::file("find", &path, e))?;
    if !path.exists() {
        make(line, &path)?;
    }
    let made = fs::metadata(&path).and_then(|about| about.modified());
    let made = made.map_err(|error| StoreError::file("read", &path, error))?;
    let made = Timestamp::try_from(made).unwrap_or_default();
    line.alone(|line| {
        line.run(
            "insert into backup (path, made) values ($1, $2) on conflict (path) do nothing",
            &[path.display().to_string().into(), made.as_microsecond().into()],
        )?;
        Ok(())
    })
}

fn make(line: &mut Line, path: &Path) -> Result<Checked, StoreError> {
    let part = part_of(path);
    take_away(&part)?;
    let mut copy = Lite::open(&part)?;
    let copy = match line {
        Line::Sqlite(lite) => {
            lite.copy_into(&mut copy)?;
            copy.single()?
        }
        #[cfg(feature = "postgres")]
        Line::Postgres(_) => {
            copy.claim()?;
            let mut copy = Line::Sqlite(copy.single()?);
            migrate(&mut copy, &part.display().to_string())?;
            carry(line, &mut copy)?;
            drop(copy);
            Lite::open(&part)?
        }
    };
    copy.run("delete from session", &[])?;
    drop(copy);
    let checked = verify(&part)?;
    give_name(&part, path)?;
    Ok(checked)
}

/// Opens a copy and reads all of it.
pub(crate) fn verify(path: &Path) -> Result<Checked, StoreError> {
    let lite = Lite::open(path)?.only_reading()?;
    if lite.whose()? != Whose::Ours {
        return Err(StoreError::NotARecord { path: path.to_owned() });
    }
    check::whole(&mut Line::Sqlite(lite))
}
