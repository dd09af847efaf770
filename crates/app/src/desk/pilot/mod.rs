//! A pilot: what to do for a plan, what its readings teach, and the file in which that is kept.

mod pictures;
mod words;

pub(crate) use pictures::{
    bag_charts, bags, change_rows, changes, changes_chart, range_chart, treatments,
    treatments_chart,
};
pub(crate) use words::{reason, recipe, tables, tools};

use super::plan_file::bytes;
use super::{DeskError, OpenPlan, Outlook, Progress, outlook};
use barm_documents::pilot_text::{PilotFile, read_lots, readings, write_lots};
use barm_documents::plan_text::Mistake;
use barm_domain::finding::Finding;
use barm_domain::outlook::Look;
use barm_domain::pilot::{
    self, Known, Lots, PilotError, PilotFault, PilotReadings, Protocol, Step, Taught,
};
use barm_domain::plan::Plan;
use barm_store::written::{Folder, Outcome, WriteError};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use std::io;
use std::path::{Path, PathBuf};

/// What to do in a pilot.
#[derive(Debug)]
pub(crate) struct Pilot {
    /// What it is for this plan.
    pub(crate) protocol: Protocol,
    /// What to do when.
    pub(crate) steps: Vec<Step>,
    /// What could hurt somebody.
    pub(crate) cautions: Vec<Finding>,
}

/// The pilot's bags and amounts. They do not hang on what pilots found already, so that a sheet that was
/// printed stays right while its parts are typed one after the other.
pub(super) fn protocol(plan: &Plan) -> Result<Protocol, PilotError> {
    pilot::protocol(&Plan { known: Known::default(), ..plan.clone() })
}

/// Works out what readings teach of the lots there are.
pub(super) fn taught(
    plan: &Plan,
    readings: &PilotReadings,
    lots: &Lots,
    today: Date,
) -> Result<Result<Taught, Vec<PilotFault>>, PilotError> {
    let protocol = protocol(plan)?;
    let plan = Plan { known: Known::of(lots), ..plan.clone() };
    Ok(pilot::learn(&plan, &protocol, readings, lots, today))
}

/// The plan's forecast by some lots; nothing where there is none.
pub(super) fn foreseen(plan: &Plan, lots: &Lots, progress: &dyn Progress) -> Option<Outlook> {
    let plan = Plan { known: Known::of(lots), ..plan.clone() };
    outlook(&plan, Look::default(), progress).ok()
}

/// What to do in a pilot for a plan.
pub(crate) fn pilot(plan: &Plan) -> Result<Pilot, DeskError> {
    let protocol = protocol(plan)?;
    let steps = pilot::timetable(plan, &protocol);
    let cautions = pilot::cautions(plan, &protocol);
    Ok(Pilot { protocol, steps, cautions })
}

/// What became of what a pilot taught.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Kept {
    /// It is in this file now.
    Written(PathBuf),
    /// It was in this file already.
    AlreadyThere(PathBuf),
    /// This file was changed by hand, so it was left alone.
    Yours(PathBuf),
    /// It was not to be kept.
    NotAsked,
}

/// What a pilot taught, and what that changes.
#[derive(Debug)]
pub(crate) struct Lesson {
    /// What it taught.
    pub(crate) taught: Taught,
    /// What to know about how the file was read.
    pub(crate) notes: Vec<String>,
    /// The plan's forecast before and after; nothing where there is none.
    pub(crate) outlooks: Option<(Outlook, Outlook)>,
    /// What became of it.
    pub(crate) kept: Kept,
}

impl Lesson {
    /// What a person should look at again.
    pub(crate) fn warnings(&self) -> Vec<String> {
        let noise = self.taught.noise.filter(|noise| *noise > WIDE);
        noise
            .map(|noise| {
                format!(
                    "The bags' heights scatter {noise:.1} times as widely as they should, so they count \
                     for less: look for a leak, a card that slid, or a slip of the pen."
                )
            })
            .into_iter()
            .collect()
    }
}

/// What was taught, with nothing kept of it and no forecast yet.
pub(crate) fn lesson(taught: Taught, notes: Vec<String>) -> Lesson {
    Lesson { taught, notes, outlooks: None, kept: Kept::NotAsked }
}

/// Readings that scatter more widely than this over what they should are worth a word (1, own rule).
const WIDE: f64 = 1.5;

/// What was measured, in a sentence.
pub(crate) fn summary(lesson: &Lesson) -> String {
    let parts: Vec<&str> = lesson.taught.parts.iter().map(|part| part.says()).collect();
    let moved = lesson.taught.changes.iter().filter(|change| change.left < 0.9).count();
    let numbers = if moved == 1 { "number is" } else { "numbers are" };
    format!("Measured: {}. {moved} {numbers} known better than before.", parts.join(", "))
}

