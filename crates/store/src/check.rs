//! Looks whether a record is whole.

use crate::append;
use crate::failure::StoreError;
use crate::line::Line;
use crate::plans;
use crate::store::Store;

/// What a full check found in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Checked {
    /// Investigations on record.
    pub investigations: usize,
    /// Entries on record, each of which was read.
    pub entries: usize,
}

impl Store {
    /// Asks the engine whether the file is sound, as is also done when the record is opened.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] if it is not.
    pub fn quick_check(&self) -> Result<(), StoreError> {
        self.read(|line| match line {
            Line::Sqlite(lite) => lite.check(false),
            #[cfg(feature = "postgres")]
            Line::Postgres(_) => line.run("select version from migration", &[]).map(|_| ()),
        })
    }

    /// Looks through everything: the file with all its tables and indexes, that no place of the
    /// record is missing, and that every entry can be read. Takes a while; writing goes on.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] or [`StoreError::Unreadable`] with the first thing that is wrong.
    pub fn full_check(&self) -> Result<Checked, StoreError> {
        self.read(whole)
    }
}

pub(crate) fn whole(line: &mut Line) -> Result<Checked, StoreError> {
    if let Some(lite) = line.lite() {
        lite.check(true)?;
    }
    // Places are given without gaps, so a row that was taken out shows.
    let count = line.first("select count(*), max(seq) from entry", &[], |mut row| {
        Ok((row.int()?, row.maybe_int()?.unwrap_or_default()))
    })?;
    let (there, last) = count.unwrap_or_default();
    if there != last {
        return Err(StoreError::Damaged {
            place: "its tables".into(),
            what: format!("it should hold {last} entries and holds {there}"),
        });
    }
    let investigations = plans::investigations(line)?;
    let mut entries = 0;
    for investigation in &investigations {
        entries += append::entries(line, investigation.id, 0)?.len();
    }
    Ok(Checked { investigations: investigations.len(), entries })
}
