//! What the prepare page shows: the prep sheet, as on paper.

use super::{Kind, Room};
use crate::desk::{self, DeskError, PrepSheet};
use barm_domain::check;
use barm_domain::finding::Severity;
use barm_domain::outlook::Look;

/// The prepare page.
#[derive(Debug)]
pub(crate) struct PrepareView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Faults of the plan; buying anything should wait for them.
    pub(crate) faults: usize,
    /// The sheet, or why there is none.
    pub(crate) sheet: Result<PrepSheet, String>,
}

/// The prepare page of an investigation.
pub(crate) fn prepare_view(room: &Room) -> PrepareView {
    let (plan, entries) = room.read(|scene| (scene.newest.clone(), scene.foreseen()));
    let found = check::check(&plan, &entries);
    let sheet =
        desk::prep(&plan).map(|prep| desk::prep_sheet(&plan, &prep, &found)).map_err(|error| {
            let hint = error.hint().map(|hint| format!(" {}", desk::editing::sentence(&hint)));
            format!(
                "{}{}",
                desk::editing::sentence(&error.to_string()),
                hint.unwrap_or_default()
            )
        });
    PrepareView {
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        faults: found.iter().filter(|finding| finding.severity == Severity::Fault).count(),
        sheet,
    }
}

/// The prep sheet as a PDF, made now.
pub(crate) fn prep_pdf(room: &Room, size: desk::Size) -> Result<Vec<u8>, DeskError> {
    let (plan, entries) = room.read(|scene| (scene.newest.clone(), scene.foreseen()));
    let prep = desk::prep(&plan)?;
    desk::paper::prep_pdf_of(room.kind, &plan, &prep, &check::check(&plan, &entries), size)
}

/// The forecast as a PDF, worked out anew. For the teacher only.
pub(crate) fn forecast_pdf(room: &Room, size: desk::Size) -> Result<Vec<u8>, DeskError> {
    let plan = room.read(|scene| scene.newest.clone());
    let outlook = desk::outlook(&plan, Look::default(), &desk::Unheard)?;
    desk::paper::forecast_pdf_of(room.kind, &plan, &outlook, size)
}
