//! Grades of an investigation as files in a folder.

use super::gradebook::{GradeFile, Gradebook, Tally, gradebook};
use super::list::plan_periods;
use crate::desk::room::{Kind, Room, Shelf};
use crate::desk::shared::write_all;
use crate::desk::{DeskError, Wording};
use jiff::Timestamp;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Grades that were written.
#[derive(Debug)]
pub(crate) struct WrittenGrades {
    /// Title of the investigation.
    pub(crate) title: String,
    /// What it is.
    pub(crate) kind: Kind,
    /// Each period with how many students get what.
    pub(crate) periods: Vec<(String, Tally)>,
    /// The files, in the order in which they were written.
    pub(crate) files: Vec<PathBuf>,
    /// Files that could not be made: name and why.
    pub(crate) left: Vec<(String, String)>,
}

/// Grades of every period of a room whose groups were saved. Waits for the disk.
fn gradebooks(room: &Room, w: Wording, now: Timestamp) -> Result<Vec<Gradebook>, DeskError> {
    let mut all = Vec::new();
    for (period, _) in plan_periods(room) {
        all.extend(gradebook(room, w, &period, now)?);
    }
    Ok(all)
}

/// Writes the grades of an investigation into a folder; of the newest that has any, if no number is given. What
/// somebody changed there is never overwritten. Waits for the disk.
pub(crate) fn write_grades(
    shelf: &Shelf,
    (id, to): (Option<i64>, &Path),
    w: Wording,
    now: Timestamp,
) -> Result<WrittenGrades, DeskError> {
    let wanted: Vec<i64> = match id {
        Some(id) => vec![id],
        None => shelf.investigations()?.into_iter().rev().map(|one| one.id).collect(),
    };
    let mut found: Option<(Arc<Room>, Vec<Gradebook>)> = None;
    for one in wanted {
        let room = match shelf.room(one, now) {
            Ok(room) => room,
            // One that a newer program made does not keep the others back.
            Err(DeskError::NoPlan { .. }) if id.is_none() => continue,
            Err(error) => return Err(error),
        };
        let books = gradebooks(&room, w, now)?;
        if !books.is_empty() {
            found = Some((room, books));
            break;
        }
    }
    let (room, books) = found.ok_or(DeskError::NoGroupLists)?;
    let (mut files, mut left) = (Vec::new(), Vec::new());
    for book in &books {
        for file in GradeFile::ALL {
            match book.file(file) {
                Ok(bytes) => files.push((book.name(file), bytes)),
                Err(why) => left.push((book.name(file), why.to_string())),
            }
        }
    }
    let files = write_all(to, &files)?;
    let title = room.read(|scene| scene.plan.title.clone());
    let periods = books.iter().map(|book| (book.period.clone(), book.tally)).collect();
    Ok(WrittenGrades { title, kind: room.kind, periods, files, left })
}
