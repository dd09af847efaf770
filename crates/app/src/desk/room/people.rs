//! What is kept about whom, over the whole data folder, and one action that deletes all that people wrote.

use super::kept_words::{Deleted, delete_words, words_view};
use super::traces::{Looked, look_through};
use super::{Kind, Shelf};
use crate::desk::{DeskError, Wording, say};
use jiff::Timestamp;
use jiff::civil::Date;

/// What is kept in words of one investigation.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct KeptOf {
    /// Its number.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// How many texts people wrote.
    pub(crate) words: u64,
    /// The day on which they are deleted by themselves.
    pub(crate) due: Option<Date>,
    /// The last deletion.
    pub(crate) deleted: Option<Deleted>,
}

/// What is kept about people, on one page.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct PeopleView {
    /// Where it lies.
    pub(crate) folder: String,
    /// Every investigation, the newest first.
    pub(crate) of: Vec<KeptOf>,
    /// Backups that the program made and still knows.
    pub(crate) backups: usize,
}

impl PeopleView {
    /// Texts that people wrote, on the whole.
    pub(crate) fn words(&self) -> u64 {
        self.of.iter().map(|one| one.words).sum()
    }
}

/// What is kept about people. Waits for the disk.
pub(crate) fn people_view(shelf: &Shelf, now: Timestamp) -> Result<PeopleView, DeskError> {
    let mut of = Vec::new();
    for one in shelf.investigations()?.into_iter().rev() {
        // A plan of a newer program cannot be opened; its words are counted all the same.
        let kept = match words_view(shelf, one.id, now) {
            Ok(view) => KeptOf {
                id: one.id,
                kind: one.kind,
                words: view.total(),
                title: view.title,
                due: view.due,
                deleted: view.deleted,
            },
            Err(_) => KeptOf {
                id: one.id,
                kind: one.kind,
                title: one.title,
                words: count(shelf, one.id)?,
                due: None,
                deleted: None,
            },
        };
        of.push(kept);
    }
    let backups = shelf.store.backups()?.len();
    Ok(PeopleView { folder: shelf.folder.display().to_string(), of, backups })
}

fn count(shelf: &Shelf, id: i64) -> Result<u64, DeskError> {
    let all = shelf.store.count_words()?.into_iter();
    Ok(all.filter(|(of, ..)| *of == id).map(|(.., count)| count).sum())
}

/// Deletes everything that people wrote, of every investigation, here and in every backup that can be
/// reached, and looks through the data folder for it. Waits for the disk.
pub(crate) fn delete_all(
    shelf: &Shelf,
    now: Timestamp,
) -> Result<Vec<(i64, Deleted)>, DeskError> {
    let mut with_words: Vec<i64> =
        shelf.store.count_words()?.into_iter().map(|(id, ..)| id).collect();
    with_words.dedup();
    with_words.into_iter().map(|id| Ok((id, delete_words(shelf, id, false, now)?))).collect()
}

/// Looks for a name in every byte of the data folder. Waits for the disk.
pub(crate) fn look_for(shelf: &Shelf, name: &str) -> Looked {
    look_through(&shelf.folder, [name])
}

/// About whom something is kept: who, what, and until when, a row each; the same on every face.
pub(crate) fn about_whom(w: Wording) -> [[String; 3]; 6] {
    [
        [say!(w, "people-students"), say!(w, "people-wrote"), say!(w, "people-wrote-until")],
        [
            say!(w, "people-roster"),
            say!(w, "people-roster-what"),
            say!(w, "people-roster-until"),
        ],
        [
            say!(w, "people-groups"),
            say!(w, "people-measured"),
            say!(w, "people-measured-until"),
        ],
        [say!(w, "people-devices"), say!(w, "people-seat"), say!(w, "people-seat-until")],
        [say!(w, "people-teacher"), say!(w, "people-plan"), say!(w, "people-plan-until")],
        [say!(w, "people-nobody"), say!(w, "people-never"), say!(w, "people-never-until")],
    ]
}