/// An empty file of readings for a plan's pilot.
pub(crate) fn blank_readings(pilot: &Pilot) -> String {
    let mut file =
        String::from("date,\nroom,\nyeast lot,\nbag lot,\nenzyme lot,\nmeter name,\n");
    let protocol = &pilot.protocol;
    for table in tables(protocol) {
        file.push_str(&format!("\n{}\n", table.typed.replace(", ", ",")));
        for row in &table.rows {
            file.push_str(&format!("{row},\n"));
        }
    }
    if let Some(first) = protocol.bags.first() {
        file.push_str("\nmade,yeast,water,water temperature (°C),tray (°C)\n");
        for bag in &protocol.bags {
            file.push_str(&format!("{},,,,\n", bag.letter));
        }
        let minutes: Vec<String> = first.minutes.iter().map(u32::to_string).collect();
        file.push_str(&format!("\nbag,0,{}\n", minutes.join(",")));
        for bag in &protocol.bags {
            file.push_str(&format!("{}{}\n", bag.letter, ",".repeat(minutes.len() + 1)));
        }
    }
    file
}

/// Learns from a pilot's readings and, if `keep` says so, keeps it beside the plan.
pub(crate) fn learn_pilot(
    open: &OpenPlan,
    file: &Path,
    keep: bool,
    now: Timestamp,
    progress: &dyn Progress,
) -> Result<Lesson, DeskError> {
    let PilotFile { readings, faults, notes } = readings(&bytes(file)?);
    let refused = |faults: Vec<PilotFault>| {
        DeskError::PilotReadings(Refused { path: file.to_owned(), faults })
    };
    if !faults.is_empty() {
        return Err(refused(faults));
    }
    let lots = lots_beside(&open.path)?;
    let today = today(&open.plan, now);
    let taught = taught(&open.plan, &readings, &lots, today)?.map_err(refused)?;
    let foreseen = |lots: &Lots| foreseen(&open.plan, lots, progress);
    let outlooks = foreseen(&lots).zip(foreseen(&taught.lots));
    let kept = if keep { keep_lots(&open.path, &taught.lots)? } else { Kept::NotAsked };
    Ok(Lesson { taught, notes, outlooks, kept })
}

/// The date at the school.
pub(super) fn today(plan: &Plan, now: Timestamp) -> Date {
    let zone = plan.days.first().and_then(|day| TimeZone::get(&day.zone).ok());
    now.to_zoned_datetime(zone.unwrap_or(TimeZone::UTC)).date()
}

/// The file of lots that lies beside a plan: `lesson.pilot.toml` beside `lesson.toml`.
pub(crate) fn lots_path(plan: &Path) -> PathBuf {
    plan.with_extension("pilot.toml")
}

/// What pilots found for a plan; nothing if there was none.
pub(super) fn lots_beside(plan: &Path) -> Result<Lots, DeskError> {
    let path = lots_path(plan);
    let bytes = match std::fs::read(&path) {
        Ok(bytes) => bytes,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Lots::default()),
        Err(source) => return Err(DeskError::Read { path, source }),
    };
    let read = read_lots(&bytes);
    match read.lots {
        Some(lots) => Ok(lots),
        None => Err(DeskError::Lots { path, mistakes: read.mistakes }),
    }
}

/// Writes the file of lots, unless a person changed it.
fn keep_lots(plan: &Path, lots: &Lots) -> Result<Kept, DeskError> {
    let path = lots_path(plan);
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
    let mut folder = Folder::open(folder.unwrap_or(Path::new(".")))?;
    let Some(name) = path.file_name().and_then(|name| name.to_str()) else {
        let source = io::Error::new(io::ErrorKind::InvalidInput, "the name is not text");
        return Err(DeskError::Write(WriteError { doing: "write", path, source }));
    };
    Ok(match folder.write(name, write_lots(lots).as_bytes())? {
        Outcome::Written => Kept::Written(path),
        Outcome::AlreadyThere => Kept::AlreadyThere(path),
        Outcome::KeptYours => Kept::Yours(path),
    })
}

/// Readings of a pilot that cannot be taken.
#[derive(Debug)]
pub(crate) struct Refused {
    /// The file.
    pub(crate) path: PathBuf,
    /// What is wrong, by line.
    pub(crate) faults: Vec<PilotFault>,
}

impl std::fmt::Display for Refused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let count = self.faults.len();
        let word = if count == 1 { "mistake" } else { "mistakes" };
        let path = self.path.display();
        write!(f, "{path} has {count} {word}, and nothing was learned from it")?;
        for PilotFault { line, what, fix } in &self.faults {
            match line {
                0 => write!(f, "\n{path}: {what}; {fix}")?,
                line => write!(f, "\n{path}:{line}: {what}; {fix}")?,
            }
        }
        Ok(())
    }
}

/// Mistakes of a file of lots, each on a line of its own.
pub(super) fn listed(path: &Path, mistakes: &[Mistake]) -> String {
    mistakes.iter().map(|mistake| format!("\n{}:{mistake}", path.display())).collect()
}
