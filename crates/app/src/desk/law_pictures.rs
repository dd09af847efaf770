//! The laws of the science as pictures, written into a folder.

use super::DeskError;
use barm_documents::laws::pictures;
use barm_store::written::{Folder, Outcome};
use std::path::{Path, PathBuf};

/// One picture that was to be written.
#[derive(Debug)]
pub(crate) struct LawPicture {
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// Whether a file that a person had changed was left in its place.
    pub(crate) kept_yours: bool,
}

/// Draws every law and writes it into a folder, which is made if it is not there.
///
/// # Errors
/// [`DeskError`] where the folder cannot be written.
pub(crate) fn law_pictures(folder: &Path) -> Result<Vec<LawPicture>, DeskError> {
    let mut folder = Folder::open(folder)?;
    let mut written = Vec::new();
    for picture in pictures() {
        let name = format!("{}.svg", picture.file);
        let kept_yours = folder.write(&name, picture.svg.as_bytes())? == Outcome::KeptYours;
        written.push(LawPicture { path: folder.path_of(&name), kept_yours });
    }
    Ok(written)
}
