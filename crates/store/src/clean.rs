//! Overwrites on disk what was deleted, here and in backups.

use crate::backup::{self, Backup, verify};
use crate::failure::StoreError;
use crate::folder::{beside, give_name, part_of, take_away};
use crate::line::{Line, Lite, Whose};
use crate::words::Unreached;
use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

/// Notes that something was deleted and has still to be overwritten.
pub(crate) fn promise(line: &mut Line) -> Result<(), StoreError> {
    let sql = "insert into setting (name, value) values ('wipe', 'due') \
         on conflict (name) do nothing";
    line.run(sql, &[]).map(|_| ())
}

/// Notes that it was.
pub(crate) fn kept(line: &mut Line) -> Result<(), StoreError> {
    line.run("delete from setting where name = 'wipe'", &[]).map(|_| ())
}

/// Overwrites what was deleted by a program that did not get as far as that.
pub(crate) fn catch_up(line: &mut Line) -> Result<(), StoreError> {
    let sql = "select value from setting where name = 'wipe'";
    if line.first(sql, &[], |mut row| row.text())?.is_some() {
        wipe(line)?;
        // What cannot be reached now is tried again with the next deletion.
        backups(line)?;
        line.alone(kept)?;
    }
    Ok(())
}

/// Overwrites what was deleted. Nobody may be reading.
pub(crate) fn wipe(line: &mut Line) -> Result<(), StoreError> {
    match line {
        Line::Sqlite(lite) => {
            // Deleted cells are zeros by now, but the log still holds the pages of before; and a
            // page that was split long ago may hold what was moved from it.
            lite.flush_log()?;
            lite.run("vacuum", &[])?;
            lite.flush_log()
        }
        #[cfg(feature = "postgres")]
        Line::Postgres(_) => line.script("vacuum full words"),
    }
}

/// Every key whose words were deleted.
pub(crate) fn forgotten(line: &mut Line) -> Result<Vec<String>, StoreError> {
    line.rows("select key from forgotten", &[], |mut row| row.text())
}

/// Cleans the backups that the program made: those from which words went, and those that could
/// not be reached.
pub(crate) fn backups(line: &mut Line) -> Result<(Vec<PathBuf>, Vec<Unreached>), StoreError> {
    let keys = forgotten(line)?;
    let (mut cleaned, mut unreached) = (Vec::new(), Vec::new());
    for Backup { path, made } in backup::list(line)? {
        match scrub(&path, &keys) {
            Ok(0) => {}
            Ok(_) => cleaned.push(path),
            Err(error) => {
                // Best effort: the next try takes it away first.
                let _ = take_away(&part_of(&path));
                unreached.push(Unreached { path, made, why: error.to_string() });
            }
        }
    }
    Ok((cleaned, unreached))
}

/// Deletes words from a file and gives their number. The file is replaced in one step by one
/// that never held them, and the old one is overwritten.
fn scrub(path: &Path, keys: &[String]) -> Result<u64, StoreError> {
    let fails = |doing| move |error| StoreError::file(doing, path, error);
    // The log of a record that was set aside: nothing can be taken out of it alone.
    let log = beside(path, "-wal");
    if fs::metadata(&log).is_ok_and(|log| log.len() > 0) {
        let source = io::Error::other("it has a log beside it; throw both away");
        return Err(StoreError::File { doing: "clean", path: path.to_owned(), source });
    }
    let mut old = File::options().write(true).open(path).map_err(fails("open"))?;
    let part = part_of(path);
    take_away(&part)?;
    fs::copy(path, &part).map_err(fails("copy"))?;
    let copy = Lite::open(&part)?;
    if copy.whose()? != Whose::Ours {
        return Err(StoreError::NotARecord { path: path.to_owned() });
    }
    let mut copy = Line::Sqlite(copy.single()?);
    let gone = copy.alone(|copy| delete(copy, keys))?;
    if gone == 0 {
        drop(copy);
        take_away(&part)?;
        return Ok(0);
    }
    copy.run("vacuum", &[])?;
    drop(copy);
    verify(&part)?;
    give_name(&part, path)?;
    let length = old.metadata().map_err(fails("read"))?.len();
    io::copy(&mut io::Read::take(io::repeat(0), length), &mut old)
        .and_then(|_| old.flush())
        .and_then(|()| old.sync_all())
        .map_err(fails("overwrite what was in"))?;
    Ok(gone)
}

/// Deletes these words, and sees to it that they do not come back.
pub(crate) fn delete(line: &mut Line, keys: &[String]) -> Result<u64, StoreError> {
    let mut gone = 0;
    for key in keys {
        line.run(
            "insert into forgotten (key) values ($1) on conflict (key) do nothing",
            &[key.into()],
        )?;
        gone += line.run("delete from words where key = $1", &[key.into()])?;
    }
    Ok(gone)
}
