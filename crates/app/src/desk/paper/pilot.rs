//! A pilot on paper: what to do with room to write, and what it taught.

use super::{Size, cautions, imprint};
use crate::desk::DeskError;
use crate::desk::pilot::{Kept, Lesson, Pilot, bags, changes, reason, recipe, summary, tables};
use crate::desk::pilot::{tools, treatments};
use barm_documents::sheet::{self, Entry, PilotBagRow, PilotReport, PilotSheet, PilotStep};
use barm_domain::plan::Plan;

/// What to do in a pilot, as a PDF.
pub(crate) fn pilot_pdf(plan: &Plan, pilot: &Pilot, size: Size) -> Result<Vec<u8>, DeskError> {
    let entry = |head: &str, says: &str| Entry { head: head.to_owned(), says: says.to_owned() };
    let minutes = pilot.protocol.bags.first().map_or(&[][..], |bag| &bag.minutes);
    let paper = PilotSheet {
        imprint: imprint(plan, "PILOT"),
        title: "Pilot".to_owned(),
        aside: format!("{}: 40 minutes", plan.title),
        heads: ["Date", "Room (°C)", "Yeast lot", "Bag lot", "Enzyme lot", "Meter name"]
            .map(str::to_owned)
            .to_vec(),
        tools: tools(plan, pilot),
        steps: pilot
            .steps
            .iter()
            .map(|step| PilotStep { minute: step.minute.to_string(), says: step.says.clone() })
            .collect(),
        bags: pilot
            .protocol
            .bags
            .iter()
            .map(|bag| PilotBagRow {
                letter: bag.letter.clone(),
                says: reason(&bag.role).to_owned(),
                recipe: recipe(plan, bag),
            })
            .collect(),
        minutes: std::iter::once(0)
            .chain(minutes.iter().copied())
            .map(|m| m.to_string())
            .collect(),
        tables: tables(&pilot.protocol),
        notes: vec![
            entry(
                "Type it",
                "Type what was read into the file that barm pilot --blank writes, one table under the \
                 other. Leave out what was not done. Units may stand beside each value.",
            ),
            entry(
                "Learn",
                "barm pilot PLAN READINGS.csv works out what it says of yeast, bags and meter, and keeps \
                 it beside the plan. Every forecast goes by it from then on.",
            ),
            entry(
                "Again",
                "With a new jar of yeast or a new box of bags, do those parts once more under a new name.",
            ),
        ],
        cautions: cautions(&pilot.cautions),
    };
    Ok(sheet::pilot_pdf(&paper, size.into())?)
}

/// What a pilot taught, as a PDF.
pub(crate) fn pilot_report_pdf(
    plan: &Plan,
    lesson: &Lesson,
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    let taught = &lesson.taught;
    let mut notes = Vec::new();
    if !taught.unmoved.is_empty() {
        let says = format!(
            "The readings could not tell these, which stay as they were: {}.",
            taught.unmoved.join("; ")
        );
        notes.push(Entry { head: "Left open".to_owned(), says });
    }
    notes.extend(
        lesson.warnings().into_iter().map(|says| Entry { head: "Look again".to_owned(), says }),
    );
    if let Kept::Yours(path) = &lesson.kept {
        let says = format!("{} was changed by hand and was left alone.", path.display());
        notes.push(Entry { head: "Not kept".to_owned(), says });
    }
    let report = PilotReport {
        imprint: imprint(plan, "PILOT-R"),
        title: "What the pilot taught".to_owned(),
        aside: format!("{}: {}", plan.title, taught.date.strftime("%B %-d, %Y")),
        summary: summary(lesson),
        changes: changes(lesson),
        bags: bags(lesson),
        treatments: treatments(lesson),
        notes,
    };
    Ok(sheet::pilot_report_pdf(&report, size.into())?)
}
