//! Finding an investigation again by what its plan says, and using its plan once more.

use super::{Kind, Shelf, plans};
use crate::desk::DeskError;
use barm_documents::plan_text;
use barm_domain::plan::Plan;
use jiff::civil::Date;
use jiff::{Timestamp, Unit};
use std::collections::BTreeMap;

/// The most letters of a line that are shown.
const SHOWN: usize = 120;

/// The investigations whose newest plan holds every one of these words, whatever their capitals, each with the line in
/// which the first of them stands. Waits for the disk.
pub(crate) fn find(shelf: &Shelf, asked: &str) -> Result<BTreeMap<i64, String>, DeskError> {
    let words: Vec<String> = asked.split_whitespace().map(str::to_lowercase).collect();
    let mut found = BTreeMap::new();
    let Some(first) = words.first() else { return Ok(found) };
    for one in shelf.investigations()? {
        let Some(text) = shelf.store.newest_plan(one.id)? else { continue };
        let lower = text.to_lowercase();
        if !words.iter().all(|word| lower.contains(word.as_str())) {
            continue;
        }
        let holds = |line: &&str| line.to_lowercase().contains(first.as_str());
        let line = text.lines().find(holds).unwrap_or_default().trim();
        found.insert(one.id, line.chars().take(SHOWN).collect());
    }
    Ok(found)
}

/// Puts the newest plan of an investigation on the shelf once more, its first day on that date and the others as far
/// behind it as they were; gives the number of the new one, or nothing for a
/// date so late that the calendar ends before. The old one stays as it is. Waits for the disk.
///
/// # Errors
/// [`DeskError`] where the plan is gone or cannot be read any more.
pub(crate) fn use_again(
    shelf: &Shelf,
    id: i64,
    first_day: Date,
    now: Timestamp,
) -> Result<Option<i64>, DeskError> {
    let room = shelf.room(id, now)?;
    let text = room.plan_text(room.read(|scene| scene.version))?;
    let read = plan_text::read(text.as_bytes());
    let Some(mut plan) = read.plan else { return Err(DeskError::Unsound(read.mistakes)) };
    if move_days(&mut plan, first_day).is_none() {
        return Ok(None);
    }
    let kind = if room.kind == Kind::Invented { Kind::Invented } else { Kind::Real };
    plans::begin(shelf, &plan_text::write(&plan, &text), kind, now).map(Some)
}

/// Moves all days of a plan, the first onto that date; nothing where the calendar ends before.
fn move_days(plan: &mut Plan, first_day: Date) -> Option<()> {
    let was = plan.days.first()?.date;
    for day in &mut plan.days {
        let behind = day.date.since((Unit::Day, was)).ok()?;
        day.date = first_day.checked_add(behind).ok()?;
    }
    Some(())
}
