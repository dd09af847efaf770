//! What is done on the pilot's page. Every change is a new version of the plan with the same text, so
//! that any of them can be gone back to.

use super::KeptPilot;
use super::learned::keep_learned;
use crate::desk::editing::sentence;
use crate::desk::pilot::{protocol, taught, today};
use crate::desk::room::Room;
use crate::desk::{DeskError, Lesson, doors, pilot};
use barm_documents::pilot_text::{PilotFile, TypedSheet, WrittenSheet, readings, write_lots};
use barm_domain::pilot::{LotLine, Lots, Part, PilotFault, Taught, Thing, named};
use jiff::Timestamp;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What is wrong with what was typed, as sentences.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Faults {
    /// Beside cells, by their ids.
    pub(crate) cells: BTreeMap<String, String>,
    /// About no one cell.
    pub(crate) rest: Vec<String>,
}

/// What became of saving.
#[derive(Debug)]
pub(crate) enum Saved {
    /// It is on disk; what was learned, in a sentence.
    As(String),
    /// It says what is kept already.
    Same,
    /// Nothing was typed there, and nothing is kept of it.
    Nothing,
    /// It has faults, and nothing was kept.
    Faulty(Faults),
    /// Somebody changed the lots or the sheet meanwhile; nothing was kept.
    Overtaken,
}

/// What a file of readings would teach.
#[derive(Debug)]
pub(crate) enum Looked {
    /// It can be kept.
    Sound(Box<Lesson>),
    /// What is wrong with it: line, from 1, or 0 for none, and sentences.
    Wrong(Vec<(u64, String)>),
}

fn said(fault: &PilotFault) -> String {
    format!("{} {}", sentence(&fault.what), sentence(&fault.fix))
}

/// The same beside the cell itself, which need not be quoted once more.
fn said_there(fault: &PilotFault) -> String {
    let quoted = fault.what.starts_with('"').then(|| fault.what.split_once("\": ")).flatten();
    let what = quoted.map_or(fault.what.as_str(), |(_, rest)| rest);
    format!("{} {}", sentence(what), sentence(&fault.fix))
}

/// Whether the lots or the sheet are others than those of the version that a page was made from.
fn overtaken(room: &Room, from: u32) -> Result<bool, DeskError> {
    let newest = room.read(|scene| scene.version);
    if from == newest {
        return Ok(false);
    }
    let all = room.store.pilots(room.id)?;
    let of = |version: u32| all.iter().find(|one| one.version == version);
    let Some((then, now)) = of(from).zip(of(newest)) else { return Ok(true) };
    Ok((&then.lots, &then.readings) != (&now.lots, &now.readings))
}

/// What a sheet teaches, beside the sheet as it is kept: with its day and the names of its lots.
struct Worked {
    file: WrittenSheet,
    notes: Vec<String>,
    taught: Taught,
}

fn work_out(
    room: &Room,
    sheet: &TypedSheet,
    lots: &Lots,
    now: Timestamp,
) -> Result<Result<Worked, Faults>, DeskError> {
    let plan = room.read(|scene| scene.newest.clone());
    let today = today(&plan, now);
    let mut sheet = sheet.clone();
    if sheet.get("date").is_empty() {
        sheet.set("date", &today.to_string());
    }
    let written = readings(sheet.write().text.as_bytes()).readings.lots;
    let names = named(&plan, &protocol(&plan)?, lots, &written);
    for (id, name) in [
        ("yeast", names.yeast),
        ("bags", names.bags),
        ("enzyme", names.enzymes),
        ("meter", names.meter),
    ] {
        sheet.set(id, &name.unwrap_or_default());
    }
    let file = sheet.write();
    let PilotFile { readings, mut faults, notes } = readings(file.text.as_bytes());
    let mut wrong = Faults::default();
    for (id, fault) in file.unwritten() {
        wrong.cells.insert(id.clone(), said(fault));
    }
    if faults.is_empty() && wrong == Faults::default() {
        match taught(&plan, &readings, lots, today)? {
            Ok(taught) => return Ok(Ok(Worked { file, notes, taught })),
            Err(found) => faults = found,
        }
    }
    for fault in &faults {
        match file.cell_of(&sheet, fault) {
            Some(id) => {
                let own = wrong.cells.entry(id.to_owned()).or_default();
                *own = format!("{own} {}", said_there(fault)).trim().to_owned();
            }
            None => wrong.rest.push(said(fault)),
        }
    }
    Ok(Err(wrong))
}

