//! What people wrote in words: how much of it is kept, until when, and how it is deleted.

use super::traces::{Looked, look_through};
use super::{Kind, Shelf};
use crate::desk::DeskError;
use barm_documents::plan_text;
use jiff::civil::{Date, Time};
use jiff::tz::TimeZone;
use jiff::{Timestamp, ToSpan};
use serde::{Deserialize, Serialize};
use std::path::PathBuf;

/// Words are deleted by themselves so many days after the last school day (own rule: long enough
/// for a report and a conference, no longer).
const KEPT_DAYS: i64 = 30;

/// What is kept of an investigation in words.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WordsView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// How many of which kind.
    pub(crate) kinds: Vec<(String, u64)>,
    /// The last school day.
    pub(crate) last_day: Option<Date>,
    /// The day on which they are deleted by themselves.
    pub(crate) due: Option<Date>,
    /// Whether the teacher chose that day.
    pub(crate) chosen: bool,
    /// Backups that the program made and still knows, with the time.
    pub(crate) backups: Vec<(PathBuf, Timestamp)>,
    /// The last deletion.
    pub(crate) deleted: Option<Deleted>,
}

impl WordsView {
    /// How many there are.
    pub(crate) fn total(&self) -> u64 {
        self.kinds.iter().map(|(_, count)| count).sum()
    }
}

/// A deletion, as it lies on disk. It holds counts and paths, never words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Deleted {
    /// When (ms since 1970).
    pub(crate) at_ms: i64,
    /// Whether the day had come, and nobody pressed anything.
    pub(crate) by_itself: bool,
    /// How many were deleted.
    pub(crate) words: u64,
    /// How many were left afterwards, counted anew.
    pub(crate) left: u64,
    /// Backups from which they are gone too.
    pub(crate) backups: Vec<String>,
    /// Backups that could not be reached: path, when made (ms since 1970), why.
    pub(crate) unreached: Vec<(String, i64, String)>,
    /// What was found of them in the files of the data folder, read through afterwards.
    #[serde(default)]
    pub(crate) looked: Option<Looked>,
}

impl Deleted {
    /// When it was done.
    pub(crate) fn at(&self) -> Timestamp {
        Timestamp::from_millisecond(self.at_ms).unwrap_or_default()
    }

    /// A line for the log: counts only.
    pub(crate) fn in_the_log(&self, id: i64) -> String {
        let why = if self.by_itself { "the day had come" } else { "the teacher asked" };
        let (words, left, unreached) = (self.words, self.left, self.unreached.len());
        format!(
            "words of investigation {id} were deleted, for {why}: {words}; left: {left}; \
             backups not reached: {unreached}"
        )
    }
}

/// Name of the setting that holds a chosen day, and of that which holds the last deletion.
fn named(what: &str, id: i64) -> String {
    format!("words-{what}-{id}")
}

/// What is kept of an investigation. Waits for the disk.
pub(crate) fn words_view(
    shelf: &Shelf,
    id: i64,
    now: Timestamp,
) -> Result<WordsView, DeskError> {
    let room = shelf.room(id, now)?;
    let (kind, title) = room.read(|scene| (scene.kind, scene.plan.title.clone()));
    let last = last_day(shelf, id)?;
    let chosen = chosen(shelf, id)?;
    let deleted = shelf.store.setting(&named("deleted", id))?;
    let backups = shelf.store.backups()?;
    Ok(WordsView {
        id,
        kind,
        title,
        kinds: count(shelf, id)?,
        last_day: last.as_ref().map(|(day, _)| *day),
        due: chosen.or_else(|| by_rule(last.as_ref()?.0)),
        chosen: chosen.is_some(),
        backups: backups.into_iter().map(|one| (one.path, one.made)).collect(),
        deleted: deleted.and_then(|text| serde_json::from_str(&text).ok()),
    })
}

