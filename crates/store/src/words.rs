//! What a person wrote in words, which can be deleted without a trace.

use crate::clean;
use crate::failure::StoreError;
use crate::line::Line;
use crate::store::Store;
use crate::writer::Writer;
use barm_domain::record::WordsKey;
use jiff::Timestamp;
use std::path::PathBuf;

/// What was deleted.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Forgotten {
    /// How many words were on record.
    pub words: u64,
    /// Backups from which they are gone too.
    pub backups: Vec<PathBuf>,
    /// Backups that could not be reached. They are tried again with the next deletion.
    pub unreached: Vec<Unreached>,
}

/// A backup that still holds words that were deleted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unreached {
    /// Where it was put.
    pub path: PathBuf,
    /// When it was made.
    pub made: Timestamp,
    /// Why it could not be cleaned.
    pub why: String,
}

impl Store {
    /// Keeps words under a random key. Gives false, and keeps nothing, if words under that key
    /// were deleted before: a device that was cut off may send them again.
    ///
    /// # Errors
    /// [`StoreError::WordsClash`] if other words lie there; or why they were not kept.
    pub fn keep_words(
        &self,
        id: i64,
        key: WordsKey,
        kind: &str,
        text: &str,
    ) -> Result<bool, StoreError> {
        let (key, kind, text) = (key.to_string(), kind.to_owned(), text.to_owned());
        self.write(move |line| {
            crate::plans::must_be_there(line, id)?;
            let gone = "select key from forgotten where key = $1";
            if line.first(gone, &[(&key).into()], |mut row| row.text())?.is_some() {
                return Ok(false);
            }
            let kept = line.run(
                "insert into words (key, investigation, kind, body) values ($1, $2, $3, $4) \
                 on conflict (key) do nothing",
                &[(&key).into(), id.into(), (&kind).into(), (&text).into()],
            )?;
            let there = "select body from words where key = $1";
            let there = line.first(there, &[(&key).into()], |mut row| row.text())?;
            if kept == 1 || there.as_deref() == Some(text.as_str()) {
                Ok(true)
            } else {
                Err(StoreError::WordsClash { key })
            }
        })
    }

    /// The words under a key, if they have not been deleted.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub fn words(&self, key: WordsKey) -> Result<Option<String>, StoreError> {
        let sql = "select body from words where key = $1";
        self.read(|line| line.first(sql, &[key.to_string().into()], |mut row| row.text()))
    }

    /// How many words of which kind lie in which investigation.
    ///
    /// # Errors
    /// Why they cannot be counted.
    pub fn count_words(&self) -> Result<Vec<(i64, String, u64)>, StoreError> {
        let sql = "select investigation, kind, count(*) from words \
             group by investigation, kind order by investigation, kind";
        self.read(|line| {
            line.rows(sql, &[], |mut row| {
                let (id, kind, count) = (row.int()?, row.text()?, row.int()?);
                Ok((id, kind, u64::try_from(count).unwrap_or_default()))
            })
        })
    }

    /// All words of an investigation: key, kind, text.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub fn all_words(&self, id: i64) -> Result<Vec<(WordsKey, String, String)>, StoreError> {
        self.read(|line| all_words(line, id))
    }

    /// Deletes words, overwrites them on disk, and cleans the backups that the program made.
    ///
    /// # Errors
    /// Why it could not be done. Words may then be deleted but not yet overwritten; that is done
    /// when the record is opened again.
    pub fn forget_words(&self, keys: &[WordsKey]) -> Result<Forgotten, StoreError> {
        let keys: Vec<String> = keys.iter().map(WordsKey::to_string).collect();
        self.with_writer(move |writer| forget(writer, |_| Ok(keys)))
    }

    /// Deletes all words of an investigation like [`Store::forget_words`].
    ///
    /// # Errors
    /// Like [`Store::forget_words`].
    pub fn forget_all_words(&self, id: i64) -> Result<Forgotten, StoreError> {
        self.with_writer(move |writer| {
            forget(writer, |line| {
                let sql = "select key from words where investigation = $1";
                line.rows(sql, &[id.into()], |mut row| row.text())
            })
        })
    }
}

pub(crate) fn all_words(
    line: &mut Line,
    id: i64,
) -> Result<Vec<(WordsKey, String, String)>, StoreError> {
    let sql = "select key, kind, body from words where investigation = $1 order by key";
    line.rows(sql, &[id.into()], |mut row| {
        let key = row.text()?;
        let key = key.parse().map_err(|_| StoreError::Damaged {
            place: "its tables".into(),
            what: format!("words lie under “{key}”"),
        })?;
        Ok((key, row.text()?, row.text()?))
    })
}

fn forget(
    writer: &mut Writer,
    which: impl FnOnce(&mut Line) -> Result<Vec<String>, StoreError>,
) -> Result<Forgotten, StoreError> {
    // A reader would keep what is deleted alive in the log.
    let _closed = writer.pool.keep_out();
    let words = writer.line.alone(|line| {
        let keys = which(line)?;
        clean::promise(line)?;
        clean::delete(line, &keys)
    })?;
    clean::wipe(&mut writer.line)?;
    let (backups, unreached) = clean::backups(&mut writer.line)?;
    writer.line.alone(clean::kept)?;
    Ok(Forgotten { words, backups, unreached })
}
