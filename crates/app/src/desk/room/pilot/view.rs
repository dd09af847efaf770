//! What the pilot's page shows.

use super::act::Faults;
use super::form::{Field, Form, PartForm};
use super::learned::{Learned, learned};
use crate::desk::editing::sentence;
use crate::desk::pilot::{self, Pilot, reason, recipe, today, tools};
use crate::desk::room::{Kind, Room};
use crate::desk::{DeskError, Wording};
use barm_documents::pilot_text::TypedSheet;
use barm_domain::check::without_local_rules;
use barm_domain::pilot::{Known, LotLine};
use jiff::Timestamp;
use std::sync::Arc;

/// The page of a pilot.
#[derive(Debug)]
pub(crate) struct PilotView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// The version that the page is made from.
    pub(crate) version: u32,
    /// One line about the lots that forecasts go by; nothing if all is as usual.
    pub(crate) by_pilot: Option<String>,
    /// What to do, or why there is no pilot for this plan.
    pub(crate) to_do: Result<ToDo, String>,
    /// Every lot that was tried.
    pub(crate) lots: Vec<LotLine>,
    /// Whether what is kept of lots cannot be read by this program.
    pub(crate) unreadable: bool,
    /// What the newest pilot taught; nothing while the sheet is empty.
    pub(crate) learned: Option<Learned>,
    /// What there was before, the newest first.
    pub(crate) past: Vec<Past>,
    /// Bags that were sealed under other lots and keep their forecast.
    pub(crate) sealed_before: usize,
}

/// What to do, and the sheet.
#[derive(Debug)]
pub(crate) struct ToDo {
    /// What to lay out.
    pub(crate) tools: Vec<String>,
    /// Minute and what to do.
    pub(crate) steps: Vec<(u32, String)>,
    /// Letter, what it tells, and what goes in.
    pub(crate) bags: Vec<(String, &'static str, String)>,
    /// Code and sentences of each caution, and who says so.
    pub(crate) cautions: Vec<(&'static str, String, Option<&'static str>)>,
    /// What is written once.
    pub(crate) heads: Vec<Field>,
    /// The parts of the sheet.
    pub(crate) parts: Vec<PartForm>,
    /// Whether something is kept on the sheet.
    pub(crate) begun: bool,
}

/// The lots and the sheet as they were.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Past {
    /// The version of the plan that has them.
    pub(crate) version: u32,
    /// Since when.
    pub(crate) saved: Timestamp,
    /// The lots that forecasts went by; nothing for what is usual.
    pub(crate) by_pilot: Option<String>,
    /// What had been read, in words.
    pub(crate) parts: Vec<&'static str>,
}

/// The page, with what is kept or with what was typed and is not kept. Waits for the disk.
pub(crate) fn pilot_view(
    room: &Arc<Room>,
    w: Wording,
    typed: Option<&TypedSheet>,
    faults: &Faults,
    now: Timestamp,
) -> Result<PilotView, DeskError> {
    let past = past(room)?;
    let (plan, version, by_pilot) =
        room.read(|scene| (scene.newest.clone(), scene.version, scene.by_pilot()));
    let sealed_before = room.read(|scene| {
        let bags = scene.standing().bags.keys();
        bags.filter(|code| *scene.lots_of(**code) != scene.newest.known).count()
    });
    let kept = room.kept_pilot();
    let sheet = kept.sheet();
    let to_do = match pilot::pilot(&plan) {
        Ok(pilot) => {
            let typed = typed.unwrap_or(&sheet);
            let form = Form { w, pilot: &pilot, sheet: typed, kept: &sheet, faults };
            let today = today(&plan, now).to_string();
            let (heads, parts) = (form.heads(&today), form.parts());
            Ok(to_do(&plan, &pilot, heads, parts, !sheet.is_empty()))
        }
        Err(error) => {
            let hint = error.hint().map(|hint| format!(" {}", sentence(&hint)));
            Err(format!("{}{}", sentence(&error.to_string()), hint.unwrap_or_default()))
        }
    };
    Ok(PilotView {
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        version,
        by_pilot,
        to_do,
        lots: kept.lots.lines(),
        unreadable: kept.unreadable,
        learned: learned(room, w),
        past,
        sealed_before,
    })
}

fn to_do(
    plan: &barm_domain::plan::Plan,
    pilot: &Pilot,
    heads: Vec<Field>,
    parts: Vec<PartForm>,
    begun: bool,
) -> ToDo {
    let bags = pilot.protocol.bags.iter();
    let cautions = pilot.cautions.iter();
    ToDo {
        tools: tools(plan, pilot),
        steps: pilot.steps.iter().map(|step| (step.minute, step.says.clone())).collect(),
        bags: bags
            .map(|bag| (bag.letter.clone(), reason(&bag.role), recipe(plan, bag).join("; ")))
            .collect(),
        cautions: cautions
            .map(|one| {
                let says = format!("{} {}", one.message, without_local_rules(&one.fix));
                (one.code, says, one.source)
            })
            .collect(),
        heads,
        parts,
        begun,
    }
}

/// Every state of lots and sheet that there was, but for the one that stands, the newest first.
fn past(room: &Room) -> Result<Vec<Past>, DeskError> {
    let mut all: Vec<Past> = Vec::new();
    let mut last: Option<(String, String)> = None;
    for found in room.store.pilots(room.id)? {
        let texts = (found.lots.clone(), found.readings.clone());
        if last.as_ref() == Some(&texts) {
            continue;
        }
        last = Some(texts);
        let (version, saved) = (found.version, found.saved);
        let kept = super::KeptPilot::of(found);
        let parts = kept.read().map(|read| read.parts()).unwrap_or_default();
        all.push(Past {
            version,
            saved,
            by_pilot: Known::of(&kept.lots).says(),
            parts: parts.into_iter().map(barm_domain::pilot::Part::says).collect(),
        });
    }
    all.pop();
    all.reverse();
    Ok(all)
}