/// Deletes everything that people wrote in words, here and in every backup that can be reached,
/// counts again, and looks for it in every byte of the data folder. Waits for the disk.
pub(crate) fn delete_words(
    shelf: &Shelf,
    id: i64,
    by_itself: bool,
    now: Timestamp,
) -> Result<Deleted, DeskError> {
    // Kept in memory until it is sure that they are nowhere else.
    let texts = shelf.store.all_words(id)?;
    let done = shelf.store.forget_all_words(id)?;
    let unreached = done.unreached.into_iter();
    let deleted = Deleted {
        at_ms: now.as_millisecond(),
        by_itself,
        words: done.words,
        left: count(shelf, id)?.iter().map(|(_, count)| count).sum(),
        backups: done.backups.iter().map(|path| path.display().to_string()).collect(),
        unreached: unreached
            .map(|one| (one.path.display().to_string(), one.made.as_millisecond(), one.why))
            .collect(),
        looked: (!texts.is_empty())
            .then(|| look_through(&shelf.folder, texts.iter().map(|(.., text)| text.as_str()))),
    };
    let text = serde_json::to_string(&deleted).map_err(|_| DeskError::Stopped)?;
    shelf.store.keep_setting(&named("deleted", id), &text)?;
    if let Some(room) = shelf.open_room(id) {
        // Pages that show proposals and reasons ask anew.
        room.touch(None);
    }
    Ok(deleted)
}

/// Chooses the day on which words are deleted by themselves; nothing goes back to the rule. Waits
/// for the disk.
pub(crate) fn choose_day(shelf: &Shelf, id: i64, day: Option<Date>) -> Result<(), DeskError> {
    match day {
        Some(day) => shelf.store.keep_setting(&named("day", id), &day.to_string())?,
        None => shelf.store.drop_setting(&named("day", id))?,
    }
    Ok(())
}

/// Deletes the words of every investigation whose day has come. Waits for the disk.
pub(crate) fn delete_due(
    shelf: &Shelf,
    now: Timestamp,
) -> Result<Vec<(i64, Deleted)>, DeskError> {
    let mut with_words: Vec<i64> =
        shelf.store.count_words()?.into_iter().map(|(id, ..)| id).collect();
    with_words.dedup();
    let mut done = Vec::new();
    for id in with_words {
        let last = last_day(shelf, id)?;
        let chosen = chosen(shelf, id)?;
        let due = chosen.or_else(|| by_rule(last.as_ref()?.0));
        let zone = last.map_or(TimeZone::UTC, |(_, zone)| zone);
        let has_come = due.is_some_and(|due| {
            let begins = due.to_datetime(Time::midnight()).to_zoned_datetime(zone);
            begins.is_ok_and(|begins| begins.timestamp() <= now)
        });
        if has_come {
            done.push((id, delete_words(shelf, id, true, now)?));
        }
    }
    Ok(done)
}

fn count(shelf: &Shelf, id: i64) -> Result<Vec<(String, u64)>, DeskError> {
    let all = shelf.store.count_words()?.into_iter();
    Ok(all.filter(|(of, ..)| *of == id).map(|(_, kind, count)| (kind, count)).collect())
}

fn chosen(shelf: &Shelf, id: i64) -> Result<Option<Date>, DeskError> {
    Ok(shelf.store.setting(&named("day", id))?.and_then(|text| text.parse().ok()))
}

fn by_rule(last: Date) -> Option<Date> {
    last.checked_add(KEPT_DAYS.days()).ok()
}

/// The last school day of the newest plan that can be read, and its time zone.
fn last_day(shelf: &Shelf, id: i64) -> Result<Option<(Date, TimeZone)>, DeskError> {
    let newest = shelf.store.plans(id)?.pop();
    let plan = newest.and_then(|(_, text)| plan_text::read(text.as_bytes()).plan);
    let last = plan.and_then(|plan| plan.days.into_iter().max_by_key(|day| day.date));
    Ok(last.map(|day| (day.date, TimeZone::get(&day.zone).unwrap_or(TimeZone::UTC))))
}
