//! The same question over the investigations on a shelf.

use super::years::class_rows;
use super::{OverYears, Said, YearsFound};
use crate::desk::DeskError;
use crate::desk::room::shared::parcel;
use crate::desk::room::{Investigation, Kind, Shelf};
use barm_documents::chart::{Frame, IntervalChart};
use barm_documents::package;
use barm_domain::shared::Unsaid;
use barm_domain::years::{AtMinute, Class, Compared, Years};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Arc, PoisonError};

/// What was worked out of the classes of a shelf, so that nothing is worked out again while nothing changes.
#[derive(Debug, Default)]
pub(crate) struct YearsKept {
    /// Each class, by its investigation.
    classes: BTreeMap<i64, OneKept>,
    /// All together, with the places of the last entries that went into it.
    whole: Option<(Places, Arc<YearsFound>)>,
}

/// Investigations, each with the place of its last entry.
type Places = Vec<(i64, i64)>;

/// One class.
#[derive(Debug)]
struct OneKept {
    /// Place of the last entry that went into it.
    last: i64,
    class: Class,
    latest: Option<AtMinute>,
    /// What it found at minutes that others have in common with it.
    at: BTreeMap<u64, AtMinute>,
}

/// Compares all investigations with readings, rehearsals left out. What each found is kept beside the record, and all of
/// it in memory; what changed since is replayed. Waits for the disk.
pub(crate) fn years_on_shelf(
    shelf: &Shelf,
    now: Timestamp,
) -> Result<Arc<YearsFound>, DeskError> {
    let all: Vec<Investigation> =
        shelf.investigations()?.into_iter().filter(|one| one.kind != Kind::Rehearsal).collect();
    let last: BTreeMap<i64, i64> = shelf.last_places()?.into_iter().collect();
    let place = |id: i64| last.get(&id).copied().unwrap_or_default();
    let places: Places = all.iter().map(|one| (one.id, place(one.id))).collect();
    let mut kept = shelf.years.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some((of, found)) = &kept.whole
        && *of == places
    {
        return Ok(found.clone());
    }
    let mut written: Option<BTreeMap<(i64, i64), Found>> = None;
    let (mut there, mut not_read) = (Vec::new(), Vec::new());
    for one in &all {
        let last = place(one.id);
        if kept.classes.get(&one.id).is_none_or(|known| known.last != last) {
            if written.is_none() {
                written = Some(written_down(shelf)?);
            }
            let known = written.as_mut().and_then(|all| all.remove(&(one.id, last)));
            let class = match known {
                Some(class) => class,
                None => match work_out(shelf, one, last, now) {
                    Ok(class) => class,
                    Err(error) => {
                        not_read.push((PathBuf::from(&one.title), error.to_string()));
                        continue;
                    }
                },
            };
            kept.classes.remove(&one.id);
            if let Some((class, latest)) = class {
                let known = OneKept { last, class, latest, at: BTreeMap::new() };
                kept.classes.insert(one.id, known);
            }
        }
        if kept.classes.contains_key(&one.id) {
            there.push(one.id);
        }
    }
    let classes: Vec<Class> = there.iter().map(|id| kept.classes[id].class.clone()).collect();
    let years = Years::by(&classes, |at, minute| {
        let known = kept.classes.get_mut(there.get(at)?)?;
        let Some(minute) = minute else { return known.latest.clone() };
        let found = known.at.entry(minute.to_bits());
        Some(found.or_insert_with(|| known.class.at(minute)).clone())
    });
    let whole = not_read.is_empty();
    let found = Arc::new(YearsFound { classes, years, not_read });
    kept.whole = whole.then(|| (places, found.clone()));
    Ok(found)
}

/// What is kept of a class beside the record: its data as a package, what no package tells, and what it found.
#[derive(Serialize, Deserialize)]
struct Kept {
    title: String,
    /// The first day, such as 2027-03-09.
    date: String,
    files: BTreeMap<String, String>,
    minute: Option<f64>,
    compared: Vec<KeptCompared>,
}

/// Question, treatment, reference; bags of both; difference (mm), standard error (mm), degrees of freedom.
type KeptCompared = (String, String, String, (usize, usize), Option<(f64, f64, f64)>);

/// A class with what it found, or nothing where nothing was read.
type Found = Option<(Class, Option<AtMinute>)>;

