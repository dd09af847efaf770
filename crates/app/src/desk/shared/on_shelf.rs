//! The same question over the investigations on a shelf.

use super::YearsFound;
use super::years::{class_rows, compared};
use super::{OverYears, Said};
use crate::desk::DeskError;
use crate::desk::room::shared::parcel;
use crate::desk::room::{Kind, Room, Shelf};
use barm_documents::chart::{Frame, IntervalChart};
use barm_domain::shared::Unsaid;
use barm_domain::years::Class;
use jiff::Timestamp;
use std::path::PathBuf;

/// Compares all investigations with readings, rehearsals left out. Replays them, and waits for the disk.
pub(crate) fn years_on_shelf(shelf: &Shelf, now: Timestamp) -> Result<YearsFound, DeskError> {
    let (mut classes, mut not_read) = (Vec::new(), Vec::new());
    for one in shelf.investigations()?.into_iter().filter(|one| one.kind != Kind::Rehearsal) {
        let made = shelf.room(one.id, now).and_then(|room| class(&room));
        match made {
            Ok(class) => classes.push(class),
            Err(DeskError::NothingToShare) => {}
            Err(error) => not_read.push((PathBuf::from(one.title), error.to_string())),
        }
    }
    Ok(compared(classes, not_read))
}

/// An investigation as a class among others, by its first day and its title.
fn class(room: &Room) -> Result<Class, DeskError> {
    let parcel = parcel(room, Said::default())?;
    let plan = room.read(|scene| scene.plan.clone());
    let day = plan.days.first().map(|day| day.date).unwrap_or_default();
    let unsaid = Unsaid {
        title: plan.title.clone(),
        date: day,
        readable_mm: Some(plan.readable_mm),
        interval_min: Some(plan.timing.interval_min),
        grade: Some(plan.grade),
        made_up: parcel.is_made_up(),
    };
    let name = format!("{day}, {}", plan.title);
    let shared = parcel.into_shared();
    let investigation = shared
        .investigation(&unsaid)
        .map_err(|why| DeskError::Rebuilt { path: PathBuf::from(&name), why: Box::new(why) })?;
    Ok(Class { name, shared, investigation })
}

/// A difference over classes as a picture of that width.
pub(crate) fn years_picture(classes: &[Class], of: &OverYears, width: f64) -> String {
    let rows = class_rows(classes, of);
    let (title, reference) = (of.treatment_says(), of.reference_says());
    let chart = IntervalChart { title: &title, reference: &reference, rows: &rows };
    chart.svg(&Frame::screen(width))
}