/// Keeps what was worked out, and shows it.
fn keep(room: &Arc<Room>, worked: Worked, now: Timestamp) -> Result<Saved, DeskError> {
    let Worked { file, notes, taught } = worked;
    let lots = write_lots(&taught.lots);
    let before = room.read(|scene| scene.version);
    let version = room.keep_pilot(&lots, &file.text, doors::key(now)?, now)?;
    if version == before {
        return Ok(Saved::Same);
    }
    let lesson = pilot::lesson(taught, notes);
    let says = pilot::summary(&lesson);
    keep_learned(room, version, lesson);
    room.foresee();
    Ok(Saved::As(says))
}

/// Saves parts of the sheet with what is written once, and learns from the whole sheet as it is then.
/// Waits for the disk.
pub(crate) fn save_parts(
    room: &Arc<Room>,
    typed: &TypedSheet,
    parts: &[Part],
    from: u32,
    now: Timestamp,
) -> Result<Saved, DeskError> {
    if overtaken(room, from)? {
        return Ok(Saved::Overtaken);
    }
    let kept = room.kept_pilot();
    let old = kept.sheet();
    let parts = parts.iter().filter(|part| typed.has(**part) || old.has(**part));
    let mut new = None;
    for part in parts {
        new = Some(new.as_ref().unwrap_or(&old).with(*part, typed));
    }
    let Some(new) = new else { return Ok(Saved::Nothing) };
    let lots = kept.before();
    if Part::ALL.into_iter().all(|part| !new.has(part)) {
        // The last part was cleared: what this pilot found goes with it.
        return without_sheet(room, &lots, now);
    }
    match work_out(room, &new, &lots, now)? {
        Ok(worked) => keep(room, worked, now),
        Err(faults) => Ok(Saved::Faulty(faults)),
    }
}

fn without_sheet(room: &Arc<Room>, lots: &Lots, now: Timestamp) -> Result<Saved, DeskError> {
    room.keep_pilot(&write_lots(lots), "", doors::key(now)?, now)?;
    room.foresee();
    Ok(Saved::As(String::new()))
}

/// The sheet that a file makes, and the lots that it goes on from. Another part of the pilot that is
/// on the sheet comes on it; another pilot takes its place.
fn joined(kept: &KeptPilot, file: &[u8]) -> (TypedSheet, Lots) {
    let (new, old) = (TypedSheet::read(file), kept.sheet());
    let heads = ["date", "yeast", "bags", "enzyme", "meter"];
    let same = |id: &&str| new.get(id).is_empty() || new.get(id) == old.get(id);
    if old.is_empty() || !heads.iter().all(same) {
        return (new, kept.lots.clone());
    }
    let mut sheet = old;
    let mut own = new;
    for id in ["room", "date", "yeast", "bags", "enzyme", "meter"] {
        if own.get(id).is_empty() {
            own.set(id, sheet.get(id));
        }
    }
    for part in Part::ALL.into_iter().filter(|part| own.has(*part)) {
        sheet = sheet.with(part, &own);
    }
    (sheet, kept.before())
}

fn from_file(
    room: &Room,
    file: &str,
    now: Timestamp,
) -> Result<Result<Worked, Vec<(u64, String)>>, DeskError> {
    let lines = |faults: &[PilotFault]| {
        faults.iter().map(|fault| (fault.line, said(fault))).collect::<Vec<_>>()
    };
    let found = readings(file.as_bytes());
    if !found.faults.is_empty() {
        return Ok(Err(lines(&found.faults)));
    }
    let plan = room.read(|scene| scene.newest.clone());
    let today = today(&plan, now);
    let (sheet, lots) = joined(&room.kept_pilot(), file.as_bytes());
    Ok(match work_out(room, &sheet, &lots, now)? {
        Ok(worked) => Ok(Worked { notes: found.notes, ..worked }),
        // By the lines of the file itself, where it shows them.
        Err(wrong) => Err(match taught(&plan, &found.readings, &lots, today)? {
            Err(faults) => lines(&faults),
            Ok(_) => {
                let all = wrong.cells.into_values().chain(wrong.rest);
                all.map(|says| (0, says)).collect()
            }
        }),
    })
}