const YEARS: &str = "years";

/// Everything of this program that is kept of classes, by investigation and place.
fn written_down(shelf: &Shelf) -> Result<BTreeMap<(i64, i64), Found>, DeskError> {
    let own = shelf.summaries(YEARS)?.into_iter();
    let read = |(of, body): ((i64, i64), String)| {
        let kept: Option<Kept> = serde_json::from_str(&body).ok()?;
        let class = match kept {
            Some(kept) => Some(opened(kept)?),
            None => None,
        };
        Some((of, class))
    };
    Ok(own.filter_map(read).collect())
}

fn opened(kept: Kept) -> Option<(Class, Option<AtMinute>)> {
    let files: BTreeMap<String, Vec<u8>> =
        kept.files.into_iter().map(|(name, text)| (name, text.into_bytes())).collect();
    let opened = package::read_files(&files).ok()?;
    let unsaid = Unsaid {
        title: kept.title,
        date: kept.date.parse().ok()?,
        readable_mm: opened.readable_mm,
        interval_min: opened.interval_min,
        grade: opened.grade,
        made_up: opened.made_up,
    };
    let investigation = opened.shared.investigation(&unsaid).ok()?;
    let name = named(&unsaid);
    let compared = |(question, treatment, reference, bags, difference): KeptCompared| {
        Compared { question, treatment, reference, bags, difference }
    };
    let compared = kept.compared.into_iter().map(compared).collect();
    let latest = kept.minute.map(|minute| AtMinute { minute, compared });
    Some((Class { name, shared: opened.shared, investigation }, latest))
}

/// Replays a class, and keeps what it found.
fn work_out(
    shelf: &Shelf,
    of: &Investigation,
    last: i64,
    now: Timestamp,
) -> Result<Found, DeskError> {
    let room = match shelf.open_room(of.id) {
        Some(room) => room,
        // It stays open only if it was.
        None => Arc::new(shelf.replay(of, now)?),
    };
    let parcel = match parcel(&room, Said { grade: true, ..Said::default() }) {
        Ok(parcel) => parcel,
        Err(DeskError::NothingToShare) => {
            shelf.keep_summary(of.id, YEARS, last, "null".to_owned());
            return Ok(None);
        }
        Err(error) => return Err(error),
    };
    let plan = room.read(|scene| scene.plan.clone());
    let unsaid = Unsaid {
        title: plan.title.clone(),
        date: plan.days.first().map(|day| day.date).unwrap_or_default(),
        readable_mm: Some(plan.readable_mm),
        interval_min: Some(plan.timing.interval_min),
        grade: Some(plan.grade),
        made_up: parcel.is_made_up(),
    };
    let text = |(name, bytes): (String, Vec<u8>)| Some((name, String::from_utf8(bytes).ok()?));
    let files = parcel.files().into_iter().filter_map(text).collect();
    let (name, shared) = (named(&unsaid), parcel.into_shared());
    let investigation = shared
        .investigation(&unsaid)
        .map_err(|why| DeskError::Rebuilt { path: PathBuf::from(&name), why: Box::new(why) })?;
    let class = Class { name, shared, investigation };
    let latest = class.latest();
    let compared = |one: &Compared| {
        let Compared { question, treatment, reference, bags, difference } = one.clone();
        (question, treatment, reference, bags, difference)
    };
    let kept = Kept {
        title: unsaid.title,
        date: unsaid.date.to_string(),
        files,
        minute: latest.as_ref().map(|one| one.minute),
        compared: latest.iter().flat_map(|one| one.compared.iter().map(compared)).collect(),
    };
    if let Ok(body) = serde_json::to_string(&Some(kept)) {
        shelf.keep_summary(of.id, YEARS, last, body);
    }
    Ok(Some((class, latest)))
}

/// A class among others, by its first day and its title.
fn named(unsaid: &Unsaid) -> String {
    format!("{}, {}", unsaid.date, unsaid.title)
}

/// A difference over classes as a picture of that width.
pub(crate) fn years_picture(classes: &[Class], of: &OverYears, width: f64) -> String {
    let rows = class_rows(classes, of);
    let (title, reference) = (of.treatment_says(), of.reference_says());
    let chart = IntervalChart { title: &title, reference: &reference, rows: &rows };
    chart.svg(&Frame::screen(width))
}
