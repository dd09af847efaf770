//! What pilots found, kept with the versions of a plan.

use crate::failure::StoreError;
use crate::line::Line;
use crate::plans::{Newest, add, must_be_there, newest, number};
use crate::store::Store;
use jiff::Timestamp;

/// What was known of the lots under one version of a plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PilotVersion {
    /// The version, from 1.
    pub version: u32,
    /// When that version was saved.
    pub saved: Timestamp,
    /// What is known of each lot, as text; empty if nothing is.
    pub lots: String,
    /// What the newest pilot read, as it was typed; empty if nothing was.
    pub readings: String,
}

impl Store {
    /// Keeps what pilots found and what was read, as a new version of the plan with the same text,
    /// and gives its number. The same again is the newest version.
    ///
    /// # Errors
    /// [`StoreError::NoInvestigation`]; [`StoreError::NoPlan`] if no version was saved yet; or why
    /// it was not kept.
    pub fn save_pilot(
        &self,
        id: i64,
        lots: &str,
        readings: &str,
        now: Timestamp,
    ) -> Result<u32, StoreError> {
        let (lots, readings) = (lots.to_owned(), readings.to_owned());
        self.write(move |line| {
            must_be_there(line, id)?;
            let last = newest(line, id)?;
            if last.version == 0 {
                return Err(StoreError::NoPlan { id, version: 1 });
            }
            if (&last.lots, &last.readings) == (&lots, &readings) {
                return Ok(last.version);
            }
            let version = last.version + 1;
            add(line, id, now, &Newest { version, body: last.body, lots, readings })
        })
    }

    /// What was known under each version of a plan, oldest first.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn pilots(&self, id: i64) -> Result<Vec<PilotVersion>, StoreError> {
        self.read(|line| pilots(line, id))
    }
}

pub(crate) fn pilots(line: &mut Line, id: i64) -> Result<Vec<PilotVersion>, StoreError> {
    let sql = "select version, saved, lots, readings from plan where investigation = $1 \
               order by version";
    line.rows(sql, &[id.into()], |mut row| {
        let (version, saved) = (number(row.int()?)?, row.moment()?);
        let (lots, readings) = (row.text()?, row.text()?);
        Ok(PilotVersion { version, saved, lots, readings })
    })
}