/// What a file of readings would teach; keeps nothing.
pub(crate) fn look_at_file(
    room: &Room,
    file: &str,
    now: Timestamp,
) -> Result<Looked, DeskError> {
    Ok(match from_file(room, file, now)? {
        Ok(Worked { taught, notes, .. }) => {
            Looked::Sound(Box::new(pilot::lesson(taught, notes)))
        }
        Err(wrong) => Looked::Wrong(wrong),
    })
}

/// Keeps what a file of readings teaches, and puts it on the sheet. Waits for the disk.
pub(crate) fn keep_file(
    room: &Arc<Room>,
    file: &str,
    from: u32,
    now: Timestamp,
) -> Result<Saved, DeskError> {
    if overtaken(room, from)? {
        return Ok(Saved::Overtaken);
    }
    match from_file(room, file, now)? {
        Ok(worked) => keep(room, worked, now),
        Err(wrong) => {
            let rest = wrong.into_iter().map(|(_, says)| says).collect();
            Ok(Saved::Faulty(Faults { rest, ..Faults::default() }))
        }
    }
}

/// What is done to a lot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Change {
    /// Forecasts go by it.
    Choose,
    /// Forecasts go by what is usual of its sort.
    LeaveOut,
    /// It was a mistake.
    TakeOut,
}

/// Changes a lot, by its place among [`Lots::lines`]. A lot that is taken out takes the sheet along on
/// which it was tried. Waits for the disk.
pub(crate) fn change_lots(
    room: &Arc<Room>,
    place: usize,
    change: Change,
    from: u32,
    now: Timestamp,
) -> Result<Saved, DeskError> {
    if overtaken(room, from)? {
        return Ok(Saved::Overtaken);
    }
    let kept = room.kept_pilot();
    let mut lots = kept.lots.clone();
    let Some(line) = lots.lines().into_iter().nth(place) else { return Ok(Saved::Overtaken) };
    match change {
        Change::Choose => lots.choose(&line),
        Change::LeaveOut => lots.leave_out(&line),
        Change::TakeOut => lots.take_out(&line),
    }
    let with_sheet = change == Change::TakeOut && is_on_sheet(&kept, &line);
    let readings = if with_sheet { "" } else { kept.readings.as_str() };
    room.keep_pilot(&write_lots(&lots), readings, doors::key(now)?, now)?;
    room.foresee();
    Ok(Saved::As(String::new()))
}

/// Whether the newest pilot tried that lot.
fn is_on_sheet(kept: &KeptPilot, line: &LotLine) -> bool {
    let Some(read) = kept.read() else { return false };
    let name = match line.thing {
        Thing::Yeast => read.lots.yeast,
        Thing::Bags => read.lots.bags,
        Thing::Enzyme => read.lots.enzymes,
        Thing::Meter => read.lots.meter,
    };
    let day = read.date.is_some_and(|date| line.dates.contains(&date));
    day && name.as_ref() == Some(&line.name)
}

/// Puts the sheet away and lays out an empty one; what it taught stays. Waits for the disk.
pub(crate) fn put_away(
    room: &Arc<Room>,
    from: u32,
    now: Timestamp,
) -> Result<Saved, DeskError> {
    if overtaken(room, from)? {
        return Ok(Saved::Overtaken);
    }
    let lots = room.kept_pilot().lots_text.clone();
    room.keep_pilot(&lots, "", doors::key(now)?, now)?;
    Ok(Saved::As(String::new()))
}

/// Goes back to the lots and the sheet of an older version, as a new one. Waits for the disk.
pub(crate) fn go_back(
    room: &Arc<Room>,
    version: u32,
    from: u32,
    now: Timestamp,
) -> Result<Saved, DeskError> {
    if overtaken(room, from)? {
        return Ok(Saved::Overtaken);
    }
    let all = room.store.pilots(room.id)?;
    let Some(then) = all.into_iter().find(|one| one.version == version) else {
        return Ok(Saved::Overtaken);
    };
    room.keep_pilot(&then.lots, &then.readings, doors::key(now)?, now)?;
    room.foresee();
    Ok(Saved::As(String::new()))
}
