//! Puts what was made into a folder, over nothing that a person has made or changed.

use super::Sheet;
use crate::desk::DeskError;
use barm_store::written::{Folder, Outcome};
use std::path::{Path, PathBuf};

/// A file that lies in the folder now.
#[derive(Debug)]
pub(crate) struct Printed {
    /// The sheet.
    pub(crate) sheet: Sheet,
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// Whether it stands in place of an older one of ours.
    pub(crate) renewed: bool,
}

/// Writes all sheets, or none.
///
/// # Errors
/// [`DeskError::Taken`] for the first name under which a file of somebody else lies, and whatever
/// the disk says.
pub(crate) fn write_printed(
    folder: &Path,
    sheets: Vec<Sheet>,
) -> Result<Vec<Printed>, DeskError> {
    let mut open = Folder::open(folder)?;
    for sheet in &sheets {
        if open.keeps_yours(&sheet.name, &sheet.bytes)? {
            return Err(DeskError::Taken { path: open.path_of(&sheet.name) });
        }
    }
    let mut printed = Vec::new();
    for sheet in sheets {
        let path = open.path_of(&sheet.name);
        let there = path.exists();
        let outcome = open.write(&sheet.name, &sheet.bytes)?;
        printed.push(Printed { sheet, path, renewed: there && outcome == Outcome::Written });
    }
    Ok(printed)
}
